import { type Mark, stroke } from '../drawing/drawing.ts'
import { type Path, pathOf, polygonOf } from '../geometry/path.ts'
import { pointBetween, pointToward } from '../geometry/point.ts'
import { showLength, type Units } from '../length.ts'
import { pieceLetters, type Splice } from '../ramp/splice/splice.ts'
import type { PatternLabel } from './pattern.ts'
import { letters, pens } from './pens.ts'

/** The joint, to be sawn. */
export const spliceMarks = (splice: Splice): Mark => stroke('cut', jointPath(splice), pens.cut)

/** The plate that lies over it on the inside. */
export const plateMarks = (splice: Splice): Mark => stroke('mark', platePath(splice), pens.stud)

const jointPath = ({ top, foot }: Splice): Path => pathOf(top, foot)

const platePath = ({ plate }: Splice): Path => {
  const [first, ...others] = plate.corners
  return polygonOf(first!, ...others)
}

/** Where along a joint its pieces are named. */
const pieceShares = [
  ...[0.55, 0.45, 0.65, 0.3, 0.75, 0.2, 0.85, 0.37, 0.6, 0.25, 0.7, 0.15, 0.1, 0.9, 0.05, 0.95],
  // in the corner of a page
  ...Array.from({ length: 97 }, (_, k) => (k + 2) / 100),
]
/** How far off the joint its middle may stand, the usual distance first, mm. */
const pieceOffs = [30, 24, 18, 40, 14, 52, 66, 84, 104, 10, 7]

/** What its labels name, in their order. */
export const splicePaths = (splice: Splice): readonly Path[] => [
  jointPath(splice),
  jointPath(splice),
  platePath(splice),
]

/** The pieces on both sides of the joint, and the plate. */
export const spliceLabels = (splice: Splice, index: number, units: Units): readonly PatternLabel[] => {
  const { top, foot, plate } = splice
  const [along, depth] = plate.size
  const across = Math.atan2(top.x - foot.x, foot.y - top.y) + Math.PI
  /** so far from the joint: towards the back where that is positive */
  const off = (share: number, by: number) => pointToward(pointBetween(top, foot, share), across, by)
  const piece = (letter: string, side: -1 | 1): PatternLabel => ({
    of: 'piece',
    words: `PIECE ${letter}`,
    shorter: `PIECE ${letter}`,
    size: letters.word,
    places: pieceOffs.flatMap((mm) => pieceShares.map((share) => off(share, side * mm))),
    dots: [],
  })
  const show = (mm: number): string => showLength(mm, units)
  return [
    piece(pieceLetters[index]!, -1),
    piece(pieceLetters[index + 1]!, 1),
    {
      of: 'plate',
      words: `plate ${show(along)} × ${show(depth)}, inside`,
      shorter: 'plate, inside',
      size: letters.word,
      places: [0.85, 0.8, 0.9, 0.4].map((share) => off(share, along / 4)),
      dots: [0.3, 0.42, -0.3, -0.42].flatMap((by) =>
        [0.85, 0.9, 0.75, 0.65, 0.55, 0.45, 0.35].map((share) => off(share, by * along)),
      ),
    },
  ]
}
