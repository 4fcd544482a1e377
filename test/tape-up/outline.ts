import type { Pt } from '../support/pt.ts'
import type { RawQuarter } from './raw-design.ts'

type EdgeName = 'bottom' | 'chamfer' | 'back' | 'top' | 'notch' | 'curve' | 'toe'

/** A straight or an arc, with the distance along the outline at which it starts. */
type Piece = { readonly edge: EdgeName; readonly at: number; readonly length: number } & (
  | { readonly kind: 'line'; readonly a: Pt; readonly b: Pt }
  | {
      readonly kind: 'arc'
      readonly centre: Pt
      readonly radius: number
      readonly from: number
      readonly sweep: number
    }
)

/** The closed outline of a side by the closed forms of docs/geometry.md; wood on the left of the way. */
export interface Outline {
  readonly pieces: readonly Piece[]
  readonly length: number
  /** corners no more than a millimetre apart, all of them on the line */
  readonly polygon: readonly Pt[]
}

const turn = 2 * Math.PI
/** An angle brought into −2π … 0. */
const clockwise = (angle: number): number => -(((-angle % turn) + turn) % turn || 0)

export const outlineOf = (raw: RawQuarter): Outline => {
  const { skin: s, toe: t, board, chamfer } = raw
  const R = raw.radius.layer === 'frame' ? raw.radius.value : raw.radius.value + s
  const c = raw.tangent.value + (raw.tangent.layer === 'frame' ? R : R - s)
  const a1 =
    raw.height.layer === 'surface'
      ? Math.acos((c - raw.height.value) / (R - s))
      : Math.acos((c - raw.height.value + (raw.height.layer === 'deck' ? board : 0)) / R)
  const h = c - R * Math.cos(a1)
  const a0 = Math.acos((c - t) / R)
  const C = { x: -R * Math.sin(a0), y: c }
  const lip = { x: R * (Math.sin(a1) - Math.sin(a0)), y: h }
  const length = raw.back.from === 'length' ? raw.back.value : lip.x + raw.back.value

  const pieces: Piece[] = []
  let at = 0
  const add = (piece: Piece): void => {
    if (piece.length === 0) return
    pieces.push(piece)
    at += piece.length
  }
  const line = (edge: EdgeName, a: Pt, b: Pt): void =>
    add({ kind: 'line', edge, a, b, at, length: Math.hypot(b.x - a.x, b.y - a.y) })
  const arc = (edge: EdgeName, centre: Pt, radius: number, from: number, sweep: number): void =>
    add({ kind: 'arc', edge, centre, radius, from, sweep, at, length: radius * Math.abs(sweep) })

  line('bottom', { x: 0, y: 0 }, { x: length - chamfer, y: 0 })
  line('chamfer', { x: length - chamfer, y: 0 }, { x: length, y: chamfer })
  line('back', { x: length, y: chamfer }, { x: length, y: h })
  let end = lip
  if (raw.coping) {
    const r = raw.coping.outside / 2
    const { by } = raw.coping
    const y = by.kind === 'notch' ? h - by.down + r : h + board + by.up - r
    const P = {
      x:
        by.kind === 'notch'
          ? lip.x + by.along - r
          : C.x + Math.sqrt((R - s + r - by.out) ** 2 - (c - y) ** 2),
      y,
    }
    if (raw.coping.seat === 'square') {
      const corner = { x: P.x + r, y: P.y - r }
      end = { x: C.x + Math.sqrt(R * R - (c - corner.y) ** 2), y: corner.y }
      line('top', { x: length, y: h }, { x: corner.x, y: h })
      line('notch', { x: corner.x, y: h }, corner)
      line('notch', corner, end)
    } else {
      // where the circle of the pipe meets the frame's: the lower of the two points
      const d = Math.hypot(P.x - C.x, P.y - C.y)
      const along = (R * R - r * r + d * d) / (2 * d)
      const aside = Math.sqrt(R * R - along * along)
      const [ux, uy] = [(P.x - C.x) / d, (P.y - C.y) / d]
      const meets = [1, -1].map((side) => ({
        x: C.x + along * ux - side * aside * uy,
        y: C.y + along * uy + side * aside * ux,
      }))
      end = meets[0]!.y < meets[1]!.y ? meets[0]! : meets[1]!
      // the seat is cut off by the top line where the pipe's middle lies above it
      const rise = Math.min(0, h - P.y)
      const wall = { x: P.x + Math.sqrt(r * r - rise * rise), y: P.y + rise }
      line('top', { x: length, y: h }, { x: wall.x, y: h })
      line('notch', { x: wall.x, y: h }, wall)
      const from = Math.atan2(wall.y - P.y, wall.x - P.x)
      arc('notch', P, r, from, clockwise(Math.atan2(end.y - P.y, end.x - P.x) - from))
    }
  } else line('top', { x: length, y: h }, lip)
  const from = Math.atan2(end.y - C.y, end.x - C.x)
  arc('curve', C, R, from, clockwise(Math.atan2(t - C.y, -C.x) - from))
  line('toe', { x: 0, y: t }, { x: 0, y: 0 })
  const outline = { pieces, length: at }
  return { ...outline, polygon: outlineSamples(outline, 1).map(({ p }) => p) }
}

const pieceAt = (piece: Piece, along: number): Pt => {
  const share = along / piece.length
  if (piece.kind === 'line')
    return {
      x: piece.a.x + (piece.b.x - piece.a.x) * share,
      y: piece.a.y + (piece.b.y - piece.a.y) * share,
    }
  const angle = piece.from + piece.sweep * share
  return {
    x: piece.centre.x + piece.radius * Math.cos(angle),
    y: piece.centre.y + piece.radius * Math.sin(angle),
  }
}

/** Points at most `step` apart, corners included, each with its place along the outline. */
export const outlineSamples = (
  { pieces }: Pick<Outline, 'pieces'>,
  step: number,
  edges?: readonly EdgeName[],
): readonly { readonly p: Pt; readonly at: number }[] =>
  pieces
    .filter((piece) => !edges || edges.includes(piece.edge))
    .flatMap((piece) => {
      const count = Math.ceil(piece.length / step)
      return Array.from({ length: count + 1 }, (_, i) => {
        const along = (i / count) * piece.length
        return { p: pieceAt(piece, along), at: piece.at + along }
      })
    })

/** Distance of a point from the outline, and the place along it that lies nearest. */
export const outlineNearest = (
  { pieces }: Outline,
  p: Pt,
): { readonly distance: number; readonly at: number } => {
  let distance = Number.POSITIVE_INFINITY
  let at = 0
  for (const piece of pieces) {
    let along: number
    if (piece.kind === 'line') {
      const { a, b } = piece
      along = ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / piece.length
    } else {
      // ahead of the start, in the arc's own sense; what lies beyond the end is brought to the nearer of both
      const angle = Math.atan2(p.y - piece.centre.y, p.x - piece.centre.x) - piece.from
      const ahead = ((((piece.sweep < 0 ? -angle : angle) % turn) + turn) % turn) * piece.radius
      along = ahead - piece.length > turn * piece.radius - ahead ? 0 : ahead
    }
    along = Math.max(0, Math.min(piece.length, along))
    const q = pieceAt(piece, along)
    const d = Math.hypot(p.x - q.x, p.y - q.y)
    if (d < distance) {
      distance = d
      at = piece.at + along
    }
  }
  return { distance, at }
}

/** Whether a point lies on the wood; exact but for a hair beside the line. */
export const outlineContains = ({ polygon }: Outline, p: Pt): boolean => {
  let inside = false
  let a = polygon.at(-1)!
  for (const b of polygon) {
    if (a.y > p.y !== b.y > p.y && p.x < a.x + ((p.y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside
    a = b
  }
  return inside
}
