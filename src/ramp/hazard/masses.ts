import {
  type Mass,
  massOf,
  massTimes,
  pipeMass,
  sheetDensities,
  timberDensity,
} from '../../design/densities.ts'
import type { QuarterDesign, Sheet } from '../../design/design.ts'
import { pathCentroid } from '../../geometry/centroid.ts'
import { type Point, pointBetween } from '../../geometry/point.ts'
import type { Curve } from '../curve/curve.ts'
import { studLength } from '../frame/bays.ts'
import type { Timber } from '../frame/timber.ts'
import { boardFront } from '../skin/deck-board.ts'
import type { Standing } from './standing.ts'

/** A part of a ramp, kg, and its middle seen from the side. */
export interface Part {
  readonly mass: Mass
  readonly middle: Point
}

/** Steps of Simpson's rule along a layer. */
const steps = 16

/** The middle of a thread that lies on the curve between two places. */
const threadMiddle = (curve: Curve, from: number, to: number): Point => {
  const [start, end] = [curve.lengthTo(from), curve.lengthTo(to)]
  let [x, y] = [0, 0]
  for (let i = 0; i <= steps; i++) {
    const weight = (i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2) / (3 * steps)
    const p = curve.point(curve.placeAtLength(start + ((end - start) * i) / steps))
    x += weight * p.x
    y += weight * p.y
  }
  return { x, y }
}

/** All that stands on the floor, without screws, run-out and wheels; plates over joints where they are known. */
export const rampParts = (design: QuarterDesign, ramp: Standing): readonly Part[] => {
  const { transition, side, coping, studs, deckTimbers, skin, splices = [] } = ramp
  const { width, sides, deckBoard } = design
  const { area, centre } = pathCentroid(side.outline)
  const timberLength = studLength(design) * (sides.count - 1)
  const sheet = ({ material, thickness }: Sheet, length: number): Mass =>
    massOf(sheetDensities[material], thickness * length * width)
  const plates = sides.thickness * sides.count
  const timber = ({ x, y, angle, width: w, depth }: Timber, i: number): Part => ({
    // it stands between the plates of its joint
    mass: massOf(
      timberDensity,
      w * depth * (timberLength - (splices.some((splice) => splice.timber === i) ? plates : 0)),
    ),
    middle: { x: x + (depth / 2) * Math.sin(angle), y: y - (depth / 2) * Math.cos(angle) },
  })
  const front = boardFront(coping, transition.run)
  return [
    { mass: massOf(sheetDensities.plywood, area * sides.thickness * sides.count), middle: centre },
    ...[...studs, ...deckTimbers].map(timber),
    ...splices.map(
      ({ plate: { corners, size } }): Part => ({
        mass: massOf(sheetDensities.plywood, size[0] * size[1] * plates),
        middle: pointBetween(corners[0]!, corners[2]!, 1 / 2),
      }),
    ),
    ...skin.map((layer): Part => {
      const middle = transition.curve.offset(layer.below + layer.sheet.thickness / 2)
      return { mass: sheet(layer.sheet, layer.length), middle: threadMiddle(middle, layer.start, layer.end) }
    }),
    ...(deckBoard
      ? [
          {
            mass: sheet(deckBoard, side.length - front),
            middle: { x: (front + side.length) / 2, y: side.height + deckBoard.thickness / 2 },
          },
        ]
      : []),
    ...(coping ? [{ mass: massTimes(pipeMass(design.coping!), width / 1000), middle: coping.centre }] : []),
  ]
}
