import { doubleArea } from '../../geometry/polygon/outer-polygon.ts'
import { same } from '../../ramp/check/offer.ts'
import { inOwnCorner, onFactoryEdges } from './factory-edges.ts'
import { type Known, nothingKnown } from './known.ts'
import {
  type Attempt,
  areaOf,
  boughtOf,
  type Filled,
  type Packing,
  type PanelKind,
  pack,
  packWithin,
  type Saw,
  sameArea,
  type Ways,
} from './pack.ts'
import { pairing } from './pairing.ts'
import { type Piece, reachOf, waysOf } from './piece.ts'
import { shuffler } from './shuffler.ts'

/** Other orders are tried where the first take more panels than the least: so many, or until so many pieces were laid. */
const mostShuffles = 150
const mostLayings = 2500
/** To lay a curved piece takes so many times as long. */
const curvedWork = 20

/** Between a line that a jigsaw follows by hand and its neighbour, where there is room; mm, common practice, no source. */
const handApart = 10

/** The least area of panels that the search finds, no more than of any size alone; of as much, panels where every good face is up; curved pieces farther apart where that takes no more; a panel's own edges kept where that takes fewer, and its corner where rectangles have it to themselves. Same pieces, same layout. */
export const nest = (
  pieces: readonly Piece[],
  kinds: readonly PanelKind[],
  saw: Saw,
  known = nothingKnown(),
): Packing => {
  const there = kinds.filter(({ count }) => count !== null)
  const bought = kinds.filter(({ count }) => count === null)
  const first = nestOnEdges(pieces, kinds, saw, known)
  if (bought.length < 2) return first
  const smaller = ({ filled, lost }: Packing): Packing => ({
    filled: filled.map((one) => onSmaller(one, pieces, bought, saw, known)),
    lost,
  })
  let best = smaller(first)
  for (const kind of bought) {
    const found = smaller(nestOnEdges(pieces, [kind, ...there], saw, known))
    if (found.lost.length <= best.lost.length && boughtOf(found) < boughtOf(best) - sameArea) best = found
  }
  return best
}

/** What lies on a panel that is bought, on the smallest that holds it. */
const onSmaller = (
  one: Filled,
  pieces: readonly Piece[],
  kinds: readonly PanelKind[],
  saw: Saw,
  known: Known,
): Filled => {
  if (one.kind.count !== null) return one
  const numbers = one.places.map(({ piece }) => piece).sort((a, b) => a - b)
  const own = numbers.map((i) => pieces[i]!)
  const area = own.reduce((sum, { blank }) => sum + doubleArea(blank.fine) / 2, 0)
  for (const kind of kinds.toSorted((a, b) => areaOf(a) - areaOf(b))) {
    if (areaOf(kind) > areaOf(one.kind) - sameArea) break
    if (areaOf(kind) < area - sameArea) continue
    const { filled, lost } = nestOnEdges(own, [kind], saw, known)
    if (lost.length > 0 || filled.length > 1) continue
    return { kind, places: filled[0]!.places.map((place) => ({ ...place, piece: numbers[place.piece]! })) }
  }
  return one
}

const nestOnEdges = (
  pieces: readonly Piece[],
  kinds: readonly PanelKind[],
  saw: Saw,
  known: Known,
): Packing => {
  const packing = onFactoryEdges(
    nestTrimmed(pieces, kinds, saw, known),
    pieces,
    saw,
    (own, sizes, whole) => search(own, sizes, whole, known).packing,
  )
  return inOwnCorner(packing, saw)
}

/** The same, every panel trimmed. */
export const nestTrimmed = (
  pieces: readonly Piece[],
  kinds: readonly PanelKind[],
  saw: Saw,
  known = nothingKnown(),
): Packing => {
  if (saw.kerf >= handApart || pieces.every(({ blank }) => blank.square))
    return search(pieces, kinds, saw, known).packing
  const apartWays = waysOf(pieces, handApart, known.ways)
  const soon = apartSoon(pieces, apartWays, kinds, saw)
  if (soon) return soon
  const { attempt, packing } = search(pieces, kinds, saw, known)
  if (attempt.openings.length > 0 || packing.filled.length === 0) return packing
  if (!packing.filled.some(({ places }) => places.length > 1 && places.some(({ shape }) => !shape.square)))
    return packing
  const apart = pack(apartWays, saw, attempt)
  const isAs = apart.lost.length === packing.lost.length && apart.filled.length === packing.filled.length
  const sameKinds = apart.filled.every(({ kind }, i) => kind === packing.filled[i]?.kind)
  return isAs && sameKinds && downOf(apart) <= downOf(packing) ? apart : packing
}

/** Curved pieces that far apart, where the first try of all takes no more than the area asks for: so do most. */
const apartSoon = (
  pieces: readonly Piece[],
  ways: readonly Ways[],
  kinds: readonly PanelKind[],
  saw: Saw,
): Packing | null => {
  if (kinds.some(({ count }) => count !== null)) return null
  const area = ways.map((way) => way.area)
  const [first] = triesOf(ordersOf(pieces, area), kinds, [], 'up')
  const packing = packWithin(ways, saw, first!, { bought: leastBought(kinds, area), down: 0 })
  return packing && packing.lost.length === 0 ? packing : null
}

/** Good faces that lie down. */
const downOf = ({ filled }: Packing): number =>
  filled.reduce((sum, { places }) => sum + places.filter(({ shape }) => shape.over).length, 0)

/** Large pieces first, or long ones. */
const ordersOf = (pieces: readonly Piece[], area: readonly number[]): readonly (readonly number[])[] => {
  // whole mm²: the last bits of a sum differ from machine to machine
  const rank = area.map(Math.round)
  const byArea = area.map((_, i) => i).sort((a, b) => rank[b]! - rank[a]! || a - b)
  const byReach = byArea.toSorted((a, b) => Math.round(reachOf(pieces[b]!)) - Math.round(reachOf(pieces[a]!)))
  return byReach.some((piece, i) => piece !== byArea[i]) ? [byArea, byReach] : [byArea]
}

const triesOf = (
  orders: readonly (readonly number[])[],
  kinds: readonly PanelKind[],
  openings: Attempt['openings'],
  faces: Attempt['faces'],
): readonly Attempt[] => {
  const smallFirst = kinds.toSorted((a, b) => thereFirst(a, b, 1))
  const several = kinds.filter(({ count }) => count === null).length > 1
  const largeFirst = several ? [kinds.toSorted((a, b) => thereFirst(a, b, -1))] : []
  return [smallFirst, ...largeFirst].flatMap((opened) =>
    orders.flatMap((order) =>
      (['rips', 'ends'] as const).map((rule) => ({ kinds: opened, order, rule, faces, openings })),
    ),
  )
}

const search = (
  pieces: readonly Piece[],
  kinds: readonly PanelKind[],
  saw: Saw,
  known: Known,
): Pick<Found, 'attempt' | 'packing'> => {
  const ways = waysOf(pieces, saw.kerf, known.ways)
  const area = ways.map((way) => way.area)
  const orders = ordersOf(pieces, area)
  const byArea = orders[0]!
  const tries = (openings: Attempt['openings'], faces: Attempt['faces']): readonly Attempt[] =>
    triesOf(orders, kinds, openings, faces)
  const [up, ...otherUps] = tries([], 'up')
  let found = bestOf([up!], ways, saw, area, null, 0)!
  const least = leastBought(kinds, area)
  const better = (attempts: readonly Attempt[], bound: number, down = 0): void => {
    found = bestOf(attempts, ways, saw, area, found, bound, down)!
  }
  const [any, ...otherAnys] = ways.some((way) => way.up !== way.any) ? tries([], 'any') : []
  // the fewest panels soon: tries that open more are then given up
  if (any && pieces.length > 1) better([any], least)
  better(otherUps, least)
  if (pieces.length < 2 || isLeast(found, least)) return found
  const pairs = pairing(pieces, kinds, saw, known)
  const fewest = (bound: number): boolean => found.score[0] === 0 && found.score[1]! <= bound + sameArea
  const bound = fewest(least) ? least : Math.max(least, leastApart(byArea, kinds, pairs.together))
  if (isLeast(found, bound)) return found
  // a try that lays no face down lays what its like did above, which took more
  better(otherAnys, bound, 1)
  if (fewest(bound)) return found
  const openings = pairs.tilted(byArea)
  if (openings.length > 0) better(tries(openings, 'any'), bound)
  const work = pieces.reduce((sum, { blank }) => sum + (blank.square ? 1 : curvedWork), 0)
  // of as many panels as must be, one face more may lie down
  const count =
    found.score[1]! <= bound + sameArea ? 0 : Math.min(mostShuffles, Math.floor(mostLayings / work))
  const next = shuffler()
  for (let i = 0; i < count && !isLeast(found, bound); i++) {
    const order = next(found.attempt.order)
    better([{ ...found.attempt, order, rule: i % 2 === 0 ? 'rips' : 'ends' }], bound)
  }
  return found
}

interface Found {
  readonly attempt: Attempt
  readonly packing: Packing
  /** lost pieces, area that is bought, good faces down, and how evenly the panels are filled: less is better */
  readonly score: readonly number[]
}

const bestOf = (
  attempts: readonly Attempt[],
  ways: readonly Ways[],
  saw: Saw,
  area: readonly number[],
  before: Found | null,
  bound: number,
  down = 0,
): Found | null => {
  let best = before
  for (const attempt of attempts) {
    if (best && isLeast(best, bound, down)) break
    // where the best has lost a piece, one that loses none may take more
    const open = !best || best.score[0]! > 0
    const packing = open
      ? pack(ways, saw, attempt)
      : packWithin(ways, saw, attempt, { bought: best!.score[1]!, down: best!.score[2]! })
    if (!packing) continue
    const score = scoreOf(packing, ways, area)
    if (!best || isLess(score, best.score)) best = { attempt, packing, score }
  }
  return best
}

const isLess = (a: readonly number[], b: readonly number[]): boolean => {
  const i = a.findIndex((one, k) => Math.abs(one - b[k]!) > sameArea)
  return i >= 0 && a[i]! < b[i]!
}

/** `mostDown`: of as many panels no try lays fewer faces down. */
const isLeast = ({ score: [lost, bought, down] }: Found, bound: number, mostDown = 0): boolean =>
  lost === 0 && down! <= mostDown && bought! <= bound + sameArea

/** What is there already, then the smallest, or the largest of what is bought. */
const thereFirst = (a: PanelKind, b: PanelKind, way: 1 | -1): number =>
  Number(a.count === null) - Number(b.count === null) ||
  (areaOf(a) - areaOf(b)) * (a.count === null ? way : 1)

const scoreOf = (
  { filled, lost }: Packing,
  ways: readonly Ways[],
  area: readonly number[],
): readonly number[] => {
  // whole mm², as above: their squares add up without loss
  const used = filled.map(({ places }) =>
    places.reduce((sum, { piece }) => sum + Math.round(area[piece]!), 0),
  )
  const down = filled.flatMap(({ places }) =>
    places.filter(({ piece, shape }) => !ways[piece]!.up().includes(shape)),
  )
  return [lost.length, boughtOf({ filled }), down.length, -used.reduce((sum, one) => sum + one * one, 0)]
}

/** Area that must be bought at least: whole panels where all are of one size. mm² */
const leastBought = (kinds: readonly PanelKind[], area: readonly number[]): number => {
  const there = kinds.reduce((sum, kind) => sum + (kind.count ?? 0) * areaOf(kind), 0)
  const rest = Math.max(0, area.reduce((sum, one) => sum + one, 0) - there)
  const bought = kinds.filter(({ count }) => count === null).map(areaOf)
  return bought.length === 1 ? Math.ceil(rest / bought[0]! - same) * bought[0]! : rest
}

/** Pieces no two of which go on one panel need as many panels. mm² */
const leastApart = (
  byArea: readonly number[],
  kinds: readonly PanelKind[],
  together: (a: number, b: number) => boolean,
): number => {
  const apart: number[] = []
  for (const piece of byArea) if (apart.every((other) => !together(other, piece))) apart.push(piece)
  const there = kinds.reduce((sum, { count }) => sum + (count ?? 0), 0)
  const smallest = Math.min(...kinds.filter(({ count }) => count === null).map(areaOf))
  return Math.max(0, apart.length - there) * (Number.isFinite(smallest) ? smallest : 0)
}
