import { readDesign } from '../../src/design/read.ts'
import { drawDesign } from '../../src/ramp/solve.ts'
import type { Pt } from '../support/pt.ts'
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
  readonly trials: number
}

interface SplicePlace {
  readonly pattern: string
  readonly top: Pt
  readonly foot: Pt
}

const splicesAnew = (text: string): readonly SplicePlace[] => {
  const reading = readDesign(text)
  if ('problems' in reading) return []
  return drawDesign(reading.design).ramps.flatMap(({ name, splices }) =>
    splices.map(({ top, foot }) => ({ pattern: `${name}/side`, top, foot })),
  )
}

const known = new Map<string, readonly SplicePlace[]>()

/** Found once for all sets of one design. */
const splicesOf = (text: string): readonly SplicePlace[] => {
  const before = known.get(text) ?? splicesAnew(text)
  known.set(text, before)
  return before
}

/** Every point between the joint's ends and on the line through them, within 0.005 mm. */
const liesOn = (run: readonly Pt[], { top, foot }: SplicePlace): boolean => {
  const length = Math.hypot(foot.x - top.x, foot.y - top.y)
  const [ux, uy] = [(foot.x - top.x) / length, (foot.y - top.y) / length]
  return run.every(({ x, y }) => {
    const [dx, dy] = [x - top.x, y - top.y]
    const along = dx * ux + dy * uy
    return Math.abs(dx * uy - dy * ux) < 0.005 && along > -0.005 && along < length + 0.005
  })
}

interface TrialPage {
  readonly kind: string
  readonly page: number
  readonly places: readonly {
    readonly pattern: string
    readonly toPattern: Map6
    readonly window: readonly [number, number, number, number]
  }[]
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
  const joints = splicesOf(plan.design)
  // where pieces of a side meet it is sawn too: that is no edge of the outline
  const drawn = tilesOf(plotted)
  const carrying = new Set(
    drawn
      .filter(({ cuts, read }) => cuts.length > 0 || read.strokes.some(({ layer }) => layer === 'mark'))
      .map(({ page }) => page),
  )
  const tiles = drawn.map((tile) => ({
    ...tile,
    cuts: tile.cuts.filter(
      (run) => !joints.some((joint) => joint.pattern === tile.pattern && liesOn(run, joint)),
    ),
  }))
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
    checkBlank(own, ({ page }) => carrying.has(page), fault)
    sum.measured += cut.measured
    sum.sought += cut.sought
    sum.inOverlaps += cut.inOverlaps
    sum.joints += joints.joints
    sum.crosses += joints.crosses
    sum.verniers += joints.verniers
  }
  const { sides, cramped } = checkWords(laid, outlines, plan.set, fault)

  let trials = 0
  // what a lip trial says to saw lies on the same line, wherever on a page it lies
  for (const { kind, page, places } of plan.pages as readonly TrialPage[]) {
    if (kind !== 'trial' && kind !== 'parts') continue
    const cuts = read.pages[page - 1]!.strokes.filter(({ layer }) => layer === 'cut')
    const lips = places.filter(({ pattern }) => pattern.endsWith('/lip'))
    const near = lips.map(({ pattern, toPattern, window: [x0, y0, x1, y1] }) => {
      const outline = outlines.get(`${pattern.slice(0, pattern.lastIndexOf('/'))}/side`)!
      const own = cuts.filter(({ path }) =>
        runsOf(path, [1, 0, 0, 1, 0, 0])
          .flat()
          .every(({ x, y }) => x > x0 - 6 && x < x1 + 6 && y > y0 - 6 && y < y1 + 6),
      )
      const runs = own.flatMap(({ path }) => runsOf(path, toPattern))
      if (runs.length === 0) fault(`page ${page} (${kind}) draws nothing to saw for ${pattern}`)
      const worst = Math.max(0, ...runs.flat().map((p) => outlineNearest(outline, p).distance))
      if (!(worst <= 0.005)) fault(`page ${page} (${kind}): a cut stroke lies ${worst} beside the outline`)
      const [a, b, c, d] = toPattern.map((v) => v * (72 / 25.4)) as unknown as Map6
      if (job.correction === undefined && !(Math.abs(a * d - b * c - 1) < 1e-9))
        fault(`page ${page} (${kind}): ${pattern} is not at full size`)
      return own.length
    })
    trials += lips.length
    const drawn = near.reduce((sum, count) => sum + count, 0)
    if (drawn !== cuts.length) fault(`page ${page} (${kind}): ${cuts.length - drawn} cut strokes in no trial`)
  }
  return { faults, tiles: tiles.length, ...sum, sides, cramped, trials }
}
