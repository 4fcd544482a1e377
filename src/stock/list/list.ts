import type { Coping, Design, Sheet } from '../../design/design.ts'
import { straightOf } from '../../design/kind-traits.ts'
import { inch } from '../../geometry/inch.ts'
import { showLength } from '../../length.ts'
import { rounded } from '../../ramp/check/offer.ts'
import { pilotDrill } from '../../ramp/frame/screw-lengths.ts'
import type { Flat, WholeDesign } from '../../ramp/ramp.ts'
import type { Moving } from '../moving.ts'
import { type SectionPlan, sectionWords } from '../timber/boards.ts'
import { cutBoards } from '../timber/cutting.ts'
import type { ListLine } from './line.ts'
import { screwHead, screwSize } from './screw-sort.ts'
import { bySize, rampScrews } from './screws.ts'

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
}

export interface Bought {
  readonly panels: readonly BoughtPanels[]
  readonly timber: readonly SectionPlan[]
  readonly moving: readonly Moving[]
}

/** Screws in a box, and what is bought over what is needed: usual in the trade, no source. */
export const screwBoxes = { count: 100, spare: 1.1 } as const

/** m² that a tin's measure covers twice; 5 a litre is common practice, no source. A US liquid quart is 0.946352946 l (NIST Handbook 44). */
const paintCovers = {
  mm: { unit: 'litre', area: 5 },
  in: { unit: 'quart', area: 5 * 0.946352946 },
} as const

/** Everything to buy, in the order of a way through the shop. */
export const shoppingList = (design: Design, solved: WholeDesign, bought: Bought): readonly ListLine[] => [
  ...panelLines(design, bought),
  ...timberLines(design, bought),
  ...pipeLines(design, solved),
  ...screwLines(design, solved),
  ...fittingLines(design, solved, bought),
  ...finishLines(design, solved, bought),
  ...ownedLines(solved),
]

const panelLines = ({ units }: Design, { panels }: Bought): readonly ListLine[] =>
  panels.map(({ sheet, name, size, count }) => ({
    part: 'sheets',
    what: `${name}, ${showLength(size[0], units)} × ${rounded(size[1], units)}`,
    count,
    unit: 'panel',
    note: '',
    priced: { kind: 'sheet', sheet },
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
        note: ripped > 0 ? `${ripped} of the pieces ripped` : '',
        priced: { kind: 'timber', section: [Math.min(...section), Math.max(...section)], length },
      }
    }),
  )

/** Pipes of one sort are cut from common lengths. */
const pipeLines = ({ stock, units }: Design, { ramps }: WholeDesign): readonly ListLine[] => {
  const pipes = ramps.filter(({ pipe, design }) => pipe && design.coping)
  const sort = ({ outside, material }: Coping): string => `${outside} ${material}`
  return [...new Set(pipes.map(({ design }) => sort(design.coping!)))].flatMap((key) => {
    const own = pipes.filter(({ design }) => sort(design.coping!) === key)
    const lengths = own.flatMap(({ pipe }) =>
      pipe!.pieces.map(({ length }) => Math.round(length * 1e4) / 1e4),
    )
    const boards = [...new Set(stock.pipe)].map((length) => ({ length, cost: length }))
    const { patterns } = cutBoards({
      wanted: [...new Set(lengths)].map((length) => ({
        length,
        count: lengths.filter((one) => one === length).length,
      })),
      boards,
      kerf: stock.kerf,
      ends: 0,
    })
    const { outside, material } = own[0]!.design.coping!
    return boards.flatMap(({ length }, board): ListLine[] => {
      const count = patterns.filter((pattern) => pattern.board === board).length
      return count === 0
        ? []
        : [
            {
              part: 'pipe',
              what: `${showLength(outside, units, { decimals: 1 })} ${material} pipe, ${rounded(length, units)} long`,
              count,
              unit: 'length',
              note: 'measure its outside',
              priced: { kind: 'word', word: 'pipe' },
            },
          ]
    })
  })
}

const screwLines = (design: Design, { ramps }: WholeDesign): readonly ListLine[] =>
  bySize(ramps.flatMap((ramp) => rampScrews(ramp, design))).map(({ use, length, count, uses }): ListLine => {
    return {
      part: 'screws',
      what:
        length === null
          ? 'wood screws shorter than the usual ones'
          : `wood screws ${screwSize(use, length, design.units, (mm) => rounded(mm, design.units))}, ${screwHead(use)}`,
      count: Math.ceil((count * screwBoxes.spare) / screwBoxes.count),
      unit: `box of ${screwBoxes.count}`,
      note: `${count} needed: ${uses.join(', ')}`,
      priced: { kind: 'word', word: 'screws' },
    }
  })

const fittingLines = ({ units }: Design, { ramps }: WholeDesign, { moving }: Bought): readonly ListLine[] => {
  const rolling = moving.flatMap(({ rolling: own }) => (own ? [own] : []))
  const joined = ramps.filter(({ design }) => design.runOut?.kind === 'flat').length
  const flats: readonly Flat[] = straightOf(ramps)
  const meets = flats.length > 0 ? joined : 0
  const feet = ramps.reduce((sum, ramp) => sum + ramp.design.sides.count * (ramp.length ?? 0), 0)
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
        note: `rated for ${massWords(rated, units)} each or more`,
      }),
    ),
    ...(moving.length > 0
      ? [
          {
            ...word('handles'),
            what: 'handles, or rope through two holes',
            count: 2 * moving.length,
            unit: 'piece',
            note: 'one on each side',
          },
          {
            ...word('bolts'),
            what: 'bolts M6 (1/4 in) with washers and nuts',
            count: 8 * moving.length,
            unit: 'piece',
            note: 'four for each handle, through the side',
          },
        ]
      : []),
    ...(meets > 0
      ? [
          {
            ...word('bolts'),
            what: 'bolts M8 (5/16 in) with washers and nuts',
            count: 8 * meets,
            unit: 'piece',
            note: 'two plates of offcut over each joint of a flat and a quarter',
          },
        ]
      : []),
    {
      ...word('rubber'),
      what: 'rubber strip under the sides',
      count: Math.ceil(units === 'mm' ? feet / 1000 : feet / (12 * inch)),
      unit: units === 'mm' ? 'm' : 'ft',
      note: 'keeps ramps from sliding',
    },
    {
      ...word('rubber'),
      priced: null,
      what: 'tacks with wide heads, 12 mm (1/2 in)',
      count: 1,
      unit: 'box',
      note: 'hold the rubber strip',
    },
  ]
}

const finishLines = ({ units }: Design, { ramps }: WholeDesign, { panels }: Bought): readonly ListLine[] => {
  // both faces of what is bought of plywood, cut edges within
  const area = panels
    .filter(({ sheet }) => sheet.material === 'plywood')
    .reduce((sum, { size, count }) => sum + 2 * count * size[0] * size[1], 0)
  return [
    ...(panels.some(({ glued }) => glued)
      ? [
          {
            part: 'finish' as const,
            what: 'waterproof wood glue',
            count: 1,
            unit: 'bottle',
            note: 'for plates over joints of sides',
            priced: { kind: 'word' as const, word: 'glue' as const },
          },
        ]
      : []),
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
        ]
      : []),
  ]
}

/** Most have them; to be ticked all the same. */
const ownedLines = ({ ramps }: WholeDesign): readonly ListLine[] => {
  const piped = ramps.some(({ pipe }) => pipe !== null)
  const steel = ramps.some(
    ({ design }) => design.runOut?.kind === 'sheet' && design.runOut.sheet.material === 'steel',
  )
  const owned = (part: 'tools' | 'protection', what: string, note = '', count = 1): ListLine => ({
    part,
    what,
    count,
    unit: 'piece',
    note,
    priced: null,
  })
  return [
    owned('tools', 'steel rule and tape measure'),
    owned('tools', 'try square, pencil, straightedge'),
    owned('tools', 'circular saw', 'long straight cuts'),
    owned('tools', 'jigsaw', 'curve and notch'),
    owned('tools', `drill, wood bits, one of ${pilotDrill}, countersink, screwdriver bits`),
    ...(piped
      ? [
          owned('tools', 'metal bits 5 and 13 mm (3/16 and 1/2 in), centre punch', 'holes of the pipe'),
          owned('tools', 'hacksaw, round file', 'ends of the pipe'),
        ]
      : []),
    ...(steel
      ? [owned('tools', 'metal blade for the jigsaw', 'run-out sheet; or let the shop shear it')]
      : []),
    owned('tools', 'clamps', 'hold the work while it is sawn', 2),
    owned('tools', 'sanding block, file'),
    owned('protection', 'eye protection', 'for each who helps', 2),
    owned('protection', 'ear protection', 'for each who helps', 2),
    owned('protection', 'dust mask', 'for each who helps', 2),
    owned('protection', 'gloves', 'not at a turning tool', 2),
  ]
}

/** Whole kilograms, upward; pounds where the design is in inches. */
export const massWords = (kg: number, units: Design['units']): string =>
  units === 'mm' ? `${Math.ceil(kg)} kg` : `${Math.ceil(kg / 0.45359237)} lb`
