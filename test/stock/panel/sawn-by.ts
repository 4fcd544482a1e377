import type { Box } from '../../../src/geometry/bounds.ts'
import type { Sawn, SawStep } from '../../../src/stock/panel/saw-order.ts'

/** Saws a panel step by step: every straight cut divides the parts that it runs through from edge to edge. `thin`: cuts that take less than half a blade off an edge that another left. */
export const sawnBy = (
  steps: readonly SawStep[],
  pieces: readonly Pick<Sawn, 'mark' | 'box'>[],
  panel: Box,
  kerf: number,
): {
  readonly faults: readonly string[]
  readonly thin: readonly string[]
  readonly parts: readonly Box[]
} => {
  let parts: Box[] = [panel]
  const faults: string[] = []
  const thin: string[] = []
  for (const step of steps) {
    if (step.kind === 'out') continue
    const along = step.kind === 'rip'
    const [low, high] = step.blade === 'past' ? [step.at, step.at + kerf] : [step.at - kerf, step.at]
    const hit = parts.filter((part) => {
      const [from, to] = along ? [part.x0, part.x1] : [part.y0, part.y1]
      const [bottom, top] = along ? [part.y0, part.y1] : [part.x0, part.x1]
      return (
        Math.abs(from - step.from) < 1e-6 &&
        Math.abs(to - step.to) < 1e-6 &&
        bottom < step.at &&
        top > step.at
      )
    })
    if (hit.length !== 1)
      faults.push(`${step.kind} at ${step.at} runs through ${hit.length} parts from edge to edge`)
    for (const part of hit) {
      const [edge, own] = along
        ? step.blade === 'past'
          ? [part.y1, panel.y1]
          : [part.y0, panel.y0]
        : step.blade === 'past'
          ? [part.x1, panel.x1]
          : [part.x0, panel.x0]
      if (edge !== own && Math.abs(edge - step.at) < kerf / 2)
        thin.push(`${step.kind} at ${step.at} takes ${Math.abs(edge - step.at)}`)
    }
    for (const { mark, box } of pieces) {
      const [bottom, top] = along ? [box.y0, box.y1] : [box.x0, box.x1]
      const [from, to] = along ? [box.x0, box.x1] : [box.y0, box.y1]
      if (from < step.to && to > step.from && bottom < high - 1e-6 && top > low + 1e-6)
        faults.push(`${step.kind} at ${step.at} cuts into ${mark}`)
    }
    parts = parts.flatMap((part) =>
      !hit.includes(part)
        ? [part]
        : along
          ? [
              { ...part, y1: low },
              { ...part, y0: high },
            ]
          : [
              { ...part, x1: low },
              { ...part, x0: high },
            ],
    )
  }
  return { faults, thin, parts }
}
