import { standsFor } from './asks.ts'
import {
  type Coping,
  type CurveDesign,
  type CurveDesigns,
  type CurveLayer,
  type CurveName,
  curveNames,
  type FlatDesign,
  type HeightLayer,
  type QuarterDesign,
  type RampDesign,
  type RampKind,
  type Sheet,
  type Space,
  type Stock,
  type Wheels,
} from './design.ts'
import type { EntryMap } from './file/entry.ts'
import {
  saidCount,
  saidLength,
  saidLengths,
  saidMap,
  saidMaps,
  saidPair,
  saidSheets,
  saidText,
  saidWord,
  says,
  wordFor,
} from './file/said.ts'

/** The one key of `keys` that the map says. */
const layerOf = <T extends string>(map: EntryMap, keys: readonly T[]): T => {
  const layer = keys.find((key) => says(map, key))
  if (layer === undefined) throw new TypeError(`none of ${keys.join(', ')} is said`)
  return layer
}

const curveLayers: readonly CurveLayer[] = ['frame', 'surface']
const heightLayers: readonly HeightLayer[] = ['frame', 'deck', 'surface']

export const resolveStock = (map: EntryMap): Stock => {
  const [a, b] = saidPair(map, 'panel')
  return {
    panel: [Math.min(a, b), Math.max(a, b)],
    timber: saidLengths(map, 'timber'),
    pipe: saidLengths(map, 'pipe'),
    kerf: saidLength(map, 'kerf'),
    trim: saidLength(map, 'trim'),
    panels: saidMaps(map, 'panels').map((panel) => ({
      ...sizedSheet(panel),
      clamped: saidCount(panel, 'clamped'),
      goodFace: saidWord(panel, 'good-face'),
    })),
    offcuts: saidMaps(map, 'offcuts').map((piece) => ({
      ...sizedSheet(piece),
      count: saidCount(piece, 'count'),
    })),
  }
}

const sizedSheet = (map: EntryMap): { readonly sheet: Sheet; readonly size: readonly [number, number] } => {
  const [a, b] = saidPair(map, 'size')
  return { sheet: saidSheets(map, 'sheet')[0]!, size: [Math.min(a, b), Math.max(a, b)] }
}

export const resolveSpace = (map: EntryMap): Space => ({
  garage: saidPair(map, 'garage'),
  door: says(map, 'door') ? saidPair(map, 'door') : null,
  ceiling: says(map, 'ceiling') ? saidLength(map, 'ceiling') : null,
})

/** A complete ramp as the solver takes it. A width that follows from another ramp is 0 until that one is known. */
export const resolveRamp = (map: EntryMap): RampDesign => {
  const kind = saidWord<RampKind>(map, 'kind')
  switch (kind) {
    case 'quarter':
      return resolveQuarter(map)
    case 'flat':
      return resolveFlat(map)
    default:
      return kind satisfies never
  }
}

/** What every kind says in the same way. */
const framedOf = (map: EntryMap): Pick<RampDesign, 'name' | 'like' | 'sides' | 'skin' | 'fasten'> => ({
  name: saidText(map, 'name'),
  like: says(map, 'like') ? saidText(map, 'like') : null,
  sides: {
    thickness: saidLength(saidMap(map, 'sides'), 'thickness'),
    count: saidCount(saidMap(map, 'sides'), 'count'),
  },
  skin: saidSheets(map, 'skin'),
  fasten: saidWord(map, 'fasten'),
})

/** What each curve has of its own. */
const ownOf: { readonly [Name in CurveName]: (map: EntryMap) => Omit<CurveDesigns[Name], 'tangent'> } = {
  circle: (map) => {
    const layer = layerOf(map, curveLayers)
    return { circle: { layer, radius: standsFor(map, layer, 'radius') } }
  },
}

const curveOf = (map: EntryMap): CurveDesign => {
  const name = curveNames.find((one) => says(map, one))!
  const tangent = saidMap(map, 'tangent')
  const layer = layerOf(tangent, curveLayers)
  return {
    ...ownOf[name](saidMap(map, name)),
    tangent: { layer, height: standsFor(tangent, layer, 'tangent') },
  }
}

const resolveQuarter = (map: EntryMap): QuarterDesign => {
  const height = saidMap(map, 'height')
  const heightLayer = layerOf(height, heightLayers)
  const back = layerOf(map, ['deck', 'length'])
  const stores = says(map, 'stores-inside') ? saidMap(map, 'stores-inside') : null
  return {
    ...framedOf(map),
    kind: 'quarter',
    width: stores === null ? standsFor(map, 'width', 'width') : 0,
    height: { layer: heightLayer, value: standsFor(height, heightLayer, 'height') },
    transition: curveOf(saidMap(map, 'transition')),
    toe: standsFor(map, 'toe', 'toe'),
    back: { from: back, value: standsFor(map, back, 'back') },
    studs: studsOf(saidMap(map, 'studs')),
    runOut: runOutOf(map),
    deckBoard: wordFor(map, 'deck-board') === undefined ? saidSheets(map, 'deck-board')[0]! : null,
    coping: wordFor(map, 'coping') === undefined ? copingOf(saidMap(map, 'coping')) : null,
    chamfer: wordFor(map, 'chamfer') === undefined ? saidLength(saidMap(map, 'chamfer'), 'leg') : 0,
    wheels: wordFor(map, 'wheels') === undefined ? wheelsOf(saidMap(map, 'wheels')) : null,
    storesInside:
      stores === null ? null : { ramp: saidText(stores, 'ramp'), clearance: saidLength(stores, 'clearance') },
  }
}

const resolveFlat = (map: EntryMap): FlatDesign => {
  const height = saidMap(map, 'height')
  const layer = layerOf(height, curveLayers)
  const studs = saidMap(map, 'studs')
  return {
    ...framedOf(map),
    kind: 'flat',
    width: saidLength(map, 'width'),
    length: saidLength(map, 'length'),
    height: { layer, value: saidLength(height, layer) },
    studs: { section: saidPair(studs, 'section'), every: saidLength(studs, 'every') },
  }
}

const studsOf = (map: EntryMap): QuarterDesign['studs'] => {
  const foot = wordFor(map, 'foot') === undefined ? saidMap(map, 'foot') : null
  return {
    section: saidPair(map, 'section'),
    every: saidLength(map, 'every'),
    foot: foot && { every: saidLength(foot, 'every'), to: saidLength(foot, 'to') },
    deck: saidLength(map, 'deck'),
  }
}

const runOutOf = (map: EntryMap): QuarterDesign['runOut'] => {
  const word = wordFor(map, 'run-out')
  if (word !== undefined) return { kind: word as 'none' | 'flat' }
  const runOut = saidMap(map, 'run-out')
  return says(runOut, 'sheet')
    ? { kind: 'sheet', sheet: saidSheets(runOut, 'sheet')[0]! }
    : { kind: 'stepped', back: saidLength(runOut, 'step-back') }
}

const wheelsOf = (map: EntryMap): Wheels => ({
  diameter: saidLength(map, 'diameter'),
  height: saidLength(map, 'height'),
  count: saidCount(map, 'count'),
})

const copingOf = (map: EntryMap): Coping => {
  const notch = says(map, 'notch') ? saidMap(map, 'notch') : null
  return {
    outside: saidLength(map, 'outside'),
    seat: saidWord(map, 'seat'),
    material: saidWord(map, 'material'),
    holes: {
      ends: saidLength(saidMap(map, 'holes'), 'ends'),
      every: saidLength(saidMap(map, 'holes'), 'every'),
    },
    by:
      notch === null
        ? { kind: 'reveals', up: saidLength(map, 'up'), out: saidLength(map, 'out') }
        : { kind: 'notch', along: saidLength(notch, 'along'), down: saidLength(notch, 'down') },
  }
}
