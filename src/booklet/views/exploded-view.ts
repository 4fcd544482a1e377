import { balloon } from '../../drafting/balloon.ts'
import { type Drawing, fill, stroke } from '../../drawing/drawing.ts'
import { type Affine, affineApply, affineScale, affineThen, affineTranslate } from '../../geometry/affine.ts'
import { pathBounds } from '../../geometry/bounds.ts'
import { type Path, pathOf } from '../../geometry/path.ts'
import { pathMap } from '../../geometry/path-map.ts'
import { type Point, pointToward } from '../../geometry/point.ts'
import type { Units } from '../../length.ts'
import type { SolvedRamp } from '../../ramp/ramp.ts'
import type { Layer } from '../../ramp/skin/layer.ts'
import { frameCurve, type Profile, profileOf } from './profile.ts'
import { type View, viewOf, viewStyle } from './view.ts'

const layer = 'note'
const { lines } = viewStyle

/** From one part to the next, mm on paper. */
const step = 9

/** A part that is lifted off, and what it is called in the list beside the drawing. */
export interface Exploded {
  readonly view: View
  /** in the order of their letters: A is the frame */
  readonly names: readonly string[]
}

/** One part of the drawing, lifted off, with the place of its letter and what that points to; paper mm. */
interface Lifted {
  readonly name: string
  readonly marks: Drawing
  readonly at: Point
  readonly to: Point
}

/** How a ramp is taken apart: its outlines, its scale, and what it is moved by. */
interface Apart {
  readonly ramp: SolvedRamp
  readonly profile: Profile
  readonly laid: readonly Layer[]
  readonly say: (mm: number) => string
  readonly map: Affine
  /** in place, then so far that way, paper mm */
  readonly moved: (way: number, far: number) => Affine
  /** square to the middle of the curve */
  readonly up: number
}

/** What lies on what: the frame, each layer, the board, the pipe, the run-out, moved apart along the way they go on. */
export const explodedView = (
  ramp: SolvedRamp,
  units: Units,
  ratio: number,
  say: (mm: number) => string,
): Exploded => {
  const apart = apartOf(ramp, units, ratio, say)
  const parts = [
    liftedFrame(apart),
    ...liftedLayers(apart),
    ...liftedRunOut(apart),
    ...liftedBoard(apart),
    ...liftedPipe(apart),
  ]
  return {
    names: parts.map(({ name }) => name),
    view: viewOf([
      { name: 'ways', marks: ways(apart) },
      ...parts.map(({ name, marks }) => ({ name, marks })),
      {
        name: 'letters',
        marks: parts.flatMap(({ at, to }, i) => balloon(at, letters[i]!, viewStyle, to)),
      },
    ]),
  }
}

const letters = 'ABCDEFGHIJKLMNOP'

const apartOf = (ramp: SolvedRamp, units: Units, ratio: number, say: (mm: number) => string): Apart => {
  const curve = frameCurve(ramp)
  const map = affineScale(ratio)
  return {
    ramp,
    profile: profileOf(ramp, units),
    laid: ramp.skin.filter(({ length }) => length > 0),
    say,
    map,
    moved: (way, far) => {
      const { x, y } = pointToward({ x: 0, y: 0 }, way, far)
      return affineThen(map, affineTranslate(x, y))
    },
    up: curve.slope((curve.toe + curve.lip) / 2) + Math.PI / 2,
  }
}

const seen = (path: Path, by: Affine): Drawing => {
  const on = pathMap(path, by)
  return [fill(layer, on, 1), stroke(layer, on, lines.outline)]
}

const liftedFrame = ({ profile, map }: Apart): Lifted => {
  const behind = { width: lines.hidden.width, dash: [1.2, 0.5] }
  const { x1, y0, y1 } = pathBounds(pathMap(profile.side, map))
  return {
    name: 'frame: sides and timbers',
    marks: [
      ...seen(profile.side, map),
      ...[...profile.studs, ...profile.timbers].map((path) => stroke(layer, pathMap(path, map), behind)),
    ],
    at: { x: x1 + 7, y: (y0 + y1) / 2 },
    to: { x: x1 - 2, y: (y0 + y1) / 2 },
  }
}

const liftedLayers = ({ ramp, profile, laid, say, moved, up }: Apart): readonly Lifted[] => {
  const curve = frameCurve(ramp)
  return laid.map(({ layer: number, sheet, below, start: from }, i) => {
    const by = moved(up, (i + 1) * step)
    const start = affineApply(by, curve.offset(below).point(from))
    return {
      name: `layer ${number}: ${say(sheet.thickness)} ${sheet.material}`,
      marks: seen(profile.skin[i]!, by),
      // beside its toe end, on along it
      at: pointToward(start, curve.slope(from) + Math.PI, 6),
      to: start,
    }
  })
}

const liftedRunOut = ({ profile, laid, moved, up }: Apart): readonly Lifted[] => {
  if (!profile.runOut) return []
  const by = moved(up, (laid.length + 1) * step)
  const { x0, y0 } = pathBounds(pathMap(profile.runOut, by))
  return [
    {
      name: 'run-out sheet',
      marks: seen(profile.runOut, by),
      at: { x: x0 - 6, y: y0 + 1 },
      to: { x: x0, y: y0 + 0.3 },
    },
  ]
}

const liftedBoard = ({ ramp, profile, say, moved }: Apart): readonly Lifted[] => {
  if (!profile.board) return []
  const by = moved(Math.PI / 2, 1.6 * step)
  const { x1, y0, y1 } = pathBounds(pathMap(profile.board, by))
  return [
    {
      name: `deck board: ${say(ramp.deckBoard!.sheet.thickness)}`,
      marks: seen(profile.board, by),
      at: { x: x1 + 7, y: (y0 + y1) / 2 },
      to: { x: x1, y: (y0 + y1) / 2 },
    },
  ]
}

const liftedPipe = ({ profile: { pipe }, say, map, moved }: Apart): readonly Lifted[] => {
  if (!pipe) return []
  const by = moved(Math.PI / 2, 3 * step)
  const box = pathBounds(pathMap(pipe.path, by))
  const centre = { x: (box.x0 + box.x1) / 2, y: (box.y0 + box.y1) / 2 }
  return [
    {
      name: `pipe: ${say(2 * pipe.radius)}`,
      marks: [
        stroke(layer, pathOf(affineApply(map, pipe.centre), centre), lines.axis),
        ...seen(pipe.path, by),
      ],
      at: { x: box.x1 + 8, y: centre.y },
      to: { x: box.x1, y: centre.y },
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
