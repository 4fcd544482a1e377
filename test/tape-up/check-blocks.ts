import Flatten from '@flatten-js/core'
import type { Pt } from '../support/pt.ts'
import { textBox } from './check-page.ts'
import type { Plotted } from './plot.ts'
import { type Map6, mapPoint, mmPerPoint, type Rect, runsOf } from './tape.ts'

export interface BlockCount {
  readonly pages: number
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

/** What coordinates of a float's bits may be off, points. */
const near = 0.1

/** The legend stands along the left of the page; one of its lines begins so. */
const legendLine = /^Set [A-Z0-9-]{14}: /

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
 * Points as written back to points of a true printer, about the page's centre; and a window back to the box that was laid out.
 * What leans leaves a smaller box inside: w = a·W − |c|·H, h = d·H − |b|·W.
 */
const beforeCorrection = ({ correction, paper }: Plotted['plan']) => {
  const [a, b, c, d] = correction as readonly [number, number, number, number]
  const [x, y] = [paper.width / 2 / mmPerPoint, paper.height / 2 / mmPerPoint]
  const det = a * d - b * c
  const inverse = [d / det, -b / det, -c / det, a / det] as const
  const truth: Map6 = [...inverse, x - inverse[0] * x - inverse[2] * y, y - inverse[1] * x - inverse[3] * y]
  return {
    truth,
    windowBefore: ({ x0, y0, x1, y1 }: Rect): Rect => {
      const middle = mapPoint(truth, { x: (x0 + x1) / 2, y: (y0 + y1) / 2 })
      const [w, h] = [x1 - x0, y1 - y0]
      const below = a * d - Math.abs(b * c)
      const [wide, high] = [(d * w + Math.abs(c) * h) / below, (a * h + Math.abs(b) * w) / below]
      return {
        x0: middle.x - wide / 2,
        y0: middle.y - high / 2,
        x1: middle.x + wide / 2,
        y1: middle.y + high / 2,
      }
    },
  }
}

/** Room of the rows without a strip: they have no pattern, so the plan tells of no place. Their words follow each other. */
const tapeTable = (
  said: readonly { readonly text: string; readonly points: readonly Pt[] }[],
  windows: readonly Rect[],
): Rect | null => {
  const first = said.findIndex(({ text }) => text.startsWith('No strip: '))
  if (first < 0) return null
  const within = ({ points }: { readonly points: readonly Pt[] }): boolean =>
    windows.some((w) =>
      points.every(
        (p) => p.x >= w.x0 - near && p.x <= w.x1 + near && p.y >= w.y0 - near && p.y <= w.y1 + near,
      ),
    )
  const after = said.slice(first)
  const end = after.findIndex(within)
  const own = after.slice(0, end < 0 ? after.length : end).flatMap(({ points }) => points)
  const [xs, ys] = [own.map(({ x }) => x), own.map(({ y }) => y)]
  return { x0: Math.min(...xs), y0: Math.min(...ys), x1: Math.max(...xs), y1: Math.max(...ys) }
}

/**
 * Pages that carry several parts: no two blocks come near, each mark lies in one block, and no two words of a page overlap.
 * Boxes are compared by another library.
 */
export const checkBlocks = ({ read, plan }: Plotted, fault: (what: string) => void): BlockCount => {
  const count = { pages: 0, blocks: 0, pairs: 0, marks: 0, words: 0 }
  const { truth, windowBefore } = beforeCorrection(plan)
  for (const { page, kind, places } of plan.pages as readonly PlannedPage[]) {
    const say = (what: string): void => fault(`page ${page} (${kind}): ${what}`)
    const { strokes, fills, texts } = read.pages[page - 1]!
    if (!texts.some(({ text }) => legendLine.test(text))) continue
    count.pages++
    const said = texts.map((text) => ({
      text: text.text,
      points: textBox(text, 0).map((p) => mapPoint(truth, p)),
    }))
    const windows = places.map(({ window }) => windowBefore(rectOf(window)))
    const names = places.map(({ pattern }) => pattern)
    const table = tapeTable(said, windows)
    if (table) {
      windows.push(table)
      names.push('what a tape does')
    }
    const boxes = windows.map((window) => polygonOf(corners(window)))
    count.blocks += boxes.length
    boxes.forEach((box, i) => {
      boxes.slice(i + 1).forEach((other, k) => {
        count.pairs++
        const [gap] = box.distanceTo(other)
        if (!(gap >= leastGap - 1e-3) || box.intersect(other).length > 0)
          say(`${names[i]} and ${names[i + 1 + k]} lie ${gap.toFixed(2)} mm apart`)
      })
    })
    const holders = (points: readonly Pt[]): number =>
      windows.filter((w) =>
        points.every(
          (p) => p.x >= w.x0 - near && p.x <= w.x1 + near && p.y >= w.y0 - near && p.y <= w.y1 + near,
        ),
      ).length
    for (const { path, layer } of [...strokes, ...fills]) {
      const points = runsOf(path, truth).flat()
      count.marks++
      // the sample strip of the legend, in the layer of notes alone
      const beside = layer === 'note' && points.every(({ x }) => windows.every((w) => x < w.x0 - near))
      if (holders(points) !== (beside ? 0 : 1))
        say(`a stroke in ${layer} at ${JSON.stringify(points[0])} lies in no block`)
    }
    for (const { text, points } of said) {
      count.marks++
      const beside = points.every(({ x }) => windows.every((w) => x <= w.x0 + near))
      if (holders(points) !== (beside ? 0 : 1)) say(`"${text}" lies in ${holders(points)} blocks`)
    }
    const words = said.map(({ points }) => {
      const shape = polygonOf(points)
      return { shape, box: shape.box }
    })
    words.forEach((one, i) => {
      words.slice(i + 1).forEach((other, k) => {
        count.words++
        // most lie far apart
        if (!one.box.intersect(other.box)) return
        if (!Flatten.BooleanOperations.intersect(one.shape, other.shape).isEmpty())
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
  const spread = corners(rectOf(place.window)).map((p) => mapPoint(place.toPattern, p))
  const height = Math.max(...spread.map(({ y }) => y))
  const [from, to] = [Math.min(...spread.map(({ x }) => x)), Math.max(...spread.map(({ x }) => x))]
  return read.pages[page - 1]!.strokes.flatMap(({ layer, path }): readonly StripTick[] => {
    if (layer !== 'mark' || path.length !== 2) return []
    const [p, q] = runsOf(path, place.toPattern).flatMap((run) => [run[0]!, run.at(-1)!])
    if (!p || !q || Math.abs(p.x - q.x) > 1e-3 || p.x < from - 1e-3 || p.x > to + 1e-3) return []
    const [low, high] = [Math.min(p.y, q.y), Math.max(p.y, q.y)]
    if (low < -2 || high > height + 2) return []
    return [{ edge: p.y > height / 2 ? 'upper' : 'lower', at: p.x, depth: high - low }]
  })
}
