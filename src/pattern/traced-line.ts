import { type Path, pathOf, pathSegments, segmentsPath } from '../geometry/path.ts'
import type { Side } from '../ramp/side/side.ts'

/** How much of the straight edges beside toe and notch a line plot carries, so that they can be laid to the panel, mm. */
const lead = 40

/** From a bit of the top line through notch, curve and toe to a bit of the bottom edge, in one piece. */
export const tracedLine = (side: Side): Path => {
  const edge = (name: string) => side.edges.find((e) => e.name === name)
  const traced = ['notch', 'curve', 'toe'].flatMap((name) =>
    pathSegments(edge(name)?.path ?? pathOf({ x: 0, y: 0 })),
  )
  const [first, last] = [traced[0]!.from, traced.at(-1)!.to]
  const before = { x: Math.min(first.x + lead, side.length), y: first.y }
  const after = { x: Math.min(last.x + lead, side.length), y: last.y }
  return segmentsPath([
    { kind: 'line', from: before, to: first },
    ...traced,
    { kind: 'line', from: last, to: after },
  ])
}
