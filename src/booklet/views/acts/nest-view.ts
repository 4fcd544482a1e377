import { calloutWays } from '../../../drafting/callout.ts'
import { alsoDrawn, firstClear, nothingDrawn } from '../../../drafting/clearance.ts'
import { type Drawing, fill, stroke } from '../../../drawing/drawing.ts'
import { type Affine, affineScale, affineThen, affineTranslate } from '../../../geometry/affine.ts'
import { circle, type Path, pathOf } from '../../../geometry/path.ts'
import { pathMap } from '../../../geometry/path-map.ts'
import type { Point } from '../../../geometry/point.ts'
import type { Units } from '../../../length.ts'
import { timberLabel } from '../../../ramp/frame/timber.ts'
import type { SolvedQuarter } from '../../../ramp/ramp.ts'
import { bestWay, comesOut, type Part, type Slid, type Storing } from '../../../ramp/stored.ts'
import { standingBox } from '../../../ramp/storing/storing.ts'
import { type Profile, rampProfile } from '../profile.ts'
import { scaled, type View, viewOf, viewStyle } from '../view.ts'
import { nestDimensions } from './nest-dimensions.ts'

const layer = 'note'
const { lines } = viewStyle

/** How a ramp lies in the other, from where it stands on its own feet. */
const pose = (inner: SolvedQuarter, { way, front }: Slid): Affine => {
  const { x0, x1, y1 } = standingBox(inner)
  const [back, over] = [way.startsWith('back-first'), way.endsWith('upside-down')]
  return affineThen(
    affineScale(back ? -1 : 1, over ? -1 : 1),
    affineTranslate(front - (back ? -x1 : x0), over ? y1 : 0),
  )
}

const outlines = ({ side, skin, board, pipe }: Profile): readonly Path[] => [
  side,
  ...skin,
  ...(board ? [board] : []),
  ...(pipe ? [pipe.path] : []),
]

const wheelPaths = ({ wheels, design }: SolvedQuarter): readonly Path[] =>
  wheels ? [circle(wheels.centre, design.wheels!.diameter / 2)] : []

const partWords = (part: Part, { name, studs }: SolvedQuarter): string =>
  part.kind === 'stud'
    ? `${timberLabel(part.number - 1, studs.length)} of ${name}`
    : part.kind === 'skin'
      ? `layer ${part.number} of ${name}`
      : `${part.kind} of ${name}`

/** One ramp put away in another, seen from the side as the storing has it: how far in, where they meet, the room of both. What comes out is dashed. */
export const nestView = (
  inner: SolvedQuarter,
  outer: SolvedQuarter,
  storing: Storing,
  units: Units,
  ratio: number,
): View => {
  const best = bestWay(storing)
  const [around, own] = [rampProfile(outer, units), rampProfile(inner, units)]
  const map = affineScale(ratio)
  const inside = affineThen(pose(inner, best), map)
  const { timber, numbers } = storing.low
  const timbers = [...around.studs, ...around.timbers].map((path, i) => ({
    path: pathMap(path, map),
    out: comesOut(timber) && numbers.includes(i + 1),
  }))
  const wheels = wheelPaths(outer).map((path) => pathMap(path, map))
  const body: Drawing = [
    ...[...outlines(own), ...wheelPaths(inner)].flatMap((path): Drawing => {
      const at = pathMap(path, inside)
      return [fill(layer, at, 0.9), stroke(layer, at, lines.outline)]
    }),
  ]
  const shelter: Drawing = [
    ...timbers
      .filter(({ out }) => !out)
      .flatMap(({ path }): Drawing => [fill(layer, path, 0.6), stroke(layer, path, lines.thin)]),
    ...(comesOut(timber) ? [] : wheels).map((path) => stroke(layer, path, lines.thin)),
    ...outlines(around).map((path) => stroke(layer, pathMap(path, map), lines.thin)),
  ]
  const { front, tight } = best
  const [long] = storing.stored!
  const left = Math.min(standingBox(outer).x0, front)
  const floor = stroke(
    layer,
    pathOf({ x: left * ratio - 6, y: 0 }, { x: (left + long) * ratio + 6, y: 0 }),
    lines.outline,
  )
  const ring = tight && scaled(tight, ratio)
  const marks: Drawing = ring ? [stroke(layer, circle(ring, 1.6), { width: 0.5 })] : []
  let clearance = alsoDrawn(nothingDrawn, [floor], 'thing')
  clearance = alsoDrawn(
    clearance,
    [...body, ...shelter].filter(({ kind }) => kind === 'stroke'),
    'thing',
  )
  const names: Drawing[] = []
  const name = (on: Point, words: readonly string[], ways: readonly number[]): void => {
    const drawn = firstClear(clearance, calloutWays(on, words, viewStyle, ways))
    if (!drawn) return
    clearance = alsoDrawn(clearance, drawn, 'note')
    names.push(drawn)
  }
  if (ring && tight)
    name(
      ring,
      ['here they meet:', `${partWords(tight.part, inner)}, ${partWords(tight.meets, outer)}`],
      [140, 125, 110, 160, 90, 70],
    )
  return viewOf([
    { name: 'outer', marks: shelter },
    { name: 'inner', marks: body },
    {
      name: 'out',
      marks: [
        ...timbers.flatMap(({ path, out }) => (out ? [path] : [])),
        ...(comesOut(timber) ? wheels : []),
      ].map((path) => stroke(layer, path, lines.hidden)),
    },
    { name: 'floor', marks: [floor] },
    { name: 'tight', marks },
    { name: 'names', marks: names.flat() },
    { name: 'dimensions', marks: nestDimensions(outer, storing, left, units, ratio) },
  ])
}
