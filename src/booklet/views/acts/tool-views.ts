import { dimension } from '../../../drafting/dimension/dimension.ts'
import { fill, stroke } from '../../../drawing/drawing.ts'
import { radiansOf } from '../../../geometry/degrees.ts'
import { type Path, polygonOf, rectangle } from '../../../geometry/path.ts'
import { type Point, pointToward } from '../../../geometry/point.ts'
import { type View, viewOf, viewStyle } from '../view.ts'
import { word } from './word.ts'

const layer = 'note'
const { lines } = viewStyle

/** A line to be sawn as an arc, its middle above it, and the blade's width on paper; mm. No scale: large, so that one sees on which side the blade runs. */
export const kerfLine = { centre: { x: 8, y: 70 }, radius: 62, width: 1.8 } as const
/** Ends of the line and how far it is sawn, angles from its middle straight down, degrees. */
const reach = { from: -9, sawn: 14, to: 33 } as const

const onLine = (degrees: number, off = 0): Point =>
  pointToward(kerfLine.centre, radiansOf(degrees - 90), kerfLine.radius - off)

/** Between two distances off the line, towards its middle, and two angles. */
const sweep = (low: number, high: number, from: number, to: number): Path => ({
  start: onLine(from, low),
  pieces: [
    { kind: 'arc', to: onLine(to, low), centre: kerfLine.centre, sweep: radiansOf(to - from) },
    { kind: 'line', to: onLine(to, high) },
    { kind: 'arc', to: onLine(from, high), centre: kerfLine.centre, sweep: radiansOf(from - to) },
  ],
  closed: true,
})

/** The jigsaw's cut along a curve: beside the line, in the waste, the line left on the side. */
export const jigsawView = (mark: string): View => {
  const line: Path = { ...sweep(0, 0, reach.from, reach.to), closed: false }
  const shoe = ([x, y]: readonly [number, number]): Point => {
    const way = radiansOf(reach.sawn)
    const at = onLine(reach.sawn, kerfLine.width / 2)
    return {
      x: at.x + x * Math.cos(way) - y * Math.sin(way),
      y: at.y + x * Math.sin(way) + y * Math.cos(way),
    }
  }
  const [a, b, c, d] = (
    [
      [-5, -4.5],
      [8, -4.5],
      [8, 4.5],
      [-5, 4.5],
    ] as const
  ).map(shoe) as [Point, Point, Point, Point]
  return viewOf([
    { name: 'side', marks: [fill(layer, sweep(0, -9, reach.from, reach.to), 0.85)] },
    { name: 'cut', marks: [fill(layer, sweep(0, kerfLine.width, reach.from, reach.sawn), 0.2)] },
    {
      name: 'line',
      marks: [
        stroke(layer, { start: line.start, pieces: line.pieces.slice(0, 1), closed: false }, lines.outline),
      ],
    },
    { name: 'saw', marks: [stroke(layer, polygonOf(a, b, c, d), lines.outline)] },
    {
      name: 'words',
      marks: [
        ...word({ x: 7, y: 16 }, 'WASTE', { face: 'bold' }),
        ...word({ x: 4, y: 2.2 }, mark, { face: 'bold' }),
        ...word({ x: 20, y: -4.5 }, 'black: the cut, beside the line'),
      ],
    },
  ])
}

/** A board against a stop that is clamped so far from the blade: all pieces come out alike. No scale. */
export const stopBlockView = (figure: string): View => {
  const [blade, end] = [10, 38]
  return viewOf([
    {
      name: 'fence',
      marks: [
        fill(layer, rectangle(0, 9.5, 46, 12.5), 0.75),
        stroke(layer, rectangle(0, 9.5, 46, 12.5), lines.thin),
      ],
    },
    {
      name: 'board',
      marks: [
        fill(layer, rectangle(1, 3, end, 9.5), 0.92),
        stroke(layer, rectangle(1, 3, end, 9.5), lines.outline),
      ],
    },
    { name: 'blade', marks: [fill(layer, rectangle(blade - 0.8, 1, blade, 14), 0)] },
    {
      name: 'stop',
      marks: [
        fill(layer, rectangle(end, 4.5, end + 4, 14), 0.35),
        stroke(layer, rectangle(end, 4.5, end + 4, 14), lines.outline),
      ],
    },
    {
      name: 'length',
      marks: dimension(
        { from: { x: blade, y: 3 }, to: { x: end, y: 3 }, angle: 0, through: { x: 0, y: -4 }, figure },
        viewStyle,
      ),
    },
    {
      name: 'words',
      marks: [...word({ x: blade, y: 15.4 }, 'blade'), ...word({ x: end, y: 15.4 }, 'stop block')],
    },
  ])
}
