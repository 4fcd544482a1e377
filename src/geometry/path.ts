import { type Point, pointAngle, pointDistance, pointToward } from './point.ts'

/** What follows a joint of a path. Each joint is stored once, so a path cannot have gaps. */
export type Piece =
  | { readonly kind: 'line'; readonly to: Point }
  /** `sweep` in radians, counter-clockwise positive; `to` is the stored end, the radius is that of the start. */
  | { readonly kind: 'arc'; readonly to: Point; readonly centre: Point; readonly sweep: number }
  | { readonly kind: 'cubic'; readonly c1: Point; readonly c2: Point; readonly to: Point }

/** A closed path runs back to its start by a line when its last piece does not end there. */
export interface Path {
  readonly start: Point
  readonly pieces: readonly Piece[]
  readonly closed: boolean
}

/** A piece that stands by itself. */
export type Segment =
  | { readonly kind: 'line'; readonly from: Point; readonly to: Point }
  | {
      readonly kind: 'arc'
      readonly from: Point
      readonly to: Point
      readonly centre: Point
      readonly radius: number
      /** angle of `from` about the centre, radians */
      readonly startAngle: number
      readonly sweep: number
    }
  | {
      readonly kind: 'cubic'
      readonly from: Point
      readonly c1: Point
      readonly c2: Point
      readonly to: Point
    }

export type ArcSegment = Extract<Segment, { kind: 'arc' }>
export type CubicSegment = Extract<Segment, { kind: 'cubic' }>

export const pathOf = (start: Point, ...to: readonly Point[]): Path => ({
  start,
  pieces: linesTo(to),
  closed: false,
})

export const polygonOf = (start: Point, ...to: readonly Point[]): Path => ({
  start,
  pieces: linesTo(to),
  closed: true,
})

const linesTo = (points: readonly Point[]): readonly Piece[] => {
  const pieces: Piece[] = []
  for (let i = 0; i < points.length; i++) pieces.push({ kind: 'line', to: points[i]! })
  return pieces
}

export const rectangle = (x0: number, y0: number, x1: number, y1: number): Path =>
  polygonOf({ x: x0, y: y0 }, { x: x1, y: y0 }, { x: x1, y: y1 }, { x: x0, y: y1 })

/** A full circle, from its rightmost point counter-clockwise. */
export const circle = (centre: Point, radius: number): Path => {
  const start = { x: centre.x + radius, y: centre.y }
  const half = { x: centre.x - radius, y: centre.y }
  return {
    start,
    pieces: [
      { kind: 'arc', to: half, centre, sweep: Math.PI },
      { kind: 'arc', to: start, centre, sweep: Math.PI },
    ],
    closed: true,
  }
}

/** The arc about `centre` from angle `from` through `sweep` (radians, counter-clockwise positive). */
export const arcSegment = (centre: Point, radius: number, from: number, sweep: number): ArcSegment => ({
  kind: 'arc',
  from: pointToward(centre, from, radius),
  to: pointToward(centre, from + sweep, radius),
  centre,
  radius,
  startAngle: from,
  sweep,
})

export const pathSegments = (path: Path): readonly Segment[] => {
  const segments: Segment[] = []
  let from = path.start
  for (let i = 0; i < path.pieces.length; i++) {
    const piece = path.pieces[i]!
    switch (piece.kind) {
      case 'line':
        segments.push({ kind: 'line', from, to: piece.to })
        break
      case 'arc':
        segments.push({
          kind: 'arc',
          from,
          to: piece.to,
          centre: piece.centre,
          radius: pointDistance(piece.centre, from),
          startAngle: pointAngle(piece.centre, from),
          sweep: piece.sweep,
        })
        break
      case 'cubic':
        segments.push({ kind: 'cubic', from, c1: piece.c1, c2: piece.c2, to: piece.to })
        break
      default:
        return piece satisfies never
    }
    from = piece.to
  }
  if (path.closed && (from.x !== path.start.x || from.y !== path.start.y))
    segments.push({ kind: 'line', from, to: path.start })
  return segments
}

/** Where the segments of a path begin. */
export const pathCorners = ({ start, pieces, closed }: Path): readonly Point[] => {
  const corners = [start]
  for (const { to } of pieces) corners.push(to)
  const end = corners[corners.length - 1]!
  if (!closed || (end.x === start.x && end.y === start.y)) corners.pop()
  return corners
}

const pieceOf = (segment: Segment): Piece => {
  switch (segment.kind) {
    case 'line':
      return { kind: 'line', to: segment.to }
    case 'arc':
      return { kind: 'arc', to: segment.to, centre: segment.centre, sweep: segment.sweep }
    case 'cubic':
      return { kind: 'cubic', c1: segment.c1, c2: segment.c2, to: segment.to }
    default:
      return segment satisfies never
  }
}

/** An open path of segments that follow one another. Throws RangeError on an empty list. */
export const segmentsPath = (segments: readonly Segment[]): Path => {
  const first = segments[0]
  if (!first) throw new RangeError('a path needs at least one segment')
  return { start: first.from, pieces: segments.map(pieceOf), closed: false }
}
