import Flatten from '@flatten-js/core'
import { textBox } from './check-page.ts'
import type { Pt } from './outline.ts'
import type { Plotted } from './plot.ts'
import { type Map6, mapPoint, mmPerPoint, type Rect, runsOf } from './tape.ts'

export interface BlockCount {
  readonly blocks: number
  /** pairs of blocks on one page */
  readonly pairs: number
  /** strokes and words that lie in a block */
  readonly marks: number
  /** pairs of words that were compared */
  readonly words: number
}

/** Parts that were cut out with scissors are this far apart at least, mm. */
const leastGap = 4

/** The one line of words over the parts is allowed outside of them. */
const headLine = /^Set [A-Z0-9-]{14}: /

export interface PlannedPlace {
  readonly pattern: string
  readonly toPattern: Map6
  readonly window: readonly [number, number, number, number]
}

export interface PlannedPage {
  readonly page: number
  readonly kind: string
  readonly tile?: string
  readonly places: readonly PlannedPlace[]
}

const polygonOf = (points: readonly Pt[]): Flatten.Polygon =>
  new Flatten.Polygon(points.map(({ x, y }) => new Flatten.Point(x * mmPerPoint, y * mmPerPoint)))

const rectOf = ([x0, y0, x1, y1]: PlannedPlace['window']): Rect => ({ x0, y0, x1, y1 })

const corners = ({ x0, y0, x1, y1 }: Rect): readonly Pt[] => [
  { x: x0, y: y0 },
  { x: x1, y: y0 },
  { x: x1, y: y1 },
  { x: x0, y: y1 },
]

/**
 * Pages that carry several parts: no two blocks come near, each mark lies in one block, and no two words of a page overlap.
 * Boxes are compared by another library.
 */
export const checkBlocks = (
  { read, plan }: Plotted,
  kinds: readonly string[],
  fault: (what: string) => void,
): BlockCount => {
  const count = { blocks: 0, pairs: 0, marks: 0, words: 0 }
  // a window is the box inside of what leans
  const [, lean, sway] = plan.correction as readonly number[]
  const slack = (0.1 + Math.max(Math.abs(lean!), Math.abs(sway!)) * 420) / mmPerPoint
  for (const { page, kind, places } of plan.pages as readonly PlannedPage[]) {
    if (!kinds.includes(kind)) continue
    const say = (what: string): void => fault(`page ${page} (${kind}): ${what}`)
    const { strokes, fills, texts } = read.pages[page - 1]!
    const windows = places.map(({ window }) => rectOf(window))
    const boxes = windows.map((window) => polygonOf(corners(window)))
    count.blocks += boxes.length
    boxes.forEach((box, i) => {
      boxes.slice(i + 1).forEach((other, k) => {
        count.pairs++
        const [gap] = box.distanceTo(other)
        if (!(gap >= leastGap) || box.intersect(other).length > 0)
          say(`${places[i]!.pattern} and ${places[i + 1 + k]!.pattern} lie ${gap.toFixed(2)} mm apart`)
      })
    })
    const holders = (points: readonly Pt[]): number =>
      windows.filter((w) =>
        points.every(
          (p) => p.x >= w.x0 - slack && p.x <= w.x1 + slack && p.y >= w.y0 - slack && p.y <= w.y1 + slack,
        ),
      ).length
    for (const { path, layer } of [...strokes, ...fills]) {
      const points = runsOf(path, [1, 0, 0, 1, 0, 0]).flat()
      count.marks++
      if (holders(points) !== 1) say(`a stroke in ${layer} at ${JSON.stringify(points[0])} lies in no block`)
    }
    const said = texts.map((text) => ({ text: text.text, points: textBox(text, 0) }))
    for (const { text, points } of said) {
      count.marks++
      if (headLine.test(text) ? holders(points) !== 0 : holders(points) !== 1)
        say(`"${text}" lies in ${holders(points)} blocks`)
    }
    const words = said.map(({ points }) => polygonOf(points))
    words.forEach((one, i) => {
      words.slice(i + 1).forEach((other, k) => {
        count.words++
        if (!Flatten.BooleanOperations.intersect(one, other).isEmpty())
          say(`"${said[i]!.text}" and "${said[i + 1 + k]!.text}" lie over each other`)
      })
    })
  }
  return count
}

/** Ticks from the edges of a strip inward, in the strip's mm: how deep they go tells what they are. */
export interface StripTick {
  readonly edge: 'upper' | 'lower'
  readonly at: number
  readonly depth: number
}

export const stripTicks = ({ read }: Plotted, page: number, place: PlannedPlace): readonly StripTick[] => {
  const [a, b] = corners(rectOf(place.window)).map((p) => mapPoint(place.toPattern, p))
  const diagonal = corners(rectOf(place.window)).map((p) => mapPoint(place.toPattern, p))
  const height = Math.max(...diagonal.map(({ y }) => y))
  const [from, to] = [Math.min(...diagonal.map(({ x }) => x)), Math.max(...diagonal.map(({ x }) => x))]
  if (!a || !b) return []
  return read.pages[page - 1]!.strokes.flatMap(({ layer, path }): readonly StripTick[] => {
    if (layer !== 'mark' || path.length !== 2) return []
    const [p, q] = runsOf(path, place.toPattern).flatMap((run) => [run[0]!, run.at(-1)!])
    if (!p || !q || Math.abs(p.x - q.x) > 1e-3 || p.x < from - 1e-3 || p.x > to + 1e-3) return []
    const [low, high] = [Math.min(p.y, q.y), Math.max(p.y, q.y)]
    if (low < -2 || high > height + 2) return []
    return [{ edge: p.y > height / 2 ? 'upper' : 'lower', at: p.x, depth: high - low }]
  })
}
