import type { TileGroup } from '../../src/page/set/tile-groups.ts'
import type { Tile } from '../../src/page/tile/tile.ts'
import type { PrinterUncertainty } from '../../src/printer/uncertainty.ts'
import { normal, randomFrom } from './random.ts'
import { honest, surveyed } from './taping.ts'

/**
 * The lip seen from the toe in so many simulated jobs: a printer known as well as stated, careful taping of 0.1 to 0.15 mm a
 * joint both ways, and a pencil. Each with the most by which it is outside a line of the survey.
 */
export const simulateJobs = (
  group: TileGroup,
  cover: 'whole' | 'line',
  known: PrinterUncertainty,
  count: number,
) => {
  const [toe, lip] = group.pattern.points.map(({ at }) => at) as [
    { x: number; y: number },
    { x: number; y: number },
  ]
  const carrier = (p: { x: number; y: number }) =>
    group.tiles.reduce((best, tile) => {
      const far = ({ cell }: Tile) =>
        Math.hypot((cell[0]!.x + cell[2]!.x) / 2 - p.x, (cell[0]!.y + cell[2]!.y) / 2 - p.y)
      return far(tile) < far(best) ? tile : best
    })
  const [first, last] = [carrier(toe), carrier(lip)]
  // a line plot is laid to its crosses, set out on the panel; a whole one to the panel's bottom edge
  const base = [
    { x: 0, y: 0 },
    { x: group.pattern.length, y: 0 },
  ]
  const marks =
    cover === 'line'
      ? group.datums.map(({ at, tile }) => ({ at, tile: group.tiles.find(({ number }) => number === tile)! }))
      : base.map((at) => ({ at, tile: carrier(at) }))
  const middle = (points: readonly { x: number; y: number }[]) => ({
    x: points.reduce((sum, p) => sum + p.x, 0) / points.length,
    y: points.reduce((sum, p) => sum + p.y, 0) / points.length,
  })
  // anywhere on the curve will do for the middle rise, which is not looked at
  const curve = { toe, lip, middle: toe }
  const lines = group.survey.filter(({ words }) => !words.startsWith('from the middle'))
  // pages stretch along their own sides: which way these lie in the pattern, and which of them runs along a row
  const [u, v] = group.tiles[0]!.toWindow
  const across = Math.abs(group.tiles[0]!.toPage[0]) > 0.5
  const random = randomFrom(77)
  return Array.from({ length: count }, () => {
    const taped = honest(group, 0.1 + 0.05 * random(), random)
    const [a, d, s] = [known.likely.across, known.likely.down, known.likely.skew].map(
      (sigma) => sigma * normal(random),
    ) as [number, number, number]
    const laid: typeof taped = (tile, p) => {
      const q = taped(tile, p)
      const [along, off] = [u * p.x - v * p.y, v * p.x + u * p.y]
      const [moved, risen] = [(across ? a : d) * along + s * off, (across ? d : a) * off]
      return { x: q.x + u * moved + v * risen, y: q.y - v * moved + u * risen }
    }
    const [from, to] = [laid(first, toe), laid(last, lip)]
    // turned as a whole so that the marks come to lie best on their places
    const [c, k] = [middle(marks.map(({ at }) => at)), middle(marks.map(({ at, tile }) => laid(tile, at)))]
    let [dot, cross] = [0, 0]
    for (const { at, tile } of marks) {
      const q = laid(tile, at)
      const [p, r] = [
        { x: at.x - c.x, y: at.y - c.y },
        { x: q.x - k.x, y: q.y - k.y },
      ]
      dot += r.x * p.x + r.y * p.y
      cross += r.x * p.y - r.y * p.x
    }
    const [cos, sin] = [dot / Math.hypot(dot, cross), cross / Math.hypot(dot, cross)]
    const seen = {
      x: cos * (to.x - from.x) - sin * (to.y - from.y),
      y: sin * (to.x - from.x) + cos * (to.y - from.y),
    }
    const pencil = { size: 0.3 * normal(random), way: 2 * Math.PI * random() }
    const outside = Math.max(
      ...lines.map(
        ({ words, value, tolerance }) =>
          Math.abs(surveyed(group, curve, words, laid) + 0.5 * random() - 0.25 - value) / tolerance,
      ),
    )
    return {
      outside,
      off: Math.hypot(
        seen.x - (lip.x - toe.x) + pencil.size * Math.cos(pencil.way),
        seen.y - (lip.y - toe.y) + pencil.size * Math.sin(pencil.way),
      ),
    }
  })
}
