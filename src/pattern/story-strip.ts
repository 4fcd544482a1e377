import type { Units } from '../design/design.ts'
import { showLength } from '../length.ts'
import type { Stretch } from '../ramp/skin-framing.ts'

/** A long thin strip that carries marks at full size, every one from one zero; mm along it. */
export interface StoryStrip {
  readonly name: string
  /** what it is laid to, in the builder's words */
  readonly title: string
  readonly length: number
  /** where its zero is laid */
  readonly zero: string
  /** along the upper edge, and along the lower edge */
  readonly rows: readonly [StripRow, StripRow?]
  /** what a ring stands for; null where there is none */
  readonly rings: string | null
}

export interface StripRow {
  /** said once at the zero end */
  readonly words: string
  /** in order */
  readonly marks: readonly StripMark[]
}

export interface StripMark {
  readonly at: number
  /** a ring on a short tick is a screw or a drilled hole; a long tick is an edge or a middle */
  readonly sign: 'tick' | 'ring'
  /** null where a mark beside it says enough */
  readonly label: string | null
}

/** Screws that are no farther from a tick than this lie on it, mm. */
const onTick = 0.3

/** The two edges of each gap between sheets or pieces; the second is labelled. */
export const gapMarks = (
  pieces: readonly Stretch[],
  label: (index: number) => string,
): readonly StripMark[] =>
  pieces.slice(1).flatMap((piece, i): StripMark[] => [
    { at: pieces[i]!.from + pieces[i]!.length, sign: 'tick', label: null },
    { at: piece.from, sign: 'tick', label: label(i) },
  ])

export const endMark = (at: number, units: Units): StripMark => ({
  at,
  sign: 'tick',
  label: `end ${showLength(at, units, { decimals: 1 })}`,
})

/** In order; a ring that lies on a tick needs no words of its own. */
export const rowMarks = (marks: readonly StripMark[]): readonly StripMark[] => {
  const ticks = marks.filter(({ sign }) => sign === 'tick')
  return marks
    .map((mark) =>
      mark.sign === 'ring' && ticks.some(({ at }) => Math.abs(at - mark.at) <= onTick)
        ? { ...mark, label: null }
        : mark,
    )
    .sort((a, b) => a.at - b.at)
}
