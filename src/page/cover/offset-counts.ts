import type { Box } from '../../geometry/bounds.ts'
import { modulo } from '../../geometry/modulo.ts'
import type { Point } from '../../geometry/point.ts'
import { type ColumnSpans, columnSpans } from './column-spans.ts'
import type { TurnedRun } from './turned-run.ts'

/** Where the joint lines of a lattice may lie, and the pages that it then takes. */
export interface OffsetCount {
  /** where an upright and a level joint line cross, in the lattice's frame */
  readonly joint: Point
  readonly pages: number
  /** how far the level joint lines can move without another page, mm */
  readonly room: number
  /** what the lines fill of the columns there */
  readonly spans: ColumnSpans
}

/** Places tried for the upright joint lines, besides the one that centres the lines in the fewest columns. */
const tries = 24

/** Level joint lines keep this far from where the count would change, mm. */
const keep = 0.05

/**
 * The places of a lattice's joint lines that take the fewest pages, if no more than `most`. The upright ones are tried in even
 * steps; for each, the best places of the level ones are found exactly. `runs` lie within `box`.
 */
export const offsetCounts = (
  runs: readonly TurnedRun[],
  box: Box,
  pitch: Point,
  most: number,
): readonly OffsetCount[] => {
  const wide = box.x1 - box.x0
  const rows = Math.floor((box.y1 - box.y0) / pitch.y)
  const centred = ((Math.floor(wide / pitch.x) + 1) * pitch.x - wide) / 2
  let found: OffsetCount[] = []
  let fewest = most
  for (let i = -1; i < tries; i++) {
    const x = box.x0 - (i < 0 ? centred : ((i + 0.5) / tries) * pitch.x)
    // each upright joint line that is crossed leads to another page, and so does each level one
    if (1 + Math.floor((box.x1 - x) / pitch.x) + rows > fewest) continue
    const spans = columnSpans(runs, pitch, x)
    for (const { level, pages, room } of bestLevels(spans, pitch.y, fewest)) {
      if (pages < fewest) found = []
      fewest = pages
      // the joint line next below the lines
      const y = box.y0 - modulo(box.y0 - level, pitch.y)
      found.push({ joint: { x, y }, pages, room, spans })
    }
  }
  return found
}

/**
 * Where level joint lines cross the spans least often. A span enters one cell more than it holds joint lines; as these
 * rise, one comes in at each low end and one goes out at each high end.
 */
const bestLevels = (
  spans: ColumnSpans,
  pitch: number,
  most: number,
): readonly { readonly level: number; readonly pages: number; readonly room: number }[] => {
  let bound = 0
  let pages = 0
  for (let n = 0; n < spans.lows.length; n++) {
    const low = spans.lows[n]!
    const high = spans.highs[n]!
    bound += 1 + Math.floor((high - low) / pitch)
    pages += 1 + Math.floor(high / pitch) - Math.floor(low / pitch)
  }
  if (bound > most) return []
  const lows = withinPitch(spans.lows, pitch)
  const highs = withinPitch(spans.highs, pitch)
  // between the last change of a pitch and the first of the next lies one room, counted at its end
  let from = Math.max(lows.at(-1)!, highs.at(-1)!) - pitch
  let fewest = most
  let best: { readonly level: number; readonly pages: number; readonly room: number }[] = []
  for (let l = 0, h = 0; l < lows.length || h < highs.length; ) {
    const out = l === lows.length || highs[h]! < lows[l]!
    const to = out ? highs[h]! : lows[l]!
    if (to - from > 2 * keep && pages <= fewest) {
      if (pages < fewest) best = []
      fewest = pages
      best.push({ level: (from + to) / 2, pages, room: to - from })
    }
    if (out) {
      h++
      pages--
    } else {
      l++
      pages++
    }
    from = to
  }
  return best
}

/** Rising: few, so that each is put in its place. */
const withinPitch = (heights: readonly number[], pitch: number): readonly number[] => {
  const within: number[] = []
  for (const height of heights) {
    const one = modulo(height, pitch)
    let at = within.length
    for (; at > 0 && within[at - 1]! > one; at--) within[at] = within[at - 1]!
    within[at] = one
  }
  return within
}
