import { checkCut } from './check-cut.ts'
import { checkBlank, checkJoints } from './check-joints.ts'
import { checkPages } from './check-page.ts'
import { checkWords } from './check-words.ts'
import { type Outline, outlineNearest, outlineOf } from './outline.ts'
import type { Plotted } from './plot.ts'
import { rawQuarters } from './raw-design.ts'
import { type Map6, neighboursOf, runsOf, tilesOf } from './tape.ts'

export interface TapeUp {
  /** what is wrong, in the order in which it was found */
  readonly faults: readonly string[]
  /** how much was looked at: a check that saw nothing proves nothing */
  readonly tiles: number
  readonly measured: number
  readonly sought: number
  readonly inOverlaps: number
  readonly joints: number
  readonly crosses: number
  readonly verniers: number
  readonly sides: number
  readonly cramped: number
}

/** Tapes the pages of a set together on paper that never was, and compares what they draw with what was asked for. */
export const tapeUp = (plotted: Plotted): TapeUp => {
  const { job, read, plan, overlap } = plotted
  const faults: string[] = []
  const fault = (what: string): void => {
    faults.push(what)
  }
  checkPages(plotted, fault)
  if (plan.design !== job.text) fault('the plan holds another design')
  const outlines = new Map<string, Outline>(
    rawQuarters(plan.design).map((raw) => [`${raw.name}/side`, outlineOf(raw)]),
  )
  const tiles = tilesOf(plotted)
  const laid = tiles.map((tile) => ({ tile, beside: neighboursOf(tile, tiles) }))
  for (const { tile } of laid) {
    // a true print lies on the wood moved and turned, at its own size
    const [a, b, c, d] = tile.trueToPattern
    const off = Math.max(Math.abs(Math.hypot(a, b) - 1), Math.abs(c + b), Math.abs(d - a))
    if (!(off < 1e-9)) fault(`page ${tile.page} is not at full size: ${tile.trueToPattern}`)
  }
  const sum = { measured: 0, sought: 0, inOverlaps: 0, joints: 0, crosses: 0, verniers: 0 }
  for (const pattern of new Set(tiles.map((tile) => tile.pattern))) {
    const own = laid.filter(({ tile }) => tile.pattern === pattern)
    const outline = outlines.get(pattern)
    if (!outline) {
      fault(`the design has no ramp for ${pattern}`)
      continue
    }
    const cut = checkCut(own, outline, job.cover, fault)
    const joints = checkJoints(own, overlap, fault)
    checkBlank(own, (t) => t.cuts.length > 0 || t.read.strokes.some(({ layer }) => layer === 'mark'), fault)
    sum.measured += cut.measured
    sum.sought += cut.sought
    sum.inOverlaps += cut.inOverlaps
    sum.joints += joints.joints
    sum.crosses += joints.crosses
    sum.verniers += joints.verniers
  }
  const { sides, cramped } = checkWords(laid, outlines, plan.set, fault)

  // what a trial page says to saw lies on the same line
  for (const { kind, page, pattern, toPattern } of plan.pages.filter(
    (p: { kind: string }) => p.kind === 'trial',
  )) {
    const outline = outlines.get(`${pattern.slice(0, pattern.lastIndexOf('/'))}/side`)!
    const runs = read.pages[page - 1]!.strokes.filter(({ layer }) => layer === 'cut').flatMap(({ path }) =>
      runsOf(path, toPattern as Map6),
    )
    if (runs.length === 0) fault(`page ${page} (${kind}) draws nothing to saw`)
    const worst = Math.max(0, ...runs.flat().map((p) => outlineNearest(outline, p).distance))
    if (!(worst <= 0.005)) fault(`page ${page} (${kind}): a cut stroke lies ${worst} beside the outline`)
  }
  return { faults, tiles: tiles.length, ...sum, sides, cramped }
}
