import { type AskedFigure, type FoundBy, foundBy, openIn, turnsLip } from './check/open-figures.ts'
import type { EntryMap } from './file/entry.ts'
import { saidAngles, saidCount, saidLength, saidMap, says, wordFor } from './file/said.ts'
import type { Place } from './problem.ts'
import type { Report } from './report.ts'
import { solveWord } from './schema.ts'

/** What a ramp leaves to the program, and what it is to be found by. */
export interface Asks {
  readonly figure: AskedFigure
  /** its key from the ramp: `height.deck` */
  readonly key: string
  /** degrees; null where the limits alone decide */
  readonly lip: number | null
  readonly limits: Limits
  /** those of them that the ramp says itself */
  readonly own: readonly FoundBy[]
  /** the ramp that it is `like`, where `solve` is taken over from there */
  readonly from: string | null
}

/** What may not be passed; null for what is not limited. */
export interface Limits {
  /** that the sides are sawn from */
  readonly panels: number | null
  /** mm */
  readonly length: number | null
  /** degrees */
  readonly lip: readonly [least: number, most: number] | null
  /** pages to tape */
  readonly paper: number | null
}

/** What a complete quarter leaves open, or null; what cannot be found is reported. `own` is what it says itself, without `like`. */
export const asksOf = (map: EntryMap, own: EntryMap, path: string, report: Report): Asks | null => {
  const open = openIn(map)
  const lip = says(map, 'lip') ? saidAngles(map, 'lip')[0]! : null
  const limits = limitsOf(says(map, 'limits') ? saidMap(map, 'limits') : null)
  const limited = Object.values(limits).some((limit) => limit !== null)
  const fail = (key: string, place: Place, message: string): null => {
    report('solve', `${path}.${key}`, place, message)
    return null
  }
  const [first, second] = open
  if (first === undefined) {
    if (lip !== null)
      return fail(
        'lip',
        map.entries.get('lip')!.place,
        '`lip` follows from height, radius and tangent; leave one of them to the program, e.g. `height: { deck: solve }`, or leave `lip` out',
      )
    if (says(map, 'limits'))
      return fail(
        'limits',
        map.entries.get('limits')!.place,
        '`limits` say how far a figure that is left to the program may go; leave one to it, e.g. `deck: solve`',
      )
    return null
  }
  if (second !== undefined) {
    const said = openIn(own).map(({ key }) => key)
    // told of the ramp that says both
    if (said.length === 0 && own.entries.has('like')) return null
    const named = ({ key }: typeof first): string =>
      said.includes(key) ? `\`${key}\`` : `\`${key}\` (taken over by \`like\`)`
    const at = said.includes(second.key) ? second : first
    return fail(
      at.key,
      at.place,
      `${named(first)} and ${named(second)} are both left to the program; it finds one: give a length for the other`,
    )
  }
  if (lip !== null && !turnsLip.includes(first.figure))
    return fail(
      first.key,
      first.place,
      `the lip's angle does not depend on \`${first.key}\`; leave height, radius or tangent to the program, or ${first.figure === 'width' ? 'leave `lip` out' : 'give `limits` in place of `lip`'}`,
    )
  // what the timber sold reaches is the most of a width
  if (lip === null && !limited && first.figure !== 'width')
    return fail(
      first.key,
      first.place,
      `nothing says what \`${first.key}\` is found by; add ${turnsLip.includes(first.figure) ? '`lip: 48°` or ' : ''}\`limits: { length: … }\` to this ramp`,
    )
  const like = own.entries.get('like')
  return {
    figure: first.figure,
    key: first.key,
    lip,
    limits,
    own: foundBy.filter((key) => own.entries.has(key)),
    from: like?.kind === 'text' && openIn(own).length === 0 ? like.text : null,
  }
}

const limitsOf = (map: EntryMap | null): Limits => {
  const has = (key: string): boolean => map !== null && says(map, key)
  return {
    panels: has('panels') ? saidCount(map!, 'panels') : null,
    length: has('length') ? saidLength(map!, 'length') : null,
    lip: has('lip') ? (saidAngles(map!, 'lip') as readonly [number, number]) : null,
    paper: has('paper') ? saidCount(map!, 'paper') : null,
  }
}

/** What stands for a figure while it is not found: the middle of what is usual, mm. */
export const stand: Readonly<Record<AskedFigure, number>> = {
  height: 600,
  radius: 1700,
  tangent: 0,
  toe: 40,
  back: 500,
  width: 1200,
}
export const standsFor = (map: EntryMap, key: string, figure: AskedFigure): number =>
  wordFor(map, key) === solveWord ? stand[figure] : saidLength(map, key)
