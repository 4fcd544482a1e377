import type { Path } from '../../src/geometry/path.ts'
import type { Pt } from '../support/pt.ts'

/** Arcs as chords of so many degrees: 0.02 mm off at 2 m. */
const degreesOfChord = 0.5

/** What is wrong with an outline that is to be sawn: not closed, a piece that leaps, a line that crosses another. */
export const outlineFaults = (path: Path): readonly string[] => {
  const faults: string[] = []
  const points: Pt[] = [path.start]
  let from: Pt = path.start
  for (const piece of path.pieces) {
    if (piece.kind === 'cubic') faults.push('a cubic where lines and arcs are due')
    if (piece.kind === 'arc') {
      const { centre, sweep, to } = piece
      const [x, y] = [from.x - centre.x, from.y - centre.y]
      const turned = (angle: number): Pt => ({
        x: centre.x + x * Math.cos(angle) - y * Math.sin(angle),
        y: centre.y + x * Math.sin(angle) + y * Math.cos(angle),
      })
      const end = turned(sweep)
      const off = Math.hypot(end.x - to.x, end.y - to.y)
      if (!(off < 1e-6)) faults.push(`an arc ends ${off} mm beside its end`)
      const count = Math.ceil(Math.abs(sweep) / ((degreesOfChord * Math.PI) / 180))
      for (let i = 1; i < count; i++) points.push(turned((sweep * i) / count))
    }
    points.push(piece.to)
    from = piece.to
  }
  const gap = Math.hypot(from.x - path.start.x, from.y - path.start.y)
  if (!path.closed || !(gap < 1e-6)) faults.push(`the outline is open by ${gap} mm`)
  const ring = points.slice(0, -1)
  for (let i = 0; i < ring.length; i++)
    for (let j = i + 2; j < ring.length; j++) {
      if (i === 0 && j === ring.length - 1) continue
      const [a, b, c, d] = [ring[i]!, ring[i + 1]!, ring[j]!, ring[(j + 1) % ring.length]!]
      if (crosses(a, b, c, d)) {
        faults.push(`the outline crosses itself at (${a.x.toFixed(2)}, ${a.y.toFixed(2)})`)
        return faults
      }
    }
  if (!(area(ring) > 0)) faults.push('the outline runs clockwise')
  return faults
}

const turn = (a: Pt, b: Pt, c: Pt): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)

const crosses = (a: Pt, b: Pt, c: Pt, d: Pt): boolean =>
  turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0

const area = (ring: readonly Pt[]): number =>
  ring.reduce((sum, p, i) => {
    const next = ring[(i + 1) % ring.length]!
    return sum + p.x * next.y - next.x * p.y
  }, 0) / 2
