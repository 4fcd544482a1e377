import type { Units } from '../../design/design.ts'
import { affineApply } from '../../geometry/affine.ts'
import { radiansOf } from '../../geometry/degrees.ts'
import { inch } from '../../geometry/inch.ts'
import { type Path, pathCorners, pathOf } from '../../geometry/path.ts'
import type { Point } from '../../geometry/point.ts'
import { pathSample } from '../../geometry/sample.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { screwRing } from '../../pattern/timber-marks.ts'
import type { Coverage } from '../cover/coverage.ts'
import { latticePitch } from '../cover/lattice.ts'

/**
 * How far a snap line may lie from the middle of its row, a share of its height: as a rule, where it would lie on a screw, and where it
 * would run along a line to be sawn. The marks of the joints move with it.
 */
const snapOff = { usual: 0.08, screwed: 0.24, most: 0.42 } as const

/** Chalk this close to the panel's edge is hard to snap, mm. */
const chalkRoom = 5

/** A line to be sawn that runs along the snap line, no steeper than this to it, keeps so far off, mm. */
const cutRoom = 10.5
/** Off the rings that a builder measures from, mm; and what one beside a snap line counts, as mm of cut line. */
const ring = { room: 8, cost: 30 }
/** Off screws and corners of timbers, mm; and what each counts among heights as a rule. */
const screw = { room: screwRing + 1.5, cost: 12 }
const corner = { room: 3, cost: 3 }
/**
 * Off the place where a line to be sawn crosses a joint line: three lines through one point tell nothing of any; and where it leaves a
 * page, beside the snap line's arrowhead, mm.
 */
const meet = { room: 9, cost: 13 }
const leave = { room: 7, cost: 2 }
/** Off the joint lines of its row with those below and above, mm: one that is trimmed away, or read as one with the cut, lays no page. */
const jointRoom = 8
/** A snap line so near above the bottom edge leaves no room between the two for what is read, mm; its cost. */
const bottomEdge = { room: 19, cost: 9 }

const steep = Math.tan(radiansOf(20))
const spacing = 4

/**
 * Height of a row's snap line in its windows: near the middle, off the lines to be sawn that run along it and off the panel's bottom
 * edge, and where rows are level a round distance above that, on the panel if it can.
 */
export const snapHeight = (
  { lattice, cells }: Coverage,
  { cut, points, screws, markPaths, length, height: panel }: Pattern,
  units: Units,
): ((row: number) => number) => {
  const bottom = pathOf({ x: 0, y: 0 }, { x: length, y: 0 })
  const level = lattice.toFrame[1] === 0
  const framed = (path: Path): readonly Point[] =>
    pathSample(path, spacing).map((p) => affineApply(lattice.toFrame, p))
  const sawn = framed(cut)
  const pieces = [...levelPieces(sawn), ...levelPieces(framed(bottom))]
  const off = (p: Point, { room, cost }: typeof ring) => {
    const { x, y } = affineApply(lattice.toFrame, p)
    return { x, y, room, cost }
  }
  const rings = points.map(({ at }) => off(at, ring))
  // where rows are turned every step moves the scales: off screws alone
  const marks = [
    ...screws.flatMap(({ middles }) => middles.map((p) => off(p, screw))),
    ...(level ? markPaths : []).flatMap((path) => pathCorners(path).map((p) => off(p, corner))),
  ]
  const middle = lattice.height / 2
  const step = level ? (units === 'in' ? inch / 2 : 10) : 4
  return (row) => {
    const pitch = latticePitch(lattice)
    const low = row * pitch.y
    const columns = cells.filter((cell) => cell.row === row).map(({ column }) => column)
    const [left, right] = [Math.min(...columns) * pitch.x, Math.max(...columns) * pitch.x + lattice.width]
    const most = snapOff.most * lattice.height + spacing
    const isNear = ({ x, y }: Point, room: number): boolean =>
      x > left && x < right && Math.abs(y - low - middle) < most + room
    const own = pieces.filter((piece) => isNear(piece, cutRoom))
    const ownRings = rings.filter(({ x }) => x > left && x < right)
    const joints = columns.slice(1).map((column) => column * pitch.x + lattice.overlap / 2)
    const ends = columns.flatMap((column) => [column * pitch.x, column * pitch.x + lattice.width])
    const ownMarks = [
      ...marks.filter((mark) => isNear(mark, mark.room)),
      ...crossedAt(sawn, joints, low + middle, most + meet.room).map((y) => ({ y, ...meet })),
      ...crossedAt(sawn, ends, low + middle, most + leave.room).map((y) => ({ y, ...leave })),
    ]
    // of the panel's bottom edge in the frame, where rows are level
    const base = level ? lattice.toFrame[5] : low + middle
    /**
     * mm of line beside a snap line at a height of the frame, on the pages of the row; less for what is steeper to it. Not summed on once
     * it is as much as `most`.
     */
    const beside = (y: number, most: number): number => {
      let sum = 0
      for (const one of ownRings) if (Math.abs(one.y - y) < ring.room) sum += ring.cost
      for (let i = 0; i < own.length && sum < most; i++)
        if (Math.abs(own[i]!.y - y) < cutRoom) sum += own[i]!.beside
      return sum
    }
    /** what else it would lie on or near, of heights with as little line beside them */
    const crowded = (y: number): number => {
      let sum = level && y > base && y - base < bottomEdge.room ? bottomEdge.cost : 0
      for (const mark of ownMarks) if (Math.abs(mark.y - y) < mark.room) sum += mark.cost
      return sum
    }
    const nearest = Math.round((low + middle - base) / step)
    const kept = lattice.height - lattice.overlap
    // as much as leaves the round height nearest to the middle
    const room = Math.min(jointRoom, (kept - step) / 2)
    const meets = (other: number): boolean =>
      cells.some((cell) => cell.row === other && columns.includes(cell.column))
    const [lowest, highest] = [
      meets(row - 1) ? low + lattice.overlap / 2 + room : Number.NEGATIVE_INFINITY,
      meets(row + 1) ? low + lattice.overlap / 2 + kept - room : Number.POSITIVE_INFINITY,
    ]
    const fits = (most: number, panelled: boolean): readonly number[] =>
      Array.from({ length: 2 * Math.ceil((most * lattice.height) / step) + 3 }, (_, i) =>
        i % 2 === 0 ? i / 2 : -(i + 1) / 2,
      )
        .map((k) => (nearest + k) * step)
        .filter(
          (height) =>
            Math.abs(base + height - low - middle) <= most * lattice.height &&
            base + height >= lowest &&
            base + height <= highest &&
            (!panelled || (height >= chalkRoom && height <= panel - chalkRoom)),
        )
    let found: number | undefined
    let least = Number.POSITIVE_INFINITY
    let fewest = Number.POSITIVE_INFINITY
    const tryAll = (heights: readonly number[]): void => {
      for (const height of heights) {
        const length = beside(base + height, least + spacing)
        if (length >= least + spacing) continue
        const marks = crowded(base + height)
        if (length >= least - spacing && marks >= fewest) continue
        least = Math.min(least, length)
        fewest = marks
        found = height
      }
    }
    tryAll(fits(snapOff.usual, level))
    if (fewest >= screw.cost) tryAll(fits(snapOff.screwed, level))
    if (least > spacing) tryAll(fits(snapOff.most, level))
    // beside the panel, where the row reaches far beyond it: its joints lay it
    if (least > spacing) tryAll(fits(snapOff.most, false))
    return base + found! - low
  }
}

/** How high a broken line crosses upright lines, of that what lies near to a height. */
const crossedAt = (
  points: readonly Point[],
  uprights: readonly number[],
  height: number,
  near: number,
): readonly number[] => {
  const [low, high] = [height - near, height + near]
  const found: number[] = []
  for (let i = 1; i < points.length; i++) {
    const p = points[i - 1]!
    const q = points[i]!
    if ((p.y < low && q.y < low) || (p.y > high && q.y > high)) continue
    for (const x of uprights)
      if (p.x < x !== q.x < x) found.push(p.y + ((x - p.x) / (q.x - p.x)) * (q.y - p.y))
  }
  return found
}

/** A short piece of a line that runs nearly level: its middle, and how much of it lies beside a level line. mm */
interface LevelPiece extends Point {
  readonly beside: number
}

const levelPieces = (points: readonly Point[]): readonly LevelPiece[] => {
  const pieces: LevelPiece[] = []
  for (let i = 1; i < points.length; i++) {
    const p = points[i - 1]!
    const q = points[i]!
    const along = Math.abs(q.x - p.x)
    const up = Math.abs(q.y - p.y)
    if (up < steep * along)
      pieces.push({ x: (p.x + q.x) / 2, y: (p.y + q.y) / 2, beside: along - up / steep })
  }
  return pieces
}
