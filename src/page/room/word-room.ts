import type { Drawing } from '../../drawing/drawing.ts'
import { type TextMark, textCorners } from '../../drawing/text-box.ts'
import { type Affine, affineApply, affineIdentity, affineThen } from '../../geometry/affine.ts'
import { type Path, pathSegments } from '../../geometry/path.ts'
import { type Point, pointMoved, unitVector } from '../../geometry/point.ts'
import { clearUnder, type Occupancy, occupancyOf, occupyUnder, takenUnder } from './occupancy.ts'
import { occupyPath } from './occupy-path.ts'

/**
 * What lies on a page, for what is set there. `never`: what aligns, and words; `cut`: the line to be sawn and its ticks;
 * `rather`: other strokes, kept off as far as there is room; `said`: words alone; `ruler`; `band`: the grey on the waste side;
 * `timber`: between the edges of a timber.
 */
export const on = { never: 1, cut: 2, rather: 4, said: 8, ruler: 16, band: 32, timber: 64 } as const

/** All that is drawn. */
export const anything = 63

/** Squares small enough to tell a letter from a line beside it; half a pen and a little air round what is drawn, mm. */
const fine = 0.8
const air = 0.2

/** What words keep off on a page, in the window as the drawing is read. */
export const wordRoom = (width: number, height: number): Occupancy => occupancyOf(width, height, fine)

export const keepOffPath = (map: Occupancy, path: Path, frame: Affine, kind: number): void =>
  occupyPath(map, path, frame, air, kind)

/** Strokes, words and boxes of a drawing, and so much `around` them, mm. */
export const keepOff = (
  map: Occupancy,
  drawing: Drawing,
  kind: number,
  frame: Affine = affineIdentity,
  around = air,
): void => {
  for (const mark of drawing)
    if (mark.kind === 'text') occupyUnder(map, textCorners(mark, frame), around, kind | on.said)
    else if (mark.kind === 'stroke') occupyPath(map, mark.path, frame, around, kind)
    else if (mark.kind === 'fill')
      occupyUnder(
        map,
        pathSegments(mark.path).map((segment) => affineApply(frame, segment.from)),
        around,
        kind,
      )
    else keepOff(map, mark.marks, kind, affineThen(mark.map, frame), around)
}

/** How much of a word's box lies on one of the kinds; 0 where it is clear. */
export const wordCovers = (map: Occupancy, word: TextMark, kinds: number): number =>
  takenUnder(map, textCorners(word, affineIdentity), kinds)

/** Whether it, and so much `around` it, lies on none of them: quicker asked than how much. mm */
export const wordClear = (map: Occupancy, word: TextMark, kinds: number, around = 0): boolean =>
  clearUnder(map, around === 0 ? textCorners(word, affineIdentity) : grownWord(word, around), kinds)

/** Corners of a word's box with so much around it, mm. */
export const grownWord = (word: TextMark, by: number): readonly Point[] => {
  const along = unitVector(word.angle)
  const up = unitVector(word.angle + Math.PI / 2)
  return textCorners(word, affineIdentity).map((p, i) =>
    pointMoved(p, along, i === 1 || i === 2 ? by : -by, up, i > 1 ? by : -by),
  )
}
