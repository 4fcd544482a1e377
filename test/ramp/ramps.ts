import fc from 'fast-check'
import type { Coping, QuarterDesign, Sheet, Stock, Units } from '../../src/design/design.ts'
import { readDesign } from '../../src/design/read.ts'
import { type Draft, type Finding, hasStop } from '../../src/ramp/check/check.ts'
import { draftQuarter } from '../../src/ramp/kinds/quarter.ts'
import { wordFindings } from '../../src/ramp/kinds/quarter-findings.ts'
import { frameQuarter } from '../../src/ramp/kinds/quarter-frame.ts'
import type { Quarter, SolvedQuarter } from '../../src/ramp/ramp.ts'
import type { Side } from '../../src/ramp/side/side.ts'
import { solveCoping } from '../../src/ramp/side/solve-coping.ts'
import { solveTransition } from '../../src/ramp/side/solve-transition.ts'
import type { Transition } from '../../src/ramp/side/transition.ts'

export const inch = 25.4

export const plywood = (thickness: number): Sheet => ({ thickness, material: 'plywood' })

export const stock: Stock = {
  panel: [1220, 2440],
  timber: [2400, 4800],
  pipe: [3000],
  kerf: 3,
  trim: 5,
  panels: [],
  offcuts: [],
}

const reading = readDesign(`title: plain
units: mm
ramps:
  - width: 1216
    height: { frame: 640 }
    transition: { circle: { frame: 1724 } }
    toe: 40
    deck: 500
    sides: { thickness: 18 }
    studs: { section: 38 x 89, every: 200 }
    skin: [9 plywood, 9 plywood, 6 hardboard]
    run-out: { sheet: 1.5 steel }
    deck-board: 15 plywood
    coping: { outside: 60.3, up: 8, out: 6, seat: square }
`)
if ('problems' in reading) throw new Error(reading.problems.map((p) => p.message).join('\n'))
const read = reading.design.ramps[0] as QuarterDesign

/** A ramp of mm without a stop or a warning, and without a pipe; every test says what it changes. */
export const plain: QuarterDesign = { ...read, coping: null }

/** A pipe of 60.3 that stands 8 up and 6 out in a square seat, but for what is said. */
export const piped = (coping: Partial<Coping> = {}, by?: Coping['by']): Coping => ({
  ...read.coping!,
  ...coping,
  ...(by && { by }),
})

/** The studs of `plain`, but for what is said. */
export const studded = (studs: Partial<QuarterDesign['studs']>): QuarterDesign['studs'] => ({
  ...plain.studs,
  ...studs,
})

export const reveals = (up: number, out: number): Coping['by'] => ({ kind: 'reveals', up, out })
export const notch = (along: number, down: number): Coping['by'] => ({ kind: 'notch', along, down })

export const circleOf = (
  layer: 'frame' | 'surface',
  radius: number,
  tangentLayer: 'frame' | 'surface' = 'surface',
  height = 0,
): QuarterDesign['transition'] => ({
  circle: { layer, radius },
  tangent: { layer: tangentLayer, height },
})

/** A frame alone, level at the floor: what is measured is the circle and nothing else. */
export const bare = (radius: number, height: number, toe = 0): QuarterDesign => ({
  ...plain,
  height: { layer: 'frame', value: height },
  transition: circleOf('frame', radius, 'frame', 0),
  toe,
  deckBoard: null,
})

interface Solved {
  readonly ramp: Quarter
  /** null where a check says stop */
  readonly whole: SolvedQuarter | null
  /** for ids and levels alone */
  readonly drafts: readonly Draft[]
  /** worded when they are read: remedies take far longer to find than the ramp to solve */
  readonly findings: readonly Finding[]
  /** those of these ids alone: no remedies are tried for the others */
  readonly findingsOf: (...ids: readonly string[]) => readonly Finding[]
}

const solvedOnes = new WeakMap<QuarterDesign, Map<string, Solved>>()

/** Solved once for all that ask for the same design: a search by steps asks thousands of times. */
export const solve = (design: QuarterDesign, units: Units = 'mm', panel = stock.panel): Solved => {
  const ways = solvedOnes.get(design) ?? new Map<string, Solved>()
  solvedOnes.set(design, ways)
  const way = `${units} ${panel}`
  const found = ways.get(way) ?? solveAnew(design, units, panel)
  ways.set(way, found)
  return found
}

const solveAnew = (design: QuarterDesign, units: Units, panel: Stock['panel']): Solved => {
  const all = { ...stock, panel }
  const solved = draftQuarter(design, units, all)
  const worded: { findings?: readonly Finding[] } = {}
  const ofIds = new Map<string, readonly Finding[]>()
  const wordOf = (ids: readonly string[]): readonly Finding[] => {
    const asked = solved.drafts.map((draft) => (ids.includes(draft.id) ? draft : { ...draft, message: '' }))
    return wordFindings(asked, design, units, all).filter(({ id }) => ids.includes(id))
  }
  return {
    ...solved,
    get findings() {
      worded.findings ??= wordFindings(solved.drafts, design, units, all)
      return worded.findings
    },
    findingsOf(...ids) {
      const key = ids.join(' ')
      const found = ofIds.get(key) ?? wordOf(ids)
      ofIds.set(key, found)
      return found
    },
  }
}

const missing = ({ findings }: Solved): Error => new Error(findings.map((f) => f.message).join('\n'))

/** A ramp without a stop. */
export const wholeOf = (design: QuarterDesign, units: Units = 'mm', panel = stock.panel): SolvedQuarter => {
  const solved = solve(design, units, panel)
  if (!solved.whole) throw missing(solved)
  return solved.whole
}

export const transitionOf = (design: QuarterDesign): Transition => {
  const { transition } = solveTransition(design, 'mm')
  if (!transition) throw missing(solve(design))
  return transition
}

export const sideOf = (design: QuarterDesign): Side => {
  const solved = solve(design)
  if (!solved.ramp.side) throw missing(solved)
  return solved.ramp.side
}

/** Where the pipe lies: nothing else of the ramp is solved for it. */
export const copingOf = (design: QuarterDesign): NonNullable<Quarter['coping']> => {
  const { transition } = solveTransition(design, 'mm')
  const deck = (run: number): number => design.back.value - (design.back.from === 'length' ? run : 0)
  const pipe = transition && solveCoping(design, transition, deck(transition.run), 'mm').coping
  if (pipe) return pipe
  const solved = solve(design)
  if (!solved.ramp.coping) throw missing(solved)
  return solved.ramp.coping
}

/** Messages of one id. */
export const said = (design: QuarterDesign, id: string, units: Units = 'mm'): readonly string[] =>
  solve(design, units)
    .findingsOf(id)
    .map((f) => `${f.level}: ${f.message}`)

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })

/** Sheets that a builder may stack. */
const anySkin = fc.array(fc.constantFrom(3, 6, 6.35, 9, 9.5, 12, 18).map(plywood), {
  minLength: 1,
  maxLength: 4,
})

const anyCoping: fc.Arbitrary<Coping | null> = fc.option(
  fc
    .record({
      outside: real(20, 120),
      seat: fc.constantFrom('square' as const, 'round' as const),
      by: fc.oneof(
        fc.record({ kind: fc.constant('reveals' as const), up: real(-60, 60), out: real(-60, 60) }),
        fc.record({ kind: fc.constant('notch' as const), along: real(1, 150), down: real(1, 150) }),
      ),
    })
    .map(piped),
  { freq: 6 },
)

/** Ramps that the reader would let through, sound and unsound ones. */
export const anyRamp: fc.Arbitrary<QuarterDesign> = fc
  .record({
    layer: fc.constantFrom('frame' as const, 'deck' as const, 'surface' as const),
    height: real(100, 1500),
    circle: fc.constantFrom('frame' as const, 'surface' as const),
    ratio: real(0.8, 4),
    tangentLayer: fc.constantFrom('frame' as const, 'surface' as const),
    tangent: fc.oneof({ weight: 3, arbitrary: fc.constant(0) }, real(-60, 200)),
    toe: fc.oneof({ weight: 4, arbitrary: real(0, 90) }, real(0, 300)),
    back: fc.oneof(
      fc.record({ from: fc.constant('deck' as const), value: real(50, 900) }),
      fc.record({ from: fc.constant('length' as const), value: real(200, 2600) }),
    ),
    width: fc.oneof({ weight: 5, arbitrary: real(400, 2440) }, real(200, 300)),
    sides: fc.record({ thickness: real(5, 60), count: fc.integer({ min: 2, max: 5 }) }),
    every: real(60, 400),
    skin: anySkin,
    closed: fc.boolean(),
    board: fc.option(real(3, 60)),
    coping: anyCoping,
    chamfer: fc.oneof({ weight: 2, arbitrary: fc.constant(0) }, real(10, 700)),
  })
  .map((r): QuarterDesign => {
    return {
      ...plain,
      height: { layer: r.layer, value: r.height },
      transition: circleOf(r.circle, Math.max(300, r.ratio * r.height), r.tangentLayer, r.tangent),
      toe: r.toe,
      back: r.back,
      width: r.width,
      sides: r.sides,
      studs: studded({ every: r.every }),
      skin: r.skin,
      runOut: r.closed ? plain.runOut : { kind: 'none' },
      deckBoard: r.board === null ? null : plywood(r.board),
      coping: r.coping,
      chamfer: r.chamfer,
    }
  })

/** What an arbitrary draws and a test keeps. The same thing drawn again is the one that was kept, and is not tried again. */
export const kept = <T>(drawn: fc.Arbitrary<T>, good: (one: T) => boolean): fc.Arbitrary<T> => {
  const known = new Map<string, T | null>()
  const keptOne = (one: T): T | null => {
    const text = JSON.stringify(one)
    const before = known.get(text)
    if (before !== undefined) return before
    const after = good(one) ? one : null
    known.set(text, after)
    return after
  }
  return drawn.map(keptOne).filter((one) => one !== null) as fc.Arbitrary<T>
}

/** What stops a ramp mostly shows before its skin is laid out. */
export const isFramed = (design: QuarterDesign, halts = hasStop): boolean =>
  frameQuarter(design, 'mm', stock, halts, {}) !== null

/** All properties draw the ramps that can be sawn by this seed, so that a worker solves each once: six of seven cannot. */
export const sawnSeed = 31
export const sawn = kept(anyRamp, (design) => isFramed(design) && !hasStop(solve(design).drafts))
export const sawnWithPipe = sawn.filter(({ coping }) => coping !== null)
