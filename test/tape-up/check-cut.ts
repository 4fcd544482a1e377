import type { Cover } from '../../src/page/cover/cover.ts'
import { type Outline, outlineNearest, outlineSamples } from './outline.ts'
import { type Beside, cellOf, mapPoint, type Run, rectContains, runLengthInside, type Tile } from './tape.ts'

/** How far a cut stroke may lie from the true line, mm. */
const most = 0.005

export interface CutCount {
  /** points of cut strokes measured, and points of the needed line looked for */
  readonly measured: number
  readonly sought: number
  readonly inOverlaps: number
}

interface Stretch {
  readonly from: number
  readonly to: number
}

/**
 * The cut strokes of one pattern against its outline: each point on the line, each point of the needed line on every page
 * whose window holds it, and the pieces that are left after trimming as long together as the line they draw.
 */
export const checkCut = (
  tiles: readonly { readonly tile: Tile; readonly beside: readonly Beside[] }[],
  outline: Outline,
  cover: Cover,
  fault: (what: string) => void,
): CutCount => {
  let measured = 0
  const drawn = tiles.map(({ tile }) => {
    const stretches = tile.cuts.map((run) => {
      measured += run.length
      return stretchOf(run, outline, (what) => fault(`page ${tile.page}: ${what}`))
    })
    return { tile, stretches }
  })

  // the panel has its bottom edge already
  const own = outline.pieces
    .filter(({ edge }) => edge === 'bottom')
    .reduce((sum, { length }) => sum + length, 0)
  const sawn = ['chamfer', 'back', 'top', 'notch', 'curve', 'toe'] as const
  let sought = 0
  let inOverlaps = 0
  const needed = new Set(
    outlineSamples(outline, 1, cover === 'whole' ? sawn : ['notch', 'curve', 'toe']).map(({ at }) => at),
  )
  for (const { p, at } of outlineSamples(outline, 1, sawn)) {
    let held = 0
    for (const { tile, stretches } of drawn) {
      if (!rectContains(tile.window, mapPoint(tile.patternToTrue, p), -0.02)) continue
      held++
      if (!stretches.some((stretch) => holds(stretch, at, outline.length)))
        fault(`page ${tile.page} does not draw ${show(p)}, which its window holds`)
    }
    if (held > 1) inOverlaps++
    if (!needed.has(at)) continue
    sought++
    if (held === 0) fault(`no page holds ${show(p)} of the needed line`)
  }

  if (cover === 'whole') {
    let sum = 0
    for (const { tile, beside } of tiles) {
      const cell = cellOf(tile, beside)
      for (const run of tile.cuts) sum += runLengthInside(cell, run, tile.patternToTrue)
    }
    if (!(Math.abs(sum - (outline.length - own)) < 0.02))
      fault(`the trimmed pieces are ${sum} long together, the line ${outline.length - own}`)
    for (const gap of gaps(
      [{ from: 0, to: own }, ...drawn.flatMap(({ stretches }) => stretches)],
      outline.length,
    ))
      fault(`the joined line has a gap of ${gap.to - gap.from} at ${gap.from}`)
  }
  return { measured, sought, inOverlaps }
}

const show = ({ x, y }: { readonly x: number; readonly y: number }): string =>
  `(${x.toFixed(3)}, ${y.toFixed(3)})`

/** The stretch of the outline that a run draws; it may reach beyond the ends, by a whole turn at most. */
const stretchOf = (run: Run, outline: Outline, fault: (what: string) => void): Stretch => {
  let [from, to, here] = [0, 0, 0]
  let worst = 0
  run.forEach((p, i) => {
    const { distance, at } = outlineNearest(outline, p)
    if (!(distance <= most) && !(distance <= worst)) {
      worst = distance
      fault(`a cut stroke lies ${distance.toFixed(4)} beside the outline at ${show(p)}`)
    }
    if (i === 0) {
      from = to = here = at
      return
    }
    const step = at - here - Math.round((at - here) / outline.length) * outline.length
    const gone = Math.hypot(p.x - run[i - 1]!.x, p.y - run[i - 1]!.y)
    if (!(Math.abs(step) <= gone * 1.01 + 0.02))
      fault(`a cut stroke leaps ${step.toFixed(3)} along the outline at ${show(p)}`)
    here += step
    from = Math.min(from, here)
    to = Math.max(to, here)
  })
  return { from, to }
}

const holds = ({ from, to }: Stretch, at: number, length: number): boolean =>
  [-length, 0, length].some((turn) => at + turn >= from - 0.005 && at + turn <= to + 0.005)

/** What no stretch draws, of more than a hundredth of a millimetre. */
const gaps = (stretches: readonly Stretch[], length: number): readonly Stretch[] => {
  const parts = stretches
    .flatMap(({ from, to }) => [-length, 0, length].map((turn) => ({ from: from + turn, to: to + turn })))
    .filter(({ from, to }) => to >= 0 && from <= length)
    .sort((a, b) => a.from - b.from)
  const found: Stretch[] = []
  let reached = 0
  for (const { from, to } of [...parts, { from: length, to: length }]) {
    if (from - reached > 0.01) found.push({ from: reached, to: from })
    reached = Math.max(reached, to)
  }
  return found
}
