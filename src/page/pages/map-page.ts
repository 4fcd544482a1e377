import { type Drawing, group } from '../../drawing/drawing.ts'
import { affineTranslate } from '../../geometry/affine.ts'
import type { Box } from '../../geometry/bounds.ts'
import { letters } from '../../pattern/pens.ts'
import { mapPicture } from './map-picture.ts'
import { hungWords, type MapFacts, type MapTold, mapWords } from './map-words.ts'

/** On wider windows all of it is larger, at most twice; on narrower ones its lines break sooner. mm */
const nominal = 186

/**
 * Heights of all letters but the title and the pages' numbers, the largest that leaves the drawing room, and how much it needs with them:
 * the page is a drawing first. mm
 */
const tries = [
  { size: 3, least: 86 },
  { size: 2.8, least: 80 },
  { size: 2.6, least: 74 },
  { size: 2.4, least: 68 },
  { size: 2.2, least: 56 },
  { size: letters.mark, least: 46 },
] as const
/** Most pages take this one of them: tried first, then larger ones where it fits, else smaller ones. */
const usual = 3
/** Of the drawing: as much as it has use for, and what its dimensions take beside it, mm. */
const picture = { most: 116, beside: 24 } as const

/** What each row of pages needs of the drawing, so that numbers and names keep off each other, mm. */
const forRow = 10

/**
 * The map of a pattern: the outline under its tiles, what to do, what to check, cautions; ideal page mm. Where a drawing of many rows
 * would be pressed its tables have a second page.
 */
export const mapPages = (window: Box, facts: MapFacts): readonly (() => Drawing)[] => {
  const rows = new Set(facts.tiles.map(({ row }) => row)).size
  const needed = rows * forRow
  // however small its letters
  if (needed <= tries.at(-1)!.least) return [() => drawn(window, facts, fitted(window, facts, 'all', 0))]
  const found = fitted(window, facts, 'all', 0)
  if (found.fits && found.left >= needed) return [() => drawn(window, facts, found)]
  const steps = fitted(window, facts, 'steps', needed)
  return [() => drawn(window, facts, steps), () => tablesPage(window, facts, steps.size)]
}

const scaleIn = ({ x0, x1 }: Box): number => Math.min(2, Math.max(1, (x1 - x0) / nominal))

interface Fitted extends ReturnType<typeof hungWords> {
  readonly size: number
  readonly least: number
  /** for the drawing, mm */
  readonly left: number
  readonly fits: boolean
}

/** The words of a page at the height of their letters; the drawing keeps `needed` mm where that is more than its least. */
const fitted = (window: Box, facts: MapFacts, told: MapTold, needed: number): Fitted => {
  const scale = scaleIn(window)
  const [width, height] = [(window.x1 - window.x0) / scale, (window.y1 - window.y0) / scale]
  const said = mapWords(facts)
  const fitting = (at: number): Fitted => {
    const { size, least: own } = tries[at]!
    const least = Math.max(own, needed)
    const words = hungWords(said, facts, size, width, told)
    const left = height - words.above.height - words.below.height - words.foot.height
    return { size, least, ...words, left, fits: left >= least }
  }
  let at: number = usual
  let found = fitting(at)
  for (let larger = found; larger.fits && at > 0; ) {
    larger = fitting(--at)
    if (larger.fits) found = larger
  }
  while (!found.fits && at + 1 < tries.length) found = fitting(++at)
  return found
}

const drawn = (window: Box, facts: MapFacts, { size, least, left, above, below, foot }: Fitted): Drawing => {
  const scale = scaleIn(window)
  const [width, height] = [(window.x1 - window.x0) / scale, (window.y1 - window.y0) / scale]
  const map = mapPicture(
    width,
    facts,
    {
      width: width - picture.beside,
      height: Math.min(picture.most, Math.max(least, left) - 2 * size - 4),
      number: 6,
      name: size,
      dimensions: true,
    },
    facts.units,
  )
  const used = above.height + map.height + below.height + foot.height
  // all of it smaller where that is too much for a low page
  const fit = Math.min(1, height / used)
  const top = Math.max(height, used)
  return [
    group(
      [scale * fit, 0, 0, scale * fit, window.x0, window.y1 - top * scale * fit],
      [
        group(affineTranslate(0, top), above.draw()),
        group(affineTranslate(0, top - above.height - map.height), map.marks),
        group(affineTranslate(0, top - above.height - map.height), below.draw()),
        // at the foot of the page
        group(affineTranslate(0, foot.height), foot.draw()),
      ],
    ),
  ]
}

/** In letters as high as those of the first page, where all find room. */
const tablesPage = (window: Box, facts: MapFacts, size: number): Drawing => {
  const scale = scaleIn(window)
  const width = (window.x1 - window.x0) / scale
  const { above, below } = hungWords(mapWords(facts), facts, size, width, 'tables')
  const fit = Math.min(1, (window.y1 - window.y0) / scale / (above.height + below.height))
  return [
    group(
      [scale * fit, 0, 0, scale * fit, window.x0, window.y1],
      [...above.draw(), group(affineTranslate(0, -above.height), below.draw())],
    ),
  ]
}
