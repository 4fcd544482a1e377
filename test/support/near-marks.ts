import { type Drawing, type Layer, layers } from '../../src/drawing/drawing.ts'
import { affineApply } from '../../src/geometry/affine.ts'
import { type Box, boxGrow, pointsBounds } from '../../src/geometry/bounds.ts'
import { convexContains } from '../../src/geometry/clip.ts'
import { convexOverlap } from '../../src/geometry/overlap.ts'
import { type Point, pointBetween, pointToward } from '../../src/geometry/point.ts'
import { convexHull } from '../../src/geometry/polygon/hull.ts'
import type { TileGroup } from '../../src/page/set/tile-groups.ts'
import { type Tile, tileMap } from '../../src/page/tile/tile.ts'
import { opened } from './strokes.ts'

/** What may lie nearer to each other than a page allows. */
export type NearFault = 'over' | 'struck' | 'air' | 'snap' | 'edge'

export interface NearMarks {
  readonly faults: readonly { readonly kind: NearFault; readonly what: string }[]
  /** pairs of marks that were compared, and marks of each kind */
  readonly compared: number
  readonly kinds: Readonly<Record<Thing['kind'], number>>
}

/** Marks that never lie over each other, as convex shapes of the page, mm. */
interface Thing {
  readonly kind: 'scale' | 'cross' | 'sign' | 'edge words' | 'box' | 'words' | 'screw'
  readonly what: string
  readonly corners: readonly Point[]
  readonly box: Box
}

/** Deeper than this is over each other, mm. */
const slack = 0.05

/** Round LIP and TOE: ring of 1.5 mm, then 5 mm of air; between a snap line and what runs along it, sawn or not, mm. */
const ring = 1.5
const air = 5
const snapClear = 10
/** Radius of the ring round a screw, mm. */
const screw = 2
const edgeClear = 5

/** What is steeper to a snap line crosses it; so much may run beside it at a corner, mm. */
const along = (10 * Math.PI) / 180
const shortest = 5

const edgeWords = /^(over|goes under|under) page \d+/

/**
 * What a tile's page shows, looked at from its strokes and words alone; where joints, named points and the snap line must lie is known
 * from the tile.
 */
export const nearMarks = (drawing: Drawing, tile: Tile, { pattern }: TileGroup): NearMarks => {
  const { words: said, lines } = opened(drawing)
  const words = said.map((word) => ({ ...word, corners: inked(word) }))
  const layerOf = (order: number): Layer => layers[Math.floor(order / 1e6)]!
  const map = tileMap(tile)
  const onPage = (p: Point): Point => affineApply(map, p)
  const things: Thing[] = []
  const add = (kind: Thing['kind'], what: string, corners: readonly Point[]): void => {
    things.push({ kind, what, corners, box: pointsBounds(corners) })
  }
  const joint = lines.filter(({ order, kind }) => layerOf(order) === 'joint' && kind === 'stroke')
  const faults: NearMarks['faults'][number][] = []

  const signs = words.filter(({ text, order }) => layerOf(order) === 'joint' && /^\d+–\d+$/.test(text))
  const figures = words.filter(({ size, order }) => layerOf(order) === 'joint' && size < 1.9)
  for (const { neighbour, line, verniers, crosses } of tile.joints) {
    const [a, b] = line.map(onPage) as [Point, Point]
    const long = Math.hypot(b.x - a.x, b.y - a.y)
    const [ux, uy] = [(b.x - a.x) / long, (b.y - a.y) / long]
    const off = (p: Point): number => Math.abs((p.x - a.x) * uy - (p.y - a.y) * ux)
    const share = (p: Point): number => (p.x - a.x) * ux + (p.y - a.y) * uy
    const ticks = joint.filter(
      ({ points, width }) => width === 0.18 && points.length === 2 && Math.min(...points.map(off)) < 1e-6,
    )
    for (const at of verniers) {
      const middle = share(onPage(at))
      const own = ticks.filter(({ points }) =>
        points.every((p) => Math.abs(share(p) - middle) < 18.1 && off(p) < 5.1),
      )
      if (own.length !== 19) faults.push({ kind: 'over', what: `${own.length} ticks of a scale` })
      add('scale', `scale to ${neighbour}`, convexHull(own.flatMap(({ points }) => points)))
    }
    for (const at of crosses) {
      const p = onPage(at)
      add(
        'cross',
        `cross to ${neighbour}`,
        [-1, 1].flatMap((i) => [-1, 1].map((k) => ({ x: p.x + i * 3, y: p.y + k * 3 }))),
      )
    }
  }
  for (const word of signs) {
    const middle = pointBetween(word.corners[0]!, word.corners[2]!, 0.5)
    const arc = joint.find(
      ({ points, width }) =>
        width === 0.25 && points.length > 4 && convexContains(convexHull(points), middle),
    )
    add('sign', `sign ${word.text}`, convexHull(arc?.points ?? word.corners))
  }
  const frames = lines.filter(
    ({ kind, order, grey, points }) =>
      kind === 'fill' && layerOf(order) === 'mark' && grey === 0 && points.length === 5,
  )
  for (const { text, corners, order } of words) {
    if (signs.some((word) => word.order === order)) continue
    const middle = pointBetween(corners[0]!, corners[2]!, 0.5)
    const frame = frames.find(({ points }) => convexContains(convexHull(points), middle))
    if (frame) add('box', `box "${text}"`, convexHull(frame.points))
    else if (figures.some((word) => word.order === order)) add('words', `figure ${text} of a scale`, corners)
    else
      add(edgeWords.test(text) && layerOf(order) === 'joint' ? 'edge words' : 'words', `"${text}"`, corners)
  }

  for (const { timber, middles } of pattern.screws)
    for (const at of middles) {
      const p = onPage(at)
      if (convexContains(tile.cell, at, 0))
        add(
          'screw',
          `screw of stud ${timber}`,
          Array.from({ length: 8 }, (_, k) => pointToward(p, (k * Math.PI) / 4, screw)),
        )
    }

  let compared = 0
  things.forEach((a, i) => {
    for (const b of things.slice(i + 1)) {
      compared++
      // a joint runs where it must: what is hidden by words and names alone is looked for
      if (b.kind === 'screw' && a.kind !== 'box' && a.kind !== 'words') continue
      if (a.box.x1 < b.box.x0 || b.box.x1 < a.box.x0 || a.box.y1 < b.box.y0 || b.box.y1 < a.box.y0) continue
      if (convexOverlap(a.corners, b.corners) > slack)
        faults.push({ kind: 'over', what: `${a.what} over ${b.what}` })
    }
  })

  const screws = pattern.screws.flatMap(({ middles }) => middles.map(onPage))
  const reading = things.filter(({ kind }) => kind !== 'screw')
  lines.forEach((line) => {
    const layer = layerOf(line.order)
    const what = strokeName(line, layer, screws)
    if (what === null) return
    const around = pointsBounds(line.points)
    for (const thing of reading) {
      // a box is white, and lies over what was drawn before it
      if (thing.kind === 'box' && layer !== 'cut') continue
      compared++
      const { box, corners } = thing
      if (around.x1 < box.x0 || box.x1 < around.x0 || around.y1 < box.y0 || box.y1 < around.y0) continue
      if (strikes(line.points, corners, box))
        faults.push({ kind: 'struck', what: `${what} through ${thing.what}` })
    }
  })

  for (const { name, at } of pattern.points) {
    if (!convexContains(tile.cell, at, 0)) continue
    const p = onPage(at)
    for (const { what, corners, box } of things) {
      compared++
      if (what === `"${name}"`) continue
      const near = boxGrow(box, ring + air)
      if (p.x < near.x0 || p.x > near.x1 || p.y < near.y0 || p.y > near.y1) continue
      if (distanceTo(corners, p) < ring + air - slack)
        faults.push({ kind: 'air', what: `${what} near ${name}` })
    }
  }

  const snaps = joint.filter(({ width, points }) => width === 0.2 && points.length === 2)
  const [s0, s1] = tile.snap.map(onPage) as [Point, Point]
  const snap = snaps.find(({ points }) => near(points[0]!, s0) && near(points[1]!, s1))
  if (!snap) faults.push({ kind: 'snap', what: 'no snap line' })
  else
    for (const { kind, order, points } of lines) {
      if (layerOf(order) !== 'cut' || kind !== 'stroke') continue
      let beside = 0
      for (let i = 1; i < points.length; i++) {
        compared++
        const [p, q] = [points[i - 1]!, points[i]!]
        if (!runsAlong(p, q, s0, s1)) continue
        beside += shareWithin(p, q, s0, s1, snapClear)
      }
      if (beside > shortest)
        faults.push({ kind: 'snap', what: `cut line along the snap line for ${beside.toFixed(0)} mm` })
    }

  const bottom = [onPage({ x: 0, y: 0 }), onPage({ x: pattern.length, y: 0 })] as const
  const shared = runsAlong(...bottom, s0, s1) ? shareWithin(s0, s1, ...bottom, edgeClear) : 0
  if (shared > shortest)
    faults.push({ kind: 'edge', what: `snap line along the bottom edge for ${shared.toFixed(0)} mm` })

  const count = (kind: Thing['kind']): number => things.filter((thing) => thing.kind === kind).length
  return {
    faults,
    compared,
    kinds: {
      scale: count('scale'),
      cross: count('cross'),
      sign: count('sign'),
      'edge words': count('edge words'),
      box: count('box'),
      words: count('words'),
      screw: count('screw'),
    },
  }
}

type Line = ReturnType<typeof opened>['lines'][number]

/** What must not run through what is read; null for what is told of elsewhere, and for screws, which are where they are. */
const strokeName = (
  { kind, points, width, grey }: Line,
  layer: Layer,
  screws: readonly Point[],
): string | null => {
  if (kind === 'fill') return layer === 'mark' && points.length > 5 ? 'dot' : null
  if (layer === 'cut') return 'cut line'
  if (layer === 'note') return width > 3 ? 'band' : grey === 0.4 ? 'ruler' : null
  if (layer === 'datum') return width === 0.25 ? 'datum line' : null
  if (layer !== 'mark') return null
  const { x0, y0, x1, y1 } = pointsBounds(points)
  const middle = { x: (x0 + x1) / 2, y: (y0 + y1) / 2 }
  if (screws.some((p) => Math.hypot(p.x - middle.x, p.y - middle.y) < screw)) return 'screw'
  return width === 0.25 ? 'mark' : 'leader'
}

/** Deeper than this a line runs through what is read, mm. */
const touch = 0.15

const strikes = (points: readonly Point[], corners: readonly Point[], box: Box): boolean => {
  for (let i = 1; i < points.length; i++) {
    const [p, q] = [points[i - 1]!, points[i]!]
    if (Math.max(p.x, q.x) < box.x0 || Math.min(p.x, q.x) > box.x1) continue
    if (Math.max(p.y, q.y) < box.y0 || Math.min(p.y, q.y) > box.y1) continue
    if (convexOverlap([p, q], corners) > touch) return true
  }
  return false
}

/** The box of letters alone: none of these goes below its line. */
const inked = ({ text, corners }: { readonly text: string; readonly corners: readonly Point[] }) => {
  if (/[gjpqy,;()Q]/.test(text)) return corners
  const [a, b, c, d] = corners as [Point, Point, Point, Point]
  // textCorners goes below the line by 0.3 of the letters' height
  return [pointBetween(a, d, 0.3 / 1.3), pointBetween(b, c, 0.3 / 1.3), c, d]
}

const near = (p: Point, q: Point): boolean => Math.hypot(p.x - q.x, p.y - q.y) < 1e-6

/** Of a point to a convex shape that does not hold it, mm. */
const distanceTo = (corners: readonly Point[], p: Point): number =>
  convexContains(corners, p)
    ? 0
    : Math.min(...corners.map((a, i) => segmentDistance(a, corners[(i + 1) % corners.length]!, p)))

const segmentDistance = (a: Point, b: Point, p: Point): number => {
  const [dx, dy] = [b.x - a.x, b.y - a.y]
  const t = Math.max(0, Math.min(1, ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy || 1)))
  return Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy)
}

const runsAlong = (p: Point, q: Point, a: Point, b: Point): boolean => {
  const [dx, dy, ex, ey] = [q.x - p.x, q.y - p.y, b.x - a.x, b.y - a.y]
  return Math.abs(dx * ey - dy * ex) < Math.tan(along) * Math.abs(dx * ex + dy * ey)
}

/** How much of p–q lies nearer than `clear` to the straight line a–b and beside it, mm. */
const shareWithin = (p: Point, q: Point, a: Point, b: Point, clear: number): number => {
  const long = Math.hypot(q.x - p.x, q.y - p.y)
  const count = Math.max(1, Math.min(400, Math.ceil(long / 0.5)))
  let within = 0
  for (let k = 0; k < count; k++)
    if (segmentDistance(a, b, pointBetween(p, q, (k + 0.5) / count)) < clear) within++
  return (within / count) * long
}
