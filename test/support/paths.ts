import fc from 'fast-check'
import { type Affine, affineApply } from '../../src/geometry/affine.ts'
import { arcSegment, type Path, type Piece, type Segment } from '../../src/geometry/path.ts'
import type { Point } from '../../src/geometry/point.ts'

/** A path under a turn, a shift or an even scale with positive determinant: maps that keep a circle's sense. */
export const pathTurned = (path: Path, map: Affine): Path => {
  const at = (p: Point) => affineApply(map, p)
  const piece = (p: Piece): Piece =>
    p.kind === 'line'
      ? { kind: 'line', to: at(p.to) }
      : p.kind === 'arc'
        ? { ...p, to: at(p.to), centre: at(p.centre) }
        : { kind: 'cubic', c1: at(p.c1), c2: at(p.c2), to: at(p.to) }
  return { ...path, start: at(path.start), pieces: path.pieces.map(piece) }
}

/** The side of a low ramp, closed: floor, back, top, round notch, curve (a cubic in place of one edge). */
export const sideOutline: Path = {
  start: { x: 0, y: 40 },
  pieces: [
    { kind: 'line', to: { x: 0, y: 0 } },
    { kind: 'line', to: { x: 1200, y: 0 } },
    { kind: 'cubic', c1: { x: 1290, y: 100 }, c2: { x: 1150, y: 400 }, to: { x: 1200, y: 600 } },
    { kind: 'line', to: { x: 860, y: 600 } },
    { kind: 'arc', to: { x: 800, y: 540 }, centre: { x: 800, y: 600 }, sweep: -Math.PI / 2 },
    // from (800, 540) to (0, 40) about the middle of their bisector: radius 943.4, chord 943.4, so 60 degrees
    {
      kind: 'arc',
      to: { x: 0, y: 40 },
      centre: { x: 400 - 250 * Math.sqrt(3), y: 290 + 400 * Math.sqrt(3) },
      sweep: -Math.PI / 3,
    },
  ],
  closed: true,
}

const coordinate = fc.double({ min: -500, max: 500, noNaN: true })
export const anyPoint: fc.Arbitrary<Point> = fc.record({ x: coordinate, y: coordinate })

export const anyArc = fc
  .record({
    centre: anyPoint,
    radius: fc.double({ min: 1, max: 3000, noNaN: true }),
    from: fc.double({ min: -7, max: 7, noNaN: true }),
    sweep: fc.double({ min: 0.01, max: 2 * Math.PI, noNaN: true }),
    clockwise: fc.boolean(),
  })
  .map(({ centre, radius, from, sweep, clockwise }) =>
    arcSegment(centre, radius, from, clockwise ? -sweep : sweep),
  )

export const anyCubic = fc
  .record({ from: anyPoint, c1: anyPoint, c2: anyPoint, to: anyPoint })
  .map((points): Segment => ({ kind: 'cubic', ...points }))

export const anyLine = fc
  .record({ from: anyPoint, to: anyPoint })
  .map((points): Segment => ({ kind: 'line', ...points }))

export const anySegment: fc.Arbitrary<Segment> = fc.oneof(anyArc, anyCubic, anyLine)
