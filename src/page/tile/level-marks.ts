import { levelMark } from '../../drafting/level-mark.ts'
import type { Drawing, Mark } from '../../drawing/drawing.ts'
import { textCorners } from '../../drawing/text-box.ts'
import { type Affine, affineApply } from '../../geometry/affine.ts'
import { type Box, boxGrow } from '../../geometry/bounds.ts'
import { convexContains } from '../../geometry/clip.ts'
import type { Path } from '../../geometry/path.ts'
import { type Point, pointAngle, pointToward } from '../../geometry/point.ts'
import { levelStyle, type PatternLevel } from '../../pattern/heights.ts'
import { clearUnder, type Occupancy, occupyUnder } from '../room/occupancy.ts'
import { keepOff, on } from '../room/word-room.ts'
import type { Tile } from './tile.ts'

/** Steps of a mark along its level, mm. */
const step = 3

/** Round its figure: other words nearer to it would be read as one with it, mm. */
const wordAir = 2.5

/** Round its triangle: an edge so near it would be read as an arrow, mm. */
const tipAir = 5

/** From what is trimmed or covered, mm. */
const clear = 0.5

/**
 * The heights whose places this page keeps, in the pattern: each moved whole along its own level, the least that takes it off what lies
 * there, else left out whole. Each is kept off from then on.
 */
export const levelMarks = (levels: readonly PatternLevel[], tile: Tile, room: Occupancy): Drawing =>
  levels.flatMap((level) => {
    if (!convexContains(tile.cell, level.at)) return []
    const found =
      firstStanding(level, tile, room, on.never | on.cut | on.rather, on.rather, tipAir) ??
      firstStanding(level, tile, room, on.never | on.cut | on.rather, on.rather) ??
      firstStanding(level, tile, room, on.never | on.cut | on.rather, 0) ??
      firstStanding(level, tile, room, on.never | on.cut, 0)
    if (!found) return []
    keepOff(room, found, on.never, tile.toWindow)
    for (const mark of found)
      if (mark.kind === 'text') occupyUnder(room, textCorners(mark, tile.toWindow), wordAir, on.never)
    return found
  })

/** As it is, else moved along its level, the nearest first; only so many are drawn as are asked about. */
const firstStanding = (
  level: PatternLevel,
  tile: Tile,
  room: Occupancy,
  kinds: number,
  under: number,
  around = 0,
): Drawing | undefined => {
  const { at, from, to } = level
  const inside = boxGrow(tile.kept, -clear)
  const count = Math.ceil(Math.max(to - at.x, at.x - from) / step)
  for (let i = 0; i <= 2 * count; i++) {
    const x = at.x + step * (i % 2 === 0 ? i / 2 : -(i + 1) / 2)
    if (x < from - 1e-9 || x > to + 1e-9) continue
    for (const words of sidesOf(level.words)) {
      const marks = levelMark({ ...level, at: { x, y: at.y }, words }, levelStyle)
      if (stands(marks, tile.toWindow, inside, room, kinds, under, around)) return marks
    }
  }
  return undefined
}

const sidesOf = (usual: PatternLevel['words']): readonly PatternLevel['words'][] =>
  usual === 'left' ? ['left', 'right'] : ['right', 'left']

/**
 * Whether all of it lies in what the page keeps, its figure on none of these, its triangle and so much `around` it on none of those
 * `under` it and its strokes on nothing that is read.
 */
const stands = (
  marks: Drawing,
  toWindow: Affine,
  inside: Box,
  room: Occupancy,
  kinds: number,
  under: number,
  around: number,
): boolean =>
  marks.every((mark) => {
    const corners = markCorners(mark, toWindow)
    if (!isInside(corners, inside) || !clearUnder(room, corners, mark.kind === 'text' ? kinds : on.never))
      return false
    // the tip of the triangle stands on a line: its far side is on none
    return (
      mark.kind !== 'stroke' ||
      !mark.path.closed ||
      clearUnder(room, around === 0 ? corners.slice(1, 3) : besides(corners.slice(1, 3), around), under)
    )
  })

/** The far side of a triangle and so much more to both of its ends; above it runs the level. */
const besides = ([a, b]: readonly Point[], around: number): readonly Point[] => {
  const along = pointAngle(a!, b!)
  const [low, high] = [pointToward(a!, along, -around), pointToward(b!, along, around)]
  return [low, high, pointToward(high, along + Math.PI / 2, 0.4), pointToward(low, along + Math.PI / 2, 0.4)]
}

const markCorners = (mark: Mark, map: Affine): readonly Point[] => {
  if (mark.kind === 'text') return textCorners(mark, map)
  return mark.kind === 'stroke' ? pathPoints(mark.path).map((p) => affineApply(map, p)) : []
}

/** Of straight lines alone. */
const pathPoints = ({ start, pieces }: Path): readonly Point[] => [start, ...pieces.map(({ to }) => to)]

const isInside = (corners: readonly Point[], { x0, y0, x1, y1 }: Box): boolean =>
  corners.every(({ x, y }) => x >= x0 && y >= y0 && x <= x1 && y <= y1)
