import Flatten from '@flatten-js/core'
import type { Design } from '../../../src/design/design.ts'
import { pathSegments } from '../../../src/geometry/path.ts'
import { pointDistance } from '../../../src/geometry/point.ts'
import {
  type LaidPanel,
  type LaidSheet,
  type PanelPiece,
  pieceCorners,
} from '../../../src/stock/panel/panels.ts'
import type { SheetPart } from '../../../src/stock/sheet-part.ts'

/** Corners stray so far from true arcs, two of them meet, mm. */
const slack = 0.11

const polygonOf = (piece: PanelPiece): Flatten.Polygon =>
  new Flatten.Polygon(pieceCorners(piece).map(({ x, y }) => [x, y] as [number, number]))

/** All that is wrong with a layout, found by another library and by the pieces' own numbers; and how many couples it looked at. */
export const panelFaults = (
  sheets: readonly LaidSheet[],
  parts: readonly SheetPart[],
  { stock }: Pick<Design, 'stock'>,
): { readonly faults: readonly string[]; readonly couples: number; readonly pieces: number } => {
  const faults: string[] = []
  const seen: string[] = []
  let [couples, pieces] = [0, 0]
  for (const { panels, lost } of sheets) {
    seen.push(...lost.map(({ mark }) => mark))
    for (const panel of panels) {
      const [width, length] = panel.size
      const polygons = panel.pieces.map(polygonOf)
      // rectangles that have a bought panel to themselves lie in its corner; more trim than this is asked for
      const cornered = stock.trim <= 6 && !panel.there && panel.pieces.every(({ second }) => second === null)
      if (
        cornered &&
        (['xmin', 'ymin'] as const).some(
          (side) => Math.abs(Math.min(...polygons.map(({ box }) => box[side]))) > 1e-6,
        )
      )
        faults.push(`panel ${panel.number}: nothing in its corner`)
      panel.pieces.forEach((piece, i) => {
        const { part, under, x, y } = piece
        pieces++
        seen.push(part.mark, ...(under ? [under.mark] : []))
        const name = `${part.mark} on panel ${panel.number}`
        const { xmin, ymin, xmax, ymax } = polygons[i]!.box
        // inside the trim, or as long as the panel's own edges, alone or with those in a row with it
        const inside = (from: number, to: number, size: number, way: 'x' | 'y'): boolean =>
          (from >= stock.trim - slack && to <= size - stock.trim + slack) ||
          (to - from > size - 2 * stock.trim && from >= -slack && to <= size + slack) ||
          (from >= -slack && to <= size + slack && keepsEdges(panel, way, stock.trim))
        if (!cornered && (!inside(xmin, xmax, length, 'x') || !inside(ymin, ymax, width, 'y')))
          faults.push(`${name}: outside the trim`)
        if (xmin < -slack || ymin < -slack || xmax > length + slack || ymax > width + slack)
          faults.push(`${name}: beyond the panel`)
        if (part.grain !== null && (piece.turn % 180 === 0) !== (part.grain === 'x'))
          faults.push(`${name}: across the grain`)
        faults.push(...comesBack(piece).map((fault) => `${name}: ${fault}`))
        if (Math.hypot(piece.outline.start.x - x, piece.outline.start.y - y) > 1e-6)
          faults.push(`${name}: its numbers are not those of its first corner`)
        for (let k = 0; k < i; k++) {
          couples++
          const [a, b] = [polygons[k]!, polygons[i]!]
          const [apart] = a.distanceTo(b)
          const within = a.contains(b.vertices[0]!) || b.contains(a.vertices[0]!)
          if (within || apart < stock.kerf - slack)
            faults.push(`${name}: ${apart.toFixed(3)} from ${panel.pieces[k]!.part.mark}`)
        }
      })
    }
  }
  const wanted = parts.map(({ mark }) => mark).sort()
  if (seen.sort().join() !== wanted.join()) faults.push(`pieces ${seen.join()} for parts ${wanted.join()}`)
  return { faults, couples, pieces }
}

/** Whether the rectangles of a bought panel, but for those that fill it, take more of it one way than the trim leaves; the near edge is kept where the far one is not enough. */
const keepsEdges = ({ pieces, size, there }: LaidPanel, way: 'x' | 'y', trim: number): boolean => {
  const whole = way === 'x' ? size[1] : size[0]
  const spans = pieces
    .map(({ box }) => (way === 'x' ? [box.x0, box.x1] : [box.y0, box.y1]) as [number, number])
    .filter(([from, to]) => to - from <= whole - 2 * trim)
  const from = Math.min(...spans.map(([low]) => low))
  const to = Math.max(...spans.map(([, high]) => high))
  if (there || spans.length < 2 || pieces.some(({ second }) => second !== null)) return false
  return to - from > whole - (from < trim - slack ? 1 : 2) * trim - slack
}

/** The part's own outline, mirrored where it is turned over, turned, and laid with a corner at the two numbers of the tape. */
const comesBack = ({ part, turn, over, x, y, outline, second }: PanelPiece): readonly string[] => {
  const angle = (turn * Math.PI) / 180
  const turned = pathSegments(part.outline).map(({ from: p }) => {
    const own = { x: over ? -p.x : p.x, y: p.y }
    return {
      x: own.x * Math.cos(angle) - own.y * Math.sin(angle),
      y: own.x * Math.sin(angle) + own.y * Math.cos(angle),
    }
  })
  // a curved one by its first corner, another by its lower left one
  const first = second
    ? turned[0]!
    : { x: Math.min(...turned.map((p) => p.x)), y: Math.min(...turned.map((p) => p.y)) }
  const laid = pathSegments(outline).map(({ from }) => from)
  const lost = turned.filter((p) => {
    const at = { x: p.x - first.x + x, y: p.y - first.y + y }
    return laid.every((q) => pointDistance(at, q) > 1e-6)
  })
  return lost.length > 0 ? [`${lost.length} corners do not lie where its numbers lead`] : []
}
