import { same } from '../../../ramp/check/offer.ts'
import { type Board, type Laid, roomFor } from './lay.ts'

/** The same place with the corner that a tape finds on whole steps of it, where there is room for that. */
export const onTape = (board: Board, laid: readonly Laid[], place: Laid, step: number): Laid => {
  const { shape } = place
  const x = roomFor(shape.width, board.length, board.trim, shape.turn % 90 === 0)
  const y = roomFor(shape.height, board.width, board.trim, shape.turn % 90 === 0)
  if (!x || !y || shape.turn % 90 !== 0) return place
  // no minus zero
  const whole = (at: number, corner: number, round: (n: number) => number): number =>
    round((at + corner) / step) * step - corner + 0
  const up = (n: number): number => Math.ceil(n - 1e-6)
  const down = (n: number): number => Math.floor(n + 1e-6)
  const within = (at: number, room: readonly [number, number]): boolean =>
    at >= room[0] - same && at <= room[1] + same
  for (const along of [up, down])
    for (const across of [up, down]) {
      const way = {
        shape,
        x: whole(place.x, shape.corner.x, along),
        y: whole(place.y, shape.corner.y, across),
      }
      if (within(way.x, x) && within(way.y, y) && isFree(laid, way)) return way
    }
  return place
}

/** Ways of two pieces are whole steps apart, so distances between them are few: equal but for the last bits of a sum. */
const apart = (a: number, b: number): number => Math.round((a - b) * 1e7) / 1e7

const isFree = (laid: readonly Laid[], { shape, x, y }: Laid): boolean =>
  laid.every((other) => {
    const { width, height, kerf } = other.shape
    // boxes that lie apart
    if (y >= other.y + height + kerf || y + shape.height <= other.y - kerf) return true
    if (x >= other.x + width + kerf || x + shape.width <= other.x - kerf) return true
    const blocked = other.shape.grown.rise.rows(shape.rows(), apart(x, other.x))
    return !blocked || y <= blocked[0] + other.y + same || y >= blocked[1] + other.y - same
  })

/** So many steps a corner is moved at most, either way, once all pieces lie there. */
const mostSteps = 3

/**
 * The same layout, every corner of a curved piece on whole steps of a tape where that can be once all pieces lie there: so
 * figures agree, and from one end of a piece to the other it is as long as it is said to be.
 */
export const settled = <P extends Laid>(board: Board, places: readonly P[], step: number): readonly P[] => {
  const waysNear = keptWays(board, step)
  let now = places
  for (const i of places.keys()) {
    const place = now[i]!
    if (!isCurved(place) || isOnSteps(place, step)) continue
    const ways = waysNear(place)
    const others = now.filter((one) => one !== place)
    const free = ways.find((way) => isFree(others, way))
    now = free ? put(now, i, free) : (firstRoom(now, i, ways, waysNear) ?? now)
  }
  return now
}

/** Asked again and again of the same few pieces. */
type WaysNear = (place: Laid) => readonly Laid[]

const keptWays = (board: Board, step: number): WaysNear => {
  const kept = new Map<Laid, readonly Laid[]>()
  return (place) => {
    const ways = kept.get(place) ?? waysOf(board, place, step)
    kept.set(place, ways)
    return ways
  }
}

const firstRoom = <P extends Laid>(
  places: readonly P[],
  index: number,
  ways: readonly Laid[],
  waysNear: WaysNear,
): readonly P[] | null => {
  for (const way of ways) {
    const roomy = withRoom(places, index, way, waysNear)
    if (roomy) return roomy
  }
  return null
}

/** One piece put where others are in its way, each of them moved out of it; null where one of them cannot be. */
const withRoom = <P extends Laid>(
  places: readonly P[],
  index: number,
  way: Laid,
  waysNear: WaysNear,
): readonly P[] | null => {
  let now = put(places, index, way)
  for (const [i, place] of places.entries()) {
    if (i === index || isFree([place], way)) continue
    const others = now.filter((_, k) => k !== i)
    const own = isCurved(place) ? waysNear(place).find((one) => isFree(others, one)) : undefined
    if (!own) return null
    now = put(now, i, own)
  }
  return now
}

const isCurved = ({ shape }: Laid): boolean => !shape.square && shape.turn % 90 === 0

const put = <P extends Laid>(places: readonly P[], index: number, { x, y }: Laid): readonly P[] =>
  places.map((place, i) => (i === index ? { ...place, x, y } : place))

/** Whether the corner that a tape finds lies on whole steps of it already. */
const isOnSteps = ({ shape, x, y }: Laid, step: number): boolean =>
  Math.hypot(offStep(x + shape.corner.x, step), offStep(y + shape.corner.y, step)) < same

const offStep = (at: number, step: number): number => at - Math.round(at / step) * step

const farFrom = (place: Laid, { x, y }: Laid): number => Math.hypot(x - place.x, y - place.y)

/** Places near one at which the corner lies on whole steps, as far as there is room; the nearest first. */
const waysOf = (board: Board, place: Laid, step: number): readonly Laid[] => {
  const { shape, x, y } = place
  const across = wholes(x, shape.corner.x, step, roomFor(shape.width, board.length, board.trim, true))
  const up = wholes(y, shape.corner.y, step, roomFor(shape.height, board.width, board.trim, true))
  return (
    across
      .flatMap((left) => up.map((below) => ({ shape, x: left, y: below })))
      // equal but for the last bits of a sum: the same order on every machine
      .map((way) => ({ way, far: Math.round(farFrom(place, way) * 1e4) }))
      .sort((a, b) => a.far - b.far)
      .map(({ way }) => way)
  )
}

const wholes = (
  at: number,
  corner: number,
  step: number,
  room: readonly [number, number] | null,
): readonly number[] =>
  room === null
    ? []
    : Array.from(
        { length: 2 * mostSteps },
        (_, i) => (Math.floor((at + corner) / step + same) + i - mostSteps + 1) * step - corner + 0,
      ).filter((one) => one >= room[0] - same && one <= room[1] + same)
