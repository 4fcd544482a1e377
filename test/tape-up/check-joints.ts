import type { Pt } from '../support/pt.ts'
import { type Beside, mapPoint, runsOf, type Tile } from './tape.ts'

/** How far two pages may disagree, mm. */
const most = 0.005

export interface JointCount {
  readonly joints: number
  readonly crosses: number
  readonly verniers: number
}

interface Straight {
  readonly a: Pt
  readonly b: Pt
  readonly dashed: boolean
}

/** Straight strokes of a layer, true page mm. */
const straights = (tile: Tile, layer: string): readonly Straight[] =>
  tile.read.strokes
    .filter((stroke) => stroke.layer === layer)
    .flatMap(({ path, dash }): Straight[] => {
      const [move, line, ...more] = path
      if (move?.kind !== 'move' || line?.kind !== 'line' || more.length > 0) return []
      const [a, b] = [move.to, line.to].map((p) => mapPoint(tile.writtenToTrue, p)) as [Pt, Pt]
      return [{ a, b, dashed: dash.length > 0 }]
    })

/** A joint line breaks off round the ring of a screw, no wider than this, mm. */
const widestBreak = 5.3

/** Straight strokes of one line, those that follow one another with a break as one; `share`: where a point lies along it. */
const unbroken = (lines: readonly Straight[], share: (p: Pt) => number): readonly Straight[] =>
  lines
    .map(({ a, b, dashed }) => (share(a) < share(b) ? { a, b, dashed } : { a: b, b: a, dashed }))
    .sort((p, q) => share(p.a) - share(q.a))
    .reduce<Straight[]>((kept, line) => {
      const last = kept.at(-1)
      if (last && share(line.a) - share(last.b) <= widestBreak) kept[kept.length - 1] = { ...last, b: line.b }
      else kept.push(line)
      return kept
    }, [])

/** Middles of the rings round screws, 4 mm wide, true page mm. */
const rings = (tile: Tile): readonly Pt[] =>
  tile.read.strokes
    .filter(({ layer, path }) => layer === 'mark' && path.some(({ kind }) => kind === 'cubic'))
    .flatMap(({ path }): Pt[] => {
      const points = runsOf(path, tile.writtenToTrue).flat()
      const [xs, ys] = [points.map((p) => p.x), points.map((p) => p.y)]
      const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
      const isRing = Math.abs(x1 - x0 - 4) < 0.1 && Math.abs(y1 - y0 - 4) < 0.1
      return isRing ? [{ x: (x0 + x1) / 2, y: (y0 + y1) / 2 }] : []
    })

/** A joint line breaks off so far from the middle of a ring, mm. */
const ringAir = { least: 2.5, most: 2.65 } as const

/** A line that stops at a ring that it would cross before its end, as if it went on to there. */
const goneOn = (line: Straight, whole: readonly Pt[], screws: readonly Pt[]): Straight => {
  const end = (p: Pt): Pt =>
    whole.find(
      (q) =>
        distance(p, q) <= widestBreak &&
        screws.some((at) => {
          const off = distance(at, p)
          const ahead = (at.x - p.x) * (q.x - p.x) + (at.y - p.y) * (q.y - p.y) > 0
          return ahead && off > ringAir.least && off < ringAir.most
        }),
    ) ?? p
  return { ...line, a: end(line.a), b: end(line.b) }
}

/** Feet of the ticks that stand on a joint line: those of the zeros, 5 mm high, and all. */
const vernier = (
  lines: readonly Straight[],
  off: (p: Pt) => number,
): readonly [readonly Pt[], readonly Pt[]] => {
  const ticks = lines
    .map(({ a, b }) => (off(a) < off(b) ? { a, b } : { a: b, b: a }))
    .filter(({ a, b }) => off(a) <= most && distance(a, b) < 6 && Math.abs(off(b) - distance(a, b)) < 0.01)
  return [ticks.filter((t) => Math.abs(distance(t.a, t.b) - 5) < 0.01).map((t) => t.a), ticks.map((t) => t.a)]
}

const distance = (p: Pt, q: Pt): number => Math.hypot(p.x - q.x, p.y - q.y)
const middle = ({ a, b }: Straight): Pt => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 })

/** Two short strokes of one length that halve each other square. */
const crosses = (lines: readonly Straight[]): readonly Pt[] => {
  const short = lines.flatMap((line) => {
    const { a, b } = line
    const length = distance(a, b)
    return length < 15 ? [{ length, middle: middle(line), x: b.x - a.x, y: b.y - a.y }] : []
  })
  const found: Pt[] = []
  for (const [i, one] of short.entries())
    for (let j = i + 1; j < short.length; j++) {
      const two = short[j]!
      if (Math.abs(one.length - two.length) >= most || distance(one.middle, two.middle) >= most) continue
      if (Math.abs(one.x * two.x + one.y * two.y) < 1e-3 * one.length * two.length) found.push(one.middle)
    }
  return found
}

/** The lists hold the same points, in any order. */
const alike = (p: readonly Pt[], q: readonly Pt[]): boolean =>
  p.length === q.length &&
  p.every((a) => q.some((b) => distance(a, b) <= most)) &&
  q.every((a) => p.some((b) => distance(a, b) <= most))

/** Joint lines, crosses and snap lines of one pattern, and whether its pages hang together. */
export const checkJoints = (
  tiles: readonly { readonly tile: Tile; readonly beside: readonly Beside[] }[],
  overlap: number,
  fault: (what: string) => void,
): JointCount => {
  const marks = new Map(
    tiles.map(({ tile }) => {
      const lines = straights(tile, 'joint')
      const snap = snapOf(lines, tile)
      return [tile, { lines, crosses: crosses(lines), snap, rings: rings(tile) }] as const
    }),
  )
  let joints = 0
  let count = 0
  let verniers = 0
  for (const { tile, beside } of tiles) {
    const own = marks.get(tile)!
    if (own.snap.length !== 1) fault(`page ${tile.page} has ${own.snap.length} snap lines`)
    for (const { side, tile: other, at, overlap: strip } of beside) {
      const where = `joint of pages ${tile.page} and ${other.page}`
      if (!(Math.abs(strip - overlap) <= most)) fault(`${where}: overlap ${strip}, asked for ${overlap}`)
      const upright = side === 'left' || side === 'right'
      const off = (p: Pt): number => Math.abs((upright ? p.x : p.y) - at)
      const there = (p: Pt): Pt => mapPoint(tile.patternToTrue, mapPoint(other.trueToPattern, p))
      const theirs = marks.get(other)!

      // a cross is cut in half when its middle lies on the line and one of its arms runs along it
      const mine = own.crosses.filter((p) => off(p) <= most)
      // crosses of the joints that meet this one stand farther off
      const near = own.crosses.filter((p) => off(p) <= 2)
      if (near.length !== mine.length) fault(`${where}: a cross lies beside the joint line`)
      if (mine.length < 2) fault(`${where}: ${mine.length} crosses`)
      const arms = own.lines.filter((line) => mine.some((p) => distance(p, middle(line)) <= most))
      for (const { a, b } of arms)
        if (!(Math.abs(off(a) - off(b)) <= most)) fault(`${where}: a cross is not cut in half`)
      const along = mine.map((p) => (upright ? p.y : p.x))
      const edge = upright ? tile.window.y1 - tile.window.y0 : tile.window.x1 - tile.window.x0
      if (Math.max(...along) - Math.min(...along) < 0.3 * edge)
        fault(`${where}: the crosses lie close together`)
      const over = theirs.crosses.map(there).filter((p) => off(p) <= 2)
      if (!alike(mine, over)) fault(`${where}: crosses do not meet`)
      count += mine.length
      joints++

      // verniers: the zero ticks of both pages run through, the others step by 2.0 mm on the page that lies over, 1.9 under
      const [zeros, ticks] = vernier(own.lines, off)
      const [theirZeros] = vernier(
        theirs.lines.map(({ a, b, dashed }) => ({ a: there(a), b: there(b), dashed })),
        off,
      )
      if (!alike(zeros, theirZeros)) fault(`${where}: zero ticks do not run through`)
      const pitch = tile.number > other.number ? 2 : 1.9
      for (const zero of zeros) {
        const scale = ticks.map((p) => distance(p, zero) / pitch).filter((n) => n < 9.5)
        if (scale.length !== 19 || scale.some((n) => Math.abs(n - Math.round(n)) * pitch > most))
          fault(`${where}: a vernier of page ${tile.page} has the steps ${scale}`)
      }
      verniers += zeros.length

      // the joint line itself: on both pages the same, and as long as the cell
      const { x0, x1, y0, y1 } = tile.window
      const whole = (upright ? [y0, y1] : [x0, x1]).map((edgeAt, i): Pt => {
        const along = edgeAt + (i === 0 ? overlap : -overlap) / 2
        return upright ? { x: at, y: along } : { x: along, y: at }
      })
      const jointLines = (lines: readonly Straight[], screws: readonly Pt[]): readonly Straight[] =>
        unbroken(
          lines.filter(({ a, b, dashed }) => off(a) <= most && off(b) <= most && dashed),
          (p) => (upright ? p.y : p.x),
        ).map((line) => goneOn(line, whole, screws))
      const ownLines = jointLines(own.lines, own.rings)
      const theirLines = jointLines(
        theirs.lines.map(({ a, b, dashed }) => ({ a: there(a), b: there(b), dashed })),
        theirs.rings.map(there),
      )
      if (ownLines.length !== 1) fault(`${where}: page ${tile.page} draws ${ownLines.length} joint lines`)
      if (!alike(ownLines.flatMap(ends), theirLines.flatMap(ends))) fault(`${where}: joint lines differ`)
      for (const { a, b } of ownLines)
        if (!(Math.abs(distance(a, b) - (edge - overlap)) <= 0.01))
          fault(`${where}: the joint line is ${distance(a, b)} long, the cell ${edge - overlap}`)

      // neighbours along a row lie on one chalk line
      const [snap, next] = [own.snap[0], theirs.snap[0]]
      if (snap && next && isAlong(snap, upright) && !onLine(snap, ends(next).map(there)))
        fault(`${where}: the snap lines are not one`)
    }
  }
  if (!connected(tiles)) fault(`the tiles of ${tiles[0]!.tile.pattern} do not hang together`)
  return { joints, crosses: count, verniers }
}

const ends = ({ a, b }: Straight): readonly Pt[] => [a, b]

/** Lines from one edge of the window to the opposite one. */
const snapOf = (lines: readonly Straight[], { window }: Tile): readonly Straight[] =>
  lines.filter(({ a, b }) => {
    const spans = (p: number, q: number, low: number, high: number): boolean =>
      Math.abs(Math.min(p, q) - low) < 0.01 && Math.abs(Math.max(p, q) - high) < 0.01
    return spans(a.x, b.x, window.x0, window.x1) || spans(a.y, b.y, window.y0, window.y1)
  })

/** Whether a snap line runs across an upright joint, or an upright one across a level joint. */
const isAlong = ({ a, b }: Straight, upright: boolean): boolean =>
  upright === Math.abs(b.x - a.x) > Math.abs(b.y - a.y)

const onLine = ({ a, b }: Straight, points: readonly Pt[]): boolean =>
  points.every((p) => {
    const height = ((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / distance(a, b)
    return Math.abs(height) <= most
  })

/** Whether every tile is reached from the first across joints; `without` left out. */
export const connected = (
  tiles: readonly { readonly tile: Tile; readonly beside: readonly Beside[] }[],
  without?: Tile,
): boolean => {
  const all = tiles.filter(({ tile }) => tile !== without)
  const reached = new Set(all.slice(0, 1).map(({ tile }) => tile))
  for (const tile of reached)
    for (const { tile: next } of all.find((t) => t.tile === tile)!.beside)
      if (next !== without) reached.add(next)
  return reached.size === all.length
}

/** Pages whose window carries neither cut line nor mark, and that no neighbour needs to hang together. */
export const checkBlank = (
  tiles: readonly { readonly tile: Tile; readonly beside: readonly Beside[] }[],
  carries: (tile: Tile) => boolean,
  fault: (what: string) => void,
): void => {
  for (const { tile } of tiles)
    if (!carries(tile) && connected(tiles, tile)) fault(`page ${tile.page} is blank and joins nothing`)
}
