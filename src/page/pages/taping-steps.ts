import type { Units } from '../../design/design.ts'
import { wordList } from '../../length/word-list.ts'
import { showLength } from '../../length.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import type { Cover } from '../cover/cover.ts'
import type { Datum } from '../proof/datum.ts'
import type { Tile } from '../tile/tile.ts'

export interface TapingFacts {
  readonly units: Units
  readonly cover: Cover
  readonly pattern: Pattern
  readonly tiles: readonly Tile[]
  readonly datums: readonly Datum[]
  readonly trial: boolean
  /** story strips lie at the end of the set */
  readonly strips: boolean
}

/** From the printer to the saw in six steps: the same on the map page and on the phone. */
export const tapingSteps = (facts: TapingFacts): readonly string[] => {
  const { units, cover, pattern, tiles, trial, strips } = facts
  const level = rowsLevel(tiles)
  const upper = tiles.some(({ joints }) => joints.some(({ over, edge }) => over && edge === 'top'))
  return [
    `Print at 100 %, never "fit to page", one-sided. Measure the test square before you trust any page.${trial ? ' Saw the lip trial in scrap first.' : ''}`,
    `The bottom edge${pattern.pieces > 1 ? ` of each of the ${pattern.pieces} pieces` : ''} comes first: a straight factory edge, or sawn straight where the panel layout lays it. On the pages it is the "panel's own edge". Strike the front edge square to it: that one is sawn with the curve.${pattern.pieces > 1 ? '' : ` The side takes ${showLength(pattern.length, units)} × ${showLength(pattern.height, units)} ${units}.`}`,
    placing(facts, level),
    `Trim each page on its left and ${upper ? 'upper' : 'lower'} joint lines. Start with page ${tiles[0]!.number} at the toe, go on by the numbers, each row on its snap line: crosses on crosses, half circles whole, zero ticks in line. Tick 3 is 0.3 mm off; what is more off is laid again. Use the paper the same day: damp paper grows.`,
    `${laying(cover, level, facts.datums.length > 0)}${pattern.pieces > 1 ? ' No panel holds the side whole: do so on each piece in turn, and trace it with its joint.' : ''} Check the distances: if one is off by more than its ±, lay the pages again from the toe; the wood is not sawn before. The cut is the middle of the thick black line: prick through it every 25 mm (1 in) and draw with a thin batten; prick the ringed crosses of screws. Dashed boxes are timbers on the inner face, X on their wood.`,
    `Saw on the grey side, marked WASTE, and smooth down to that middle. Trace the first side onto the others and drill its screw holes through them; turned over, it is the other end of the ramp.${strips ? ' The strips at the end of the set mark the skin.' : ''}`,
  ]
}

const rowsLevel = (tiles: readonly Tile[]): boolean =>
  tiles.every(({ snap: [a, b] }) => Math.abs(a.y - b.y) < 1e-6)

/** What is set out on panel or floor before the first page. */
const placing = ({ units, pattern, tiles, datums }: TapingFacts, level: boolean): string => {
  const rows = [...new Map(tiles.map(({ row, snap }) => [row, snap]))]
  const crosses =
    datums.length === 0 ? '' : ` Set out the crosses ${wordList(datums.map(({ letter }) => letter))} (table).`
  if (!level) {
    const [[, [from, to]], ...others] = rows as [(typeof rows)[number], ...typeof rows]
    const long = Math.hypot(to.x - from.x, to.y - from.y)
    const [ux, uy] = [(to.x - from.x) / long, (to.y - from.y) / long]
    // square to the rows
    const off = others.map(([row, [p]]) => {
      const up = (p.y - from.y) * ux - (p.x - from.x) * uy
      return `row ${row} ${showLength(Math.abs(up), units)} ${up > 0 ? 'above' : 'below'} it`
    })
    const more = off.length === 0 ? '' : `; the line of ${off.join(', of ')} ${units}, square to it`
    return `Snap a straight line for row ${rows[0]![0]} on a clean floor or board${more}.${crosses}`
  }
  const onPanel = rows.filter(([, [a]]) => a.y > 0 && a.y < pattern.height)
  const beyond = rows.filter((row) => !onPanel.includes(row)).map(([row]) => `row ${row}`)
  return [
    `Chalk the snap lines above the bottom edge: ${onPanel.map(([row, [a]]) => `${row} ${showLength(a.y, units)}`).join(', ')} ${units}.`,
    ...(beyond.length > 0 ? [` Beyond the panel is ${wordList(beyond)}: lay it by its joints.`] : []),
    crosses,
  ].join('')
}

const laying = (cover: Cover, level: boolean, crosses: boolean): string =>
  cover === 'whole'
    ? `Lay the taped sheet to the bottom edge and to the front edge as struck; blank paper may hang over.${decides(crosses, level)}`
    : crosses
      ? `Lay the taped sheet on the panel, each cross on its own.${decides(crosses, level)}`
      : 'Lay the taped sheet on the panel.'

/** Which wins where two marks of one panel disagree. */
const decides = (crosses: boolean, level: boolean): string =>
  crosses ? ` Where ${level ? 'chalk' : 'the snap line'} and cross disagree, the cross decides.` : ''
