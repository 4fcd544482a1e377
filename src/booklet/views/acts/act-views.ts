import { alsoDrawn, firstClear, nothingDrawn } from '../../../drafting/clearance.ts'
import { arrow } from '../../../drawing/arrow.ts'
import { cross } from '../../../drawing/cross.ts'
import { type Drawing, fill, stroke } from '../../../drawing/drawing.ts'
import { affineScale } from '../../../geometry/affine.ts'
import { circle, pathOf, polygonOf, rectangle, segmentsPath } from '../../../geometry/path.ts'
import { pathMap } from '../../../geometry/path-map.ts'
import { type Point, pointToward } from '../../../geometry/point.ts'
import type { Units } from '../../../length.ts'
import { timberCorners } from '../../../ramp/frame/timber.ts'
import type { SolvedQuarter, SolvedRamp } from '../../../ramp/ramp.ts'
import { gripHoles, handleSize } from '../../../stock/handle.ts'
import type { Moving } from '../../../stock/moving.ts'
import { frameCurve, rampProfile } from '../profile.ts'
import { scaled, type View, viewOf, viewStyle } from '../view.ts'
import { word } from './word.ts'

const layer = 'note'
const { lines, size } = viewStyle

/** Side and timbers, pale, as what an act is done to. */
const frameMarks = (ramp: SolvedRamp, units: Units, ratio: number): Drawing => {
  const { side, studs, timbers } = rampProfile(ramp, units)
  const map = affineScale(ratio)
  return [
    ...[...studs, ...timbers].flatMap((path): Drawing => {
      const on = pathMap(path, map)
      return [fill(layer, on, 0.85), stroke(layer, on, lines.thin)]
    }),
    stroke(layer, pathMap(side, map), lines.outline),
  ]
}

/** A sheet that lies on the lower part of the curve and springs off it, pressed down at its free end. `below`: what lies under it, mm. */
export const bendView = (
  ramp: SolvedQuarter,
  units: Units,
  ratio: number,
  { below, length, name }: { readonly below: number; readonly length: number; readonly name: string },
): View => {
  const curve = frameCurve(ramp)
  // so thin that it must be seen: a line over the frame
  const on = curve.offset(below + 1.2 / ratio)
  const held = curve.toe + (curve.lip - curve.toe) * 0.4
  const foot = scaled(on.point(held), ratio)
  const lies = on.lengthTo(held)
  const free = Math.max(0, length - lies) * ratio
  const slope = curve.slope(held)
  // a spring leaves the curve along its tangent
  const end = pointToward(foot, slope, free)
  const press = pointToward(end, slope + Math.PI / 2, 2)
  const away = pointToward(press, slope + Math.PI / 2, 9)
  const toe = scaled(on.point(curve.toe), ratio)
  return viewOf([
    { name: 'frame', marks: frameMarks(ramp, units, ratio) },
    {
      name: 'sheet',
      marks: [
        stroke(layer, pathMap(segmentsPath(on.segments(curve.toe, held)), affineScale(ratio)), {
          width: 0.7,
        }),
        stroke(layer, pathOf(foot, end), { width: 0.7 }),
      ],
    },
    { name: 'press', marks: arrow(layer, away, press, lines.outline, size) },
    {
      name: 'words',
      marks: [
        ...word({ x: away.x, y: away.y + 1.2 }, `press ${name}`),
        ...word({ x: toe.x - 1.5, y: toe.y - size / 2 }, 'toe first', { align: 'right' }),
      ],
    },
  ])
}

/** Half the longer side of a timber's end, mm on paper. */
const longHalf = 9.5

/** The end of a timber as it lies, and where its two screws go. */
export interface TimberEnd {
  readonly lies: 'edge' | 'flat'
  /** along its upper face, and square to that, mm */
  readonly width: number
  readonly depth: number
  /** each from the middle of that face, mm */
  readonly screws: readonly { readonly along: number; readonly down: number }[]
}

/** The outside of a side with the ends of its timbers behind it, one as each way lies, and where the two screws of each go; no scale. */
export const stumpView = (timbers: readonly TimberEnd[]): View => {
  // side by side where there are both
  const wide = timbers.length > 1 ? 22 : 17
  const ends = timbers.map(({ lies: way, width, depth, screws }) => {
    const x = timbers.length < 2 ? 0 : way === 'edge' ? -11.3 : 11.3
    const ratio = (2 * longHalf) / Math.max(width, depth)
    const [dx, high] = [(width / 2) * ratio, depth * ratio]
    // all under the edge of the side
    const at = screws.map(({ along, down }): Point => ({ x: x + along * ratio, y: longHalf - down * ratio }))
    return { way, x, timber: rectangle(x - dx, longHalf - high, x + dx, longHalf), at }
  })
  const top = longHalf + 0.3
  return viewOf([
    {
      name: 'side',
      marks: [
        fill(layer, rectangle(-wide, -13, wide, 13), 0.93),
        stroke(layer, pathOf({ x: -wide, y: top }, { x: wide, y: top }), lines.outline),
      ],
    },
    { name: 'timbers', marks: ends.map(({ timber }) => stroke(layer, timber, lines.hidden)) },
    {
      name: 'words',
      marks: [
        ...word({ x: 0, y: 14.2 }, timbers.length > 1 ? 'ends of timbers, from outside' : 'from outside'),
        ...ends.flatMap(({ way, x }) =>
          word(
            { x, y: -13 - 1.5 * size },
            timbers.length > 1
              ? way === 'edge'
                ? 'on edge'
                : 'flat'
              : `end of a stud ${way === 'edge' ? 'on edge' : 'that lies flat'}`,
          ),
        ),
      ],
    },
    {
      name: 'screws',
      marks: ends.flatMap(({ at }) => at.flatMap((p) => cross(layer, p, 1.6, lines.outline, Math.PI / 4))),
    },
  ])
}

/** Above its handle, else below or beside it, wherever no edge of the side runs through. */
const handleWord = (at: Point, said: string, drawn: Drawing): Drawing => {
  const edges = alsoDrawn(nothingDrawn, drawn, 'thing')
  const ways = [3, -3.5 - size, 5, -6 - size, 8, 11].map((up) => word({ x: at.x, y: at.y + up }, said))
  const beside = [6, 9, 12].flatMap((dx) => [
    word({ x: at.x + dx, y: at.y - size / 2 }, said, { align: 'left' }),
    word({ x: at.x - dx, y: at.y - size / 2 }, said, { align: 'right' }),
  ])
  return firstClear(edges, [...ways, ...beside]) ?? []
}

/** A handle at its size with its bolts, or the two holes of a rope. */
const gripMarks = ({ handle, grip }: Moving, ratio: number): Drawing => {
  if (!handle) return []
  const { x, y } = scaled(handle, ratio)
  const [dx, dy] = [(handleSize.length / 2) * ratio, (handleSize.height / 2) * ratio]
  return [
    ...(grip === 'handle' ? [stroke(layer, rectangle(x - dx, y - dy, x + dx, y + dy), lines.thin)] : []),
    ...gripHoles(handle, grip).map((hole) => stroke(layer, circle(scaled(hole, ratio), 0.4), lines.thin)),
    ...cross(layer, { x, y }, 2.4, lines.thin),
  ]
}

/** A side from outside with its joints and the handle's place; timbers and plates behind it dashed. */
export const handleView = (ramp: SolvedQuarter, units: Units, ratio: number, moving: Moving): View => {
  const map = affineScale(ratio)
  const behind = (corners: readonly Point[]) =>
    stroke(layer, pathMap(polygonOf(corners[0]!, ...corners.slice(1)), map), {
      width: lines.hidden.width,
      dash: [1.2, 0.5],
    })
  const side = [
    stroke(layer, pathMap(rampProfile(ramp, units).side, map), lines.outline),
    ...ramp.splices.flatMap(({ top, foot, plate }) => [
      stroke(layer, pathMap(pathOf(top, foot), map), lines.outline),
      behind(plate.corners),
    ]),
  ]
  const hidden = [...ramp.studs, ...ramp.deckTimbers].map((timber) => behind(timberCorners(timber)))
  const grip = gripMarks(moving, ratio)
  const foot = (ramp.length - ramp.design.chamfer) * ratio
  const rubber: Drawing = [
    fill(
      layer,
      polygonOf({ x: 0, y: -0.3 }, { x: foot, y: -0.3 }, { x: foot, y: -1.3 }, { x: 0, y: -1.3 }),
      0.35,
    ),
  ]
  const under = word({ x: (ramp.length * ratio) / 2, y: -1.6 - 1.4 * size }, 'rubber strip')
  const shown = [...side, ...hidden, ...grip, ...rubber, ...under]
  return viewOf([
    { name: 'side', marks: side },
    { name: 'timbers', marks: hidden },
    { name: 'handle', marks: grip },
    { name: 'rubber', marks: rubber },
    {
      name: 'words',
      marks: [
        ...(moving.handle ? handleWord(scaled(moving.handle, ratio), moving.grip, shown) : []),
        ...under,
      ],
    },
  ])
}
