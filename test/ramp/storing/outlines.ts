import type { Quarter } from '../../../src/ramp/ramp.ts'
import { type Edge, edgeRows } from '../../support/edge-rows.ts'

/** x and y, mm */
export type Spot = readonly [number, number]
export type Outline = readonly Spot[]

const even = (count: number, from: number, to: number): readonly number[] =>
  Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count)

const round = ([x, y]: Spot, r: number): Outline =>
  even(72, 0, 2 * Math.PI).map((a) => [x + r * Math.cos(a), y + r * Math.sin(a)])

const bands = ({ transition, skin }: Quarter): readonly Outline[] => {
  const { centre, radius } = transition!
  const on = (r: number, angle: number): Spot => [
    centre.x + r * Math.sin(angle),
    centre.y - r * Math.cos(angle),
  ]
  return skin
    .filter(({ start, end }) => end > start)
    .map(({ below, sheet, start, end }) => [
      ...even(60, start, end).map((a) => on(radius.frame - below, a)),
      ...even(60, end, start).map((a) => on(radius.frame - below - sheet.thickness, a)),
    ])
}

const box = (x0: number, y0: number, x1: number, y1: number): Outline => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
]

const pipeAndBoard = ({ coping, deckBoard, transition }: Quarter): readonly Outline[] => [
  ...(coping ? [round([coping.centre.x, coping.centre.y], coping.outside / 2)] : []),
  ...(deckBoard
    ? [
        box(
          deckBoard.from,
          transition!.heights.frame,
          deckBoard.from + deckBoard.length,
          transition!.heights.deck,
        ),
      ]
    : []),
]

/** A ramp as closed outlines, by trigonometry from its centre and radius: the side without its notch, skin, pipe, board. */
export const solid = (ramp: Quarter): readonly Outline[] => {
  const { transition, side, length, design } = ramp
  const { centre, radius, toeAngle, heights } = transition!
  const frame = even(60, toeAngle, side!.curveEnd).map(
    (a): Spot => [centre.x + radius.frame * Math.sin(a), centre.y - radius.frame * Math.cos(a)],
  )
  const end = frame.at(-1)!
  const foot: readonly Spot[] = [
    [0, 0],
    [length! - design.chamfer, 0],
    [length!, design.chamfer],
    [length!, heights.frame],
  ]
  // the top of a notch is the pipe's place
  const top: readonly Spot[] = ramp.coping ? [[length!, end[1]], end] : []
  return [[...foot, ...top, ...[...frame].reverse()], ...bands(ramp), ...pipeAndBoard(ramp)]
}

/** What hangs in the room under a ramp; timbers by turning boxes. */
export const overhead = (ramp: Quarter): readonly Outline[] => [
  ...[...ramp.studs, ...ramp.deckTimbers.filter(({ role }) => role !== 'back')].map(
    ({ x, y, angle, width, depth }): Outline =>
      box(-width / 2, -depth, width / 2, 0).map(
        ([u, v]): Spot => [
          x + u * Math.cos(angle) - v * Math.sin(angle),
          y + u * Math.sin(angle) + v * Math.cos(angle),
        ],
      ),
  ),
  ...bands(ramp),
  ...pipeAndBoard(ramp),
]

const edgesOf = (outlines: readonly Outline[]): ((y: number) => readonly Edge[]) =>
  edgeRows(
    outlines.flatMap((outline) =>
      outline.map(([ax, ay], i): Edge => [ax, ay, ...outline[(i + 1) % outline.length]!]),
    ),
    8,
  )

/** The edge farthest to the right (1) or the left (-1) at a height. */
const farthest = (edgesAt: ReturnType<typeof edgesOf>, y: number, side: 1 | -1): number => {
  let most = Number.NEGATIVE_INFINITY
  for (const [ax, ay, bx, by] of edgesAt(y)) {
    if (ay > y === by > y) continue
    most = Math.max(most, side * (ax + ((y - ay) / (by - ay)) * (bx - ax)))
  }
  return side * most
}

/**
 * How far left the one comes, pushed from the right: at a hair above and below every corner's height, the right edge of what is
 * in the way less the left edge of what is pushed.
 */
export const slowlyPushed = (own: readonly Outline[], others: readonly Outline[]): number => {
  const [mine, theirs] = [edgesOf(own), edgesOf(others)]
  let most = Number.NEGATIVE_INFINITY
  for (const outline of [...own, ...others])
    for (const [, corner] of outline)
      for (const y of [corner - 1e-7, corner + 1e-7])
        most = Math.max(most, farthest(theirs, y, 1) - farthest(mine, y, -1))
  return most
}
