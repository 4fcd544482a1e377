import {
  type Affine,
  affineApply,
  affineRotate,
  affineScale,
  affineThen,
  affineTranslate,
} from '../../../geometry/affine.ts'
import { pointsBounds } from '../../../geometry/bounds.ts'
import { radiansOf } from '../../../geometry/degrees.ts'
import type { Path } from '../../../geometry/path.ts'
import type { Point } from '../../../geometry/point.ts'
import { grownPolygon } from '../../../geometry/polygon/grown-polygon.ts'
import { outerPolygon } from '../../../geometry/polygon/outer-polygon.ts'
import { once } from '../../once.ts'
import { boxProfile, columnsOf, type Profile } from './profile.ts'
import { keptRises, type RiseBeside } from './rises.ts'

/** How far the polygon that is placed for a piece may stray out of it, mm: finer ones cost time and spare no wood. */
const fineStray = 0.25

/** A piece as it may lie on a panel: turned, perhaps turned over, its box in the corner at zero. */
export interface Shape {
  /** degrees, counter-clockwise */
  readonly turn: number
  /** the face that shows lies down */
  readonly over: boolean
  /** its own frame to that with its box at zero */
  readonly map: Affine
  readonly width: number
  readonly height: number
  /** fills its box */
  readonly square: boolean
  /** the corner that a tape finds */
  readonly corner: Point
  /** along x, and along y; found when they are first asked for */
  readonly rows: () => Profile
  readonly columns: () => Profile
  readonly kerf: number
  /** with the kerf around it */
  readonly grown: Profiles
  /** the same with another kerf */
  readonly margin: (kerf: number) => Profiles
}

interface Profiles {
  readonly rows: () => Profile
  readonly columns: () => Profile
  /** how far another may not be raised beside it, along y and along x */
  readonly rise: { readonly rows: RiseBeside; readonly columns: RiseBeside }
}

const profilesOf = (rows: () => Profile, columns: () => Profile): Profiles => ({
  rows,
  columns,
  rise: { rows: keptRises(rows), columns: keptRises(columns) },
})

/** A piece's shape before it is turned, for placing it and for a first search. */
export interface Blank {
  readonly start: Point
  readonly fine: readonly Point[]
  /** two of its box that lie across from each other */
  readonly corners: readonly [Point, Point]
  readonly coarse: () => readonly Point[]
  readonly square: boolean
}

/** How far the coarse polygon may stray, mm. */
const coarseStray = 2

export const blankOf = (outline: Path): Blank => {
  const fine = outerPolygon(outline, fineStray)
  const { x0, y0, x1, y1 } = pointsBounds(fine)
  const atEdge = ({ x, y }: Point): boolean => (x === x0 || x === x1) && (y === y0 || y === y1)
  const square = fine.length === 4 && fine.every(atEdge)
  const coarse = once(() => (square ? fine : outerPolygon(outline, coarseStray)))
  const corners = [
    { x: x0, y: y0 },
    { x: x1, y: y1 },
  ] as const
  return { start: outline.start, fine, corners, coarse, square }
}

/** `over` mirrors it left to right first. */
export const shapeOf = (
  { start, fine: polygon, corners, square }: Blank,
  turn: number,
  over: boolean,
  kerf: number,
): Shape => {
  const turned = affineThen(affineScale(over ? -1 : 1, 1), affineRotate(radiansOf(turn)))
  const upright = turn % 90 === 0
  const { x0, y0, x1, y1 } = pointsBounds((upright ? corners : polygon).map((p) => affineApply(turned, p)))
  const map = affineThen(turned, affineTranslate(-x0, -y0))
  const level = square && upright
  const margin = level
    ? (by: number) => boxProfiles(x1 - x0, y1 - y0, by)
    : marginsOf(
        once(() => {
          const placed = polygon.map((p) => affineApply(map, p))
          return over ? placed.reverse() : placed
        }),
      )
  const { rows, columns } = margin(0)
  return {
    turn,
    over,
    map,
    width: x1 - x0,
    height: y1 - y0,
    square: level,
    kerf,
    corner: square ? { x: 0, y: 0 } : affineApply(map, start),
    rows,
    columns,
    grown: margin(kerf),
    margin,
  }
}

/** The same piece, with another kerf around it. */
export const regrown = (shape: Shape, kerf: number): Shape => ({ ...shape, kerf, grown: shape.margin(kerf) })

const marginsOf =
  (points: () => readonly Point[]) =>
  (kerf: number): Profiles => {
    const margin = once(() => grownPolygon(points(), kerf))
    return profilesOf(
      once(() => columnsOf(margin())),
      once(() => columnsOf(margin(), true)),
    )
  }

/** What the same comes to for a rectangle with a corner at zero, most of the pieces. */
const boxProfiles = (width: number, height: number, kerf: number): Profiles => {
  const box = (x1: number, y1: number): (() => Profile) =>
    once(() => boxProfile({ x0: -kerf, y0: -kerf, x1: x1 + kerf, y1: y1 + kerf }))
  return profilesOf(box(width, height), box(height, width))
}
