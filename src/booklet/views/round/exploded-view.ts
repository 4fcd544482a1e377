import { calloutWays } from '../../../drafting/callout.ts'
import { alsoDrawn, firstClear, nothingDrawn } from '../../../drafting/clearance.ts'
import { type Drawing, fill, stroke } from '../../../drawing/drawing.ts'
import {
  type Affine,
  affineApply,
  affineScale,
  affineThen,
  affineTranslate,
} from '../../../geometry/affine.ts'
import { pathBounds } from '../../../geometry/bounds.ts'
import { type Path, pathOf } from '../../../geometry/path.ts'
import { pathMap } from '../../../geometry/path-map.ts'
import { type Point, pointToward } from '../../../geometry/point.ts'
import type { Units } from '../../../length.ts'
import type { SolvedRamp } from '../../../ramp/ramp.ts'
import type { Layer } from '../../../ramp/skin/layer.ts'
import { frameCurve, type Profile, rampProfile } from '../profile.ts'
import { type View, viewOf, viewStyle } from '../view.ts'

const layer = 'note'
const { lines } = viewStyle

/** From one part to the next, mm on paper. */
const step = 9

/** A part of a ramp as it comes off. */
export type PartKind =
  | { readonly kind: 'frame' | 'run-out' | 'deck-board' | 'pipe' }
  | { readonly kind: 'layer'; readonly layer: number }

/** One part of the drawing, lifted off, what its name points to, and where that may stand from there, degrees; paper mm. */
interface Lifted {
  readonly part: PartKind
  readonly marks: Drawing
  readonly to: Point
  readonly ways: readonly number[]
}

/** How a ramp is taken apart: its outlines, its scale, and what it is moved by. */
interface Apart {
  readonly ramp: SolvedRamp
  readonly profile: Profile
  readonly laid: readonly Layer[]
  readonly map: Affine
  /** in place, then so far that way, paper mm */
  readonly moved: (way: number, far: number) => Affine
  /** square to the middle of the curve */
  readonly up: number
}

/** What lies on what: the frame, each layer, the board, the pipe, the run-out, moved apart along the way they go on, each with what `say` calls it. */
export const explodedView = (
  ramp: SolvedRamp,
  units: Units,
  ratio: number,
  say: (part: PartKind) => string,
): View => {
  const apart = apartOf(ramp, units, ratio)
  const parts = [
    liftedFrame(apart),
    ...liftedLayers(apart),
    ...liftedRunOut(apart),
    ...liftedBoard(apart),
    ...liftedPipe(apart),
  ]
  const drawn = [...ways(apart), ...parts.flatMap(({ marks }) => marks)]
  let clearance = alsoDrawn(nothingDrawn, drawn, 'thing')
  const names = parts.flatMap(({ part, to, ways: among }) => {
    const wanted = calloutWays(to, [say(part)], viewStyle, among)
    const marks = firstClear(clearance, wanted) ?? firstClear(nothingDrawn, wanted)!
    clearance = alsoDrawn(clearance, marks, 'note')
    return marks
  })
  return viewOf([
    { name: 'parts', marks: drawn },
    { name: 'names', marks: names },
  ])
}

const apartOf = (ramp: SolvedRamp, units: Units, ratio: number): Apart => {
  const curve = frameCurve(ramp)
  const map = affineScale(ratio)
  return {
    ramp,
    profile: rampProfile(ramp, units),
    laid: ramp.skin.filter(({ length }) => length > 0),
    map,
    moved: (way, far) => {
      const { x, y } = pointToward({ x: 0, y: 0 }, way, far)
      return affineThen(map, affineTranslate(x, y))
    },
    up: curve.slope((curve.toe + curve.lip) / 2) + Math.PI / 2,
  }
}

/** Where names stand from what they name: level first. */
const [left, right, above] = [
  [175, 160, -170, 145, -150],
  [5, 20, -10, 35, -30],
  [75, 60, 85, 45, 30],
] as const

const seen = (path: Path, by: Affine): Drawing => {
  const on = pathMap(path, by)
  return [fill(layer, on, 1), stroke(layer, on, lines.outline)]
}

const liftedFrame = ({ profile, map }: Apart): Lifted => {
  const behind = { width: lines.hidden.width, dash: [1.2, 0.5] }
  const { x1, y0, y1 } = pathBounds(pathMap(profile.side, map))
  return {
    part: { kind: 'frame' },
    marks: [
      ...seen(profile.side, map),
      ...[...profile.studs, ...profile.timbers].map((path) => stroke(layer, pathMap(path, map), behind)),
    ],
    to: { x: x1 - 2, y: (y0 + y1) / 2 },
    ways: right,
  }
}

const liftedLayers = ({ ramp, profile, laid, moved, up }: Apart): readonly Lifted[] => {
  const curve = frameCurve(ramp)
  return laid.map(({ layer: number, below, start: from }, i) => {
    const by = moved(up, (i + 1) * step)
    const start = affineApply(by, curve.offset(below).point(from))
    return {
      part: { kind: 'layer', layer: number },
      marks: seen(profile.skin[i]!, by),
      to: start,
      ways: left,
    }
  })
}

const liftedRunOut = ({ profile, laid, moved, up }: Apart): readonly Lifted[] => {
  if (!profile.runOut) return []
  const by = moved(up, (laid.length + 1) * step)
  const { x0, y0 } = pathBounds(pathMap(profile.runOut, by))
  return [
    {
      part: { kind: 'run-out' },
      marks: seen(profile.runOut, by),
      to: { x: x0, y: y0 + 0.3 },
      // over it, where nothing is
      ways: above,
    },
  ]
}

const liftedBoard = ({ profile, moved }: Apart): readonly Lifted[] => {
  if (!profile.board) return []
  const by = moved(Math.PI / 2, 1.6 * step)
  const { x1, y0, y1 } = pathBounds(pathMap(profile.board, by))
  return [
    {
      part: { kind: 'deck-board' },
      marks: seen(profile.board, by),
      to: { x: x1, y: (y0 + y1) / 2 },
      ways: right,
    },
  ]
}

const liftedPipe = ({ profile: { pipe }, map, moved }: Apart): readonly Lifted[] => {
  if (!pipe) return []
  const by = moved(Math.PI / 2, 3 * step)
  const box = pathBounds(pathMap(pipe.path, by))
  const centre = { x: (box.x0 + box.x1) / 2, y: (box.y0 + box.y1) / 2 }
  return [
    {
      part: { kind: 'pipe' },
      marks: [
        stroke(layer, pathOf(affineApply(map, pipe.centre), centre), lines.axis),
        ...seen(pipe.path, by),
      ],
      to: { x: box.x1, y: centre.y },
      ways: right,
    },
  ]
}

/** Chain lines from the frame through the layers' ends. */
const ways = ({ ramp, laid, map, moved, up }: Apart): Drawing => {
  const top = laid.length > 0 && ramp.skin.at(-1)
  if (!top) return []
  const curve = frameCurve(ramp)
  const to = moved(up, laid.length * step)
  return [top.start, Math.max(top.start, top.end)].map((place) =>
    stroke(
      layer,
      pathOf(affineApply(map, curve.point(place)), affineApply(to, curve.point(place))),
      lines.axis,
    ),
  )
}
