import type { Design, Sheet } from '../../design/design.ts'
import { curvedOf, straightOf } from '../../design/kind-traits.ts'
import { inch } from '../../geometry/inch.ts'
import { countedSizes } from '../../length/counted-sizes.ts'
import { massAtMost } from '../../length/mass.ts'
import { ownUnits } from '../../length/own-units.ts'
import { wordList } from '../../length/word-list.ts'
import { showLength, type Units } from '../../length.ts'
import { rounded } from '../../ramp/check/offer.ts'
import type { Flat, WholeDesign } from '../../ramp/ramp.ts'
import { screwHead, screwSize } from '../../ramp/screws/screw-sort.ts'
import { grips, handleHoles, handleWords } from '../handle.ts'
import type { JointPlate } from '../joint-plate.ts'
import type { Moving } from '../moving.ts'
import { bySize, type RampScrews } from '../screws.ts'
import { isSteel } from '../steel-uses.ts'
import { type SectionPlan, sectionWords, squared } from '../timber/boards.ts'
import { glueLines } from './glue-lines.ts'
import { jointLines, plateLines, platePieces } from './joint-lines.ts'
import type { ListLine } from './line.ts'
import { lipLines } from './lip-lines.ts'
import { ownedLines } from './owned-lines.ts'
import { packingLines } from './packing-lines.ts'
import { cutPipes } from './pipes.ts'
import { takenFrom } from './rests.ts'
import { runOutLines, solvedBolts } from './run-out-lines.ts'
import { stripLines } from './strip-lines.ts'

/** Panels of one size to buy, offcuts that are there already aside. */
export interface BoughtPanels {
  readonly sheet: Sheet
  /** as it may be typed: `18 plywood` */
  readonly name: string
  readonly size: readonly [number, number]
  readonly count: number
  /** the largest rectangle that each leaves, short side first */
  readonly rests: readonly (readonly [number, number])[]
  /** glue is asked for: sides are spliced from it */
  readonly glued: boolean
  /** of each piece that is sawn from them, up the ramp and across it */
  readonly sawn: readonly (readonly [number, number])[]
  /** marks of what shows the panel's back */
  readonly backs: readonly string[]
}

export interface Bought {
  readonly panels: readonly BoughtPanels[]
  /** of all that is sawn from plywood, mm² */
  readonly faces: number
  readonly timber: readonly SectionPlan[]
  readonly screws: readonly RampScrews[]
  readonly moving: readonly Moving[]
  readonly joints: readonly JointPlate[]
  /** who lift the heaviest ramp */
  readonly people: number
}

/** Screws in a box, what is bought over what is needed, and up to how many are bought by the piece: usual in the trade, no source. */
export const screwBoxes = { count: 100, spare: 1.1, loose: 12 } as const

/** m² that a tin's measure covers twice; 5 a litre is common practice, no source. A US liquid quart is 0.946352946 l (NIST Handbook 44). */
const paintCovers = {
  mm: { unit: 'litre', area: 5 },
  in: { unit: 'quart', area: 5 * 0.946352946 },
} as const

/** Of the strip under the sides; common practice, no source. */
export const rubberThick = '3 mm (1/8 in)'

/** Everything to buy, in the order of a way through the shop. */
export const shoppingList = (design: Design, solved: WholeDesign, bought: Bought): readonly ListLine[] => [
  ...panelLines(design, bought),
  ...timberLines(design, bought),
  ...pipeLines(design, solved),
  ...packingLines(solved),
  ...screwLines(design, bought),
  ...fittingLines(design, solved, bought),
  ...finishLines(design, solved, bought),
  ...ownedLines(design, solved, bought),
]

/** Of steel a shop cuts what is wanted: each size of what is sawn from these panels, and how many of it. */
const steelNote = ({ sawn }: BoughtPanels, units: Units): string =>
  `or cut to size: ${wordList(countedSizes(sawn, units))}`

const panelLines = ({ units }: Design, { panels }: Bought): readonly ListLine[] =>
  panels.map((own) => ({
    part: 'sheets',
    what: `${own.name}, ${showLength(own.size[0], units)} × ${rounded(own.size[1], units)}`,
    count: own.count,
    unit: 'panel',
    note: isSteel(own.sheet)
      ? steelNote(own, units)
      : own.backs.length > 0
        ? `${own.count > 1 ? 'one ' : ''}good on both faces: for ${wordList(own.backs)}`
        : '',
    priced: { kind: 'sheet', sheet: own.sheet, size: own.size },
  }))

const timberLines = ({ units }: Design, { timber }: Bought): readonly ListLine[] =>
  timber.flatMap(({ section, boards }) =>
    [...new Set(boards.map(({ length }) => length))].map((length): ListLine => {
      const own = boards.filter((board) => board.length === length)
      const ripped = own.reduce((sum, { cuts }) => sum + cuts.filter((cut) => cut.ripped).length, 0)
      return {
        part: 'timber',
        what: `${sectionWords(section, units)} timber, ${rounded(length, units)} long`,
        count: own.length,
        unit: 'length',
        note: [
          `ends squared, ${showLength(squared[units], units)} each`,
          ...(ripped > 0 ? [`${ripped} of the pieces ripped`] : []),
        ].join('; '),
        priced: { kind: 'timber', section, length },
      }
    }),
  )

const pipeLines = (design: Design, solved: WholeDesign): readonly ListLine[] =>
  cutPipes(design, solved).flatMap(({ name, bought }) =>
    bought.map(
      ({ length, count }): ListLine => ({
        part: 'pipe',
        what: `${name}, ${rounded(length, design.units)} long`,
        count,
        unit: 'length',
        note: 'measure its outside',
        priced: { kind: 'word', word: 'pipe' },
      }),
    ),
  )

const screwLines = ({ units }: Design, { screws }: Bought): readonly ListLine[] =>
  bySize(screws).map(({ use, length, count, uses, letter }) => ({
    part: 'screws',
    what:
      length === null
        ? 'wood screws shorter than the usual ones'
        : `wood screws ${screwSize(use, length, units, (mm) => rounded(mm, units))}, ${screwHead(use)}`,
    ...(count <= screwBoxes.loose
      ? { count: Math.ceil(count * screwBoxes.spare), unit: 'piece', priced: null }
      : {
          count: Math.ceil((count * screwBoxes.spare) / screwBoxes.count),
          unit: `box of ${screwBoxes.count}`,
          priced: { kind: 'word', word: 'screws' } as const,
        }),
    note: `${count} needed: ${uses.join(', ')}; box ${letter}`,
  }))

const ropeWords = (units: Units): string =>
  `${ownUnits(grips.rope, units)} thick, ${ownUnits(grips.loop, units)} each`

const fittingLines = (
  { units, stock }: Design,
  { ramps }: WholeDesign,
  { panels, moving, joints }: Bought,
): readonly ListLine[] => {
  const rolling = moving.flatMap(({ rolling: own }) => (own ? [own] : []))
  // typed, so that a new kind is led here: what is said of a flat may not hold for it
  const flats: readonly Flat[] = straightOf(ramps)
  const feet = ramps.reduce((sum, ramp) => sum + ramp.design.sides.count * (ramp.length ?? 0), 0)
  const plates = takenFrom(panels, platePieces(joints), stock.kerf)
  const gripped = (grip: Moving['grip']): number =>
    moving.filter((one) => one.grip === grip && one.handle).length
  const handled = moving.filter(({ grip, handle }) => grip === 'handle' && handle)
  const word = (name: 'wheels' | 'handles' | 'bolts' | 'rubber'): Pick<ListLine, 'part' | 'priced'> => ({
    part: 'fittings',
    priced: { kind: 'word', word: name },
  })
  return [
    ...rolling.map(
      ({ diameter, height, count, rated }): ListLine => ({
        ...word('wheels'),
        what: `rigid wheels, ${rounded(diameter, units)} across, ${rounded(height, units)} high with the plate`,
        count,
        unit: 'piece',
        note: `rated for ${massAtMost(rated, units)} each or more`,
      }),
    ),
    ...(gripped('handle') > 0
      ? [
          {
            ...word('handles'),
            what: `handles up to ${ownUnits(handleWords, units)}`,
            count: 2 * gripped('handle'),
            unit: 'piece',
            note: `four holes, ${ownUnits(handleHoles, units)} apart`,
          },
          ...[...new Set(handled.map(({ bolt }) => bolt))].map((bolt): ListLine => {
            const own = handled.filter((one) => one.bolt === bolt)
            return {
              ...word('bolts'),
              what: `bolts ${ownUnits(grips.bolt, units)} × ${rounded(bolt, units)}, cup heads, washers, nuts`,
              count: 8 * own.length,
              unit: 'piece',
              note: `four for each handle, through the side${own.some(({ handle }) => handle?.plated) ? ' and the plate inside it' : ''}`,
            }
          }),
        ]
      : []),
    ...(gripped('rope') > 0
      ? [
          {
            ...word('handles'),
            priced: null,
            what: `loops of rope, ${ropeWords(units)}`,
            count: 2 * gripped('rope'),
            unit: 'piece',
            note: 'for what stores inside',
          },
        ]
      : []),
    ...(flats.length > 0
      ? [
          {
            ...word('handles'),
            priced: null,
            what: `loops of rope for a flat, ${ropeWords(units)}`,
            count: 4 * flats.length,
            unit: 'piece',
            note: 'two on each side',
          },
        ]
      : []),
    ...jointLines(joints, plates.lacking, units),
    ...plateLines(plates.lacking, platePieces(joints), units),
    ...runOutLines(solvedBolts(ramps, stock, units), units),
    ...stripLines({ units, stock }, ramps, plates.left),
    ...lipLines(ramps, units),
    {
      ...word('rubber'),
      what: `rubber strip, ${ownUnits(rubberThick, units)} thick, under the sides`,
      // a tenth for what is cut off
      count: Math.ceil((1.1 * feet) / (units === 'mm' ? 1000 : 12 * inch)),
      unit: units === 'mm' ? 'm' : 'ft',
      note: ramps.length > 1 ? 'the same under every ramp: no step' : 'helps to keep it from sliding',
    },
    {
      ...word('rubber'),
      priced: null,
      what: `tacks with wide heads, ${ownUnits('12 mm (1/2 in)', units)}`,
      count: 1,
      unit: 'box',
      note: 'hold the rubber strip',
    },
  ]
}

const finishLines = (
  { units }: Design,
  solved: WholeDesign,
  { panels, faces }: Bought,
): readonly ListLine[] => {
  // both faces of what is bought of plywood, cut edges within; at least of what is sawn, where some of it is there already
  const bought = panels
    .filter(({ sheet }) => sheet.material === 'plywood')
    .reduce((sum, { size, count }) => sum + 2 * count * size[0] * size[1], 0)
  const area = Math.max(bought, faces)
  const { ramps } = solved
  return [
    ...glueLines(solved, units),
    ...(area > 0 && ramps.length > 0
      ? [
          {
            part: 'finish' as const,
            what: 'paint or oil for outside',
            count: Math.max(1, Math.ceil(area / 1e6 / paintCovers[units].area)),
            unit: paintCovers[units].unit,
            note: 'cut edges first, two coats',
            priced: { kind: 'word' as const, word: 'paint' as const },
          },
          ...[
            ['filler for outside', 'tin', 'holes and gaps'] as const,
            ['sandpaper, grit 80 and 120', 'pack', 'edges and faces'] as const,
            // a flat is sawn by tape and square
            ...(curvedOf(ramps).length > 0
              ? [['adhesive tape', 'roll', 'joins the pages of the sides'] as const]
              : []),
          ].map(([what, unit, note]) => ({
            part: 'finish' as const,
            what,
            count: 1,
            unit,
            note,
            priced: null,
          })),
        ]
      : []),
  ]
}
