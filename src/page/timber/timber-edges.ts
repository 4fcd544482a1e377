import { type Drawing, stroke } from '../../drawing/drawing.ts'
import { boxOverlaps, pathBounds, pointsBounds } from '../../geometry/bounds.ts'
import { type Convex, convexContains, pathClip, pathOutside } from '../../geometry/clip.ts'
import { pathLength } from '../../geometry/length.ts'
import { type Path, pathOf, pathSegments } from '../../geometry/path.ts'
import { type Point, pointAngle, pointToward } from '../../geometry/point.ts'
import { convexMeet, convexWidth } from '../../geometry/polygon/convex-meet.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { pens } from '../../pattern/pens.ts'
import type { Tile } from '../tile/tile.ts'

/**
 * A timber shows so much of itself on a page across its narrowest, or another page that has more shows it; one of which no page has more
 * than a stroke is shown by none. mm
 */
const leastShown = 12
const leastAcross = 3

/**
 * Which timbers each tile shows, by their places in `markPaths`: those it keeps some of, but a scrap at its edge without a screw only
 * where no other page has more of that timber.
 */
export const shownTimbers = (
  { screws, markPaths }: Pattern,
  tiles: readonly Tile[],
): ReadonlyMap<Tile, readonly number[]> => {
  const cells = tiles.map(({ cell }) => pointsBounds(cell))
  const shown = new Map<Tile, number[]>(tiles.map((tile) => [tile, []]))
  screws.forEach(({ middles }, i) => {
    const box = pathBounds(markPaths[i]!)
    const section = pathSegments(markPaths[i]!).map(({ from }) => from)
    const kept = tiles
      .filter((_, k) => boxOverlaps(box, cells[k]!))
      .map((tile) => ({ tile, across: convexWidth(convexMeet(section, tile.cell)) }))
      .filter(({ across }) => across > leastAcross)
    const most = Math.max(...kept.map(({ across }) => across))
    for (const { tile, across } of kept)
      if (across >= Math.min(leastShown, most) || middles.some((p) => convexContains(tile.cell, p)))
        shown.get(tile)!.push(i)
  })
  return shown
}

/** Less of an edge in what a page keeps is no more than a dash, mm. */
const leastEdge = 4

/** Edges of two timbers no farther apart than this are one line on paper, mm. */
const oneLine = 0.6

/**
 * Dashed edges of all timbers in what a tile keeps, its `cell`, of those too that another page names: an outline that ends short of the
 * next page is closed nowhere. One that two share, or that lies on the bottom edge, is drawn once.
 */
export const timberEdges = ({ screws, markPaths, length }: Pattern, cell: Convex): Drawing => {
  const drawn = [alongside({ x: 0, y: 0 }, { x: length, y: 0 })]
  const kept = pointsBounds(cell)
  return screws.flatMap((_, i) => {
    if (!boxOverlaps(pathBounds(markPaths[i]!), kept)) return []
    const [a, b, c, d] = pathSegments(markPaths[i]!).map(({ from }) => from) as [Point, Point, Point, Point]
    // three sides where the fourth is the cut line's own
    const sides = [pathOf(b, c), pathOf(c, d), pathOf(d, a), ...(screws[i]!.within ? [pathOf(a, b)] : [])]
    const left = drawn.reduce<readonly Path[]>(
      (paths, band) => paths.flatMap((path) => (runsIn(path, band) ? pathOutside(path, band) : [path])),
      sides,
    )
    const whole = left.every((path, k) => path === sides[k])
    drawn.push(...sides.map((side) => alongside(side.start, side.pieces[0]!.to)))
    return (whole ? [screws[i]!.within ? pathOf(a, b, c, d, a) : pathOf(b, c, d, a)] : left).flatMap((path) =>
      pathClip(path, cell)
        .filter((part) => pathLength(part) > leastEdge)
        .map((part) => stroke('mark', part, pens.stud)),
    )
  })
}

/** All that lies beside a straight line no farther off than what is one with it. */
const alongside = (p: Point, q: Point): Convex => {
  const square = pointAngle(p, q) - Math.PI / 2
  const [e, f] = [pointToward(p, square, oneLine), pointToward(q, square, oneLine)]
  return [e, f, pointToward(q, square, -oneLine), pointToward(p, square, -oneLine)]
}

/** Whether more of a straight line lies in a band than where the two cross. */
const runsIn = (path: Path, band: Convex): boolean =>
  pathClip(path, band).some((part) => pathLength(part) > 5 * oneLine)
