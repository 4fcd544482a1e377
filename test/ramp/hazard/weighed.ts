import { type Mass, pipeMass, sheetDensities, timberDensity } from '../../../src/design/densities.ts'
import type { QuarterDesign } from '../../../src/design/design.ts'
import { segmentAt } from '../../../src/geometry/at.ts'
import { pathSegments } from '../../../src/geometry/path.ts'
import type { Point } from '../../../src/geometry/point.ts'
import { timberCorners } from '../../../src/ramp/frame/timber.ts'
import type { Quarter } from '../../../src/ramp/ramp.ts'

/** Area and middle of a polygon by the shoelace. */
const polygon = (points: readonly Point[]): { readonly area: number; readonly x: number } => {
  let [area, x] = [0, 0]
  points.forEach((a, i) => {
    const b = points[(i + 1) % points.length]!
    const cross = a.x * b.y - b.x * a.y
    area += cross / 2
    x += ((a.x + b.x) * cross) / 6
  })
  return { area: Math.abs(area), x: x / area }
}

export interface Weighed {
  readonly density: Mass
  readonly volume: number
  readonly x: number
}

/** All parts as polygons of many corners, drawn from the side, and how long each is across. */
export const weighed = (design: QuarterDesign, ramp: Quarter, corners = 2000): readonly Weighed[] => {
  const { side, studs, deckTimbers, skin, transition, deckBoard, coping } = ramp
  const { width, sides } = design
  const part = (density: Mass, points: readonly Point[], across: number): Weighed => {
    const { area, x } = polygon(points)
    return { density, volume: area * across, x }
  }
  const outline = pathSegments(side!.outline).flatMap((s) => {
    const steps = s.kind === 'line' ? 1 : corners
    return Array.from({ length: steps }, (_, i) => segmentAt(s, i / steps))
  })
  const { centre, radius } = transition!
  const layers = skin.map(({ below, sheet, start, end }) => {
    const arc = (r: number): readonly Point[] =>
      Array.from({ length: corners + 1 }, (_, i) => {
        const angle = start + ((end - start) * i) / corners
        return { x: centre.x + r * Math.sin(angle), y: centre.y - r * Math.cos(angle) }
      })
    const [low, high] = [arc(radius.frame - below), arc(radius.frame - below - sheet.thickness)]
    return part(sheetDensities[sheet.material], [...low, ...[...high].reverse()], width)
  })
  return [
    part(sheetDensities.plywood, outline, sides.thickness * sides.count),
    ...[...studs, ...deckTimbers].map((t) =>
      part(timberDensity, timberCorners(t), width - sides.thickness * sides.count),
    ),
    ...layers,
    ...(deckBoard
      ? [
          {
            density: sheetDensities.plywood,
            volume: deckBoard.length * deckBoard.sheet.thickness * width,
            x: deckBoard.from + deckBoard.length / 2,
          },
        ]
      : []),
    ...(coping
      ? [
          {
            density: { least: 1e6, usual: 1e6, most: 1e6 },
            volume: pipeMass(design.coping!).usual * width,
            x: coping.centre.x,
          },
        ]
      : []),
  ]
}
