import { segmentAt } from './at.ts'
import type { Segment } from './path.ts'
import { pointBetween } from './point.ts'

/** The part of a segment between parameters t0 ≤ t1 (0 … 1). Exact: an arc stays an arc. */
export const segmentPart = (segment: Segment, t0: number, t1: number): Segment => {
  if (t0 === 0 && t1 === 1) return segment
  const from = segmentAt(segment, t0)
  const to = segmentAt(segment, t1)
  switch (segment.kind) {
    case 'line':
      return { kind: 'line', from, to }
    case 'arc':
      return {
        ...segment,
        from,
        to,
        startAngle: segment.startAngle + segment.sweep * t0,
        sweep: segment.sweep * (t1 - t0),
      }
    case 'cubic': {
      // de Casteljau twice: the head up to t1, then its tail from t0/t1
      const head = (s: Extract<Segment, { kind: 'cubic' }>, t: number) => {
        const [p, q, r] = [
          pointBetween(s.from, s.c1, t),
          pointBetween(s.c1, s.c2, t),
          pointBetween(s.c2, s.to, t),
        ]
        const [pq, qr] = [pointBetween(p, q, t), pointBetween(q, r, t)]
        const middle = pointBetween(pq, qr, t)
        return { left: { c1: p, c2: pq }, right: { c1: qr, c2: r }, middle }
      }
      const upper = head(segment, t1)
      const cut = { kind: 'cubic', from: segment.from, ...upper.left, to: upper.middle } as const
      const lower = head(cut, t1 === 0 ? 0 : t0 / t1)
      return { kind: 'cubic', from, ...lower.right, to }
    }
    default:
      return segment satisfies never
  }
}
