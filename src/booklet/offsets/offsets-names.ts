import type { Drawing } from '../../drawing/drawing.ts'
import { text } from '../../drawing/drawing.ts'
import { textWidth } from '../../drawing/text-width.ts'
import { type Box, boxGrow, boxOverlaps } from '../../geometry/bounds.ts'
import { boxCorners, pathClip } from '../../geometry/clip.ts'
import type { Path } from '../../geometry/path.ts'
import type { Point } from '../../geometry/point.ts'
import { letters } from '../../pattern/pens.ts'
import type { OffsetRow } from './offsets-rows.ts'

/** A mark of the drawing with its dot, and its line if it has one; page mm. */
export interface NamedMark {
  readonly row: OffsetRow
  readonly at: Point
}

/** What names keep off: lines, and boxes of words and dots. */
export interface Around {
  readonly paths: readonly Path[]
  readonly boxes: readonly Box[]
  /** names lie in here; anywhere where it is not given */
  readonly within?: Box
}

/** Heights of a name in turn, off its dot in turn, mm; and its air. */
const sizes = [3, letters.small, letters.least] as const
const offs = [1.2, 2, 3] as const
const air = 0.25

/** From name to name, that two are not read as one, where there is room; mm. */
const between = 2.2

/** Directions from a dot: what a line runs up to is named before and above it, what a level one runs to behind it, where wood is. */
const ways: Readonly<Record<OffsetRow['measured'], readonly (readonly [number, number])[]>> = {
  up: [
    [-1, 1],
    [0, 1],
    [-1, 0],
    [1, -1],
    [1, 0],
    [0, -1],
    [1, 1],
    [-1, -1],
  ],
  back: [
    [1, 0],
    [1, -1],
    [1, 1],
    [0, -1],
    [-1, 1],
    [0, 1],
    [-1, -1],
    [-1, 0],
  ],
  both: [
    [-1, 1],
    [0, 1],
    [-1, 0],
    [-1, -1],
    [1, 1],
    [1, 0],
    [0, -1],
    [1, -1],
  ],
}

/**
 * Each mark's name beside its dot, the largest that lies on nothing; TOE, LIP and the corners of the notch first. One that finds no room
 * is left out: the notch drawn larger has it.
 */
export const markNames = (marks: readonly NamedMark[], around: Around): Drawing => {
  const names: Box[] = []
  const ordered = marks.toSorted(
    (a, b) => Number(b.row.measured === 'both') - Number(a.row.measured === 'both'),
  )
  return ordered.flatMap(({ row, at }) => {
    const boxes = sizes.flatMap((size) =>
      offs.flatMap((off) => ways[row.measured].map((way) => nameBox(row.mark, at, way, off, size))),
    )
    const isFree = ({ box }: { readonly box: Box }): boolean => {
      const room = boxGrow(box, air)
      return (
        isWithin(room, around.within) &&
        ![...around.boxes, ...names].some((other) => boxOverlaps(room, other)) &&
        around.paths.every((path) => pathClip(path, boxCorners(room)).length === 0)
      )
    }
    const stands = ({ box }: { readonly box: Box }): boolean =>
      !names.some((other) => boxOverlaps(boxGrow(box, between), other))
    // numbers are told from letters anyhow
    const apart = row.measured === 'both' ? boxes.find((one) => stands(one) && isFree(one)) : null
    const found = apart ?? boxes.find(isFree)
    if (!found) return []
    names.push(found.box)
    return [text('mark', { x: found.box.x0, y: found.box.y0 }, found.size, row.mark, { face: 'bold' })]
  })
}

const isWithin = (box: Box, within?: Box): boolean =>
  !within || (box.x0 > within.x0 && box.y0 > within.y0 && box.x1 < within.x1 && box.y1 < within.y1)

const nameBox = (
  words: string,
  { x, y }: Point,
  [across, up]: readonly [number, number],
  off: number,
  size: number,
): { readonly box: Box; readonly size: number } => {
  const width = textWidth(words, size, 'bold')
  const x0 = x + across * off + ((across - 1) / 2) * width
  const y0 = y + up * off + ((up - 1) / 2) * size
  return { box: { x0, y0, x1: x0 + width, y1: y0 + size }, size }
}
