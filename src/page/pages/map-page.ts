import { type Drawing, group } from '../../drawing/drawing.ts'
import { affineTranslate } from '../../geometry/affine.ts'
import type { Box } from '../../geometry/bounds.ts'
import { letters } from '../../pattern/pens.ts'
import { mapPicture } from './map-picture.ts'
import { hungWords, type MapFacts, mapWords } from './map-words.ts'

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

/** First page of a pattern: the outline under its tiles, what to do, what to check, cautions; ideal page mm. */
export const mapPage = (window: Box, facts: MapFacts): Drawing => {
  const wide = window.x1 - window.x0
  const scale = Math.min(2, Math.max(1, wide / nominal))
  const [width, height] = [wide / scale, (window.y1 - window.y0) / scale]
  const said = mapWords(facts)
  const fitting = (at: number) => {
    const one = tries[at]!
    const words = hungWords(said, facts, one.size, width)
    const left = height - words.above.height - words.below.height - words.foot.height
    return { ...one, ...words, left, fits: left >= one.least }
  }
  let at: number = usual
  let found = fitting(at)
  for (let larger = found; larger.fits && at > 0; ) {
    larger = fitting(--at)
    if (larger.fits) found = larger
  }
  while (!found.fits && at + 1 < tries.length) found = fitting(++at)
  const { size, least, left, above, below, foot } = found
  const drawn = mapPicture(
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
  const used = above.height + drawn.height + below.height + foot.height
  // all of it smaller where that is too much for a low page
  const fit = Math.min(1, height / used)
  const top = Math.max(height, used)
  return [
    group(
      [scale * fit, 0, 0, scale * fit, window.x0, window.y1 - top * scale * fit],
      [
        group(affineTranslate(0, top), above.draw()),
        group(affineTranslate(0, top - above.height - drawn.height), drawn.marks),
        group(affineTranslate(0, top - above.height - drawn.height), below.draw()),
        // at the foot of the page
        group(affineTranslate(0, foot.height), foot.draw()),
      ],
    ),
  ]
}
