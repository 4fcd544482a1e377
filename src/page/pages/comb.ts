import { type Drawing, stroke, text } from '../../drawing/drawing.ts'
import { pathOf } from '../../geometry/path.ts'
import type { Point } from '../../geometry/point.ts'
import { letters, pens } from '../../pattern/pens.ts'
import type { Paper } from '../sheet/paper.ts'

/** Ticks of a comb: one for each millimetre from the paper's edge. */
const most = 16
/** From one tick to the next along the edge, mm. */
const apart = 2.6

/**
 * A comb at each edge of the paper, run over the edge on purpose: tick n lies n mm from the edge, so the first one that is
 * printed tells the least margin. Ideal page mm.
 */
export const edgeCombs = ({ width, height }: Paper): Drawing =>
  [
    (along: number, depth: number): Point => ({ x: width * 0.62 + along, y: height - depth }),
    (along: number, depth: number): Point => ({ x: width - depth, y: height * 0.22 - along }),
    (along: number, depth: number): Point => ({ x: width * 0.62 + along, y: depth }),
    (along: number, depth: number): Point => ({ x: depth, y: height * 0.22 - along }),
  ].flatMap((place) =>
    Array.from({ length: most }, (_, i) => i + 1).flatMap((n): Drawing => {
      const label = n % 5 === 0
      const at = place(n * apart + apart / 2, n + 1.4)
      return [
        stroke('datum', pathOf(place(n * apart, n), place(n * apart + apart, n)), pens.tick),
        ...(label ? [text('datum', { x: at.x - 1, y: at.y - 1 }, letters.small * 0.75, `${n}`)] : []),
      ]
    }),
  )
