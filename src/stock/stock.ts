import type { Design } from '../design/design.ts'
import { curvedOf, isCurved } from '../design/kind-traits.ts'
import { runOutFront } from '../ramp/beside/toe-step.ts'
import type { SolvedRamp, WholeDesign } from '../ramp/ramp.ts'
import { screwDiameter, screwHead } from '../ramp/screws/screw-sort.ts'
import type { Storing } from '../ramp/stored.ts'
import { type RampSize, rampSize, type Size } from '../ramp/storing/size.ts'
import { type FreeFloor, freeFloor, type Stored, storedSets } from './floor.ts'
import { type JointPlate, jointPlates } from './joint-plate.ts'
import { type Cost, costLines } from './list/cost.ts'
import type { CostedLine } from './list/line.ts'
import { type BoughtPanels, shoppingList } from './list/list.ts'
import { type CutPipe, cutPipes } from './list/pipes.ts'
import { type Moving, moveRamp, type Rolling, rollingOf } from './moving.ts'
import type { Parts } from './parts.ts'
import { designScrews, type RampScrews } from './screws.ts'
import { type SectionPlan, sawTimber } from './timber/boards.ts'
import { areaOf, type Weight, weigh } from './weight.ts'

export interface OverallSize extends RampSize {
  readonly ramp: string
  /** `standing`, and the run-out sheet before it; null where there is none */
  readonly withRunOut: Size | null
}

/** What a design takes besides the layout of its panels: timber, weight, room, and how it is put away and rolled. */
export interface StockTaking {
  readonly timber: readonly SectionPlan[]
  /** every screw, ramp by ramp and use by use */
  readonly screws: readonly RampScrews[]
  readonly weight: Weight
  readonly sizes: readonly OverallSize[]
  readonly storings: readonly Storing[]
  readonly sets: readonly Stored[]
  /** both faces of what is sawn from plywood, bought or there already, mm² */
  readonly faces: number
  /** null where the design does not say how large the garage is, or it is too small */
  readonly floor: FreeFloor | null
  /** of those with wheels */
  readonly rolling: readonly (Rolling & { readonly ramp: string })[]
}

/** And what is bought and bolted on for it. */
export interface Supplies extends StockTaking {
  /** null where panels were not asked for; then there is no list */
  readonly panels: readonly BoughtPanels[] | null
  readonly list: readonly CostedLine[] | null
  /** null where the design has no prices */
  readonly cost: Cost | null
  readonly screws: readonly (RampScrews & { readonly diameter: number; readonly head: string })[]
  readonly moving: readonly Moving[]
  readonly joints: readonly JointPlate[]
  readonly pipes: readonly CutPipe[]
}

export const takeStock = (design: Design, solved: WholeDesign, parts: Parts): StockTaking => {
  // a stud longer than every timber is a stop
  const timber = sawTimber(parts.timbers, design)!
  const screws = designScrews(design, solved.ramps, parts.timbers)
  const weight = weigh(design, solved, parts, screws)
  const sizes = solved.ramps.map((ramp) => overallSize(ramp, design.units))
  const sets = storedSets(sizes, solved.storings)
  return {
    timber,
    screws,
    weight,
    sizes,
    storings: solved.storings,
    sets,
    faces: parts.sheets
      .filter(({ sheet }) => sheet.material === 'plywood')
      .reduce((sum, { outline }) => sum + 2 * areaOf(outline), 0),
    floor: design.space ? freeFloor(design.space, sets) : null,
    rolling: curvedOf(solved.ramps).flatMap((ramp) => {
      const rolling = rollingOf(ramp, weight)
      return rolling ? [{ ramp: ramp.name, ...rolling }] : []
    }),
  }
}

export const suppliesOf = (
  design: Design,
  solved: WholeDesign,
  taking: StockTaking,
  panels: readonly BoughtPanels[] | null,
): Supplies => {
  const { timber, screws, weight, faces } = taking
  const moving = curvedOf(solved.ramps).map((ramp) => moveRamp(ramp, solved, weight, design.units))
  const joints = jointPlates(solved.ramps, design.units)
  const people = Math.max(2, ...weight.ramps.map((own) => own.people))
  const bought =
    panels &&
    costLines(shoppingList(design, solved, { panels, faces, timber, screws, moving, joints, people }), design)
  return {
    ...taking,
    panels,
    list: bought?.lines ?? null,
    cost: bought?.cost ?? null,
    screws: screws.map((line) => ({
      ...line,
      diameter: screwDiameter(line.use, design.units),
      head: screwHead(line.use),
    })),
    moving,
    joints,
    pipes: cutPipes(design, solved),
  }
}

const overallSize = (ramp: SolvedRamp, units: Design['units']): OverallSize => {
  const size = rampSize(ramp)!
  const [long, wide, high] = size.standing
  // both are told from the toe corner
  const front = isCurved(ramp) ? runOutFront(ramp.design, ramp.transition, units) : 0
  return { ramp: ramp.name, ...size, withRunOut: front > 0 ? [long - size.before + front, wide, high] : null }
}
