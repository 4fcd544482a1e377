import { callout } from '../../drafting/callout.ts'
import { angleDimension } from '../../drafting/dimension/angle-dimension.ts'
import type { Measure } from '../../drafting/dimension/group-dimensions.ts'
import { radiusDimension } from '../../drafting/dimension/radius-dimension.ts'
import { levelMark } from '../../drafting/level-mark.ts'
import { type Ways, waysAt } from '../../drafting/ways.ts'
import { type Drawing, stroke } from '../../drawing/drawing.ts'
import type { Box } from '../../geometry/bounds.ts'
import { pathOf } from '../../geometry/path.ts'
import { type Point, pointBetween } from '../../geometry/point.ts'
import { showAngle } from '../../length/show-angle.ts'
import { showLength, type Units } from '../../length.ts'
import type { Curve } from '../../ramp/curve/curve.ts'
import type { SolvedQuarter, SolvedRamp } from '../../ramp/ramp.ts'
import { scaled, viewStyle } from './view.ts'

interface NotesFacts {
  readonly units: Units
  readonly ratio: number
  readonly brief?: boolean
}

const layer = 'note'
const { lines } = viewStyle

/** Dimensions around a ramp, and notes that look for a clear place. */
export interface Notes {
  readonly measures: readonly { readonly key: string; readonly measure: Measure }[]
  /** each with its ways to be drawn, the best first */
  readonly placed: readonly { readonly key: string; readonly ways: Ways }[]
}

/** What the notes of one side share. */
interface Site {
  readonly ramp: SolvedQuarter
  readonly ratio: number
  readonly brief: boolean
  readonly show: (mm: number) => string
  /** what is not whole millimetres: a pipe */
  readonly fine: (mm: number) => string
  readonly at: (x: number, y: number) => Point
  readonly key: (path: string) => string
  readonly face: Curve
}

type Placed = Notes['placed'][number]

export const quarterNotes = (
  ramp: SolvedQuarter,
  { units, ratio, brief = false }: NotesFacts,
  outline: Box,
  key: (path: string) => string,
): Notes => {
  const site: Site = {
    ramp,
    ratio,
    brief,
    show: (mm) => showLength(mm, units),
    fine: (mm) => showLength(mm, units, { decimals: 1 }),
    at: (x, y) => ({ x: x * ratio, y: y * ratio }),
    key,
    face: ramp.transition.curve.offset(ramp.skinThickness),
  }
  return {
    measures: outerMeasures(site),
    placed: [radiusNote(site), lipNote(site), surfaceNote(site), toeNote(site), ...pipeNote(site, outline)],
  }
}

const outerMeasures = ({ ramp, show, at, key, face }: Site): Notes['measures'] => {
  const { transition, length, deck, design } = ramp
  const { curve, heights, lip } = transition
  const measure = (
    path: string,
    from: Point,
    to: Point,
    mm: number,
    sides: Measure['sides'],
  ): Notes['measures'][number] => ({ key: key(path), measure: { from, to, figure: show(mm), sides } })
  const top = heights.deck
  return [
    measure('length', at(0, 0), at(length, design.chamfer), length, ['below']),
    measure('run', at(0, face.point(curve.toe).y), at(lip.x, top), transition.run, ['above']),
    measure('deck', at(lip.x, top), at(length, top), deck, ['above']),
    ...(design.chamfer > 0
      ? [
          measure('chamfer.leg', at(length - design.chamfer, 0), at(length, design.chamfer), design.chamfer, [
            'right',
          ]),
        ]
      : []),
    measure('height.frame', at(length, 0), at(length, heights.frame), heights.frame, ['right']),
    ...(top > heights.frame + 0.01
      ? [measure('height.deck', at(length, 0), at(length, top), top, ['right'])]
      : []),
  ]
}

/** How far up the curve the radius may be told, the best first. */
const shares = [0.45, 0.5, 0.4, 0.55, 0.35, 0.6, 0.3, 0.65, 0.7, 0.25, 0.75]

/** The radius of the layer that the design gives: an R that points at it from the rider's side, or from within the side. */
const radiusNote = ({ ramp, ratio, brief, show, key, face }: Site): Placed => {
  const { curve, radius } = ramp.transition
  const circle = ramp.design.transition.circle.layer
  const words = `${brief ? '' : circle === 'frame' ? 'frame ' : 'ridden face '}R ${show(radius[circle])}`
  const of = circle === 'frame' ? curve : face
  const placeAt = (share: number): number => curve.toe + (curve.lip - curve.toe) * share
  const pointing = (share: number) => (): Drawing => {
    const slope = of.slope(placeAt(share))
    const foot = of.point(placeAt(share))
    const mm = radius[circle]
    const centre = { x: foot.x - mm * Math.sin(slope), y: foot.y + mm * Math.cos(slope) }
    return radiusDimension(
      { centre: scaled(centre, ratio), radius: mm * ratio, angle: slope - Math.PI / 2, figure: words },
      viewStyle,
    )
  }
  const within = shares.flatMap((share) =>
    [
      [7, -6],
      [10, -10],
      [16, -12],
      [22, -16],
    ].map(([dx, dy]) => (): Drawing => {
      const on = scaled(of.point(placeAt(share)), ratio)
      return callout({ on, at: { x: on.x + dx!, y: on.y + dy! }, lines: [words], words: 'right' }, viewStyle)
    }),
  )
  return {
    key: key(`transition.circle.${circle}`),
    ways: waysAt([...shares.map(pointing), ...within], (draw) => draw()),
  }
}

/** The ridden face at the lip, on paper. */
const vertexOf = ({ ramp, ratio, face }: Site): Point => scaled(face.point(ramp.transition.curve.lip), ratio)

const lipNote = (site: Site): Placed => {
  const { lipAngle } = site.ramp.transition
  const vertex = vertexOf(site)
  const figure = showAngle(lipAngle)
  return {
    key: site.key('lip'),
    ways: waysAt([10, 13, 8, 16], (arc) => [
      stroke(
        layer,
        pathOf({ x: vertex.x - 0.4, y: vertex.y }, { x: vertex.x - arc - 2, y: vertex.y }),
        lines.thin,
      ),
      ...angleDimension({ vertex, from: Math.PI, to: Math.PI + lipAngle, radius: arc, figure }, viewStyle),
    ]),
  }
}

const surfaceNote = (site: Site): Placed => {
  const { ramp, brief, show, key } = site
  const vertex = vertexOf(site)
  const figure = `${brief ? '' : 'ridden face '}${show(ramp.transition.heights.surface)}`
  return {
    key: key('height.surface'),
    ways: waysAt([18, 24, 30, 36], (away) => {
      const at = { x: vertex.x - away, y: vertex.y }
      return [
        stroke(layer, pathOf(vertex, at), lines.thin),
        ...levelMark({ at, figure, words: 'left' }, viewStyle),
      ]
    }),
  }
}

const toeNote = ({ ramp, ratio, show, key }: Site): Placed => {
  const { toe } = ramp.transition
  const middle = scaled(pointBetween(toe, { x: 0, y: 0 }, 0.5), ratio)
  const places: readonly (readonly [number, number, 'left' | 'right'])[] = [
    [-6, 9, 'left'],
    [-6, 13, 'left'],
    [-3, 17, 'left'],
    [5, 14, 'right'],
    [5, 20, 'right'],
  ]
  return {
    key: key('toe'),
    ways: waysAt(places, ([dx, dy, words]) =>
      callout(
        { on: middle, at: { x: middle.x + dx, y: middle.y + dy }, lines: [`toe ${show(toe.y)}`], words },
        viewStyle,
      ),
    ),
  }
}

const pipeNote = ({ ramp: { coping }, ratio, fine, key }: Site, outline: Box): readonly Placed[] => {
  if (!coping) return []
  const on = scaled(coping.centre, ratio)
  const places: readonly (readonly [number, number, 'left' | 'right'])[] = [
    [-5, 6, 'left'],
    [-5, 10, 'left'],
    [5, 6, 'right'],
    [5, 12, 'right'],
    [-5, 16, 'left'],
    [5, 20, 'right'],
  ]
  return [
    {
      key: key('coping.outside'),
      ways: waysAt(places, ([dx, dy, words]) =>
        callout(
          {
            on,
            at: { x: on.x + dx, y: outline.y1 + dy },
            lines: [`pipe ${fine(coping.outside)}`],
            words,
          },
          viewStyle,
        ),
      ),
    },
  ]
}

export const flatNotes = (
  ramp: Extract<SolvedRamp, { kind: 'flat' }>,
  { units, ratio }: NotesFacts,
  key: (path: string) => string,
): Notes => {
  const { length, heights } = ramp
  const at = (x: number, y: number): Point => ({ x: x * ratio, y: y * ratio })
  const show = (mm: number): string => showLength(mm, units)
  return {
    measures: [
      {
        key: key('length'),
        measure: { from: at(0, 0), to: at(length, 0), figure: show(length), sides: ['below'] },
      },
      {
        key: key('height.frame'),
        measure: {
          from: at(length, 0),
          to: at(length, heights.frame),
          figure: show(heights.frame),
          sides: ['right'],
        },
      },
      {
        key: key('height.surface'),
        measure: {
          from: at(0, 0),
          to: at(0, heights.surface),
          figure: show(heights.surface),
          sides: ['left'],
        },
      },
    ],
    placed: [],
  }
}
