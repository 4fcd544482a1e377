import fc from 'fast-check'
import type { FlatDesign, Stock, Units } from '../../src/design/design.ts'
import type { Draft, Finding } from '../../src/ramp/check/check.ts'
import { draftFlat, stopsOfFlat } from '../../src/ramp/kinds/flat.ts'
import { wordFlatFindings } from '../../src/ramp/kinds/flat-findings.ts'
import type { Flat } from '../../src/ramp/ramp.ts'
import { kept, plywood, stock } from './ramps.ts'

/** A flat of mm without a stop or a warning; every test says what it changes. */
export const level: FlatDesign = {
  name: 'flat',
  like: null,
  kind: 'flat',
  width: 1216,
  length: 2440,
  height: { layer: 'surface', value: 113 },
  sides: { thickness: 18, count: 2 },
  studs: { section: [38, 89], every: 200 },
  skin: [plywood(18), { thickness: 6, material: 'hardboard' }],
  fasten: 'studs',
}

interface SolvedLevel {
  readonly ramp: Flat
  /** for ids and levels alone */
  readonly drafts: readonly Draft<FlatDesign>[]
  /** worded when they are read */
  readonly findings: readonly Finding[]
  /** those of these ids alone */
  readonly findingsOf: (...ids: readonly string[]) => readonly Finding[]
}

const solvedOnes = new WeakMap<FlatDesign, Map<string, SolvedLevel>>()

/** Solved once for all that ask for the same design. */
export const solveLevel = (design: FlatDesign, units: Units = 'mm', panel = stock.panel): SolvedLevel => {
  const ways = solvedOnes.get(design) ?? new Map<string, SolvedLevel>()
  solvedOnes.set(design, ways)
  const way = `${units} ${panel}`
  const found = ways.get(way) ?? solveAnew(design, units, panel)
  ways.set(way, found)
  return found
}

const solveAnew = (design: FlatDesign, units: Units, panel: Stock['panel']): SolvedLevel => {
  const all = { ...stock, panel }
  const { ramp, drafts } = draftFlat(design, units, all)
  const wordOf = (asked: (id: string) => boolean): readonly Finding[] =>
    wordFlatFindings(
      drafts.map((draft) => (asked(draft.id) ? draft : { ...draft, message: '' })),
      design,
      units,
      all,
    ).filter(({ id }) => asked(id))
  return {
    ramp,
    drafts,
    get findings() {
      return wordOf(() => true)
    },
    findingsOf: (...ids) => wordOf((id) => ids.includes(id)),
  }
}

/** Even over the range: doubles crowd round 0. */
export const real = (min: number, max: number) =>
  fc.integer({ min: 0, max: 10_000 }).map((n) => min + ((max - min) * n) / 10_000)

export interface FlatJob {
  readonly design: FlatDesign
  readonly panel: Stock['panel']
  readonly units: Units
}

const hardboard = (thickness: number) => ({ thickness, material: 'hardboard' as const })

/** Flats as they are built, low and high, of up to seven sheets along and four across. */
const drawn: fc.Arbitrary<FlatJob> = fc
  .record({
    width: real(600, 4000),
    count: fc.integer({ min: 2, max: 4 }),
    length: real(400, 4000),
    layer: fc.constantFrom('frame' as const, 'surface' as const),
    frame: fc.oneof(real(10, 60), real(60, 200)),
    every: real(95, 500),
    section: fc.constantFrom([38, 89], [45, 95], [89, 38], [45, 70], [35, 60], [22, 89]),
    skin: fc.array(fc.constantFrom(6, 9, 12, 18).map(plywood), { minLength: 1, maxLength: 3 }),
    top: fc.option(fc.constantFrom(3, 6, 6.4).map(hardboard)),
    fasten: fc.constantFrom('studs' as const, 'between' as const),
    panel: fc.constantFrom([1220, 2440], [1250, 2500], [600, 1200], [915, 2135]),
    units: fc.constantFrom('mm' as const, 'in' as const),
  })
  .map((r) => {
    const skin = r.top ? [...r.skin, r.top] : r.skin
    const thick = skin.reduce((sum, sheet) => sum + sheet.thickness, 0)
    return {
      design: {
        ...level,
        width: r.width,
        sides: { thickness: 18, count: r.count },
        length: r.length,
        height: { layer: r.layer, value: r.layer === 'frame' ? r.frame : r.frame + thick },
        studs: { section: r.section as [number, number], every: r.every },
        skin,
        fasten: r.fasten,
      },
      panel: r.panel as [number, number],
      units: r.units,
    }
  })

/** Those of them that can be sawn: what stops a flat lies in its frame. */
export const flatJob = kept(
  drawn,
  ({ design, panel, units }) => stopsOfFlat(design, units, { ...stock, panel }).stops.length === 0,
)
