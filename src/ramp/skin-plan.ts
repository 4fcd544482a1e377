import type { RampDesign, Stock, Units } from '../design/design.ts'
import { type Finding, note, warn } from './check.ts'
import type { Curve } from './curve.ts'
import { measured, offer, same } from './offer.ts'
import { screwGrip, timberRun } from './screws.ts'
import type { SkinLayer } from './skin.ts'
import type { Stud } from './studs.ts'
import { type Timber, timberCorners } from './timber.ts'

/** A stretch of a layer, up it or across it; of the flat sheet, mm. */
export interface Stretch {
  readonly from: number
  readonly length: number
}

/** Where two sheets meet up the ramp: the middle of their gap, from the layer's toe end on the flat sheet. */
export interface Seam {
  readonly at: number
  /** index of the stud under it; null where none is in reach */
  readonly stud: number | null
  /** the layer below has a seam on the same stud */
  readonly shared: boolean
}

/** Where two sheets meet across the ramp: from its left outer face. */
export interface AcrossSeam {
  readonly at: number
  /** a rib lies under it; else it takes a block between the studs */
  readonly rib: boolean
}

export interface ScrewRow {
  /** from the layer's toe end on the flat sheet */
  readonly at: number
  /** the same as a place on the curve */
  readonly place: number
  readonly on: 'stud' | 'seam' | 'between'
  /** index of the stud that it meets; null between studs */
  readonly stud: number | null
  /** screws, from the ramp's left outer face */
  readonly across: readonly number[]
}

/** How one layer is laid: a sheet lies with its long side across the ramp. */
export interface LayerPlan {
  readonly layer: number
  readonly pieces: readonly Stretch[]
  readonly seams: readonly Seam[]
  readonly widths: readonly Stretch[]
  readonly acrossSeams: readonly AcrossSeam[]
  readonly rows: readonly ScrewRow[]
  /** most from one screw to the next along a row, before any is moved clear */
  readonly spacing: number
}

const inch = 25.4

/** Common practice, no source. mm */
const practice = {
  mm: { gap: 3, edge: 10.5, base: 250, top: 175, between: 25 },
  in: { gap: inch / 8, edge: (7 * inch) / 16, base: 10 * inch, top: 7 * inch, between: inch },
} as const

/** Between neighbouring sheets; of a screw from its sheet's edge; of a screw between studs from their faces. */
export const skinPractice = practice

/** How far a screw stays inside a stud's long edges, off a stud's end, and off another screw. mm */
const insideStud = 3
const studEnd = 20
const screwApart = 15

/** No piece is narrower up the ramp, or across it. mm */
const leastPiece = 100
const leastWidth = 300

/** Middle planes of sides and ribs, from the ramp's left outer face. */
export const wallMiddles = ({ width, sides }: RampDesign): readonly number[] =>
  Array.from(
    { length: sides.count },
    (_, i) => sides.thickness / 2 + (i * (width - sides.thickness)) / (sides.count - 1),
  )

interface Framing {
  readonly design: RampDesign
  readonly curve: Curve
  readonly studs: readonly Stud[]
  /** those that carry no skin, but that a screw may meet */
  readonly timbers: readonly Timber[]
  readonly panel: Stock['panel']
  readonly units: Units
}

export const planSkin = (framing: Framing, skin: readonly SkinLayer[]): readonly LayerPlan[] => {
  const plans: LayerPlan[] = []
  for (const layer of skin) plans.push(planLayer(framing, layer, skin.length, plans))
  return plans
}

/** Whether the top sheet's screws go between the studs: there must be sheets below to take them. */
export const fastensBetween = ({ fasten, skin }: RampDesign): boolean =>
  fasten === 'between' && skin.length > 1

const planLayer = (
  framing: Framing,
  layer: SkinLayer,
  count: number,
  below: readonly LayerPlan[],
): LayerPlan => {
  const { design, panel, units } = framing
  const { gap, base, top } = practice[units]
  const isTop = layer.layer === count && count > 1
  const spacing = isTop ? top : base
  const across = acrossSeams(design, panel[1], gap, layer.layer % 2 === 0)
  const widths = stretches(
    design.width,
    across.map(({ at }) => at),
    gap,
  )
  const empty = { layer: layer.layer, widths, acrossSeams: across, spacing }
  if (layer.length <= same) return { ...empty, pieces: [], seams: [], widths: [], acrossSeams: [], rows: [] }
  const lying = lie(framing.curve, layer)
  const seams = upSeams(framing, layer, lying, new Set(below.at(-1)?.seams.flatMap(({ stud }) => stud ?? [])))
  const places =
    isTop && fastensBetween(design)
      ? betweenRows(framing, layer, lying)
      : studRows(framing, layer, lying, seams)
  const lower = below.flatMap(({ rows }) => rows)
  return {
    ...empty,
    pieces: stretches(
      layer.length,
      seams.map(({ at }) => at),
      gap,
    ),
    seams,
    rows: places.flatMap((row) => {
      const from = framing.curve.lengthTo(row.place)
      const near = lower.filter((other) => Math.abs(framing.curve.lengthTo(other.place) - from) < screwApart)
      const screws = screwsAcross(
        framing,
        widths,
        spacing,
        layer.layer % 2 === 0,
        near.flatMap((other) => other.across),
      )
      return screws.length === 0 ? [] : [{ ...row, across: screws }]
    }),
  }
}

/** A length cut at the middles of its gaps. */
const stretches = (length: number, seams: readonly number[], gap: number): readonly Stretch[] =>
  [...seams, length].map((to, i) => {
    const from = i === 0 ? 0 : seams[i - 1]! + gap / 2
    return { from, length: (i === seams.length ? to : to - gap / 2) - from }
  })

/** From the flat sheet to the curve and back. */
interface Lying {
  readonly placeAt: (at: number) => number
  readonly markOf: (stud: Stud) => number
}

const lie = (curve: Curve, { below, sheet }: SkinLayer): Lying => {
  const middle = curve.offset(below + sheet.thickness / 2)
  return {
    placeAt: (at) => middle.placeAtLength(at),
    markOf: (stud) => middle.lengthTo(curve.placeAtLength(stud.at)),
  }
}

/** Whether a screw at a place goes into a stud, off its edges and as deep as it should or as the stud is. */
const meets = (curve: Curve, place: number, stud: Stud, units: Units): boolean => {
  const run = timberRun(curve, place, stud, insideStud)
  return run !== null && run.to >= Math.min(screwGrip[units], stud.depth) - same
}

/**
 * The farthest stud that each sheet reaches, none that the layer below has a seam on, and neither the first nor the last:
 * every piece lies on two studs. Two rows of screws must find wood in it.
 */
const upSeams = (
  { curve, studs, panel, units }: Framing,
  layer: SkinLayer,
  { placeAt, markOf }: Lying,
  taken: ReadonlySet<number>,
): readonly Seam[] => {
  const { gap, edge } = practice[units]
  const [short] = panel
  const fit = studs
    .map((stud, i) => ({ stud, i, at: markOf(stud) }))
    .filter(
      ({ stud, i, at }) =>
        i > 0 &&
        i < studs.length - 1 &&
        at >= leastPiece &&
        at <= layer.length - leastPiece &&
        [-1, 1].every((side) => meets(curve, placeAt(at + side * (gap / 2 + edge)), stud, units)),
    )
  const seams: Seam[] = []
  let from = 0
  while (layer.length - from > short + same) {
    const last = seams.at(-1)?.at ?? 0
    const reach = from + short + gap / 2
    const inReach = fit.filter(({ at }) => at > last + same && at <= reach + same)
    const free = inReach.filter(({ i }) => !taken.has(i)).at(-1)
    const chosen = free ?? inReach.at(-1)
    const at = chosen?.at ?? Math.min(reach, Math.max(layer.length - leastPiece, from + short / 2))
    seams.push({ at, stud: chosen?.i ?? null, shared: chosen !== undefined && free === undefined })
    from = at + gap / 2
  }
  return seams
}

/** The farthest rib that each sheet reaches; every other layer begins at the other side. */
const acrossSeams = (
  design: RampDesign,
  long: number,
  gap: number,
  mirrored: boolean,
): readonly AcrossSeam[] => {
  const { width } = design
  const ribs = wallMiddles(design).slice(1, -1)
  const seams: AcrossSeam[] = []
  let from = 0
  while (width - from > long + same) {
    const last = seams.at(-1)?.at ?? 0
    const reach = from + long + gap / 2
    const rib = ribs.findLast((at) => at <= reach + same && at > last + leastWidth)
    const at = rib ?? Math.min(reach, Math.max(width - leastWidth, last + leastWidth))
    seams.push({ at, rib: rib !== undefined })
    from = at + gap / 2
  }
  return mirrored ? seams.map(({ at, rib }) => ({ at: width - at, rib })).reverse() : seams
}

type RowPlace = Omit<ScrewRow, 'across'>

/** One row on every stud that the layer covers, two on a seam. */
const studRows = (
  { curve, studs, units }: Framing,
  layer: SkinLayer,
  { placeAt, markOf }: Lying,
  seams: readonly Seam[],
): readonly RowPlace[] => {
  const { gap, edge } = practice[units]
  const row = (at: number, on: ScrewRow['on'], i: number): readonly RowPlace[] => {
    const place = placeAt(at)
    return meets(curve, place, studs[i]!, units) ? [{ at, place, on, stud: i }] : []
  }
  return studs.flatMap((stud, i) => {
    const mark = markOf(stud)
    const seam = seams.find((s) => s.stud === i)
    if (seam) return [-1, 1].flatMap((side) => row(seam.at + side * (gap / 2 + edge), 'seam', i))
    const at = Math.max(edge, Math.min(mark, layer.length - edge))
    // a seam that found no stud may come near
    if (seams.some((s) => Math.abs(s.at - at) < gap / 2 + edge - same)) return []
    return row(at, 'stud', i)
  })
}

/** Midway between neighbouring studs, where all timber keeps its distance. */
const betweenRows = (
  { curve, studs, timbers, units }: Framing,
  layer: SkinLayer,
  { placeAt, markOf }: Lying,
): readonly RowPlace[] => {
  const { edge, between } = practice[units]
  return studs.slice(1).flatMap((stud, i): readonly RowPlace[] => {
    const before = studs[i]!
    // half way from face to face, not from middle to middle: a flat one is wider
    const half = (before.at + before.width / 2 + stud.at - stud.width / 2) / 2
    const at = markOf({ ...stud, at: half })
    const place = placeAt(at)
    if (at < edge || at > layer.length - edge) return []
    const clear = [...studs, ...timbers].every((t) => timberDistance(curve, place, t) >= between - same)
    return clear ? [{ at, place, on: 'between', stud: null }] : []
  })
}

/** From the frame's curve at a place to the nearest point of a timber; 0 inside it. */
const timberDistance = (curve: Curve, place: number, timber: Timber): number => {
  const { x, y } = curve.point(place)
  const [right, left] = timberCorners(timber)
  const [cos, sin] = [Math.cos(timber.angle), Math.sin(timber.angle)]
  const middle = { x: (right!.x + left!.x) / 2, y: (right!.y + left!.y) / 2 }
  const [along, into] = [
    (x - middle.x) * cos + (y - middle.y) * sin,
    (x - middle.x) * sin - (y - middle.y) * cos,
  ]
  return Math.hypot(Math.max(0, Math.abs(along) - timber.width / 2), Math.max(0, -into, into - timber.depth))
}

/** Evenly along each sheet, off its edges, sides and ribs, and moved clear of the screws below. */
const screwsAcross = (
  { design, units }: Framing,
  widths: readonly Stretch[],
  spacing: number,
  shifted: boolean,
  below: readonly number[],
): readonly number[] => {
  const { edge } = practice[units]
  const keep = design.sides.thickness / 2 + studEnd
  const walls = wallMiddles(design)
  const offWalls = (p: number): boolean => walls.every((m) => Math.abs(p - m) >= keep - same)
  const screws: number[] = []
  for (const { from, length } of widths) {
    let [low, high] = [from + edge, from + length - edge]
    for (const m of walls) if (Math.abs(low - m) < keep) low = m + keep
    for (const m of [...walls].reverse()) if (Math.abs(high - m) < keep) high = m - keep
    if (low > high + same) continue
    const count = Math.max(1, Math.ceil((high - low) / spacing - 1e-9))
    const step = (high - low) / count
    const wanted = shifted
      ? Array.from({ length: count }, (_, i) => low + (i + 0.5) * step)
      : Array.from({ length: count + 1 }, (_, i) => low + i * step)
    const free = (p: number): boolean =>
      p >= low - same &&
      p <= high + same &&
      offWalls(p) &&
      [...below, ...screws].every((other) => Math.abs(other - p) >= screwApart - same)
    for (const p of wanted) {
      const found = free(p) ? p : aside(p, step / 2).find(free)
      if (found !== undefined) screws.push(found)
    }
  }
  return screws
}

/** The nearest first, in whole millimetres either way. */
const aside = (p: number, most: number): readonly number[] =>
  Array.from({ length: Math.max(0, Math.floor(most)) }, (_, i) => [p + i + 1, p - i - 1]).flat()

/**
 * Seams without a stud of their own, with the spacing that brings them one; sheets that meet across; a top sheet whose
 * screws find no room between the studs. `planAt` plans the same skin on studs of another spacing.
 */
export const planFindings = (
  plans: readonly LayerPlan[],
  { design, studs, panel, units }: Framing,
  planAt: (every: number) => readonly LayerPlan[],
): readonly Finding[] => {
  const show = (mm: number): string => measured(mm, units)
  const findings: Finding[] = []
  const bad = plans.flatMap(({ layer, seams }) =>
    seams.flatMap((seam) =>
      seam.stud === null
        ? [`layer ${layer}: no stud that takes a seam lies within reach, which ends ${show(seam.at)} up`]
        : seam.shared
          ? [`layers ${layer - 1} and ${layer} meet on the same stud, ${show(studs[seam.stud]!.at)} up`]
          : [],
    ),
  )
  if (bad.length > 0)
    findings.push(warn('seam-stud', `${bad.join('; ')}; ${seamRemedy(design, panel, units, planAt)}`))
  const wide = plans.filter(({ acrossSeams: seams }) => seams.length > 0)
  if (wide.length > 0)
    findings.push(
      note(
        'seam-across',
        `sheets ${show(panel[1])} long do not reach across ${show(design.width)}: ${wide
          .map(
            ({ layer, acrossSeams: seams }) =>
              `layer ${layer} meets ${seams.map(({ at, rib }) => `${show(at)} from the left ${rib ? 'over a rib' : 'over blocks that you set between the studs'}`).join(', ')}`,
          )
          .join('; ')}`,
      ),
    )
  if (design.fasten === 'between') findings.push(...betweenFindings(plans, design, units))
  return findings
}

const betweenFindings = (
  plans: readonly LayerPlan[],
  { skin, studs }: RampDesign,
  units: Units,
): readonly Finding[] => {
  const top = plans.at(-1)
  if (!top || top.pieces.length === 0) return []
  if (skin.length === 1)
    return [note('fasten-between', 'there is one layer only, so its screws go into the studs all the same')]
  const { between } = practice[units]
  const first = top.rows[0]
  if (!first)
    return [
      warn(
        'fasten-between',
        `no row between the studs keeps ${measured(between, units)} off their faces at a spacing of ${measured(studs.every, units)}; say \`fasten: studs\``,
      ),
    ]
  return [
    note(
      'fasten-between',
      `the top sheet's rows lie midway between studs, ${measured(between, units)} or more off all timber: ` +
        `the first is ${measured(first.at, units)} from its toe end, so hold the ends of the sheets by what covers them, or by a row into the stud there`,
    ),
  ]
}

/** The nearest spacing that works, tried downward as it would be typed; else a stud thick enough for two rows. */
const seamRemedy = (
  { studs }: RampDesign,
  [short]: Stock['panel'],
  units: Units,
  planAt: (every: number) => readonly LayerPlan[],
): string => {
  const { atLeast } = offer(units)
  const step = units === 'mm' ? 10 : inch / 2
  const good = (every: number): boolean =>
    planAt(every).every(({ seams }) => seams.every((seam) => seam.stud !== null && !seam.shared))
  const { gap, edge } = practice[units]
  const thick = gap + 2 * (edge + insideStud) + 1
  if (Math.min(...studs.section) < thick)
    return `a seam takes two rows of screws: studs ${atLeast(thick)} thick or more, or two side by side`
  for (let every = Math.ceil(studs.every / step - 1) * step; every >= 40; every -= step)
    if (good(every)) return `studs every ${offer(units).atMost(every)} bring each seam its own`
  return `put a stud of its own there, or cut the sheets shorter than ${measured(short, units)}`
}
