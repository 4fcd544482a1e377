import type { FlatDesign, Stock, Units } from '../../design/design.ts'
import { largestPanel, panelSizes, sideSheet } from '../../design/panel-sizes.ts'
import { rangeAt } from '../../design/schema.ts'
import { type Draft, type Finding, hasStop, stop, warn } from '../check/check.ts'
import { measured, offer, same } from '../check/offer.ts'
import { flatWidthKey } from '../check/remedy.ts'
import { offering, set, tell, told } from '../check/told.ts'
import { straightCurve } from '../curve/straight.ts'
import { studLength, timberFindings, widthFindings } from '../frame/bays.ts'
import { solveFlatStuds } from '../frame/flat-studs.ts'
import { nominalFindings } from '../frame/nominal.ts'
import { spanFindings } from '../frame/span.ts'
import { leastRipped, type Stud } from '../frame/stud.ts'
import { flatLoadFindings } from '../hazard/flat-load.ts'
import type { Flat } from '../ramp.ts'
import { skinScrews } from '../screws/driven.ts'
import { screwDown } from '../screws/end-screws.ts'
import { meetFindings } from '../screws/meet-findings.ts'
import { inPieces, largeSide, noneSold, panelRoom } from '../side/panel-size.ts'
import { skinThickness } from '../side/skin-thickness.ts'
import { planFlat } from '../skin/flat-sheets.ts'
import { solveScrews } from '../skin/screws.ts'
import { acrossFindings } from '../skin/seams.ts'
import { planFindings, planSkin } from '../skin/skin-plan.ts'
import { flatSplices } from '../splice/side-splices.ts'

/** What the sheets lie on, and all parts in which a stop may lie. */
export const frameFlat = (design: FlatDesign, stock: Stock, units: Units) => {
  const { length, height } = design
  const skinned = skinThickness(design)
  const frame = height.layer === 'frame' ? height.value : height.value - skinned
  const curve = straightCurve({ x: 0, y: frame }, { x: length, y: frame })
  const framing =
    frame > same
      ? solveFlatStuds(design, curve, frame, units)
      : { studs: [], stand: () => null, findings: [] }
  const findings = [
    ...lowFindings(design, frame, units),
    ...widthFindings(design, flatWidthKey, units),
    ...timberFindings(design, stock, [], units),
    ...nominalFindings(design, units),
    ...framing.findings,
  ]
  return { skinned, frame, curve, framing, findings }
}

/** The height of its face and the ids of what stops it, and no more. */
export const stopsOfFlat = (
  design: FlatDesign,
  units: Units,
  stock: Stock,
): { readonly surface: number; readonly stops: readonly string[] } => {
  const { frame, skinned, findings } = frameFlat(design, stock, units)
  const stops = findings.filter(({ level }) => level === 'stop').map(({ id }) => id)
  return { surface: frame + skinned, stops }
}

/** What its studs and its skin bear. */
export const bearingFindings = (
  design: FlatDesign,
  studs: readonly Stud[],
  frame: number,
  units: Units,
): readonly Draft<FlatDesign>[] => [
  ...hangFindings(design, studs, frame, units),
  ...flatLoadFindings(design, studs, units),
]

/**
 * Two straight sides on the floor, studs between them, a level skin on top, and what is said of it before any remedy is tried.
 */
export const draftFlat = (
  design: FlatDesign,
  units: Units,
  stock: Stock,
): { readonly ramp: Flat; readonly whole: Flat | null; readonly drafts: readonly Draft<FlatDesign>[] } => {
  const { skinned, frame, curve, framing, findings } = frameFlat(design, stock, units)
  const on = { design, curve, studs: framing.studs, timbers: [], units }
  const {
    panelOf,
    studs,
    skin: laid,
  } = planFlat(
    on,
    framing.stand,
    (sheet) => largestPanel(sheet, stock, units),
    design.length <= panelRoom(frame, panelSizes(sideSheet(design), stock, units)),
  )
  const around = { ...on, panelOf, studs }
  const { length, width } = design
  const spliced = flatSplices(design, frame, studs, stock, units)
  const screwed = { design, units, spliced: spliced.splices.map(({ timber }) => timber) }
  const { laid: fixing, ends } = screwDown(studs, screwed, (crossed) => {
    const seams = laid.map((layer) => layer.seams)
    const planned =
      crossed.timbers.length === 0 ? laid : planSkin(around, laid, seams, { crossed, others: [] })
    const solved = solveScrews(planned, around, units)
    return { ...solved, planned, driven: skinScrews(curve, solved.skin, units) }
  })
  const ramp: Flat = {
    kind: 'flat',
    name: design.name,
    design,
    skinThickness: skinned,
    width,
    studLength: studLength(design),
    length,
    heights: { frame, surface: frame + skinned },
    curve,
    studs,
    skin: fixing.skin,
    deckTimbers: [],
    endScrews: ends,
    coping: null,
    splices: spliced.splices,
    pipe: null,
    deckBoard: null,
    wheels: null,
  }
  const endsOf = (changed: FlatDesign) => draftFlat(changed, units, stock).ramp.endScrews
  if (hasStop(findings)) return { ramp, whole: null, drafts: findings }
  return {
    ramp,
    whole: ramp,
    drafts: [
      ...findings,
      ...flatPanelFindings(design, frame, stock, units),
      ...spliced.findings,
      ...bearingFindings(design, studs, frame, units),
      ...planFindings(fixing.planned, around),
      ...acrossFindings(around, fixing.planned, null),
      ...fixing.findings,
      ...meetFindings(design, ends, studs.length, flatWidthKey, endsOf, units),
    ],
  }
}

const lowFindings = ({ height }: FlatDesign, frame: number, units: Units): readonly Finding[] => {
  if (frame >= leastRipped - same) return []
  const show = (mm: number): string => measured(mm, units)
  const left = frame > same ? `only ${show(frame)} of frame` : 'no frame'
  const least = offer(units).atLeast(height.value + leastRipped - frame)
  const higher = offering(least, set(`height.${height.layer}`, least))
  return [
    stop(
      'flat-low',
      told`a ${height.layer} height of ${show(height.value)} leaves ${left} under the skin; make it ${higher} or more`,
    ),
  ]
}

export const flatPanelFindings = (
  design: FlatDesign,
  frame: number,
  stock: Stock,
  units: Units,
): readonly Finding[] => {
  const large = largeSide({ length: design.length, height: frame }, design, stock, units)
  if (large === null) return []
  const { room, words, buy } = large
  const most = offer(units).atMost(room)
  const way =
    room < rangeAt('ramps[flat].length').least
      ? buy
      : offering(`make it ${most} long or less, two end to end for more`, set('length', most))
  return [warn('panel-size', way === null ? tell(words, noneSold) : tell(words, way, `, or ${inPieces}`))]
}

/** Studs that hang between the sides, clear of the floor. */
const hangFindings = (
  design: FlatDesign,
  studs: readonly Stud[],
  frame: number,
  units: Units,
): readonly Draft<FlatDesign>[] => {
  const [stud] = studs
  if (!stud || stud.depth >= frame - same) return []
  const packing = `a packing of ${measured(frame - stud.depth, units)} between its middle and the floor`
  return spanFindings(design, units, { width: stud.width, depth: stud.depth, instead: packing })
}
