import { alsoDrawn, nothingDrawn } from '../../drafting/clearance.ts'
import { readableAngle } from '../../drafting/dimension/figure.ts'
import { runningDimension } from '../../drafting/dimension/running-dimension.ts'
import { spread } from '../../drafting/dimension/spread.ts'
import { zeroMark } from '../../drafting/dimension/tick.ts'
import { arrowHead } from '../../drawing/arrow.ts'
import { type Drawing, fill, stroke, text } from '../../drawing/drawing.ts'
import { textWidth } from '../../drawing/text-width.ts'
import { affineScale } from '../../geometry/affine.ts'
import { pathOf, polygonOf, segmentsPath } from '../../geometry/path.ts'
import { pathMap } from '../../geometry/path-map.ts'
import { type Point, pointToward } from '../../geometry/point.ts'
import { showLength, type Units } from '../../length.ts'
import type { SolvedRamp } from '../../ramp/ramp.ts'
import { timbersOf } from './plan-view.ts'
import { frameCurve, rampProfile } from './profile.ts'
import { timberNumbers } from './timber-numbers.ts'
import { scaled, type View, viewOf, viewStyle } from './view.ts'

const layer = 'note'
const { lines, size } = viewStyle

/** From the curve out to its dimension line, to where strokes lean over, and to the figures; mm on paper. */
const reach = { line: 4, lean: 6, figure: 10 } as const

/** One side with its timbers numbered: studs by lengths up the curve from the toe, those behind the lip along the floor. */
export const studView = (ramp: SolvedRamp, units: Units, ratio: number): View => {
  const profile = rampProfile(ramp, units)
  const map = affineScale(ratio)
  const show = (mm: number): string => showLength(mm, units)
  const timbers = timbersOf(ramp)
  const solid = [...profile.studs, ...profile.timbers].flatMap((path): Drawing => {
    const on = pathMap(path, map)
    return [fill(layer, on, 0.88), stroke(layer, on, lines.thin)]
  })
  const behind = ramp.deckTimbers
  // those that stand over each other share a stop
  const stops = behind
    .map((timber) => ({ at: timber.x * ratio, figure: show(timber.x) }))
    .sort((a, b) => a.at - b.at)
    .filter((stop, i, all) => i === 0 || stop.figure !== all[i - 1]!.figure)
  const side = [
    stroke(layer, pathMap(profile.side, map), lines.outline),
    ...ramp.splices.flatMap(({ top, foot, plate: { corners } }) => [
      stroke(layer, pathMap(pathOf(top, foot), map), lines.outline),
      stroke(layer, pathMap(polygonOf(corners[0]!, ...corners.slice(1)), map), lines.hidden),
    ]),
  ]
  const along = alongCurve(ramp, ratio, show)
  const floor =
    stops.length > 0
      ? runningDimension(
          { zero: { x: 0, y: -4 }, angle: 0, stops, side: -1, back: 3.5, upright: true },
          viewStyle,
        )
      : []
  const clearance = alsoDrawn(
    alsoDrawn(nothingDrawn, [...side, ...solid], 'thing'),
    [...along, ...floor],
    'note',
  )
  const all = timbers.map((_, i) => i)
  const numbers = timberNumbers(timbers, all, all, ratio, clearance)
  return viewOf([
    { name: 'timbers', marks: solid },
    { name: 'side', marks: side },
    { name: 'numbers', marks: numbers },
    { name: 'up the curve', marks: along },
    ...(floor.length > 0 ? [{ name: 'along the floor', marks: floor }] : []),
  ])
}

/** Running dimensions that follow the curve: a ring at the toe, a head at each stud, figures square to the curve. */
const alongCurve = (ramp: SolvedRamp, ratio: number, show: (mm: number) => string): Drawing => {
  const curve = frameCurve(ramp)
  const wanted = ramp.studs.map(({ at }) => at * ratio)
  const figures = [0, ...wanted]
  // figures stand closer at their far ends, where the curve is hollow
  const wide = Math.max(...ramp.studs.map((stud) => textWidth(show(stud.at), size, 'regular')), 0)
  const far = curve.offset((reach.figure + 0.5 + wide) / ratio)
  const closer = Math.max(0.2, far.lengthTo(curve.lip) / curve.lengthTo(curve.lip))
  const places = spread(figures, (1.5 * size) / Math.min(1, closer))
  /** A point so far up the curve and off it, paper mm. */
  const at = (along: number, off: number): Point => {
    const place = curve.placeAtLength(along / ratio)
    return pointToward(scaled(curve.point(place), ratio), curve.slope(place) + Math.PI / 2, off)
  }
  const slope = (along: number): number => curve.slope(curve.placeAtLength(along / ratio))
  const line = curve.offset(reach.line / ratio)
  const last = ramp.studs.at(-1)
  if (!last) return []
  const end = curve.placeAtLength(last.at)
  return [
    stroke(layer, pathMap(segmentsPath(line.segments(curve.toe, end)), affineScale(ratio)), lines.thin),
    ...zeroMark(at(0, reach.line), viewStyle),
    ...wanted.flatMap((along) => arrowHead(layer, at(along, reach.line), slope(along), 0.8 * size)),
    ...figures.flatMap((along, i): Drawing => {
      const place = places[i]!
      const out = slope(place) + Math.PI / 2
      const turn = readableAngle(out)
      const away = Math.cos(turn - out) > 0
      const foot = pointToward(at(place, reach.figure + 0.5), turn - Math.PI / 2, size / 2)
      return [
        stroke(
          layer,
          i === 0
            ? pathOf(at(0, reach.line + 0.4 * size), at(0, reach.lean), at(place, reach.figure))
            : pathOf(at(along, 0.4), at(along, reach.lean), at(place, reach.figure)),
          lines.thin,
        ),
        text(layer, foot, size, i === 0 ? '0' : show(ramp.studs[i - 1]!.at), {
          angle: turn,
          align: away ? 'left' : 'right',
        }),
      ]
    }),
  ]
}
