import { isCurved } from '../../design/kind-traits.ts'
import { alsoDrawn, nothingDrawn } from '../../drafting/clearance.ts'
import { arrowHead } from '../../drawing/arrow.ts'
import { type Drawing, fill, stroke, text } from '../../drawing/drawing.ts'
import { affineScale } from '../../geometry/affine.ts'
import { pathBounds } from '../../geometry/bounds.ts'
import { type Path, pathOf, rectangle } from '../../geometry/path.ts'
import { pathMap } from '../../geometry/path-map.ts'
import { type Point, pointAngle } from '../../geometry/point.ts'
import type { Units } from '../../length.ts'
import type { SolvedRamp } from '../../ramp/ramp.ts'
import { timbersOf } from './plan-view.ts'
import { rampProfile } from './profile.ts'
import { timberNumbers } from './timber-numbers.ts'
import { type View, viewOf, viewStyle } from './view.ts'

const layer = 'note'
const { lines, size } = viewStyle

/** Greys of what is there already and of what is set now. */
const there = 0.88
const fresh = 0.35

/** One side with the timbers of a step dark and numbered, those that are set already pale. Indices of timbers as they are numbered on the paper. */
export const stageView = (
  ramp: SolvedRamp,
  units: Units,
  ratio: number,
  now: readonly number[],
  done: readonly number[],
): View => {
  const profile = rampProfile(ramp, units)
  const map = affineScale(ratio)
  const paths = [...profile.studs, ...profile.timbers].map((path) => pathMap(path, map))
  const solid = (path: Path, grey: number): Drawing => [
    fill(layer, path, grey),
    stroke(layer, path, lines.thin),
  ]
  const side = [stroke(layer, pathMap(profile.side, map), lines.outline)]
  const timbers = [
    ...done.flatMap((i) => solid(paths[i]!, there)),
    ...now.flatMap((i) => solid(paths[i]!, fresh)),
  ]
  const numbers = timberNumbers(
    timbersOf(ramp),
    now,
    [...done, ...now],
    ratio,
    alsoDrawn(nothingDrawn, [...side, ...timbers], 'thing'),
  )
  return viewOf([
    { name: 'side', marks: side },
    { name: 'timbers', marks: timbers },
    { name: 'numbers', marks: numbers },
  ])
}

/** The frame from above with the two lengths that must be equal: from the outer corners of one side to the opposite ones of the other. Toe at the left, the ramp's left side above. `held`: the timbers that are there, by their indices. */
export const squareView = (ramp: SolvedRamp, units: Units, ratio: number, held: readonly number[]): View => {
  const { length, width, design } = ramp
  const curved = isCurved(ramp)
  const thick = Math.max(1, design.sides.thickness * ratio)
  const [l, w] = [length * ratio, width * ratio]
  const wall = (y: number): Drawing => [
    fill(layer, rectangle(0, y, l, y + thick), there),
    stroke(layer, rectangle(0, y, l, y + thick), lines.outline),
  ]
  const { studs, timbers } = rampProfile(ramp, units)
  const paths = [...studs, ...timbers].map((path) => pathMap(path, affineScale(ratio)))
  const across = held.map((i): Drawing[number] => {
    const { x0, x1 } = pathBounds(paths[i]!)
    return stroke(layer, rectangle(x0, thick, x1, w - thick), lines.thin)
  })
  const diagonal = (from: Point, to: Point): Drawing => [
    stroke(layer, pathOf(from, to), lines.thin),
    ...arrowHead(layer, from, pointAngle(to, from), size),
    ...arrowHead(layer, to, pointAngle(from, to), size),
  ]
  const name = (x: number, y: number, words: string, align: 'left' | 'middle' | 'right'): Drawing => [
    text(layer, { x, y: y - size / 2 }, size, words, { align }),
  ]
  return viewOf([
    { name: 'sides', marks: [...wall(0), ...wall(w - thick)] },
    { name: 'timbers', marks: across },
    {
      name: 'diagonals',
      marks: [...diagonal({ x: 0, y: 0 }, { x: l, y: w }), ...diagonal({ x: 0, y: w }, { x: l, y: 0 })],
    },
    {
      name: 'corners',
      marks: [
        ...name(-1.5, w / 2, curved ? 'toe' : 'near', 'right'),
        ...name(l + 1.5, w / 2, curved ? 'back' : 'far', 'left'),
        ...name(l / 2, w + size, 'left', 'middle'),
        ...name(l / 2, -size, 'right', 'middle'),
      ],
    },
    {
      name: 'rule',
      marks: [
        text(layer, { x: l / 2, y: -3.2 * size }, size, 'both lines equal', {
          face: 'bold',
          align: 'middle',
        }),
      ],
    },
  ])
}
