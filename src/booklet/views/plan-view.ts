import { isCurved } from '../../design/kind-traits.ts'
import { groupDimensions, type Measure } from '../../drafting/dimension/group-dimensions.ts'
import { sectionLine } from '../../drafting/section-line.ts'
import { type Drawing, fill, stroke } from '../../drawing/drawing.ts'
import { drawingBounds } from '../../drawing/drawing-bounds.ts'
import { textWidth } from '../../drawing/text-width.ts'
import { type Box, pointsBounds } from '../../geometry/bounds.ts'
import { pathOf, rectangle } from '../../geometry/path.ts'
import { showLength, type Units } from '../../length.ts'
import { wallMiddles } from '../../ramp/frame/bays.ts'
import { timberCorners } from '../../ramp/frame/timber.ts'
import type { SolvedRamp } from '../../ramp/ramp.ts'
import { namesBeside } from './names-beside.ts'
import { type View, type ViewPart, viewOf, viewStyle } from './view.ts'

const layer = 'note'
const { lines } = viewStyle

/** Timbers as they are numbered on the paper: studs from the toe, then those behind the lip. */
export const timbersOf = (ramp: SolvedRamp) => [...ramp.studs, ...ramp.deckTimbers]

/** Where the sections at lip and toe are taken: its Roman number, its place in the bay, how far it keeps off the dimension's figure and off the side, and how far outside the frame it ends, or outside the dimensions; paper mm. */
export const sectionNumber = 'I'
const section = { place: 0.25, off: 4.5, side: 1.5, end: 1.5, outside: 5.5 } as const

/** The frame from above, toe at the left, the ramp's left face above; paper mm. */
interface Plan {
  readonly ramp: SolvedRamp
  readonly ratio: number
  readonly show: (mm: number) => string
  readonly outline: Box
  /** between the sides' inner faces, mm of the ramp; the uppermost first */
  readonly bays: readonly (readonly [number, number])[]
}

/** The frame from above without its skin, toe at the left: sides, timbers with their numbers, the pipe's middle line, the section. */
export const planView = (ramp: SolvedRamp, units: Units, ratio: number): View => {
  const { width, length, design } = ramp
  const thick = design.sides.thickness
  // from the ramp's left face, which lies above
  const walls = wallMiddles(design).map((middle) => width - middle)
  const plan: Plan = {
    ramp,
    ratio,
    show: (mm) => showLength(mm, units),
    outline: { x0: 0, y0: 0, x1: length * ratio, y1: width * ratio },
    bays: walls.slice(1).map((low, i) => [low + thick / 2, walls[i]! - thick / 2] as const),
  }
  const dimensions = dimensionMarks(plan)
  return viewOf([
    { name: 'timbers', marks: timberMarks(plan) },
    { name: 'sides', marks: walls.flatMap((middle) => wallMarks(plan, middle)) },
    ...(ramp.coping ? [{ name: 'pipe', marks: pipeMarks(plan, ramp.coping.centre.x) }] : []),
    ...sectionParts(plan, dimensions),
    { name: 'dimensions', marks: dimensions },
    { name: 'numbers', marks: numberMarks(plan) },
  ])
}

const seenTimbers = ({ ramp, ratio }: Plan) =>
  timbersOf(ramp).map((timber, i) => {
    const { x0, x1, y1 } = pointsBounds(timberCorners(timber))
    return { x0: x0 * ratio, x1: x1 * ratio, top: y1, name: `${i + 1}` }
  })

const timberMarks = (plan: Plan): Drawing => {
  const { bays, ratio } = plan
  // the lower ones first: others lie over them
  const rising = seenTimbers(plan).sort((a, b) => a.top - b.top)
  return rising.flatMap(({ x0, x1 }) =>
    bays.flatMap(([low, high]): Drawing => {
      const path = rectangle(x0, low * ratio, x1, high * ratio)
      return [fill(layer, path, 0.88), stroke(layer, path, lines.thin)]
    }),
  )
}

const wallMarks = ({ ramp, ratio, outline }: Plan, middle: number): Drawing => {
  const thick = ramp.design.sides.thickness
  const path = rectangle(0, (middle - thick / 2) * ratio, outline.x1, (middle + thick / 2) * ratio)
  return [fill(layer, path, 1), stroke(layer, path, lines.outline)]
}

const pipeMarks = ({ ratio, outline }: Plan, x: number): Drawing => [
  stroke(layer, pathOf({ x: x * ratio, y: -2 }, { x: x * ratio, y: outline.y1 + 2 }), lines.axis),
]

const dimensionMarks = ({ ramp, ratio, show, outline, bays }: Plan): Drawing => {
  const measure = (from: number, to: number, mm: number, side: 'left' | 'right'): Measure => ({
    from: { x: side === 'left' ? 0 : outline.x1, y: from * ratio },
    to: { x: side === 'left' ? 0 : outline.x1, y: to * ratio },
    figure: show(mm),
    sides: [side],
  })
  const [low, high] = bays[0]!
  const { placed } = groupDimensions(
    [
      { from: { x: 0, y: 0 }, to: { x: outline.x1, y: 0 }, figure: show(ramp.length), sides: ['below'] },
      measure(0, ramp.width, ramp.width, 'right'),
      // downwards: past its upper end stand the timbers' numbers
      measure(high, low, ramp.studLength, 'left'),
    ],
    outline,
    viewStyle,
  )
  return placed.flatMap((one) => one?.marks ?? [])
}

/** In a bay that is too narrow for a letter beside the figure its ends stand outside the dimensions, no line between them. */
const sectionParts = (plan: Plan, dimensions: Drawing): readonly ViewPart[] => {
  const { ramp, ratio, show, outline, bays } = plan
  if (!isCurved(ramp)) return []
  const { width, studLength } = ramp
  const [low, high] = bays[0]!
  const figureEnd = Math.min(
    ...(
      [
        [(low + high) / 2, studLength],
        [width / 2, width],
      ] as const
    ).map(([middle, mm]) => middle * ratio - textWidth(show(mm), viewStyle.size, 'regular') / 2),
  )
  const place = (low + (high - low) * section.place) * ratio
  const beside = Math.min(place, figureEnd - section.off)
  const narrow = beside <= low * ratio + section.side
  const box = narrow ? drawingBounds(dimensions) : null
  const cut = narrow ? place : beside
  const marks = sectionLine(
    {
      from: { x: box ? box.x0 - section.outside : -section.end, y: cut },
      to: { x: box ? box.x1 + section.outside : outline.x1 + section.end, y: cut },
      looks: 1,
      letter: sectionNumber,
      ...(narrow && { ends: true }),
    },
    viewStyle,
  )
  return [{ name: 'section', marks }]
}

const numberMarks = (plan: Plan): Drawing =>
  namesBeside(
    seenTimbers(plan).map(({ x0, x1, name }) => ({ at: (x0 + x1) / 2, name })),
    plan.outline.y1,
    viewStyle,
  )
