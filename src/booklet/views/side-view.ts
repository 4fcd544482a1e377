import { callout } from '../../drafting/callout.ts'
import { alsoDrawn, type Clearance, firstClear, nothingDrawn } from '../../drafting/clearance.ts'
import { angleDimension } from '../../drafting/dimension/angle-dimension.ts'
import { groupDimensions, type Measure } from '../../drafting/dimension/group-dimensions.ts'
import { radiusDimension } from '../../drafting/dimension/radius-dimension.ts'
import { hatch } from '../../drafting/hatch/hatch.ts'
import { levelMark } from '../../drafting/level-mark.ts'
import { cross } from '../../drawing/cross.ts'
import { type Drawing, fill, stroke } from '../../drawing/drawing.ts'
import { affineScale } from '../../geometry/affine.ts'
import { type Box, boxUnion, pathBounds } from '../../geometry/bounds.ts'
import { type Path, pathOf, rectangle } from '../../geometry/path.ts'
import { pathMap } from '../../geometry/path-map.ts'
import { type Point, pointBetween } from '../../geometry/point.ts'
import { showLength, type Units } from '../../length.ts'
import { type Profile, profileOf, type SolvedQuarter, type SolvedRamp } from './profile.ts'
import { matesSize, sizeMates } from './size-mates.ts'
import { type View, type ViewPart, viewOf, viewStyle } from './view.ts'

export interface SideViewFacts {
  readonly ramp: SolvedRamp
  readonly units: Units
  /** mm on paper for one of the ramp */
  readonly ratio: number
  /** the ramp's place in the design file, for the keys of its parts */
  readonly index: number
  /** a person and a door beside it */
  readonly mates?: boolean
}

/** The ramp from its right side with its main dimensions; what has no clear place is left to the tables. */
export const sideView = (facts: SideViewFacts): View => {
  const { ramp, units, ratio, index } = facts
  const profile = profileOf(ramp, units)
  const key = (path: string): string => `ramps.${index}.${path}`
  const parts = bodyParts(profile, ratio, key)
  const outline = parts
    .filter(({ name }) => name !== 'floor')
    .flatMap(({ marks }) => marks)
    .flatMap((mark) => (mark.kind === 'stroke' ? [pathBounds(mark.path)] : []))
    .reduce(boxUnion)
  const notes =
    ramp.kind === 'quarter' ? quarterNotes(ramp, facts, outline, key) : flatNotes(ramp, facts, key)
  const group = groupDimensions(
    notes.measures.map(({ measure }) => measure),
    outline,
    viewStyle,
  )
  const dimensions = group.placed.flatMap((placed, i): ViewPart[] =>
    placed ? [{ name: 'dimension', key: notes.measures[i]!.key, marks: placed.marks }] : [],
  )
  const besideAll = group.box.x1 + 6
  const mates: readonly ViewPart[] = facts.mates ? [{ name: 'size', marks: sizeMates(besideAll, ratio) }] : []
  const x1 = facts.mates ? besideAll + matesSize.width * ratio : group.box.x1
  const floor = floorPart({ x0: group.box.x0, x1 }, outline)
  const drawn = [...parts, floor, ...mates]
  let clearance: Clearance = nothingDrawn
  for (const part of drawn) clearance = alsoDrawn(clearance, part.marks, 'thing')
  for (const part of dimensions) clearance = alsoDrawn(clearance, part.marks, 'note')
  const placed: ViewPart[] = []
  for (const note of notes.placed) {
    const marks = firstClear(clearance, note.ways)
    if (!marks) continue
    clearance = alsoDrawn(clearance, marks, 'note')
    placed.push({ name: 'dimension', key: note.key, marks })
  }
  return viewOf([...drawn, ...dimensions, ...placed])
}

const layer = 'note'
const { lines } = viewStyle

/** The things themselves, what lies behind first. */
const bodyParts = (profile: Profile, ratio: number, key: (path: string) => string): readonly ViewPart[] => {
  const map = affineScale(ratio)
  const on = (path: Path): Path => pathMap(path, map)
  const seen = (path: Path): Drawing => [fill(layer, on(path), 1), stroke(layer, on(path), lines.outline)]
  // many thin layers side by side would be a blot in wide lines
  const sheet = (path: Path): Drawing => [fill(layer, on(path), 1), stroke(layer, on(path), lines.thin)]
  // a short timber shows more than one dash a side
  const behind = { width: lines.hidden.width, dash: [1.2, 0.5] }
  return [
    { name: 'side', key: key('height'), marks: seen(profile.side) },
    ...profile.studs.map((path, i) => ({
      name: `stud ${i + 1}`,
      key: key('studs'),
      marks: [stroke(layer, on(path), behind)],
    })),
    ...profile.timbers.map((path, i) => ({
      name: `timber ${i + 1}`,
      key: key('studs'),
      marks: [stroke(layer, on(path), behind)],
    })),
    ...profile.skin.map((path, i) => ({ name: `layer ${i + 1}`, key: key(`skin.${i}`), marks: sheet(path) })),
    ...(profile.board ? [{ name: 'deck board', key: key('deck-board'), marks: seen(profile.board) }] : []),
    ...(profile.runOut ? [{ name: 'run-out', key: key('run-out'), marks: sheet(profile.runOut) }] : []),
    ...(profile.pipe
      ? [
          {
            name: 'pipe',
            key: key('coping'),
            marks: [
              ...seen(profile.pipe.path),
              ...cross(
                layer,
                scaled(profile.pipe.centre, ratio),
                profile.pipe.radius * ratio + 1.2,
                lines.axis,
              ),
            ],
          },
        ]
      : []),
  ]
}

const scaled = ({ x, y }: Point, ratio: number): Point => ({ x: x * ratio, y: y * ratio })

/** How far the floor is drawn past all else, and how deep its hatch; mm. */
const floorPast = 6
const floorDeep = 2

/** The floor on both sides of the ramp, hatched below. */
const floorPart = ({ x0, x1 }: Pick<Box, 'x0' | 'x1'>, outline: Box): ViewPart => {
  const ends = [
    [x0 - floorPast, outline.x0],
    [outline.x1, x1 + floorPast],
  ] as const
  return {
    name: 'floor',
    marks: [
      stroke(layer, pathOf({ x: x0 - floorPast, y: 0 }, { x: x1 + floorPast, y: 0 }), lines.outline),
      ...ends.flatMap(([from, to]) =>
        hatch([rectangle(from, -floorDeep, to, 0)], { layer, pen: { width: 0.13 }, spacing: 1.2 }),
      ),
    ],
  }
}

interface Notes {
  readonly measures: readonly { readonly key: string; readonly measure: Measure }[]
  /** each with its ways to be drawn, the best first */
  readonly placed: readonly { readonly key: string; readonly ways: readonly Drawing[] }[]
}

const quarterNotes = (
  ramp: SolvedQuarter,
  { units, ratio }: SideViewFacts,
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
          figure: `${words} R ${show(mm)}`,
        },
        viewStyle,
      )
    })
  const vertex = scaled(faceLip, ratio)
  const middle = scaled(pointBetween(toe, { x: 0, y: 0 }, 0.5), ratio)
  const shares = [0.45, 0.5, 0.4, 0.55, 0.35, 0.6, 0.3, 0.65, 0.7, 0.25, 0.75]
  return {
    measures: [
      measure('back', at(0, 0), at(length, design.chamfer), length, ['below']),
      measure('transition', at(0, faceToe.y), at(lip.x, top), transition.run, ['above']),
      measure('deck', at(lip.x, top), at(length, top), deck, ['above']),
      ...(design.chamfer > 0
        ? [
            measure('chamfer', at(length - design.chamfer, 0), at(length, design.chamfer), design.chamfer, [
              'right',
            ]),
          ]
        : []),
      measure('height', at(length, 0), at(length, heights.frame), heights.frame, ['right']),
      ...(top > heights.frame + 0.01
        ? [measure('height', at(length, 0), at(length, top), top, ['right'])]
        : []),
    ],
    placed: [
      {
        key: key('transition'),
        ways: [
          ...radiusWays('ridden face', radius.surface, face, shares),
          // or from within the side
          ...shares.flatMap((share) =>
            [
              [7, -6],
              [10, -10],
              [16, -12],
              [22, -16],
            ].map(([dx, dy]) => {
              const on = scaled(face.point(curveAt(share)), ratio)
              return callout(
                {
                  on,
                  at: { x: on.x + dx!, y: on.y + dy! },
                  lines: [`ridden face R ${show(radius.surface)}`],
                  words: 'right',
                },
                viewStyle,
              )
            }),
          ),
        ],
      },
      {
        key: key('transition'),
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
        key: key('height'),
        ways: [18, 24, 30, 36].map((away) => {
          const x = vertex.x - away
          return [
            stroke(layer, pathOf(vertex, { x, y: vertex.y }), lines.thin),
            ...levelMark(
              { at: { x, y: vertex.y }, figure: `ridden face ${show(heights.surface)}`, words: 'left' },
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
              key: key('coping'),
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

const flatNotes = (
  ramp: Extract<SolvedRamp, { kind: 'flat' }>,
  { units, ratio }: SideViewFacts,
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
        key: key('height'),
        measure: {
          from: at(length, 0),
          to: at(length, heights.frame),
          figure: show(heights.frame),
          sides: ['right'],
        },
      },
      {
        key: key('height'),
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
