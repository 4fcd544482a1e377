import { textBox } from './check-page.ts'
import { type Outline, outlineContains, outlineNearest, outlineSamples } from './outline.ts'
import { type Beside, cellOf, lengthInside, mapPoint, runLengthInside, type Tile } from './tape.ts'

export interface WordCount {
  /** words KEEP and WASTE whose place was checked */
  readonly sides: number
  /** words left out because their side of the line has no room for them on the page */
  readonly cramped: number
}

/** Room for the smallest letters, 2.4 mm high, with a millimetre around: mm along and across. */
const smallest = { KEEP: [12, 4.5], WASTE: [15, 4.5] } as const

/** A stub of the cut line that is shorter needs no words: they would stand at no line of their own. mm */
const sideWorth = 5

/** A word all of which lies farther from the line to saw says nothing of it: it may stand at another edge of the piece. mm */
const farthest = 25

/** Whether a word laid level or upright has room on its side of the line and near it, tried every 1.5 mm of the window. */
export const hasRoom = (
  tile: Pick<Tile, 'cuts' | 'trueToPattern' | 'window'>,
  outline: Outline,
  side: 'KEEP' | 'WASTE',
): boolean => {
  const step = 1.5
  const { x0, y0, x1, y1 } = tile.window
  const [columns, rows] = [Math.floor((x1 - x0) / step) + 1, Math.floor((y1 - y0) / step) + 1]
  const coarse = { ...outline, polygon: outlineSamples(outline, 4).map(({ p }) => p) }
  const known: (boolean | undefined)[] = []
  const sawn = tile.cuts.flat()
  const isNear = (p: (typeof sawn)[number]): boolean =>
    sawn.some(({ x, y }) => Math.abs(x - p.x) < farthest && Math.abs(y - p.y) < farthest)
  const isGood = (i: number): boolean => {
    const p = mapPoint(tile.trueToPattern, {
      x: x0 + (i % columns) * step,
      y: y0 + Math.floor(i / columns) * step,
    })
    return (
      isNear(p) && outlineContains(coarse, p) === (side === 'KEEP') && outlineNearest(outline, p).distance > 1
    )
  }
  const good = (i: number): boolean => {
    known[i] ??= isGood(i)
    return known[i]
  }
  const [long, short] = smallest[side].map((mm) => mm / step) as [number, number]
  const fits = (column: number, row: number, wide: number, high: number): boolean => {
    if (column + wide >= columns || row + high >= rows) return false
    for (let r = row; r <= row + high; r++)
      for (let c = column; c <= column + wide; c++) if (!good(r * columns + c)) return false
    return true
  }
  for (let i = 0; i < columns * rows; i++) {
    const [column, row] = [i % columns, Math.floor(i / columns)]
    if (fits(column, row, long, short) || fits(column, row, short, long)) return true
  }
  return false
}

/** Numbers and words of the tiles: what the builder reads to know which page this is, and on which side he saws. */
export const checkWords = (
  tiles: readonly { readonly tile: Tile; readonly beside: readonly Beside[] }[],
  outlines: ReadonlyMap<string, Outline>,
  set: string,
  fault: (what: string) => void,
): WordCount => {
  let sides = 0
  let cramped = 0
  for (const { tile, beside } of tiles) {
    const say = (what: string): void => fault(`page ${tile.page}: ${what}`)
    const { texts } = tile.read
    const all = texts.map(({ text }) => text)
    const word = (pattern: string): boolean => all.some((text) => new RegExp(pattern).test(text))
    const literal = (text: string): string => text.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&')

    const biggest = texts.reduce((a, b) => (b.size > a.size ? b : a))
    if (biggest.text !== String(tile.number)) say(`its biggest word is "${biggest.text}", not ${tile.number}`)
    if (!word(`\\b${tile.number} of ${tiles.length}\\b`)) say(`no "${tile.number} of ${tiles.length}"`)
    if (tile.name !== `${tile.number}`) say(`the plan calls it ${tile.name}, not ${tile.number}`)
    if (!word(literal(set))) say('the set code is not on it')
    if (tile.read.label !== tile.name) say(`its label is "${tile.read.label}"`)
    for (const { tile: other } of beside) {
      // the later page lies over the earlier one and is the one to be trimmed
      const over = other.number < tile.number
      const words = all.filter((text) =>
        new RegExp(`^(?:over|goes under|under) page ${other.number}\\b`).test(text),
      )
      if (words.length !== 1) say(`${words.length} words for the joint with page ${other.number}`)
      else if (/\bunder\b/.test(words[0]!) === over || /\bover\b.*\btrim\b/.test(words[0]!) !== over)
        say(`"${words[0]}" for the joint with page ${other.number}`)
    }

    const outline = outlines.get(tile.pattern)!
    const cell = cellOf(tile, beside)
    const carried = tile.cuts.reduce((sum, run) => sum + runLengthInside(cell, run, tile.patternToTrue), 0)
    for (const side of ['KEEP', 'WASTE'] as const) {
      const found = texts.filter(({ text }) => text === side)
      if (carried > sideWorth && found.length === 0 && !hasRoom(tile, outline, side)) cramped++
      else if (carried > sideWorth && found.length === 0)
        say(`${side} is missing beside ${carried.toFixed(2)} mm of cut line`)
      for (const text of found) {
        sides++
        const corners = textBox(text, 0).map((p) => mapPoint(tile.toPattern, p))
        const [a, b, c, d] = corners as [
          (typeof corners)[0],
          (typeof corners)[0],
          (typeof corners)[0],
          (typeof corners)[0],
        ]
        const middle = { x: (a!.x + c!.x) / 2, y: (a!.y + c!.y) / 2 }
        if (outlineContains(outline, middle) !== (side === 'KEEP')) say(`${side} stands on the wrong side`)
        // the box's own axes
        const [width, height] = [Math.hypot(b!.x - a!.x, b!.y - a!.y), Math.hypot(d!.x - a!.x, d!.y - a!.y)]
        const local = (p: typeof middle): typeof middle => ({
          x: ((p.x - a!.x) * (b!.x - a!.x) + (p.y - a!.y) * (b!.y - a!.y)) / width,
          y: ((p.x - a!.x) * (d!.x - a!.x) + (p.y - a!.y) * (d!.y - a!.y)) / height,
        })
        const box = { x0: 0, y0: 0, x1: width, y1: height }
        const crossed = tile.cuts.some((run) => {
          const points = run.map(local)
          return points.some((p, i) => i > 0 && lengthInside(box, points[i - 1]!, p) > 0)
        })
        if (crossed) say(`${side} lies across the cut line`)
      }
    }
  }
  return { sides, cramped }
}
