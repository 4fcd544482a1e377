import { type Drawing, group, text } from '../drawing/drawing.ts'
import { textWidth } from '../drawing/text-width.ts'
import { type Affine, affineApply, affineThen, affineTranslate } from '../geometry/affine.ts'
import { type Box, pointsBounds } from '../geometry/bounds.ts'
import { letters } from '../pattern/pens.ts'
import type { Block, BlockPlace } from './block.ts'
import { type Packed, packRectangles } from './pack.ts'

/** One page of small parts, in ideal page mm. */
export interface PackedPage {
  readonly drawing: Drawing
  readonly places: readonly BlockPlace[]
}

/** Parts keep this far apart: scissors and eyes need it, mm. */
export const blockGap = 5

/** The line of words over the parts, mm. */
const head = 6

/** Room for parts on a page. */
export const packedArea = (window: Box): { readonly width: number; readonly height: number } => ({
  width: window.x1 - window.x0,
  height: window.y1 - window.y0 - head,
})

/** Parts on as few pages as are found, under one line of words; those that come first in `blocks` come first on a page. */
export const packBlocks = (window: Box, blocks: readonly Block[], words: string): readonly PackedPage[] =>
  packRectangles(blocks, packedArea(window), blockGap).map((placed): PackedPage => {
    const sorted = [...placed].sort((a, b) => a.index - b.index)
    const laid = sorted.map((one) => ({ block: blocks[one.index]!, map: toPage(window, one) }))
    return {
      places: laid.flatMap(({ block, map }) =>
        block.places.map((place) => ({
          pattern: place.pattern,
          map: affineThen(place.map, map),
          window: movedBox(place.window, map),
        })),
      ),
      drawing: [headLine(window, words), ...laid.map(({ block, map }) => group(map, block.drawing))],
    }
  })

const headLine = (window: Box, words: string) => {
  const size = Math.min(letters.small, (window.x1 - window.x0) / textWidth(words, 1, 'regular'))
  return text('note', { x: window.x0, y: window.y1 - letters.small }, size, words)
}

/** Packed from the top of the page down. */
const toPage = (window: Box, { box, turned }: Packed): Affine => {
  const [x, y] = [window.x0 + box.x0, window.y1 - head - box.y1]
  return turned ? [0, 1, -1, 0, x + box.x1 - box.x0, y] : affineTranslate(x, y)
}

const movedBox = ({ x0, y0, x1, y1 }: Box, map: Affine): Box =>
  pointsBounds([affineApply(map, { x: x0, y: y0 }), affineApply(map, { x: x1, y: y1 })])
