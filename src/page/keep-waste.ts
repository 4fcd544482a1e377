import { text } from '../drawing/drawing.ts'
import { type TextMark, textCorners } from '../drawing/text-box.ts'
import { affineApply, affineIdentity } from '../geometry/affine.ts'
import { segmentAt, segmentDirection } from '../geometry/at.ts'
import { boxGrow } from '../geometry/bounds.ts'
import { pathClip } from '../geometry/clip.ts'
import { segmentLength } from '../geometry/length.ts'
import { segmentDistance } from '../geometry/nearest.ts'
import { type Path, pathOf, pathSegments } from '../geometry/path.ts'
import { type Point, pointBetween, pointToward } from '../geometry/point.ts'
import { letters } from '../pattern/pens.ts'
import type { Occupancy } from './occupancy.ts'
import { takenIn } from './occupancy.ts'
import { type Tile, tileCell } from './tile.ts'

/** Length and spacing of the ticks on the waste side, mm. */
const tick = { length: 3, every: 12 }

/** Short 45° ticks on the waste side of a cut line, in the pattern, so that neighbours draw the same ones. */
export const wasteTicks = (outline: Path): readonly Path[] =>
  pathSegments(outline).flatMap((segment) => {
    const count = Math.floor(segmentLength(segment) / tick.every)
    return Array.from({ length: count }, (_, i) => {
      const t = ((i + 0.5) * tick.every) / segmentLength(segment)
      const from = segmentAt(segment, t)
      // the wood is on the left of the way
      return pathOf(from, pointToward(from, segmentDirection(segment, t) - Math.PI / 4, tick.length))
    })
  })

/** The words of one tile, in the window as the drawing is read. */
interface Candidate {
  readonly keep: TextMark
  readonly waste: TextMark
}

/**
 * KEEP and WASTE on the two sides of the cut line, set along it and never across it, for a tile that carries it.
 * Empty for a tile that does not. `free` knows what is already drawn, in the window as the drawing is read.
 */
export const keepWaste = (tile: Tile, outline: Path, free: Occupancy): readonly TextMark[] => {
  const pieces = pathClip(outline, tile.cell)
    .flatMap(pathSegments)
    .sort((a, b) => segmentLength(b) - segmentLength(a))
  if (pieces.length === 0) return []
  let best: { readonly candidate: Candidate; readonly faults: number } | undefined
  for (const size of [letters.side, 4, 3, letters.small])
    for (const piece of pieces.slice(0, 6))
      for (const t of [0.5, 0.35, 0.65, 0.2, 0.8, 0.08, 0.92]) {
        const from = affineApply(tile.frame, segmentAt(piece, t))
        const ahead = affineApply(tile.frame, pointToward(segmentAt(piece, t), segmentDirection(piece, t), 1))
        const direction = Math.atan2(ahead.y - from.y, ahead.x - from.x)
        const candidate = {
          keep: beside('KEEP', from, direction, 1, size),
          waste: beside('WASTE', from, direction, -1, size),
        }
        const faults = [candidate.keep, candidate.waste].reduce(
          (sum, word) => sum + wordFaults(word, tile, free),
          0,
        )
        if (!best || faults < best.faults) best = { candidate, faults }
        if (faults === 0) return [candidate.keep, candidate.waste]
      }
  return best ? [inside(best.candidate.keep, tile), inside(best.candidate.waste, tile)] : []
}

/** A word along the line, on its left (side 1) or its right (side −1), never upside down. */
const beside = (word: string, from: Point, direction: number, side: 1 | -1, size: number): TextMark => {
  const clear = side === 1 ? 2.5 : tick.length + 1.2
  const upright =
    Math.cos(direction) > 1e-9 || (Math.abs(Math.cos(direction)) <= 1e-9 && Math.sin(direction) > 0)
  const angle = upright ? direction : direction + Math.PI
  // the baseline is the word's lower edge: the near one on the line's upper side, the far one below it
  const above = upright === (side === 1)
  const middle = pointToward(from, direction + (side * Math.PI) / 2, above ? clear : clear + size)
  return text('note', middle, size, word, { angle, face: 'bold', align: 'middle' }) as TextMark
}

/** 0 when the word lies in the page's own cell and on nothing else. */
const wordFaults = (word: TextMark, tile: Tile, free: Occupancy): number => {
  const corners = textCorners(word, affineIdentity)
  const cell = boxGrow(tileCell(tile), -1)
  const out = corners.filter((p) => p.x < cell.x0 || p.y < cell.y0 || p.x > cell.x1 || p.y > cell.y1).length
  let covered = 0
  for (let i = 0; i <= 8; i++)
    for (const [a, b] of [
      [corners[0]!, corners[1]!],
      [corners[3]!, corners[2]!],
    ] as const) {
      const p = pointBetween(a, b, i / 8)
      covered += takenIn(free, { x0: p.x, y0: p.y, x1: p.x, y1: p.y })
    }
  return out * 100 + covered
}

/** Moved the least that brings a word's box into the window. */
const inside = (word: TextMark, tile: Tile): TextMark => textInside(word, tile.width, tile.height)

export const textInside = (mark: TextMark, width: number, height: number): TextMark => {
  const corners = textCorners(mark, affineIdentity)
  const shift = (values: readonly number[], limit: number): number => {
    const [low, high] = [Math.min(...values), Math.max(...values)]
    return low < 0.5 ? 0.5 - low : high > limit - 0.5 ? limit - 0.5 - high : 0
  }
  return {
    ...mark,
    at: {
      x:
        mark.at.x +
        shift(
          corners.map((p) => p.x),
          width,
        ),
      y:
        mark.at.y +
        shift(
          corners.map((p) => p.y),
          height,
        ),
    },
  }
}

/** The same two words at a given point of a pattern's outline; in the pattern. */
export const keepWasteAt = (outline: Path, at: Point): readonly TextMark[] => {
  const edge = pathSegments(outline).reduce((a, b) =>
    segmentDistance(a, at) <= segmentDistance(b, at) ? a : b,
  )
  const direction = segmentDirection(edge, 0.5)
  return [beside('KEEP', at, direction, 1, letters.side), beside('WASTE', at, direction, -1, letters.side)]
}
