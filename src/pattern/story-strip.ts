import type { Units } from '../design/design.ts'
import { showLength } from '../length.ts'
import type { Stretch } from '../ramp/frame/stretch.ts'

/** A long thin strip that carries marks at full size, every one from one zero; mm along it. */
export interface StoryStrip {
  readonly name: string
  readonly kind: StripKind
  /** of which ramps; empty where there is one alone */
  readonly ramps: string
  /** what it is laid to, as its pieces are called */
  readonly what: string
  /** which sheet that is; null where `what` says enough */
  readonly aside: string | null
  /** laid on what is straight, so that a tape may do as well */
  readonly straight: boolean
  readonly length: number
  /** where its zero is laid */
  readonly zero: string
  /** along the upper edge, and along the lower edge */
  readonly rows: readonly [StripRow, StripRow?]
  /** what a ring stands for; null where there is none */
  readonly rings: string | null
  /** what a ring on a long tick says; null where none lies on one */
  readonly onTicks: string | null
  /** whatever else its marks need said */
  readonly notes: readonly string[]
}

export type StripKind = 'layer' | 'across' | 'pipe'

export interface StripRow {
  /** the edge's own short name, printed along it */
  readonly edge: string
  /** what the edge is for */
  readonly words: string
  /** where its marks do not hold, as `at stud 15`, and at which of its places */
  readonly not?: readonly { readonly where: string; readonly places: readonly number[] }[]
  /** in order */
  readonly marks: readonly StripMark[]
}

export interface StripMark {
  readonly at: number
  /** a ring on a short tick is a screw or a drilled hole; a long tick is an edge or a middle */
  readonly sign: 'tick' | 'ring'
  /** null where a mark beside it says enough */
  readonly label: string | null
  /** said with the figure of a mark whose label is null or finds no room */
  readonly aside?: 'ends' | 'starts'
  /** its distance from zero, as shown; null where the label says it, or nothing is said */
  readonly figure: string | null
}

/** Screws that are no farther from a tick than this lie on it, mm. */
export const onTick = 0.3

/** A distance from zero, as it stands beside a mark. */
export const markFigure = (at: number, units: Units): string => showLength(at, units, { decimals: 1 })

/** The two edges of each gap between sheets, each called what it is; the second says where too. */
export const gapMarks = (
  pieces: readonly Stretch[],
  where: (index: number) => string,
  units: Units,
): readonly StripMark[] =>
  pieces.slice(1).flatMap((piece, i): StripMark[] => [
    { ...tickAt(pieces[i]!.from + pieces[i]!.length, null, units), aside: 'ends' },
    { ...tickAt(piece.from, `${where(i)}, starts`, units), aside: 'starts' },
  ])

export const tickAt = (at: number, label: string | null, units: Units): StripMark => ({
  at,
  sign: 'tick',
  label,
  figure: markFigure(at, units),
})

export const endMark = (at: number, units: Units): StripMark => ({
  at,
  sign: 'tick',
  label: `end ${markFigure(at, units)}`,
  figure: null,
})

/** In order; a ring that lies on a tick needs no words of its own. */
export const rowMarks = (marks: readonly StripMark[]): readonly StripMark[] => {
  const ticks = marks.filter(({ sign }) => sign === 'tick')
  return marks
    .map((mark) => (isOnTick(mark, ticks) ? { ...mark, label: null, figure: null } : mark))
    .sort((a, b) => a.at - b.at)
}

export const isOnTick = ({ sign, at }: StripMark, marks: readonly StripMark[]): boolean =>
  sign === 'ring' && marks.some((mark) => mark.sign === 'tick' && Math.abs(mark.at - at) <= onTick)
