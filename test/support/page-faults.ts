import { layers } from '../../src/drawing/drawing.ts'
import { affineApply } from '../../src/geometry/affine.ts'
import { type Box, pointsBounds } from '../../src/geometry/bounds.ts'
import { convexContains, pathClip } from '../../src/geometry/clip.ts'
import { pathOf, pathSegments } from '../../src/geometry/path.ts'
import { type Point, pointBetween, pointDistance } from '../../src/geometry/point.ts'
import type { PageSet } from '../../src/page/set/draft.ts'
import type { TileGroup } from '../../src/page/set/tile-groups.ts'
import { type Tile, tileMap } from '../../src/page/tile/tile.ts'
import { type Opened, opened } from './strokes.ts'

/** What a builder trips over on pages that are taped, and how much was looked at. */
export interface PageFaults {
  /** screws nearer than 6 mm to the line that their page is trimmed or covered on */
  readonly screws: number
  /** joints that the line to saw and a snap line cross within 3 mm of each other */
  readonly meets: number
  /** stretches of timbers' edges, mm, that their page keeps and does not draw, each over 8 mm */
  readonly lost: readonly number[]
  /** ticks of rulers within 0.8 mm of an edge, an X or a screw */
  readonly ruled: number
  readonly seen: {
    readonly tiles: number
    readonly joints: number
    readonly screws: number
    readonly edges: number
    readonly ticks: number
  }
}

const clear = { screw: 6, meet: 3, tick: 0.8, lost: 8, drawn: 1.2 } as const

const tileFaults = (tile: Tile, { lines }: Opened, { pattern }: TileGroup): PageFaults => {
  const map = tileMap(tile)
  const onPage = (p: Point): Point => affineApply(map, p)
  const strokes = lines.filter(({ kind }) => kind === 'stroke')
  const on = (layer: (typeof layers)[number]) =>
    strokes.filter(({ order }) => Math.floor(order / 1e6) === layers.indexOf(layer))
  const cuts = on('cut')
  const marks = on('mark').filter(({ width }) => width === 0.25)

  const joints = tile.joints.map(({ line }) => line.map(onPage) as [Point, Point])
  const screws = pattern.screws
    .flatMap(({ middles }) => middles)
    .filter((p) => convexContains(tile.cell, p))
    .map(onPage)
  const snap = tile.snap.map(onPage)
  const meets = joints.filter((joint) => {
    const at = crossings(snap, joint)[0]
    return (
      at && cuts.some(({ points }) => crossings(points, joint).some((p) => pointDistance(p, at) < clear.meet))
    )
  })

  const edges = pattern.screws.flatMap((_, i) =>
    pathSegments(pattern.markPaths[i]!).flatMap(({ from, to }) => pathClip(pathOf(from, to), tile.cell)),
  )
  const drawn = [...marks, ...cuts, ...on('datum')].map(boxed)
  const ruledOn = marks.map(boxed)
  const lost = edges.flatMap(({ start, pieces }) => {
    const [a, b] = [onPage(start), onPage(pieces[0]!.to)]
    const count = Math.max(1, Math.round(pointDistance(a, b) / 0.5))
    const runs = [0]
    for (let k = 0; k <= count; k++) {
      const p = pointBetween(a, b, k / count)
      if (drawn.some((line) => isNear(line, p, clear.drawn))) runs.push(0)
      else runs[runs.length - 1]! += pointDistance(a, b) / count
    }
    return runs.filter((mm) => mm > clear.lost)
  })

  const ticks = on('note').filter(({ grey }) => grey === 0.4)
  const ruled = ticks.filter(({ points: [foot, end] }) =>
    [0, 0.5, 1].some((t) => ruledOn.some((line) => isNear(line, pointBetween(foot!, end!, t), clear.tick))),
  )
  return {
    screws: screws.filter((p) => joints.some((joint) => awayFrom(joint, p) < clear.screw)).length,
    meets: meets.length,
    lost,
    ruled: ruled.length,
    seen: {
      tiles: 1,
      joints: joints.length,
      screws: screws.length,
      edges: edges.length,
      ticks: ticks.length,
    },
  }
}

/** Of all tiles of a set; `tell` hears of each that has some. */
export const pageFaults = (set: PageSet, tell?: (tile: Tile, faults: PageFaults) => void): PageFaults =>
  set.groups
    .flatMap((group) =>
      group.tiles.map((tile) => {
        const page = set.plan.pages.findIndex((one) => one.tile === `${tile.number}`)
        const faults = tileFaults(tile, opened(set.pages[page]!.draw()), group)
        tell?.(tile, faults)
        return faults
      }),
    )
    .reduce((a, b) => ({
      screws: a.screws + b.screws,
      meets: a.meets + b.meets,
      lost: [...a.lost, ...b.lost],
      ruled: a.ruled + b.ruled,
      seen: {
        tiles: a.seen.tiles + b.seen.tiles,
        joints: a.seen.joints + b.seen.joints,
        screws: a.seen.screws + b.seen.screws,
        edges: a.seen.edges + b.seen.edges,
        ticks: a.seen.ticks + b.seen.ticks,
      },
    }))

/** Where straight stretches cross a straight line between its ends. */
const crossings = (points: readonly Point[], [a, b]: readonly [Point, Point]): readonly Point[] => {
  const [dx, dy] = [b.x - a.x, b.y - a.y]
  const side = (p: Point): number => dx * (p.y - a.y) - dy * (p.x - a.x)
  return points.slice(1).flatMap((q, i) => {
    const [s, t] = [side(points[i]!), side(q)]
    if (s * t >= 0) return []
    const p = pointBetween(points[i]!, q, s / (s - t))
    const along = ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy)
    return along >= 0 && along <= 1 ? [p] : []
  })
}

interface Boxed {
  readonly points: readonly Point[]
  readonly box: Box
}

const boxed = ({ points }: Opened['lines'][number]): Boxed => ({ points, box: pointsBounds(points) })

/** Most of what is drawn lies far off. */
const isNear = ({ points, box }: Boxed, p: Point, mm: number): boolean =>
  p.x > box.x0 - mm && p.x < box.x1 + mm && p.y > box.y0 - mm && p.y < box.y1 + mm && awayFrom(points, p) < mm

/** Of a point from the nearest of straight stretches, mm. */
const awayFrom = (points: readonly Point[], p: Point): number => {
  let least = Number.POSITIVE_INFINITY
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1]!
    const b = points[i]!
    const dx = b.x - a.x
    const dy = b.y - a.y
    const t = Math.max(0, Math.min(1, ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy || 1)))
    least = Math.min(least, (p.x - a.x - t * dx) ** 2 + (p.y - a.y - t * dy) ** 2)
  }
  return Math.sqrt(least)
}
