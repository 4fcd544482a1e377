import { editDesign } from '../../src/design/edit.ts'
import { readDesign } from '../../src/design/read.ts'
import { writeStarter } from '../../src/design/starter.ts'
import { starterFor } from '../../src/design/starters.ts'
import { angleDimension } from '../../src/drafting/dimension/angle-dimension.ts'
import { dimension } from '../../src/drafting/dimension/dimension.ts'
import { leader } from '../../src/drafting/leader.ts'
import { draftStyle } from '../../src/drafting/line-types.ts'
import { type Drawing, fill, group, stroke, text } from '../../src/drawing/drawing.ts'
import { drawingBounds } from '../../src/drawing/drawing-bounds.ts'
import {
  type Affine,
  affineApply,
  affineRotate,
  affineScale,
  affineThen,
  affineTranslate,
} from '../../src/geometry/affine.ts'
import { boxCorners, pathClip } from '../../src/geometry/clip.ts'
import {
  arcSegment,
  circle,
  type Path,
  pathOf,
  polygonOf,
  rectangle,
  segmentsPath,
} from '../../src/geometry/path.ts'
import { pathMap } from '../../src/geometry/path-map.ts'
import { type Point, pointAngle, pointToward } from '../../src/geometry/point.ts'
import { timberCorners } from '../../src/ramp/frame/timber.ts'
import type { SolvedQuarter } from '../../src/ramp/ramp.ts'
import { drawDesign } from '../../src/ramp/solve.ts'
import { writeSvg } from '../../src/write/svg.ts'

/** The drawings of the docs, of the same lines, dimensions and letters as the pages; mm on paper. */
const style = { ...draftStyle, size: 3 }
const { layer, size, lines } = style
const wood = 0.93

const words = (at: Point, said: string, align: 'left' | 'middle' | 'right' = 'left'): Drawing => [
  text(layer, at, size, said, { align }),
]
const dot = (at: Point): Drawing => [fill(layer, circle(at, 0.7), 0)]
const line = (...points: readonly [Point, Point, ...Point[]]): Path => pathOf(...points)

const picture = (title: string, marks: Drawing): string => {
  const { x0, y0, x1, y1 } = drawingBounds(marks)!
  const air = 4
  const [width, height] = [Math.ceil(x1 - x0 + 2 * air), Math.ceil(y1 - y0 + 2 * air)]
  return writeSvg(
    {
      title,
      width,
      height,
      drawing: [
        fill(layer, rectangle(0, 0, width, height), 1),
        group(affineTranslate(air - x0, air - y0), marks),
      ],
    },
    { decimals: 2 },
  )
}

const arcPath = (centre: Point, radius: number, from: number, to: number): Path =>
  segmentsPath([arcSegment(centre, radius, from, to - from)])

const small =
  (ratio: number) =>
  (path: Path): Path =>
    pathMap(path, affineScale(ratio))

const quarterOf = (keys: Readonly<Record<string, string>>): SolvedQuarter => {
  const text = Object.entries(keys).reduce(
    (all, [key, typed]) => editDesign(all, `ramps.0.${key}`, typed),
    writeStarter(starterFor('quarter', 'mm')),
  )
  const reading = readDesign(text)
  if ('problems' in reading) throw new Error(reading.problems[0]!.message)
  const solved = drawDesign(reading.design)
  const [ramp] = solved.ramps
  if (solved.stopped || ramp?.kind !== 'quarter') throw new Error('no quarter')
  return ramp as SolvedQuarter
}

/** A ramp's curve with all that its formulas name. */
const quarterPicture = (): string => {
  const ramp = quarterOf({ 'transition.circle.surface': '1200', toe: '90', coping: 'none', chamfer: 'none' })
  const { transition, length } = ramp
  const ratio = 0.1
  const on = ({ x, y }: Point): Point => ({ x: x * ratio, y: y * ratio })
  const c = on(transition.centre)
  const [toe, lip, end] = [on(transition.toe), on(transition.lip), length * ratio]
  const r = transition.radius.frame * ratio
  const s = (transition.radius.frame - transition.radius.surface) * ratio
  const down = -Math.PI / 2
  const outline = small(ratio)(ramp.side.outline)
  const foot = { x: c.x, y: 0 }
  const measure = (from: Point, to: Point, through: Point, figure: string): Drawing =>
    dimension({ from, to, angle: from.x === to.x ? Math.PI / 2 : 0, through, figure }, style)
  return picture('A quarter: centre, radius, angles and heights', [
    fill(layer, outline, wood),
    stroke(layer, outline, lines.outline),
    stroke(layer, line({ x: c.x - 8, y: 0 }, { x: end + 12, y: 0 }), lines.thin),
    ...words({ x: end + 24, y: -4.5 }, 'floor, y = 0', 'right'),
    // the ridden face
    stroke(layer, arcPath(c, r - s, down, down + transition.lipAngle), lines.hidden),
    stroke(layer, line(c, foot), lines.axis),
    stroke(layer, line(c, toe), lines.thin),
    stroke(layer, line(c, lip), lines.thin),
    ...dot(c),
    ...words({ x: c.x + 3, y: c.y + 1 }, 'C = (−x0, c)'),
    ...angleDimension(
      { vertex: c, from: down, to: down + transition.toeAngle, radius: 58, figure: 'a0' },
      style,
    ),
    ...angleDimension(
      { vertex: c, from: down, to: down + transition.lipAngle, radius: 34, figure: 'a1' },
      style,
    ),
    ...words({ x: (c.x + lip.x) / 2 + 3, y: (c.y + lip.y) / 2 + 2 }, 'R'),
    ...words({ x: toe.x - 2, y: toe.y + 30 }, 'R', 'right'),
    ...words({ x: lip.x + 2, y: lip.y - 5 }, 'lip'),
    ...words({ x: toe.x + 2, y: toe.y - 6 }, 'toe'),
    ...measure({ x: end, y: 0 }, { x: end, y: lip.y }, { x: end + 10, y: 0 }, 'h'),
    ...measure({ x: lip.x, y: lip.y }, { x: end, y: lip.y }, { x: 0, y: lip.y + 8 }, 'deck'),
    ...measure({ x: 0, y: 0 }, { x: lip.x, y: 0 }, { x: 0, y: -9 }, 'run'),
    ...measure({ x: c.x, y: 0 }, { x: 0, y: 0 }, { x: 0, y: -9 }, 'x0'),
    ...measure({ x: c.x, y: 0 }, c, { x: c.x - 8, y: 0 }, 'c'),
    ...dimension(
      { from: { x: 0, y: 0 }, to: toe, angle: Math.PI / 2, through: { x: -5, y: 0 }, figure: 't' },
      style,
    ),
  ])
}

/** The pipe in its two seats. */
const notchPicture = (): string => {
  const ratio = 0.5
  const gap = 130
  const seat = (name: 'square' | 'round', at: number): Drawing => {
    const ramp = quarterOf({ 'coping.seat': name })
    const { transition, deckBoard } = ramp
    const coping = ramp.coping!
    const on = ({ x, y }: Point): Point => ({
      x: (x - transition.lip.x) * ratio,
      y: (y - transition.lip.y) * ratio,
    })
    const window = boxCorners({ x0: -62, y0: -48, x1: 62, y1: 40 })
    const outline = pathMap(ramp.side.outline, [
      ratio,
      0,
      0,
      ratio,
      -transition.lip.x * ratio,
      -transition.lip.y * ratio,
    ])
    const p = on(coping.centre)
    const wall = { x: coping.along * ratio, y: 0 }
    const floor = { x: wall.x, y: -coping.down * ratio }
    const c = on(transition.centre)
    const board = deckBoard!.sheet.thickness * ratio
    const face = transition.radius.surface * ratio
    const toPipe = pointAngle(c, p)
    return [
      group(affineTranslate(at, 0), [
        ...pathClip(outline, window).map((path) => stroke(layer, path, lines.outline)),
        ...pathClip(arcPath(c, face, toPipe - 0.05, toPipe + 0.05), window).map((path) =>
          stroke(layer, path, lines.hidden),
        ),
        stroke(layer, rectangle(wall.x, 0, 62, board), lines.thin),
        ...words({ x: 60, y: board / 2 - size / 2 }, 'deck board', 'right'),
        stroke(layer, circle(p, (coping.outside / 2) * ratio), lines.thin),
        ...dot(p),
        ...words({ x: p.x - 2, y: p.y - 4 }, 'P', 'right'),
        ...dot({ x: 0, y: 0 }),
        ...leader({ x: 0, y: 0 }, [{ x: -22, y: 22 }], style),
        ...words({ x: -23, y: 22 }, 'lip', 'right'),
        ...dimension(
          {
            from: { x: 0, y: 0 },
            to: wall,
            angle: 0,
            through: { x: 0, y: -30 },
            figure: 'along',
            place: 'past-to',
          },
          style,
        ),
        ...dimension(
          { from: floor, to: wall, angle: Math.PI / 2, through: { x: wall.x + 12, y: 0 }, figure: 'down' },
          style,
        ),
        ...dimension(
          {
            from: { x: wall.x, y: board },
            to: { x: p.x, y: p.y + (coping.outside / 2) * ratio },
            angle: Math.PI / 2,
            through: { x: wall.x + 30, y: 0 },
            figure: 'up',
            place: 'past-to',
          },
          style,
        ),
        ...dimension(
          {
            from: pointToward(c, toPipe, face),
            to: pointToward(p, toPipe, -(coping.outside / 2) * ratio),
            angle: toPipe,
            through: p,
            figure: 'out',
            place: 'past-to',
          },
          style,
        ),
        ...words({ x: 0, y: 36 }, `${name} seat`, 'middle'),
      ]),
    ]
  }
  return picture('The pipe in a square and in a round seat', [...seat('square', 0), ...seat('round', gap)])
}

/** A wheel on the cut: the ramp standing, and tipped until the wheel carries. */
const wheelsPicture = (): string => {
  const leg = 180
  const ramp = quarterOf({
    'chamfer.leg': `${leg}`,
    'wheels.diameter': '75',
    'wheels.height': '100',
  })
  const { length, wheels } = ramp
  const { centre, timber, clearance, tip } = wheels!
  const ratio = 0.25
  const edge = { x: length - leg, y: 0 }
  const corner = pathClip(
    ramp.side.outline,
    boxCorners({ x0: length - 330, y0: -20, x1: length + 20, y1: 260 }),
  )
  const [first, ...rest] = timberCorners(timber)
  const marks = (map: Affine): Drawing => {
    const at = (p: Point): Point => affineApply(map, p)
    return [
      ...corner.map((path) => stroke(layer, pathMap(path, map), lines.outline)),
      stroke(layer, polygonOf(at(first!), ...rest.map(at)), lines.hidden),
      stroke(layer, line(at(timber), at(centre)), lines.axis),
      fill(layer, circle(at(centre), 37.5 * ratio), 1),
      stroke(layer, circle(at(centre), 37.5 * ratio), lines.outline),
      ...dot(at(centre)),
    ]
  }
  const standing = affineThen(affineTranslate(-edge.x, 0), affineScale(ratio))
  const tipped = affineThen(
    affineThen(affineTranslate(-edge.x, 0), affineRotate(-tip.least)),
    affineThen(affineScale(ratio), affineTranslate(130, 0)),
  )
  const under = affineApply(standing, { x: centre.x, y: clearance })
  const [a, b] = [affineApply(standing, edge), affineApply(standing, { x: length, y: 0 })]
  return picture('A wheel on the cut of the back corner', [
    ...marks(standing),
    stroke(layer, line({ x: -45, y: 0 }, { x: 62, y: 0 }), lines.thin),
    ...dimension({ from: a, to: b, angle: 0, through: { x: 0, y: -8 }, figure: 'c' }, style),
    ...leader({ x: under.x, y: under.y / 2 }, [{ x: under.x + 20, y: 4.5 }], style),
    ...words({ x: under.x + 21, y: 3 }, 'off the floor'),
    ...words({ x: 0, y: 70 }, 'standing', 'middle'),
    ...marks(tipped),
    stroke(layer, line({ x: 95, y: 0 }, { x: 190, y: 0 }), lines.thin),
    ...words({ x: 140, y: 70 }, 'tipped: the wheel carries', 'middle'),
  ])
}

export const pictures: Readonly<Record<string, () => string>> = {
  quarter: quarterPicture,
  notch: notchPicture,
  wheels: wheelsPicture,
}
