import { type Drawing, fill, text } from '../../drawing/drawing.ts'
import { textWidth } from '../../drawing/text-width.ts'
import { boxGrow, pointsBounds } from '../../geometry/bounds.ts'
import { circle } from '../../geometry/path.ts'
import { type Point, pointBetween, pointDistance } from '../../geometry/point.ts'
import { type BoxCount, boxCounter, type Occupancy } from '../room/occupancy.ts'
import type { Tile } from '../tile/tile.ts'

/** Room kept round words, mm. */
export const clear = 0.6

/** What words never lie on where there is another place: the outline, crosses, other words; and what they rather keep off. */
export const [never, rather] = [1, 2]

/** Crosses and words. */
export const crossOrWord = 4

/** What one square counts that a number lies on: of the outline, and of a cross or a word, which no disc may hide. */
const struck = 100
const hidden = 1e4

/** What a number counts that another's stands so near that both are read as one. */
const run = 8e3

/** What it counts that it lies on another: neither can be read, so a cross is hidden rather. */
const over = 3e4

/** How often numbers make way for each other. */
const mostTurns = 3

/** How much of what is taken a box covers, of one state of the picture: hundreds of places are asked about. */
export const costOf = (taken: Occupancy): BoxCount =>
  boxCounter(taken, (kinds) =>
    kinds & crossOrWord ? hidden : kinds & never ? struck : (kinds & rather) / rather,
  )

/** Places over a cell, its middle first. */
const shares = [0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82, 0.1, 0.9]

/** Heights of the numbers in turn, as shares of the tallest. */
const numberShares = [1, 0.85, 0.7, 0.6, 0.5, 0.42, 0.36]

/** No number is smaller where the cell has room for this, mm: a phone is read at arm's length. */
const leastNumber = 1.8

/** Room round a number in its cell, mm. */
const around = 0.5

/**
 * The tiles' numbers, all of one size: the largest that strikes neither outline nor names, and lies on nothing in most of the cells. Where
 * the outline cannot be kept off a white disc lies under the number.
 */
export const numberMarks = (
  tiles: readonly Tile[],
  at: (p: Point) => Point,
  cost: BoxCount,
  sizes: { readonly tallest: number; readonly least: number },
): Drawing => {
  const cells = tiles.map((tile) => tile.cell.map(at))
  const slim = Math.max(...tiles.map(({ number }) => textWidth(`${number}`, 1, 'bold')))
  const room = Math.min(...cells.map((cell) => roomOf(cell, slim)))
  const largest = Math.max(Math.min(sizes.tallest, room), leastNumber)
  const smallest = Math.min(Math.max(0.8 * sizes.least, leastNumber), largest)
  const heights = new Set(numberShares.map((share) => Math.max(largest * share, smallest)))
  const laid: Laid[] = []
  for (const size of heights) {
    const places = apartPlaces(
      tiles.map(({ number }) => `${number}`),
      cells,
      size,
      cost,
    )
    const clear = places.filter(({ covered }) => covered === 0).length
    laid.push({ size, places, clear })
    // none that is smaller lies on less
    if (clear === tiles.length) break
  }
  const strikes = laid.map(
    (one) =>
      one.places.filter(({ covered }) => covered >= struck).length +
      tiles.length * one.places.filter(({ covered }) => covered >= hidden).length,
  )
  const fewest = Math.min(...strikes)
  const few = laid.filter((_, i) => strikes[i] === fewest)
  // smaller than words only where that keeps one off the outline, or, where discs are needed, most of them off lines
  const read = few.filter(({ size }) => size >= sizes.least)
  const isRead =
    read.length > 0 && (fewest === 0 || clearOf(read) >= Math.min(tiles.length / 2, clearOf(few)))
  const fit = isRead ? read : few
  const most = clearOf(fit)
  const { size, places } = fit.find(({ clear: free }) => free >= most - tiles.length / 8)!
  const words = tiles.map(({ number }) => `${number}`)
  // no disc hides the number of another page
  return [
    ...places.flatMap(({ middle, covered }, i): Drawing => {
      const radius = Math.hypot(textWidth(words[i]!, size, 'bold'), size) / 2 + around
      return covered >= struck ? [fill('note', circle(middle, radius), 1)] : []
    }),
    ...places.map(({ middle }, i) =>
      text('note', { x: middle.x, y: middle.y - size / 2 }, size, words[i]!, {
        face: 'bold',
        align: 'middle',
      }),
    ),
  ]
}

const clearOf = (laid: readonly Laid[]): number => Math.max(0, ...laid.map(({ clear: free }) => free))

/** The numbers at one height, and how many of them lie on nothing. */
interface Laid {
  readonly size: number
  readonly places: readonly NumberPlace[]
  readonly clear: number
}

/** The tallest number that a cell has room for. */
const roomOf = (cell: readonly Point[], slim: number): number => {
  const [a, b, , d] = cell as readonly [Point, Point, Point, Point]
  return Math.min(pointDistance(a, d) * 0.5, (pointDistance(a, b) * 0.5) / slim)
}

interface NumberPlace {
  readonly middle: Point
  readonly covered: number
}

/** Each number in its cell, none nearer to another than a figure is wide where there is room: those that are make way in turn. */
const apartPlaces = (
  words: readonly string[],
  cells: readonly (readonly Point[])[],
  size: number,
  cost: BoxCount,
): readonly NumberPlace[] => {
  const halves = words.map((one) => textWidth(one, size, 'bold') / 2)
  const figure = textWidth('0', size, 'bold')
  const widest = 2 * Math.max(...halves) + figure
  const laid: NumberPlace[] = []
  const lay = (i: number): void => {
    const box = boxGrow(pointsBounds(cells[i]!), widest)
    const others = laid.flatMap(({ middle: { x, y } }, k) =>
      k !== i && x > box.x0 && x < box.x1 && y > box.y0 && y < box.y1
        ? [{ x, y, room: halves[i]! + halves[k]! + figure }]
        : [],
    )
    laid[i] = numberPlace(words[i]!, cells[i]!, size, (x0, y0, x1, y1) => {
      const [x, y] = [(x0 + x1) / 2, (y0 + y1) / 2]
      // what has no room for a figure between still keeps as far off as it can
      const near = others.reduce((sum, other) => {
        const lacking = other.room - Math.abs(x - other.x)
        const off = Math.abs(y - other.y)
        if (lacking <= 0 || off >= size + clear) return sum
        return (
          sum + (lacking > figure && off < size ? over : run * (0.5 + 0.5 * Math.min(1, lacking / figure)))
        )
      }, 0)
      return cost(x0, y0, x1, y1) + near
    })
  }
  for (const i of cells.keys()) lay(i)
  for (let turn = 0; turn < mostTurns && laid.some(({ covered }) => covered >= run / 2); turn++)
    for (const i of cells.keys()) lay(i)
  return laid
}

/** Where a number of a size lies on least in its cell, its middle first. */
const numberPlace = (
  words: string,
  [a, b, c, d]: readonly Point[],
  size: number,
  cost: BoxCount,
): NumberPlace => {
  const half = textWidth(words, size, 'bold') / 2
  const high = size / 2
  // it stays in the cell however that is turned
  const room = Math.hypot(2 * half, size) / 2 + around
  const within = (long: number) => (share: number) =>
    long <= 3.2 * room ? share : Math.min(Math.max(share, room / long), 1 - room / long)
  const across = shares.map(within(pointDistance(a!, b!)))
  const up = shares.map(within(pointDistance(a!, d!)))
  let middle = pointBetween(a!, c!, 0.5)
  let least = Number.POSITIVE_INFINITY
  for (const u of across) {
    const [from, to] = [pointBetween(a!, b!, u), pointBetween(d!, c!, u)]
    for (const t of up) {
      const x = from.x + (to.x - from.x) * t
      const y = from.y + (to.y - from.y) * t
      const found = cost(x - half - clear, y - high - clear, x + half + clear, y + high + clear)
      if (found >= least) continue
      least = found
      middle = { x, y }
      if (found === 0) return { middle, covered: 0 }
    }
  }
  return { middle, covered: least }
}
