import type { Units } from '../../design/design.ts'
import { inch } from '../../geometry/inch.ts'
import type { Curve } from '../curve/curve.ts'
import type { Pipe } from '../frame/pipe.ts'
import { usualAtLeast } from '../frame/screw-lengths.ts'
import type { SolvedCoping } from '../side/coping.ts'
import type { DeckBoard } from '../skin/deck-board.ts'
import type { Layer } from '../skin/layer.ts'
import type { Driven } from './clearance.ts'
import { screwDiameter } from './screw-sort.ts'

/** The far wall of the pipe, and how deep its screws go into the timber; common practice, no source. mm */
const pipeDepth = { wall: 4, grip: { mm: 40, in: 1.5 * inch } } as const

/** Of the screws that hold the pipe, through so much air under the notch's floor; mm. */
export const pipeScrewLength = (air: number, units: Units): number =>
  usualAtLeast(pipeDepth.wall + air + pipeDepth.grip[units], units)

/** Square to a curve at a place, its head so far over that. */
export const drivenAt = (
  curve: Curve,
  place: number,
  over: number,
  length: number,
  across: readonly number[],
  thick: number,
): Driven => {
  const { x, y } = curve.point(place)
  const slope = curve.slope(place)
  const on = (up: number) => ({ x: x - up * Math.sin(slope), y: y + up * Math.cos(slope) })
  return { from: on(over), to: on(over - length), across, thick }
}

/** Through the skin; a row that no usual screw fits has none. */
export const skinScrews = (curve: Curve, skin: readonly Layer[], units: Units): readonly Driven[] =>
  skin.flatMap(({ below, sheet, rows }) =>
    rows.flatMap(({ place, across, length }) =>
      length === null
        ? []
        : [drivenAt(curve, place, below + sheet.thickness, length, across, screwDiameter('skin', units))],
    ),
  )

/** Straight down through the deck board, that lies on a side so high. */
export const boardScrews = (board: DeckBoard | null, height: number, units: Units): readonly Driven[] =>
  (board?.rows ?? []).flatMap(({ at, across, length }) => {
    if (length === null) return []
    const [x, y] = [board!.from + at, height + board!.sheet.thickness]
    return [{ from: { x, y }, to: { x, y: y - length }, across, thick: screwDiameter('deck board', units) }]
  })

/** Straight down from the pipe's middle, the heads on its far wall, through so much air under the notch's floor. */
export const pipeScrews = (
  coping: SolvedCoping | null,
  pipe: Pipe | null,
  air: number,
  units: Units,
): readonly Driven[] => {
  if (!coping || !pipe) return []
  const { x, y } = coping.centre
  const head = y - coping.outside / 2 + pipeDepth.wall
  return [
    {
      from: { x, y: head },
      to: { x, y: head - pipeScrewLength(air, units) },
      across: pipe.holes,
      thick: screwDiameter('pipe', units),
    },
  ]
}
