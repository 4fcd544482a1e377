import { balloon } from '../../drafting/balloon.ts'
import { type Drawing, fill, stroke } from '../../drawing/drawing.ts'
import { type Affine, affineApply, affineScale, affineThen, affineTranslate } from '../../geometry/affine.ts'
import { pathBounds } from '../../geometry/bounds.ts'
import { type Path, pathOf } from '../../geometry/path.ts'
import { pathMap } from '../../geometry/path-map.ts'
import { type Point, pointToward } from '../../geometry/point.ts'
import type { Units } from '../../length.ts'
import type { SolvedRamp } from '../../ramp/ramp.ts'
import { frameCurve, profileOf } from './profile.ts'
import { type View, viewOf, viewStyle } from './view.ts'

const layer = 'note'
const { lines } = viewStyle

/** From one part to the next, mm on paper. */
const apart = 9

/** A part that is lifted off, and what it is called in the list beside the drawing. */
export interface Exploded {
  readonly view: View
  /** in the order of their letters: A is the frame */
  readonly names: readonly string[]
}

/** What lies on what: the frame, each layer, the board, the pipe, the run-out, moved apart along the way they go on. */
export const explodedView = (
  ramp: SolvedRamp,
  units: Units,
  ratio: number,
  say: (mm: number) => string,
): Exploded => {
  const profile = profileOf(ramp, units)
  const curve = frameCurve(ramp)
  const middle = (curve.toe + curve.lip) / 2
  const up = curve.slope(middle) + Math.PI / 2
  const map = affineScale(ratio)
  const moved = (way: number, far: number): Affine => {
    const { x, y } = pointToward({ x: 0, y: 0 }, way, far)
    return affineThen(map, affineTranslate(x, y))
  }
  const seen = (path: Path, by: Affine): Drawing => {
    const on = pathMap(path, by)
    return [fill(layer, on, 1), stroke(layer, on, lines.outline)]
  }
  const behind = { width: lines.hidden.width, dash: [1.2, 0.5] }
  const frame: Drawing = [
    ...seen(profile.side, map),
    ...[...profile.studs, ...profile.timbers].map((path) => stroke(layer, pathMap(path, map), behind)),
  ]
  const parts: { readonly name: string; readonly marks: Drawing; readonly at: Point; readonly to: Point }[] =
    []
  const frameBox = pathBounds(pathMap(profile.side, map))
  parts.push({
    name: 'frame: sides and timbers',
    marks: frame,
    at: { x: frameBox.x1 + 7, y: (frameBox.y0 + frameBox.y1) / 2 },
    to: { x: frameBox.x1 - 2, y: (frameBox.y0 + frameBox.y1) / 2 },
  })
  const laid = ramp.skin.filter(({ length }) => length > 0)
  laid.forEach(({ layer: number, sheet, below }, i) => {
    const far = (i + 1) * apart
    const by = moved(up, far)
    const face = curve.offset(below)
    const start = affineApply(by, face.point(laid[i]!.start))
    parts.push({
      name: `layer ${number}: ${say(sheet.thickness)} ${sheet.material}`,
      marks: seen(profile.skin[i]!, by),
      // beside its toe end, on along it
      at: pointToward(start, curve.slope(laid[i]!.start) + Math.PI, 6),
      to: start,
    })
  })
  const last = laid.length + 1
  if (profile.runOut) {
    const by = moved(up, last * apart)
    const box = pathBounds(pathMap(profile.runOut, by))
    parts.push({
      name: 'run-out sheet',
      marks: seen(profile.runOut, by),
      at: { x: box.x0 - 6, y: box.y0 + 1 },
      to: { x: box.x0, y: box.y0 + 0.3 },
    })
  }
  if (profile.board) {
    const by = moved(Math.PI / 2, 1.6 * apart)
    const box = pathBounds(pathMap(profile.board, by))
    parts.push({
      name: `deck board: ${say(ramp.deckBoard!.sheet.thickness)}`,
      marks: seen(profile.board, by),
      at: { x: box.x1 + 7, y: (box.y0 + box.y1) / 2 },
      to: { x: box.x1, y: (box.y0 + box.y1) / 2 },
    })
  }
  if (profile.pipe) {
    const by = moved(Math.PI / 2, 3 * apart)
    const box = pathBounds(pathMap(profile.pipe.path, by))
    const centre = { x: (box.x0 + box.x1) / 2, y: (box.y0 + box.y1) / 2 }
    parts.push({
      name: `pipe: ${say(2 * profile.pipe.radius)}`,
      marks: [
        stroke(layer, pathOf(affineApply(map, profile.pipe.centre), centre), lines.axis),
        ...seen(profile.pipe.path, by),
      ],
      at: { x: box.x1 + 8, y: centre.y },
      to: { x: box.x1, y: centre.y },
    })
  }
  const letters = 'ABCDEFGHIJKLMNOP'
  return {
    names: parts.map(({ name }) => name),
    view: viewOf([
      { name: 'ways', marks: laid.length > 0 ? ways(ramp, map, moved(up, laid.length * apart)) : [] },
      ...parts.map(({ name, marks }) => ({ name, marks })),
      {
        name: 'letters',
        marks: parts.flatMap(({ at, to }, i) => balloon(at, letters[i]!, viewStyle, to)),
      },
    ]),
  }
}

/** Chain lines from the frame through the layers' ends. */
const ways = (ramp: SolvedRamp, from: Affine, to: Affine): Drawing => {
  const curve = frameCurve(ramp)
  const top = ramp.skin.at(-1)!
  const end = Math.max(top.start, top.end)
  return [top.start, end].map((place) =>
    stroke(
      layer,
      pathOf(affineApply(from, curve.point(place)), affineApply(to, curve.point(place))),
      lines.axis,
    ),
  )
}
