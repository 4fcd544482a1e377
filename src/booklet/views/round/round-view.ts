import { type Drawing, fill, stroke } from '../../../drawing/drawing.ts'
import { type Path, polygonOf, segmentsPath } from '../../../geometry/path.ts'
import type { Point } from '../../../geometry/point.ts'
import { outerPolygon } from '../../../geometry/polygon/outer-polygon.ts'
import { pathSample } from '../../../geometry/sample.ts'
import type { Units } from '../../../length.ts'
import { timberCorners } from '../../../ramp/frame/timber.ts'
import type { SolvedRamp } from '../../../ramp/ramp.ts'
import { timbersOf } from '../plan-view.ts'
import { frameCurve, rampProfile } from '../profile.ts'
import { type View, viewOf, viewStyle } from '../view.ts'

const layer = 'note'
const { lines } = viewStyle

/** Isometric (ISO 5456-3, from memory): lengths along all three axes to one scale, two of them 30° off the level. */
const [across, up] = [Math.cos(Math.PI / 6), Math.sin(Math.PI / 6)]

/** From the toe and the right side, from above: `x` runs away to the right, `z` from the right side away to the left. mm */
export const isometric = ({ x, y }: Point, z: number, ratio: number): Point => ({
  x: (x - z) * across * ratio,
  y: (y + (x + z) * up) * ratio,
})

/** Curves are drawn by chords so near to them, and points so far apart, mm. */
const [chord, spacing] = [1, 20] as const
/** Greys of what shows: edges of sheets, timbers, what is ridden. */
const greys = { edge: 0.75, timber: 0.85, face: 1, ridden: 0.95 } as const

/** Of a ramp's curve each layer is taken off so far up, so that what lies under it is seen; shares of the curve. */
const bareFrom = 0.3
const bareTo = 0.75

/** A frame with its skin laid back layer by layer, deck board and pipe, as one sees it. */
export const roundView = (ramp: SolvedRamp, units: Units, ratio: number): View => {
  const { width, design } = ramp
  const thick = design.sides.thickness
  const profile = rampProfile(ramp, units)
  const face = (points: readonly Point[], grey: number): Drawing => {
    const [first, ...rest] = points
    const path = polygonOf(first!, ...rest)
    return [fill(layer, path, grey), stroke(layer, path, lines.thin)]
  }
  const at = (points: readonly Point[], z: number): readonly Point[] =>
    points.map((p) => isometric(p, z, ratio))
  /** a band that runs across between two depths */
  const strip = (points: readonly Point[], grey: number, near = 0, far = width): Drawing =>
    face([...at(points, near), ...at([...points].reverse(), far)], grey)
  const outline = outerPolygon(profile.side, chord)
  const panel = (near: number): Drawing => [
    ...face(at(outline, near + thick), greys.edge),
    ...face(at(outline, near), greys.face),
  ]
  return viewOf([
    {
      name: 'far sides',
      marks: walls(width, thick, design.sides.count).slice(1).toReversed().flatMap(panel),
    },
    {
      name: 'timbers',
      marks: [...timbersOf(ramp)]
        .sort((a, b) => b.x - b.y - (a.x - a.y))
        .flatMap((timber) => {
          const corners = timberCorners(timber)
          return corners.flatMap((p, i) => {
            const q = corners[(i + 1) % corners.length]!
            // seen where its outward normal looks at us
            return q.y - p.y < p.x - q.x ? strip([p, q], greys.timber, thick, width - thick) : []
          })
        }),
    },
    { name: 'near side', marks: panel(0) },
    { name: 'board', marks: profile.board ? boardMarks(profile.board, strip, face, at) : [] },
    { name: 'pipe', marks: profile.pipe ? pipeMarks(profile.pipe.path, width, face, at) : [] },
    { name: 'skin', marks: skinMarks(ramp, strip, face, at) },
  ])
}

type Strip = (points: readonly Point[], grey: number) => Drawing
type Face = (points: readonly Point[], grey: number) => Drawing
type At = (points: readonly Point[], z: number) => readonly Point[]

/** Near faces of all sides and ribs, from the right, mm. */
const walls = (width: number, thick: number, count: number): readonly number[] =>
  Array.from({ length: count }, (_, i) => ((width - thick) * i) / (count - 1))

/** Its front edge, its near edge, and what one stands on. */
const boardMarks = (board: Path, strip: Strip, face: Face, at: At): Drawing => {
  const [a, b, c, d] = outerPolygon(board, chord) as readonly [Point, Point, Point, Point]
  return [
    ...strip([a, d], greys.edge),
    ...face(at([a, b, c, d], 0), greys.edge),
    ...strip([d, c], greys.face),
  ]
}

/** Its far end, its length between the two lines that bound it, its near end. */
const pipeMarks = (circle: Path, length: number, face: Face, at: At): Drawing => {
  const round = pathSample(circle, spacing / 8)
  const [near, far] = [at(round, 0), at(round, length)]
  // off the axis, which runs away to the left
  const aside = ({ x, y }: Point): number => x * up + y * across
  const most = (way: 1 | -1): number =>
    near.reduce((best, p, i) => (way * (aside(p) - aside(near[best]!)) > 0 ? i : best), 0)
  const [high, low] = [most(1), most(-1)]
  return [
    ...face(far, greys.face),
    ...face([near[high]!, far[high]!, far[low]!, near[low]!], greys.face),
    ...face(near, greys.face),
  ]
}

/** Each layer from its own place up to its end: its lower edge, its near edge, its face. */
const skinMarks = (ramp: SolvedRamp, strip: Strip, face: Face, at: At): Drawing => {
  const curve = frameCurve(ramp)
  const layers = ramp.skin.filter(({ length }) => length > 0)
  return layers.flatMap(({ below, sheet, start, end }, i) => {
    const share = bareFrom + ((bareTo - bareFrom) * i) / Math.max(1, layers.length - 1)
    const from = start + (end - start) * share
    const line = (off: number): readonly Point[] =>
      pathSample(segmentsPath(curve.offset(off).segments(from, end)), spacing)
    const [lower, upper] = [line(below), line(below + sheet.thickness)]
    return [
      ...strip([lower[0]!, upper[0]!], greys.edge),
      ...strip(upper, i === layers.length - 1 ? greys.ridden : greys.face),
      ...face(at([...lower, ...[...upper].reverse()], 0), greys.edge),
    ]
  })
}
