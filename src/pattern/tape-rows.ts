import { acrossName } from './across-strips.ts'
import { isOnTick, type StoryStrip, type StripMark, type StripRow } from './story-strip.ts'

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

/** A flat's sheets have marks along all of its length: a strip would be as long, so a tape does them however they lie. */
const isTaped = ({ straight, kind }: StoryStrip, row: StripRow): boolean =>
  straight && (kind === 'layer' || isEven(row))

/** A strip without the rows that a tape does; null where no other is left. */
export const untapedPart = (strip: StoryStrip): StoryStrip | null => {
  const [first, second] = strip.rows.filter((row) => row !== undefined && !isTaped(strip, row)) as StripRow[]
  if (!first) return null
  const rows: StoryStrip['rows'] = second ? [first, second] : [first]
  const left = rows.flatMap((row) => (row ? [row.edge.toLowerCase()] : []))
  return { ...strip, rows, ...(strip.kind === 'across' ? { what: acrossName(left) } : {}) }
}

/** The rows of a strip that a tape does. */
export const tapeRows = (strip: StoryStrip): readonly TapeRow[] =>
  strip.rows.flatMap((row): TapeRow[] => {
    if (!row || !isTaped(strip, row)) return []
    const named = strip.kind === 'across' ? row.edge.toLowerCase() : strip.what
    return [
      {
        what: [...(strip.ramps === '' ? [] : [strip.ramps]), named].join(', '),
        zero: strip.zero,
        ...tapeFigures(strip, row),
      },
    ]
  })

const isStud = ({ label }: StripMark): boolean => label?.startsWith('stud ') ?? false

/** The figures of a row as a tape is read; a stud's or a hole's stands alone, before any other stands what it is. */
const tapeFigures = (
  { kind, notes }: StoryStrip,
  row: StripRow,
): { readonly figures: readonly string[]; readonly words: string } => {
  // the last mark is the end
  const marks = row.marks.slice(0, -1)
  const shown = marks.filter(({ at }, i) => i === 0 || at - marks[i - 1]!.at > alike)
  const studs = marks.filter(isStud)
  const screwed = studs.filter((stud) => marks.some((mark) => isOnTick(mark, [stud])))
  const all = screwed.length === studs.length
  const figureOf = (mark: StripMark): string => {
    const { figure, label, aside } = mark
    if (figure === null) return label ?? ''
    if (isStud(mark)) return !all && screwed.includes(mark) ? `${figure} with screws` : figure
    return `${aside === undefined ? label : edgesOfSheets[aside]} ${figure}`
  }
  return {
    figures: shown.map(figureOf),
    words:
      kind === 'layer'
        ? `bare figures are middles of studs${all ? ', screws at each' : ''}`
        : [row.words, ...notes].join('; '),
  }
}

/** What stands before the figure of a sheet's edge at a seam. */
const edgesOfSheets = { ends: 'sheet ends', starts: 'next starts' } as const
