import { arrowHead } from '../drawing/arrow.ts'
import { cross } from '../drawing/cross.ts'
import { type Drawing, stroke, text } from '../drawing/drawing.ts'
import { type TextMark, textCorners } from '../drawing/text-box.ts'
import { affineIdentity } from '../geometry/affine.ts'
import { type Box, pointsBounds } from '../geometry/bounds.ts'
import { pathOf } from '../geometry/path.ts'
import { type Point, pointAngle, pointBetween, pointDistance, pointToward } from '../geometry/point.ts'
import { letters, pens } from '../pattern/pens.ts'
import { type Occupancy, takenIn } from './occupancy.ts'
import { pairMarks } from './pair-mark.ts'
import { type Joint, type Tile, tilePoint } from './tile.ts'
import { vernierMarks } from './vernier.ts'

/** Half the size of a cross on a joint line, mm; less where the overlap is narrow, so that no arm leaves the window. */
const arm = 5

/** Where along a joint its words may stand, the usual place first: clear of its crosses, and of the snap line in the middle. */
const wordShares = [0.28, 0.72, 0.34, 0.66, 0.24, 0.76, 0.38, 0.62]

/**
 * Joint lines, crosses half on each page, and what to do at each edge; in the window as the drawing is read. The words stand
 * off `cut`, the cut line, and off `shown`, all that the page shows of the pattern, as far as there is room.
 */
export const jointMarks = (tile: Tile, cut: Occupancy, shown: Occupancy): Drawing =>
  tile.joints.flatMap((joint) =>
    oneJoint(tile, joint, (box) => 100 * takenIn(cut, box) + takenIn(shown, box)),
  )

const oneJoint = (tile: Tile, joint: Joint, covers: (box: Box) => number): Drawing => {
  const [a, b] = [tilePoint(tile, joint.line[0]), tilePoint(tile, joint.line[1])]
  const along = pointAngle(a, b)
  // the trimmed or covered strip is read with the page; upright edges read from the right
  const upright = joint.edge === 'left' || joint.edge === 'right'
  const outward = { left: Math.PI, right: 0, bottom: -Math.PI / 2, top: Math.PI / 2 }[joint.edge]
  const inward = outward + Math.PI
  const angle = upright ? Math.PI / 2 : 0
  const { name, number } = joint.neighbour
  const words = joint.over
    ? `over page ${number} · ${name}: trim on the line`
    : `goes under page ${number} · ${name}`
  const placed = wordShares.map((share): TextMark => {
    const strip = pointToward(pointBetween(a, b, share), outward, tile.half / 2)
    const baseline: Point = pointToward(strip, angle - Math.PI / 2, letters.small / 2)
    return text('joint', baseline, letters.small, words, { angle, align: 'middle' }) as TextMark
  })
  const faults = placed.map((mark) => covers(pointsBounds(textCorners(mark, affineIdentity))))
  return [
    stroke('joint', pathOf(a, b), pens.joint),
    ...joint.crosses.flatMap((p) =>
      cross('joint', tilePoint(tile, p), Math.min(arm, tile.half), pens.cross, along),
    ),
    ...joint.verniers.flatMap((p) => vernierMarks(tilePoint(tile, p), along, inward, joint.over)),
    ...pairMarks(tilePoint(tile, joint.pair), inward, joint.number, angle),
    ...(pointDistance(a, b) > 60 ? [placed[faults.indexOf(Math.min(...faults))]!] : []),
  ]
}

/** The row's snap line right across the page, with an arrowhead at both of its edges. */
export const snapMarks = (tile: Tile): Drawing => {
  const [a, b] = [tilePoint(tile, tile.snap[0]), tilePoint(tile, tile.snap[1])]
  return [
    stroke('joint', pathOf(a, b), pens.snap),
    ...arrowHead('joint', a, pointAngle(b, a), 3.5),
    ...arrowHead('joint', b, pointAngle(a, b), 3.5),
  ]
}
