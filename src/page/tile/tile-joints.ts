import { arrowHead } from '../../drawing/arrow.ts'
import { cross } from '../../drawing/cross.ts'
import { type Drawing, type Mark, shared, stroke, text } from '../../drawing/drawing.ts'
import { cornersAt, type TextMark } from '../../drawing/text-box.ts'
import { affineRotate, affineThen, affineTranslate } from '../../geometry/affine.ts'
import { type Convex, pathOutside } from '../../geometry/clip.ts'
import { type Path, pathOf } from '../../geometry/path.ts'
import {
  type Point,
  pointAngle,
  pointBetween,
  pointCross,
  pointDistance,
  pointMoved,
  pointSubtract,
  pointToward,
  unitVector,
} from '../../geometry/point.ts'
import { letters, pens } from '../../pattern/pens.ts'
import { screwRing } from '../../pattern/timber-marks.ts'
import { type Occupancy, takenUnder } from '../room/occupancy.ts'
import { on } from '../room/word-room.ts'
import { pairMarks, pairRadius } from './pair-mark.ts'
import { type Joint, type Tile, tilePoint } from './tile.ts'
import { vernierCorners, vernierMarks, vernierShapes } from './vernier.ts'

/** Half the size of a cross on a joint line, mm; less where the overlap is narrow, so that no arm leaves the window. */
export const crossArm = 5

/** Where along a joint its words may stand, the usual place first: clear of its crosses, and of the snap line in the middle. */
const wordShares = [
  0.28, 0.72, 0.34, 0.66, 0.24, 0.76, 0.38, 0.62, 0.31, 0.69, 0.21, 0.79, 0.42, 0.58, 0.5, 0.18, 0.82,
]

/** Joints as long as this have words, mm. */
const wordsFrom = 60

/** Round the ring of a screw where a joint line breaks off on the page that draws it: a screw is where it is. mm */
const screwAir = 0.6

/** A joint line in the window, broken off at the screws drawn there. */
const brokenLine = (tile: Tile, a: Point, b: Point, screws: readonly Point[]): readonly Path[] =>
  screws
    .map((p) => tilePoint(tile, p))
    .filter((p) => lineDistance(a, b, p) < screwRing + screwAir)
    .reduce<readonly Path[]>(
      (parts, p) => parts.flatMap((part) => pathOutside(part, around(p, screwRing + screwAir))),
      [pathOf(a, b)],
    )

const lineDistance = (a: Point, b: Point, p: Point): number =>
  Math.abs(pointCross(pointSubtract(b, a), pointSubtract(p, a))) / pointDistance(a, b)

/** Joint lines, crosses half on each page, scales and pair marks; in the window as the drawing is read. */
export const jointMarks = (tile: Tile, screws: readonly Point[]): Drawing => {
  const marks: Mark[] = []
  for (const joint of tile.joints) {
    const { a, b, along, inward, angle } = jointLines(tile, joint)
    for (const path of brokenLine(tile, a, b, screws)) marks.push(stroke('joint', path, pens.joint))
    const reach = Math.min(crossArm, tile.half)
    for (const p of joint.crosses) marks.push(...cross('joint', tilePoint(tile, p), reach, pens.cross, along))
    for (const p of joint.verniers) marks.push(...vernierMarks(tilePoint(tile, p), along, inward, joint.over))
    const pages = [tile.number, joint.neighbour] as const
    marks.push(...pairMarks(tilePoint(tile, joint.pair), inward, pages, angle))
  }
  return marks
}

/** Corners of what crosses, scales and pair marks take, between their strokes too. */
export const jointBlocks = (tile: Tile): readonly (readonly Point[])[] =>
  tile.joints.flatMap((joint) => {
    const { along, inward } = jointLines(tile, joint)
    const crossed = ring(8, along)
    return [
      ...joint.crosses.map((p) => ringed(tilePoint(tile, p), Math.min(crossArm, tile.half), crossed)),
      ...joint.verniers.map((p) => vernierCorners(tilePoint(tile, p), along, inward)),
      ringed(tilePoint(tile, joint.pair), pairRadius([tile.number, joint.neighbour]), ring(16, along)),
    ]
  })

/** Round marks of joints where quiet lines break off, mm. */
const zoneAir = 0.6

const scaleZones = { over: vernierShapes(true, zoneAir), under: vernierShapes(false, zoneAir) }

/** The room of crosses and scales, which no quiet line runs through; it comes near them between the figures of a scale. */
export const jointZones = (tile: Tile): readonly Convex[] =>
  tile.joints.flatMap((joint) => {
    const { along, inward } = jointLines(tile, joint)
    // turned once, not for each corner
    const across = unitVector(along)
    const up = unitVector(inward)
    const shape = (p: Point, corners: readonly (readonly [number, number])[]): Convex => {
      const placed = corners.map(([i, k]) => pointMoved(p, across, i, up, k))
      // counter-clockwise whichever way inward lies
      return Math.sin(inward - along) > 0 ? placed : placed.toReversed()
    }
    const reach = Math.min(crossArm, tile.half) + zoneAir
    const cross = [
      [-reach, -reach],
      [reach, -reach],
      [reach, reach],
      [-reach, reach],
    ] as const
    const scale = joint.over ? scaleZones.over : scaleZones.under
    return [
      ...joint.crosses.map((p) => shape(tilePoint(tile, p), cross)),
      ...joint.verniers.flatMap((p) => scale.map((corners) => shape(tilePoint(tile, p), corners))),
    ]
  })

/** The room of pair marks, where no quiet line runs through either. */
export const signZones = (tile: Tile): readonly Convex[] =>
  tile.joints.map(({ pair, neighbour }) =>
    around(tilePoint(tile, pair), pairRadius([tile.number, neighbour]) + zoneAir),
  )

/** Where the grey band breaks off besides, which may lie under a scale. */
export const bandZones = (tile: Tile): readonly Convex[] => [
  ...tile.snap.map((p) => around(tilePoint(tile, p), snapArrow + zoneAir)),
  ...tile.joints.flatMap(({ crosses }) =>
    crosses.map((p) => around(tilePoint(tile, p), Math.min(crossArm, tile.half) + zoneAir)),
  ),
]

/** Round a point, counter-clockwise. */
const around = (p: Point, radius: number): Convex => ringed(p, radius, round)

const ringed = (p: Point, radius: number, directions: readonly Point[]): Convex => {
  const corners: Point[] = []
  for (const { x, y } of directions) corners.push({ x: p.x + radius * x, y: p.y + radius * y })
  return corners
}

/** Corners of a regular polygon about 0,0, from a direction on. */
const ring = (corners: number, from: number): readonly Point[] =>
  Array.from({ length: corners }, (_, i) => unitVector(from + (i * 2 * Math.PI) / corners))

const round = ring(16, 0)

/** What to do at each edge, off what words never lie on and the cut line, and off the rest as far as there is room. */
export const jointWords = (tile: Tile, room: Occupancy): readonly TextMark[] =>
  tile.joints.flatMap((joint) => {
    const { a, b, inward, angle } = jointLines(tile, joint)
    if (pointDistance(a, b) <= wordsFrom) return []
    // the fewer words only where the others have no room
    const tries = joint.over
      ? [`over page ${joint.neighbour}: trim on the line`, `over page ${joint.neighbour}: trim`]
      : [`goes under page ${joint.neighbour}`, `under page ${joint.neighbour}`]
    let best: { readonly mark: TextMark; readonly faults: number } | undefined
    for (const words of tries) {
      const set = (at: Point): TextMark => text('joint', at, letters.small, words, { angle, align: 'middle' })
      const cornersOf = cornersAt(set(a))
      for (const share of wordShares) {
        const strip = pointToward(pointBetween(a, b, share), inward, -tile.half / 2)
        const baseline = pointToward(strip, angle - Math.PI / 2, letters.small / 2)
        const corners = cornersOf(baseline)
        const hidden = 1e4 * takenUnder(room, corners, on.never | on.cut) + (words === tries[0] ? 0 : 1e3)
        if (best && hidden >= best.faults) continue
        const faults = hidden + takenUnder(room, corners, on.rather)
        if (faults === 0) return [set(baseline)]
        if (!best || faults < best.faults) best = { mark: set(baseline), faults }
      }
    }
    return [best!.mark]
  })

const jointLines = (tile: Tile, { line, edge }: Joint) => {
  const [a, b] = [tilePoint(tile, line[0]), tilePoint(tile, line[1])]
  const outward = { left: Math.PI, right: 0, bottom: -Math.PI / 2, top: Math.PI / 2 }[edge]
  return {
    a,
    b,
    along: pointAngle(a, b),
    inward: outward + Math.PI,
    // the trimmed or covered strip is read with the page; upright edges read from the right
    angle: edge === 'left' || edge === 'right' ? Math.PI / 2 : 0,
  }
}

/** How long the arrowheads of a snap line are, mm. */
const snapArrow = 3.5

const snapHead = arrowHead('joint', { x: 0, y: 0 }, 0, snapArrow)

/** Its head at one end of a line that comes from the other. */
const headAt = (p: Point, from: Point): Mark =>
  shared(affineThen(affineRotate(pointAngle(from, p)), affineTranslate(p.x, p.y)), 'joint', snapHead)

/** The row's snap line right across the page, with an arrowhead at both of its edges. */
export const snapMarks = (tile: Tile): Drawing => {
  const [a, b] = [tilePoint(tile, tile.snap[0]), tilePoint(tile, tile.snap[1])]
  return [stroke('joint', pathOf(a, b), pens.snap), headAt(a, b), headAt(b, a)]
}
