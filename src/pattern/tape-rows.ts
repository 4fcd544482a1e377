import { acrossName } from './across-strips.ts'
import type { StoryStrip, StripRow } from './story-strip.ts'

/** Marks that need no strip: what they are, where the tape is hooked, their distances from there as shown. */
export interface TapeRow {
  readonly what: string
  readonly zero: string
  readonly words: string
  readonly figures: readonly string[]
}

/** Gaps that differ by no more than this are alike, mm. */
const alike = 0.5

/** Straight rows of marks that lie evenly but for their ends: a tape does that. */
const isEven = ({ marks }: StripRow): boolean => {
  // the last mark is the end
  const at = marks.slice(0, -1).map((mark) => mark.at)
  const places = at.filter((one, i) => i === 0 || one - at[i - 1]! > alike)
  const gaps = places.slice(1).map((one, i) => one - places[i]!)
  const inner = gaps.slice(1, -1)
  return Math.max(0, ...inner) - Math.min(Number.POSITIVE_INFINITY, ...inner) <= alike
}

/** A strip without the rows that a tape does; null where no other is left. */
export const unevenPart = (strip: StoryStrip): StoryStrip | null => {
  if (!strip.straight) return strip
  const [first, second] = strip.rows.filter((row) => row !== undefined && !isEven(row)) as StripRow[]
  if (!first) return null
  const rows: StoryStrip['rows'] = second ? [first, second] : [first]
  const left = rows.flatMap((row) => (row ? [row.edge.toLowerCase()] : []))
  return { ...strip, rows, ...(strip.kind === 'across' ? { what: acrossName(left) } : {}) }
}

/** The rows of a strip that a tape does. */
export const tapeRows = (strip: StoryStrip): readonly TapeRow[] =>
  !strip.straight
    ? []
    : strip.rows.flatMap((row): TapeRow[] => {
        if (!row || !isEven(row)) return []
        const marks = row.marks
          .slice(0, -1)
          .filter(({ at }, i, all) => i === 0 || at - all[i - 1]!.at > alike)
        const named = strip.kind === 'across' ? row.edge.toLowerCase() : strip.what
        return [
          {
            what: [...(strip.ramps === '' ? [] : [strip.ramps]), named].join(', '),
            zero: strip.zero,
            words: [row.words, ...strip.notes].join('; '),
            figures: marks.map(({ figure, label }) => figure ?? label ?? ''),
          },
        ]
      })
