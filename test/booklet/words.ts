import type { Drawing } from '../../src/drawing/drawing.ts'
import { type TextMark, textCorners } from '../../src/drawing/text-box.ts'
import { type Affine, affineIdentity, affineThen } from '../../src/geometry/affine.ts'
import { type Box, pointsBounds } from '../../src/geometry/bounds.ts'

export interface Word {
  readonly text: string
  /** all of it, letters below the line included */
  readonly box: Box
  /** the size of its capitals, which none may cover */
  readonly tall: number
}

/** The words of a drawing with the boxes that they take. */
export const wordsOf = (drawing: Drawing, map: Affine = affineIdentity): readonly Word[] =>
  drawing.flatMap((mark): readonly Word[] => {
    if (mark.kind === 'group') return wordsOf(mark.marks, affineThen(mark.map, map))
    if (mark.kind !== 'text') return []
    const text: TextMark = mark
    return [
      {
        text: text.text,
        box: pointsBounds(textCorners(text, map)),
        tall: text.size * Math.hypot(map[0], map[1]),
      },
    ]
  })

/** Pairs of words of which one covers the capitals of the other. */
export const overlaps = (words: readonly Word[]): readonly string[] => {
  const hair = 0.3
  const capitals = words.map(({ text, box, tall }) => ({ ...box, text, y0: box.y1 - tall }))
  return capitals.flatMap((p, i) =>
    capitals
      .slice(i + 1)
      .filter((q) => p.x0 < q.x1 - hair && q.x0 < p.x1 - hair && p.y0 < q.y1 - hair && q.y0 < p.y1 - hair)
      .map((q) => `“${p.text}” and “${q.text}”`),
  )
}
