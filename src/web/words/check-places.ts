/** Where in the drawing a check, or a key of the file, is looked at: names of its parts, and of points of the side. */
export type PlaceName =
  | 'side'
  | 'studs'
  | 'timbers'
  | 'skin'
  | 'deck board'
  | 'run-out'
  | 'pipe'
  | 'toe'
  | 'curve'
  | 'lip'
  | 'back'

const places: readonly (readonly [PlaceName, readonly string[]])[] = [
  [
    'side',
    [
      'height-low',
      'width',
      'panel-size',
      'guard-height',
      'wood-narrow',
      'length-short',
      'near-miss',
      'kerf',
      'stock-idle',
      'stores-fit',
      'garage',
      'door',
      'ceiling',
      'limits',
      'flat-low',
    ],
  ],
  ['studs', ['stud-outside', 'stud-gap', 'stud-nominal', 'stud-added', 'span', 'timber-short', 'flat-studs']],
  ['timbers', ['deck-timber', 'deck-seam', 'pipe-timber', 'wheels-fit']],
  [
    'skin',
    [
      'radius-skin',
      'skin-load',
      'skin-free',
      'skin-none',
      'skin-bend',
      'steel-bend',
      'sheet-bend',
      'seam-stud',
      'seam-across',
      'fasten-between',
      'screw-through',
      'screw-long',
    ],
  ],
  ['deck board', ['board-load', 'board-free']],
  ['run-out', ['flat-missing', 'flat-meets', 'flat-step', 'flat-width']],
  [
    'pipe',
    [
      'notch-level',
      'pipe-reach',
      'notch-floor',
      'notch-front',
      'notch-long',
      'notch-wood',
      'notch-wall',
      'pipe-behind-face',
      'pipe-under-deck',
      'pipe-nominal',
      'pipe-piece',
      'pipe-joint',
      'pipe-hole',
      'pipe-moves',
      'zinc-fume',
    ],
  ],
  ['toe', ['toe-low', 'toe-high', 'toe-step', 'toe-thin', 'stud-toe', 'step-back']],
  ['lip', ['overhang', 'steep', 'lip-ledge', 'lip-groove', 'stud-lip']],
  ['back', ['tips', 'pushed-back', 'chamfer']],
]

/** Null for an id that nobody placed. */
export const placeOfCheck = (id: string): PlaceName | null =>
  places.find(([, ids]) => ids.includes(id))?.[0] ?? null

const keys: readonly (readonly [RegExp, PlaceName])[] = [
  [/^studs|^fasten/, 'studs'],
  [/^skin/, 'skin'],
  [/^deck-board/, 'deck board'],
  [/^run-out/, 'run-out'],
  [/^coping/, 'pipe'],
  [/^toe/, 'toe'],
  [/^transition/, 'curve'],
  [/^lip/, 'lip'],
  [/^chamfer|^deck|^wheels/, 'back'],
  [/./, 'side'],
]

/** Of a key by its path in the file; null where the file is meant. */
export const placeOfKey = (path: string): PlaceName | null => {
  const own = /^ramps\.\d+\.(.+)$/.exec(path)?.[1]
  return own === undefined ? null : (keys.find(([form]) => form.test(own))?.[1] ?? null)
}
