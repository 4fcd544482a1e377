import { callout } from '../../drafting/callout.ts'
import { angleDimension } from '../../drafting/dimension/angle-dimension.ts'
import type { Measure } from '../../drafting/dimension/group-dimensions.ts'
import { radiusDimension } from '../../drafting/dimension/radius-dimension.ts'
import { levelMark } from '../../drafting/level-mark.ts'
import { type Drawing, stroke } from '../../drawing/drawing.ts'
import type { Box } from '../../geometry/bounds.ts'
import { pathOf } from '../../geometry/path.ts'
import { type Point, pointBetween } from '../../geometry/point.ts'
import { showLength, type Units } from '../../length.ts'
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
  readonly placed: readonly { readonly key: string; readonly ways: readonly Drawing[] }[]
}

export const quarterNotes = (
  ramp: SolvedQuarter,
  { units, ratio, brief = false }: NotesFacts,
  outline: Box,
  key: (path: string) => string,
): Notes => {
  const { transition, length, deck, design } = ramp
  const { curve, heights, radius, toe, lip } = transition
  const at = (x: number, y: number): Point => ({ x: x * ratio, y: y * ratio })
  const show = (mm: number): string => showLength(mm, units)
  const face = curve.offset(ramp.skinThickness)
  const [faceToe, faceLip] = [face.point(curve.toe), face.point(curve.lip)]
  const top = heights.deck
  // the radius of the layer that the design gives
  const circle = design.transition.circle.layer
  const named = brief ? '' : circle === 'frame' ? 'frame ' : 'ridden face '
  const measure = (
    path: string,
    from: Point,
    to: Point,
    mm: number,
    sides: Measure['sides'],
  ): Notes['measures'][number] => ({ key: key(path), measure: { from, to, figure: show(mm), sides } })
  const curveAt = (share: number): number => curve.toe + (curve.lip - curve.toe) * share
  /** An R that points at a curve from the rider's side, where along it has room. */
  const radiusWays = (words: string, mm: number, of: typeof curve, shares: readonly number[]): Drawing[] =>
    shares.map((share) => {
      const place = curveAt(share)
      const slope = of.slope(place)
      const foot = of.point(place)
      const centre = { x: foot.x - mm * Math.sin(slope), y: foot.y + mm * Math.cos(slope) }
      return radiusDimension(
        {
          centre: scaled(centre, ratio),
          radius: mm * ratio,
          angle: slope - Math.PI / 2,
          figure: `${words}R ${show(mm)}`,
        },
        viewStyle,
      )
    })
  const vertex = scaled(faceLip, ratio)
  const middle = scaled(pointBetween(toe, { x: 0, y: 0 }, 0.5), ratio)
  const shares = [0.45, 0.5, 0.4, 0.55, 0.35, 0.6, 0.3, 0.65, 0.7, 0.25, 0.75]
  return {
    measures: [
      measure('length', at(0, 0), at(length, design.chamfer), length, ['below']),
      measure('run', at(0, faceToe.y), at(lip.x, top), transition.run, ['above']),
      measure('deck', at(lip.x, top), at(length, top), deck, ['above']),
      ...(design.chamfer > 0
        ? [
            measure(
              'chamfer.leg',
              at(length - design.chamfer, 0),
              at(length, design.chamfer),
              design.chamfer,
              ['right'],
            ),
          ]
        : []),
      measure('height.frame', at(length, 0), at(length, heights.frame), heights.frame, ['right']),
      ...(top > heights.frame + 0.01
        ? [measure('height.deck', at(length, 0), at(length, top), top, ['right'])]
        : []),
    ],
    placed: [
      {
        key: key(`transition.circle.${circle}`),
        ways: [
          ...radiusWays(named, radius[circle], circle === 'frame' ? curve : face, shares),
          // or from within the side
          ...shares.flatMap((share) =>
            [
              [7, -6],
              [10, -10],
              [16, -12],
              [22, -16],
            ].map(([dx, dy]) => {
              const on = scaled((circle === 'frame' ? curve : face).point(curveAt(share)), ratio)
              return callout(
                {
                  on,
                  at: { x: on.x + dx!, y: on.y + dy! },
                  lines: [`${named}R ${show(radius[circle])}`],
                  words: 'right',
                },
                viewStyle,
              )
            }),
          ),
        ],
      },
      {
        key: key('lip'),
        ways: [10, 13, 8, 16].flatMap((arc) => {
          const from = { x: vertex.x - arc - 2, y: vertex.y }
          const figure = `${((transition.lipAngle * 180) / Math.PI).toFixed(1)}°`
          return [
            [
              stroke(layer, pathOf({ x: vertex.x - 0.4, y: vertex.y }, from), lines.thin),
              ...angleDimension(
                { vertex, from: Math.PI, to: Math.PI + transition.lipAngle, radius: arc, figure },
                viewStyle,
              ),
            ],
          ]
        }),
      },
      {
        key: key('height.surface'),
        ways: [18, 24, 30, 36].map((away) => {
          const x = vertex.x - away
          return [
            stroke(layer, pathOf(vertex, { x, y: vertex.y }), lines.thin),
            ...levelMark(
              {
                at: { x, y: vertex.y },
                figure: `${brief ? '' : 'ridden face '}${show(heights.surface)}`,
                words: 'left',
              },
              viewStyle,
            ),
          ]
        }),
      },
      {
        key: key('toe'),
        ways: [
          [-6, 9, 'left'],
          [-6, 13, 'left'],
          [-3, 17, 'left'],
          [5, 14, 'right'],
          [5, 20, 'right'],
        ].map(([dx, dy, words]) =>
          callout(
            {
              on: middle,
              at: { x: middle.x + (dx as number), y: middle.y + (dy as number) },
              lines: [`toe ${show(toe.y)}`],
              words: words as 'left' | 'right',
            },
            viewStyle,
          ),
        ),
      },
      ...(ramp.coping && design.coping
        ? [
            {
              key: key('coping.outside'),
              ways: [
                [-5, 6, 'left'],
                [-5, 10, 'left'],
                [5, 6, 'right'],
                [5, 12, 'right'],
                [-5, 16, 'left'],
                [5, 20, 'right'],
              ].map(([dx, dy, words]) => {
                const on = scaled(ramp.coping!.centre, ratio)
                return callout(
                  {
                    on,
                    at: { x: on.x + (dx as number), y: outline.y1 + (dy as number) },
                    lines: [`pipe ${show(ramp.coping!.outside)}`],
                    words: words as 'left' | 'right',
                  },
                  viewStyle,
                )
              }),
            },
          ]
        : []),
    ],
  }
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
