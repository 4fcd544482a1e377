import type { RampDesign } from '../../design/design.ts'
import { kindTraits } from '../../design/kind-traits.ts'
import { segmentDistance } from '../../geometry/nearest.ts'
import { type Point, pointBetween } from '../../geometry/point.ts'
import { type Finding, note, warn } from '../check/check.ts'
import { listed, measured, offer, rounded, same } from '../check/offer.ts'
import { offering, type Said, set, told } from '../check/told.ts'
import { screwGrip } from '../frame/screw-lengths.ts'
import { type Stretch, stretches } from '../frame/stretch.ts'
import {
  betweenRows,
  offWall,
  type RowPlace,
  type ScrewRow,
  screwApart,
  screwsAcross,
  studRows,
} from './screw-rows.ts'
import { type AcrossSeam, acrossSeams, type Seam } from './seams.ts'
import type { SkinLayer } from './skin.ts'
import {
  type Crossed,
  type Framing,
  flatToCurve,
  framingFor,
  type Ground,
  insideStud,
  noneCrossed,
  practice,
} from './skin-framing.ts'

/** A layer and how it is laid in sheets. */
export interface LaidLayer extends SkinLayer {
  readonly pieces: readonly Stretch[]
  readonly seams: readonly Seam[]
  readonly widths: readonly Stretch[]
  readonly acrossSeams: readonly AcrossSeam[]
  readonly rows: readonly ScrewRow[]
  /** most from one screw to the next along a row, before any is moved clear */
  readonly spacing: number
}

/** Screws that stand in the frame besides: seen from the side, and where across the ramp. mm */
interface Other {
  readonly from: Point
  readonly to: Point
  readonly across: readonly number[]
}

/** What the screws of the skin keep off besides each other. */
interface Among {
  readonly crossed: Crossed
  readonly others: readonly Other[]
}

/** `seams`: where the sheets of each layer meet. */
export const planSkin = (
  ground: Ground,
  skin: readonly SkinLayer[],
  seams: readonly (readonly Seam[])[],
  among: Among = { crossed: noneCrossed, others: [] },
): readonly LaidLayer[] => {
  const laid: LaidLayer[] = []
  for (const [i, layer] of skin.entries())
    laid.push(layLayer(framingFor(ground, layer.sheet), layer, seams[i]!, skin.length, laid, among))
  return laid
}

/** Whether the top sheet's screws go between the studs: there must be sheets below to take them. */
const fastensBetween = ({ fasten, skin }: RampDesign): boolean => fasten === 'between' && skin.length > 1

const layLayer = (
  framing: Framing,
  layer: SkinLayer,
  seams: readonly Seam[],
  count: number,
  below: readonly LaidLayer[],
  { crossed, others }: Among,
): LaidLayer => {
  const { design, panel, units } = framing
  const { gap, base, top } = practice[units]
  const isTop = layer.layer === count && count > 1
  const spacing = isTop ? top : base
  const across = acrossSeams(design, panel[1], units, below.at(-1)?.acrossSeams ?? [])
  const widths = stretches(
    design.width,
    across.map(({ at }) => at),
    gap,
  )
  const bare = { ...layer, widths, acrossSeams: across, spacing }
  if (layer.length <= same) return { ...bare, pieces: [], seams: [], widths: [], acrossSeams: [], rows: [] }
  const bent = flatToCurve(framing.curve, layer)
  const pieces = stretches(
    layer.length,
    seams.map(({ at }) => at),
    gap,
  )
  const onStuds = studRows(framing, layer, bent, seams)
  const between = isTop && fastensBetween(design)
  const places = between
    ? betweenOrStuds(betweenRows(framing, layer, bent, seams), onStuds, pieces, design)
    : onStuds
  const lower = below.flatMap(({ rows }) =>
    rows.map(({ place, across: screws }) => ({ from: framing.curve.lengthTo(place), screws })),
  )
  // between studs a screw over the gap of two sheets holds in nothing
  const open = between ? below.flatMap(({ acrossSeams: met }) => met.map(({ at }) => at)) : []
  // the edges of what is ridden are held as near to the sides as can be
  const shifted = layer.layer % 2 === 0 && !isTop
  // most rows have the same screws below them
  const known = new Map<string, readonly number[]>()
  const screwsOver = ({ place, stud }: RowPlace): readonly number[] => {
    const from = framing.curve.lengthTo(place)
    const near = [
      ...lower.filter((row) => Math.abs(row.from - from) < screwApart).flatMap(({ screws }) => screws),
      ...others.filter((other) => meetsOther(framing, place, other)).flatMap(({ across: screws }) => screws),
    ]
    const keep = offWall(design, crossed, stud)
    const key = `${keep} ${near.join()}`
    const found = known.get(key) ?? screwsAcross(framing, keep, widths, spacing, shifted, near, open)
    known.set(key, found)
    return found
  }
  return {
    ...bare,
    pieces,
    seams,
    rows: places
      .map((row) => ({ ...row, across: screwsOver(row) }))
      .filter(({ across: screws }) => screws.length > 0),
  }
}

/** Whether a screw square to the curve comes near to another that stands in the frame. */
const meetsOther = ({ curve, units }: Framing, place: number, { from, to }: Other): boolean => {
  const at = curve.point(place)
  // most stand far from it
  const far = 2 * (Math.abs(to.x - from.x) + Math.abs(to.y - from.y) + 3 * screwApart + screwGrip[units])
  if (Math.abs(at.x - from.x) > far || Math.abs(at.y - from.y) > far) return false
  const slope = curve.slope(place)
  const deep = screwGrip[units] * 1.5
  const point = { x: at.x + deep * Math.sin(slope), y: at.y - deep * Math.cos(slope) }
  const own = { kind: 'line', from: at, to: point } as const
  return [0, 0.25, 0.5, 0.75, 1].some((t) => segmentDistance(own, pointBetween(from, to, t)) < screwApart)
}

/** Whether a run-out that laps over it holds the lowest edge of the top sheet. */
const isLapped = (design: RampDesign): boolean => 'runOut' in design && design.runOut.kind === 'sheet'

/** Rows between studs, and one into the stud at each end that no run-out laps; a piece that has room for none is screwed to its studs. */
const betweenOrStuds = (
  between: readonly RowPlace[],
  onStuds: readonly RowPlace[],
  pieces: readonly Stretch[],
  design: RampDesign,
): readonly RowPlace[] =>
  pieces.flatMap(({ from, length }, i) => {
    const within = ({ at }: RowPlace): boolean => at >= from && at <= from + length
    const own = between.filter(within)
    const studs = onStuds.filter(within)
    const [first, last] = [own[0], own.at(-1)]
    if (!first || !last) return studs
    const lowest = i === 0 && isLapped(design) ? undefined : studs.find(({ at }) => at < first.at)
    const highest = studs.findLast(({ at }) => at > last.at)
    return [...(lowest ? [lowest] : []), ...own, ...(highest ? [highest] : [])]
  })

/** Seams without a stud of their own; studs that were added for others; a top sheet whose screws find no room between them. */
export const planFindings = (skin: readonly LaidLayer[], around: Ground): readonly Finding[] => {
  const { design, studs, units } = around
  const findings: Finding[] = []
  const bad = skin.flatMap(({ layer, seams }) =>
    seams.flatMap((seam) =>
      seam.stud === null
        ? [
            `layer ${layer}: no stud that takes a seam lies within reach, which ends ${rounded(seam.at, units)} along`,
          ]
        : seam.shared
          ? [
              `layers ${layer - 1} and ${layer} meet on the same stud, ${rounded(studs[seam.stud]!.at, units)} along`,
            ]
          : [],
    ),
  )
  if (bad.length > 0) findings.push(warn('seam-stud', told`${bad.join('; ')}; ${seamRemedy(around)}`))
  const added = studs.filter(({ role }) => role === 'seam')
  if (added.length > 0)
    findings.push(
      note(
        'stud-added',
        `added where sheets meet: ${added.length === 1 ? 'a stud' : 'studs'} ${listed(
          added.map(({ at }) => at),
          units,
        )} along`,
      ),
    )
  if (design.fasten === 'between') findings.push(...betweenFindings(skin, around))
  return findings
}

const betweenFindings = (
  skin: readonly LaidLayer[],
  { design, studs, units }: Ground,
): readonly Finding[] => {
  const top = skin.at(-1)
  if (!top || top.pieces.length === 0) return []
  if (!fastensBetween(design))
    return [note('fasten-between', 'there is one layer only, so its screws go into the studs all the same')]
  const show = (mm: number): string => measured(mm, units)
  const { between } = practice[units]
  const bays = studs.length - 1
  const rows = top.rows.filter(({ on }) => on === 'between')
  if (rows.length === 0 || 2 * rows.length < bays)
    return [
      warn(
        'fasten-between',
        offering(
          `${rows.length === 0 ? 'no bay' : `only ${rows.length} of ${bays} bays`} between studs ${rows.length < 2 ? 'has' : 'have'} room for screws ${show(between)} off all timber; say \`fasten: studs\``,
          set('fasten', 'studs'),
        ),
      ),
    ]
  const narrow = bays - rows.length
  const narrowSheets = top.pieces.filter(
    ({ from, length }) => !rows.some(({ at }) => at >= from && at <= from + length),
  ).length
  return [
    note(
      'fasten-between',
      `the top sheet's rows lie midway between studs, ${show(between)} or more off all timber${narrow > 0 ? `, but in ${narrow} of ${bays} bays too narrow for that` : ''}; ` +
        `${isLapped(design) ? `the run-out holds its ${kindTraits[design.kind].sheetEnd}, the other ends have` : 'its ends have'} a row into the stud there` +
        (narrowSheets > 0
          ? `; ${narrowSheets === 1 ? 'a sheet' : `${narrowSheets} sheets`} too short for a row between studs ${narrowSheets === 1 ? 'is' : 'are'} screwed to them`
          : ''),
    ),
  ]
}

/** Wood for both rows: thicker studs, or room for a second one beside each; blocks else. */
const seamRemedy = ({ design, studs, units }: Ground): Said => {
  const { atLeast } = offer(units)
  const { gap, edge } = practice[units]
  // a row square to the curve needs a little more than one square to a flat sheet
  const one = gap / 2 + edge + insideStud + 1
  // those that lie flat are wide enough
  const thin = Math.min(...studs.map(({ width }) => width))
  if (thin < one)
    return `a seam takes two rows of screws: studs ${atLeast(2 * one - 1)} thick or more, or ${atLeast(one)} where two stand side by side`
  if (thin < 2 * one - 1 && design.studs.every < 2 * thin)
    return offering(
      `studs every ${atLeast(2 * thin)} or more leave room for a second one beside each`,
      set('studs.every', atLeast(2 * thin)),
    )
  return 'set blocks between the studs there'
}
