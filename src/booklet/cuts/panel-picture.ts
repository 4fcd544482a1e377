import type { Units } from '../../design/design.ts'
import { balloon, balloonRadius } from '../../drafting/balloon.ts'
import { runningDimension, runningReach } from '../../drafting/dimension/running-dimension.ts'
import { spread } from '../../drafting/dimension/spread.ts'
import { type DraftStyle, draftStyle } from '../../drafting/line-types.ts'
import { chooseScale, type Scale } from '../../drafting/scale.ts'
import { arrowHead } from '../../drawing/arrow.ts'
import { type Drawing, fill, stroke, text } from '../../drawing/drawing.ts'
import { textWidth } from '../../drawing/text-width.ts'
import { affineScale } from '../../geometry/affine.ts'
import { pathBounds } from '../../geometry/bounds.ts'
import { circle, pathOf, rectangle } from '../../geometry/path.ts'
import { pathMap } from '../../geometry/path-map.ts'
import { type Point, pointDistance, pointToward } from '../../geometry/point.ts'
import { showLength } from '../../length.ts'
import type { Panel } from '../../stock/panel/panels.ts'
import type { SawStep } from '../../stock/panel/saw-order.ts'
import type { CutRow } from './cut-rows.ts'
import { upFace } from './panel-words.ts'
import { pieceMarks } from './piece-marks.ts'
import { markWords } from './piece-words.ts'

const { size, lines } = draftStyle
/** Between the panel and the lines of figures, and for the numbers of cuts beside it, where there are any. */
const off = 3
const numbers = 9
const noNumbers = 2

/** Room over a panel for the numbers of cuts that run out there. */
const overPanel = ({ steps, size: [width] }: Panel): number =>
  steps.some((step) => step.kind === 'cross' && step.to > width - 1) ? numbers : noNumbers

/** The arrow of the grain over them. */
const above = 4

/** Distances of the pieces' corners from the left end and from the lower edge. */
const reachOf = (panel: Panel, units: Units) => {
  const xs = stopsOf(panel, ({ x }) => x, units)
  const ys = stopsOf(panel, ({ y }) => y, units)
  const left =
    off +
    runningReach(
      ys.map(({ figure }) => figure),
      size,
    )
  // below the panel figures stand upright, as a rule
  return { xs, ys, low: off + runningReach([], size) + size, left }
}

/** The largest usual scale at which a panel with its figures fits; where several pieces would be too narrow for their marks, a page higher by `more`. */
export const panelScale = (
  panel: Panel,
  page: { readonly width: number; readonly height: number },
  units: Units,
): Scale => {
  const [width, length] = panel.size
  const { low, left } = reachOf(panel, units)
  const scaleAt = (height: number): Scale =>
    chooseScale(
      units,
      { width: length, height: width },
      { width: page.width - left - numbers, height: height - low - overPanel(panel) - above },
    )
  const usual = scaleAt(page.height)
  const narrow = panel.pieces.filter(({ outline }) => {
    const { x0, y0, x1, y1 } = pathBounds(outline)
    return Math.min(x1 - x0, y1 - y0) * usual.ratio < leastPiece
  })
  return narrow.length < several ? usual : scaleAt(page.height + more)
}
/** So narrow on paper a piece holds its mark, so many that do not are several, and so much higher their drawing may be; mm. */
const leastPiece = 5
const several = 4
const more = 20

/** A panel to scale with its lower left corner at zero: pieces, distances of their corners from two edges, numbered cuts. */
export const panelPicture = (
  panel: Panel,
  { ratio }: Scale,
  units: Units,
  cuts: readonly CutRow[],
): Drawing => {
  const [width, length] = panel.size
  const { xs, ys } = reachOf(panel, units)
  const small = (p: Point): Point => ({ x: p.x * ratio, y: p.y * ratio })
  const map = affineScale(ratio)
  const named = panel.pieces.map((piece) => {
    // a ring is one cut of the table: a curved piece is sawn edge by edge, by letters
    const number = panel.steps.findIndex(
      (step) => step.kind === 'out' && step.square && step.mark === piece.part.mark,
    )
    return pieceMarks(piece, pathMap(piece.outline, map), number < 0 ? null : number + 1)
  })
  const along = { zero: { x: 0, y: -off }, angle: 0, side: -1, back: off, upright: true } as const
  const up = { zero: { x: -off, y: 0 }, angle: Math.PI / 2, side: 1, back: off } as const
  const scaled = (stops: typeof xs) => stops.map(({ at, figure }) => ({ at: at * ratio, figure }))
  return [
    stroke('mark', rectangle(0, 0, length * ratio, width * ratio), lines.axis),
    ...restMarks(panel, ratio, units),
    ...grainMarks(panel, ratio),
    ...faceMarks(panel, ratio),
    ...named.flatMap(({ marks }) => marks),
    ...edgeLetters(cuts, ratio),
    ...panel.pieces.map((piece) => stroke('mark', circle(small(piece), 1.2), lines.outline)),
    ...cutLines(
      panel.steps,
      panel,
      ratio,
      named.flatMap(({ numbers }) => numbers.flatMap((mark) => (mark.kind === 'text' ? [mark.at] : []))),
    ),
    // over every line
    ...named.flatMap(({ numbers }) => numbers),
    ...runningDimension({ ...along, stops: scaled(xs) }, draftStyle),
    ...runningDimension({ ...up, stops: scaled(ys) }, draftStyle),
  ]
}

/** `1a` inside the middle of each edge of a curved piece, as the order of cuts has it. */
const edgeLetters = (cuts: readonly CutRow[], ratio: number): Drawing =>
  cuts.flatMap(({ number, edge }) => {
    if (!edge) return []
    const { x, y } = pointToward({ x: edge.at.x * ratio, y: edge.at.y * ratio }, edge.inward, 3)
    return [text('note', { x, y: y - letterSize / 2 }, letterSize, number, { align: 'middle' })]
  })
const letterSize = 2

/** Distances of the pieces' corners, each once, with the marks of the pieces. */
const stopsOf = (
  { pieces }: Panel,
  of: (p: Point) => number,
  units: Units,
): readonly { readonly at: number; readonly figure: string }[] => {
  const stops = new Map<number, string[]>()
  for (const piece of pieces) {
    const at = Math.round(of(piece) * 100) / 100
    stops.set(at, [...(stops.get(at) ?? []), markWords(piece)])
  }
  return [...stops]
    .sort(([a], [b]) => a - b)
    .filter(([at]) => at > 0)
    .map(([at, marks]) => ({ at, figure: `${showLength(at, units)}  ${marks.join(' ')}` }))
}

const restMarks = ({ rest }: Panel, ratio: number, units: Units): Drawing => {
  if (!rest) return []
  const extent = `${showLength(rest.x1 - rest.x0, units)} × ${showLength(rest.y1 - rest.y0, units)}`
  const [x, y] = [((rest.x0 + rest.x1) / 2) * ratio, ((rest.y0 + rest.y1) / 2) * ratio]
  const [wide, high] = [(rest.x1 - rest.x0) * ratio, (rest.y1 - rest.y0) * ratio]
  // numbers of cuts stand on its edges
  const ways = [[`rest: ${extent}`], ['rest:', extent]].filter(
    (lines) =>
      Math.max(...lines.map((line) => textWidth(line, size, 'regular'))) + besideWords <= wide &&
      (2 * lines.length + 1) * size < high,
  )
  return (ways[0] ?? []).map((line, i, all) =>
    text('note', { x, y: y - size / 2 + (all.length - 1 - 2 * i) * 0.8 * size }, size, line, {
      align: 'middle',
      grey: 0.25,
    }),
  )
}
/** Around the words of what is left, mm. */
const besideWords = 8

/** Which way the grain runs: an arrow both ways along the upper edge, outside of the panel. */
const grainMarks = (panel: Panel, ratio: number): Drawing => {
  const {
    size: [width, length],
    sheet,
  } = panel
  if (sheet.material !== 'plywood') return []
  const y = width * ratio + overPanel(panel) + above - 2
  const x = (length * ratio) / 2
  return [
    stroke('note', pathOf({ x: x - 20, y }, { x: x + 20, y }), lines.thin),
    ...arrowHead('note', { x: x - 20, y }, Math.PI, size),
    ...arrowHead('note', { x: x + 20, y }, 0, size),
    fill('note', rectangle(x - 6, y - 1, x + 6, y + 1), 1),
    text('note', { x, y: y - size / 2 }, size, 'grain', { align: 'middle' }),
  ]
}

/** Which face lies up, before the arrow of the grain. */
const faceMarks = (panel: Panel, ratio: number): Drawing => {
  const [width, length] = panel.size
  const words = upFace(panel)
  const y = width * ratio + overPanel(panel) + above - 2 - size / 2
  return words === null
    ? []
    : [text('note', { x: (length * ratio) / 2 - 23, y }, size, words, { align: 'right', face: 'bold' })]
}

/** Straight cuts, each with its number: beside the panel where it runs out there, else on its line. */
const cutLines = (
  steps: readonly SawStep[],
  { size: [width, length] }: Panel,
  ratio: number,
  /** where other numbers stand, paper mm */
  taken: readonly Point[],
): Drawing => {
  const straight = steps.flatMap((step, i) => (step.kind === 'out' ? [] : [{ ...step, name: String(i + 1) }]))
  const right = straight.filter(({ kind, to }) => kind === 'rip' && to > length - 1)
  const above = straight.filter(({ kind, to }) => kind === 'cross' && to > width - 1)
  const inner = straight.filter((cut) => !right.includes(cut) && !above.includes(cut))
  const row = (
    cuts: typeof straight,
  ): readonly { readonly name: string; readonly at: number; readonly on: number }[] => {
    const sorted = [...cuts].sort((a, b) => a.at - b.at)
    const places = spread(
      sorted.map(({ at }) => at * ratio),
      2.2 * balloonRadius('00', 2),
    )
    return sorted.map(({ name, at }, i) => ({ name, at: places[i]!, on: at * ratio }))
  }
  // over the outlines
  const small = { ...draftStyle, layer: 'mark' as const, size: 2 }
  const [w, l] = [width * ratio, length * ratio]
  return [
    ...straight.map(({ kind, at, from, to }) => {
      const [a, f, t] = [at * ratio, from * ratio, to * ratio]
      const path =
        kind === 'rip' ? pathOf({ x: f, y: a }, { x: t, y: a }) : pathOf({ x: a, y: f }, { x: a, y: t })
      return stroke('mark', path, { width: 0.18, dash: [1.5, 1] })
    }),
    ...row(right).flatMap(({ name, at, on }) => balloon({ x: l + 6, y: at }, name, small, { x: l, y: on })),
    ...row(above).flatMap(({ name, at, on }) => balloon({ x: at, y: w + 5 }, name, small, { x: on, y: w })),
    ...innerNumbers(inner, straight, ratio, small, taken),
  ]
}

type Straight = Extract<SawStep, { readonly kind: 'rip' | 'cross' }>

/** Numbers on their lines, where no other line and no other number is near. */
const innerNumbers = (
  inner: readonly (Straight & { readonly name: string })[],
  straight: readonly Straight[],
  ratio: number,
  style: DraftStyle,
  taken: readonly Point[],
): Drawing => {
  const placed: Point[] = [...taken]
  return inner.flatMap((cut) => {
    const { kind, name, at, from, to } = cut
    const radius = balloonRadius(name, style.size)
    const places = shares.map((share): Point => {
      const [a, m] = [at * ratio, (from + (to - from) * share) * ratio]
      return kind === 'rip' ? { x: m, y: a } : { x: a, y: m }
    })
    const fromNumbers = (p: Point): number =>
      Math.min(...placed.map((other) => pointDistance(other, p) - radius), Number.POSITIVE_INFINITY)
    const room = (p: Point): number =>
      Math.min(
        ...straight.flatMap((other) => (other === cut ? [] : [cutDistance(other, p, ratio)])),
        fromNumbers(p),
      )
    const roomy = places.find((p) => room(p) > radius + 0.5)
    // beside a cut on all but the same line no place is free of lines
    const apart = places.find((p) => fromNumbers(p) > radius + 0.5)
    const place = roomy ?? apart ?? places.reduce((most, p) => (room(p) > room(most) ? p : most))
    placed.push(place)
    return balloon(place, name, style)
  })
}
/** Along a cut, the middle first. */
const shares = [0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82]

const cutDistance = ({ kind, at, from, to }: Straight, { x, y }: Point, ratio: number): number => {
  const [along, off] = kind === 'rip' ? [x, y] : [y, x]
  const beyond = Math.max(0, from * ratio - along, along - to * ratio)
  return Math.hypot(beyond, off - at * ratio)
}
