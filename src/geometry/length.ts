import type { Path, Segment } from './path.ts'
import { pathSegments } from './path.ts'
import { pointDistance } from './point.ts'

/** Length in mm. Lines and arcs are exact; a cubic is summed by 5-point Gauss–Legendre on 16 parts. */
export const segmentLength = (segment: Segment): number => {
  switch (segment.kind) {
    case 'line':
      return pointDistance(segment.from, segment.to)
    case 'arc':
      return segment.radius * Math.abs(segment.sweep)
    case 'cubic':
      return cubicLength(segment)
    default:
      return segment satisfies never
  }
}

export const pathLength = (path: Path): number =>
  pathSegments(path).reduce((sum, segment) => sum + segmentLength(segment), 0)

// 5-point Gauss–Legendre, Abramowitz & Stegun table 25.4
const nodes = [
  [0, 128 / 225],
  [Math.sqrt(5 - 2 * Math.sqrt(10 / 7)) / 3, (322 + 13 * Math.sqrt(70)) / 900],
  [Math.sqrt(5 + 2 * Math.sqrt(10 / 7)) / 3, (322 - 13 * Math.sqrt(70)) / 900],
] as const

const cubicLength = (segment: Extract<Segment, { kind: 'cubic' }>): number => {
  const { from, c1, c2, to } = segment
  const speed = (t: number): number => {
    const u = 1 - t
    return (
      3 *
      Math.hypot(
        u * u * (c1.x - from.x) + 2 * u * t * (c2.x - c1.x) + t * t * (to.x - c2.x),
        u * u * (c1.y - from.y) + 2 * u * t * (c2.y - c1.y) + t * t * (to.y - c2.y),
      )
    )
  }
  const parts = 16
  let sum = 0
  for (let i = 0; i < parts; i++)
    for (const [x, w] of nodes)
      for (const sign of x === 0 ? [1] : [-1, 1]) sum += w * speed((i + 0.5 + 0.5 * sign * x) / parts)
  return sum / (2 * parts)
}
