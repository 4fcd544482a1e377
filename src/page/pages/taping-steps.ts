import type { Units } from '../../design/design.ts'
import { boxGrow, pointsBounds } from '../../geometry/bounds.ts'
import { convexContains } from '../../geometry/clip.ts'
import { pathSegments } from '../../geometry/path.ts'
import type { Point } from '../../geometry/point.ts'
import { capital } from '../../length/capital.ts'
import { wordList } from '../../length/word-list.ts'
import { showLength } from '../../length.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { pieceLetters } from '../../ramp/splice/splice.ts'
import type { Cover } from '../cover/cover.ts'
import type { Datum } from '../proof/datum.ts'
import { joinsNone, startWords } from '../tile/row-start.ts'
import { isRowTurned, type Tile } from '../tile/tile.ts'

export interface TapingFacts {
  readonly units: Units
  readonly cover: Cover
  readonly pattern: Pattern
  readonly tiles: readonly Tile[]
  readonly datums: readonly Datum[]
  readonly trial: boolean
  /** strips that mark the skin lie at the end of the set */
  readonly strips: boolean
}

/** From the printer to the saw in six steps: the same on the map page and on the phone. */
export const tapingSteps = (facts: TapingFacts): readonly string[] => {
  const { units, pattern, tiles, trial, strips } = facts
  const level = !tiles.some(isRowTurned)
  const toe = toeElsewhere(facts)
  const upper = tiles.some(({ joints }) => joints.some(({ over, edge }) => over && edge === 'top'))
  return [
    `Print at 100 %, never "fit to page", one-sided. Measure the test square before you trust any page.${trial ? ' Saw the lip trial in scrap first.' : ''}`,
    `The bottom edge${pattern.pieces > 1 ? ` of each of the ${pattern.pieces} pieces` : ''} comes first: a straight factory edge, or sawn straight where the panel layout lays it. On the pages it is the "panel's own edge". Strike the front edge square to it: that one is sawn with the curve.${pattern.pieces > 1 ? '' : ` The side takes ${showLength(pattern.length, units)} × ${showLength(pattern.height, units)} ${units}.`}`,
    placing(facts, level),
    `${taping(facts, upper ? 'upper' : 'lower')} Use the paper the same day: damp paper grows.`,
    `${laying(facts, level)}${striking(facts)}${pattern.pieces > 1 ? ` ${pieces(facts)}` : ''} Check the distances: if one is off by more than its ±, ${tiles.length > 1 ? `lay the pages again from ${toe === null ? 'the toe' : `page ${tiles[0]!.number}`}` : 'lay the page again'}; the wood is not sawn before. The cut is the middle of the thick black line: prick through it every 25 mm (1 in) and draw with a thin batten; prick the ringed crosses of screws. Dashed boxes are timbers on the inner face, X on their wood.`,
    `Saw on the grey side, marked WASTE, and smooth down to that middle. Trace the first side onto the others and drill its screw holes through them; turned over, it is the other end of the ramp.${strips ? ' The strips at the end of the set mark the skin.' : ''}`,
  ]
}

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
      return `row ${row} ${showLength(Math.abs(up), units)} ${units} ${up > 0 ? 'above' : 'below'}`
    })
    const more =
      off.length === 0
        ? ''
        : `, and parallel to it ${off.length === 1 ? 'that' : 'those'} of ${wordList(off)}`
    return `Snap a straight line for row ${rows[0]![0]} on a clean floor or board${more}.${crosses}`
  }
  const onPanel = rows.filter(([, [a]]) => a.y > 0 && a.y < pattern.height)
  const beyond = rows.filter((row) => !onPanel.includes(row)).map(([row]) => `row ${row}`)
  return [
    `Chalk the snap ${onPanel.length === 1 ? 'line' : 'lines'} above the bottom edge: ${onPanel.map(([row, [a]]) => `${row} ${showLength(a.y, units)}`).join(', ')} ${units}.`,
    ...(beyond.length > 0 ? [` Beyond the panel is ${wordList(beyond)}: lay it by its joints.`] : []),
    crosses,
  ].join('')
}

/** The page that holds the toe, where the first one does not show it. */
const toeElsewhere = ({ pattern, tiles }: Pick<TapingFacts, 'pattern' | 'tiles'>): Tile | null => {
  const toe = pattern.points.find(({ name }) => name === 'TOE')?.at
  if (!toe || convexContains(tiles[0]!.window, toe)) return null
  return tiles.find(({ cell }) => convexContains(cell, toe)) ?? null
}

/** How the pages are joined, and where those lie that join none before them. */
const taping = (facts: TapingFacts, level: 'upper' | 'lower'): string => {
  const { units, pattern, tiles } = facts
  const [first, ...others] = tiles as readonly [Tile, ...Tile[]]
  if (others.length === 0) return `One page, nothing to trim: lay page ${first.number} by its snap line.`
  const toe = toeElsewhere(facts)
  const start = `Start with page ${first.number}${toe === null ? ' at the toe' : ` in row ${first.row} (the toe is on page ${toe.number})`}`
  const joined = tiles.some(({ joints }) => joints.length > 0)
    ? `Trim each page on its left and ${level} joint lines. ${start}, go on by the numbers, each row on its snap line: crosses on crosses, half circles whole, on each scale 0 to 0. If instead its third ticks from 0 meet, the pages lie 0.3 mm off; more is laid again.`
    : `${start}, go on by the numbers, each page on its snap line.`
  const alone = others.filter(joinsNone)
  const lies = alone.map((tile) => startWords(tile, first, units))
  return [
    joined,
    ...(lies.length === 1
      ? [
          `Page ${alone[0]!.number} joins no page before it: set it on its snap line, its left arrowhead ${lies[0]}.`,
        ]
      : lies.length > 1
        ? [
            `${capital(wordList(alone.map(({ number }) => `page ${number}`)))} join no page before them: set each on its snap line, the left arrowheads so: ${alone.map(({ number }, i) => `page ${number}'s ${lies[i]}`).join(', ')}.`,
          ]
        : []),
    ...(hasHoles(pattern, tiles)
      ? ['Where nothing is traced no page is printed: such places stay open.']
      : []),
  ].join(' ')
}

/** Whether a place in the side between pages has none. */
const hasHoles = ({ length, height }: Pattern, tiles: readonly Tile[]): boolean => {
  const windows = tiles.map(({ window }) => ({ window, box: boxGrow(pointsBounds(window), 1e-6) }))
  const on = (x: number, y: number): boolean => {
    for (const { window, box } of windows)
      if (x > box.x0 && x < box.x1 && y > box.y0 && y < box.y1 && convexContains(window, { x, y }))
        return true
    return false
  }
  const step = 60
  for (let y = step / 2; y < height; y += step) {
    const row = Array.from({ length: Math.ceil(length / step) }, (_, i) => on((i + 0.5) * step, y))
    const [from, to] = [row.indexOf(true), row.lastIndexOf(true)]
    if (from >= 0 && row.slice(from, to).includes(false)) return true
  }
  return false
}

/** What is done on the pieces of a side that no panel holds whole, and with a joint that no page carries from end to end. */
const pieces = ({ units, pattern: { joints, height }, tiles }: TapingFacts): string => {
  const on = (p: Point): boolean => tiles.some(({ cell }) => convexContains(cell, p))
  const unseen = joints.filter((joint) => !joint.every(on))
  const later = laterPieces(joints, units)
  if (unseen.length === 0)
    return `No panel holds the side whole: do so on each piece in turn, trace it with its joint, and saw outside that line on both. ${later}`
  const show = ({ x }: Point): string => showLength(x, units)
  const end = ({ y }: Point): string => (y > height - 0.5 ? 'top line' : 'curve')
  const struck = unseen.map(([top, foot]) =>
    show(foot) === show(top)
      ? `${show(foot)} ${units} at the bottom edge and at the ${end(top)}`
      : `${show(foot)} at the bottom edge to ${show(top)} ${units} at the ${end(top)}`,
  )
  return `No panel holds the side whole: do so on each piece that pages reach. No page carries ${unseen.length > 1 ? 'these joints' : 'its joint'} whole; strike ${unseen.length > 1 ? 'them' : 'it'}, back from the front edge ${wordList(struck)}, and saw outside the line of each piece. ${later}`
}

/** How a tape lies on the pieces behind the first, which alone has the front edge that all is told from. */
const laterPieces = (joints: Pattern['joints'], units: Units): string => {
  const names = joints.map((_, i) => pieceLetters[i + 1]!)
  const reads = joints.map(
    ([, { x }], i) => `${showLength(x, units)} ${units}${names.length > 1 ? ` on ${names[i]}` : ''}`,
  )
  return `Piece ${pieceLetters[0]} alone has the front edge. On the bottom edge of ${wordList(names)}, as the panel layout lays ${names.length > 1 ? 'them' : 'it'}, mark where the joint towards the toe begins, and hold the tape so that it reads there ${wordList(reads)}: it then shows what is told from the front edge.`
}

/** The straight edges of which a set carries no more than a bit. */
const striking = ({ units, cover, pattern }: TapingFacts): string => {
  if (cover === 'whole') return ''
  const show = (mm: number): string => `${showLength(mm, units)} ${units}`
  const corner = pattern.edges.some(
    ({ traced, path }) =>
      !traced &&
      pathSegments(path).some(({ from, to }) => Math.abs(to.x - from.x) > 1 && Math.abs(to.y - from.y) > 1),
  )
  return ` Strike what no page carries with a straight edge: the top line ${show(pattern.height)} above the bottom edge, the back edge ${show(pattern.length)} behind the front edge${corner ? ', the 45° corner' : ''}.`
}

const laying = ({ cover, tiles, datums }: TapingFacts, level: boolean): string => {
  const crosses = datums.length > 0
  const sheet = tiles.length > 1 ? 'taped sheet' : 'page'
  if (cover === 'whole')
    return `Lay the ${sheet} to the bottom edge and to the front edge as struck; blank paper may hang over.${decides(crosses, level)}`
  return crosses
    ? `Lay the ${sheet} on the panel, each cross on its own.${decides(crosses, level)}`
    : `Lay the ${sheet} on the panel.`
}

/** Which wins where two marks of one panel disagree. */
const decides = (crosses: boolean, level: boolean): string =>
  crosses ? ` Where ${level ? 'chalk' : 'the snap line'} and cross disagree, the cross decides.` : ''
