import type { Point } from '../../geometry/point.ts'

/** A place of a lattice's joint lines, in the lattice's frame. */
interface Placed {
  readonly joint: Point
}

/** Moved by each of the steps in turn, mm, up, down and to either side, as long as `better` finds a better place there. */
export const climb = <P extends Placed>(
  from: P,
  steps: readonly number[],
  better: (joint: Point, than: P) => P | null,
): P => {
  let best = from
  for (const step of steps)
    for (let moved = true; moved; ) {
      moved = false
      for (const [dx, dy] of [
        [step, 0],
        [-step, 0],
        [0, step],
        [0, -step],
      ] as const) {
        const found = better({ x: best.joint.x + dx, y: best.joint.y + dy }, best)
        if (!found) continue
        best = found
        moved = true
      }
    }
  return best
}
