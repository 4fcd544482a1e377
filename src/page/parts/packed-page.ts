import { type Drawing, group, text } from '../../drawing/drawing.ts'
import { textWidth } from '../../drawing/text-width.ts'
import { type Affine, affineApply, affineThen, affineTranslate } from '../../geometry/affine.ts'
import { type Box, pointsBounds } from '../../geometry/bounds.ts'
import { letters } from '../../pattern/pens.ts'
import type { StoryStrip } from '../../pattern/story-strip.ts'
import type { Block, BlockPlace } from './block.ts'
import { inOrder, wrongPairs } from './in-order.ts'
import { type Packed, packings } from './pack.ts'
import { stripBlock } from './strip-block.ts'
import { stripPieces } from './strip-pieces.ts'

/** One page of small parts, in ideal page mm. */
export interface PackedPage {
  readonly draw: () => Drawing
  readonly places: readonly BlockPlace[]
}

/** Parts keep this far apart: scissors and eyes need it, mm. */
const blockGap = 4

/** The line of words over the parts, mm. */
const head = 6

/** Room for parts on a page. */
export const packedArea = (window: Box): { readonly width: number; readonly height: number } => ({
  width: window.x1 - window.x0,
  height: window.y1 - window.y0 - head,
})

/** Blocks, those of strips behind them, on as few pages as are found, under one line of words. */
export const packedPages = (
  window: Box,
  blocks: readonly Block[],
  strips: readonly StoryStrip[],
  set: string,
): readonly PackedPage[] => {
  const area = packedArea(window)
  const [long, short] = [Math.max(area.width, area.height), Math.min(area.width, area.height)]
  // pieces as long as the page; or some as long as it is wide, which find room beside other blocks
  const cutFor = (room: number) =>
    strips.map((strip, i) =>
      stripPieces(strip, room).map((piece) => ({ strip: i, block: stripBlock(piece, set) })),
    )
  const [inLong, inShort] = [cutFor(long), cutFor(short)]
  const tries = fewShort(strips.length).flatMap((few) => {
    const pieces = strips.flatMap((_, i) => (i < few ? inShort : inLong)[i]!)
    const all = [...blocks, ...pieces.map(({ block }) => block)]
    const groups = [...blocks.map(() => null), ...pieces.map((piece) => piece.strip)]
    return packings(all, area, blockGap, blocks.length).map((found) => {
      // in the order in which they are printed
      const held = (placed: readonly Packed[]): boolean =>
        placed.some(({ index }) => holdsTrial(all[index]!.places))
      return { all, groups, pages: [...found.filter(held), ...found.filter((page) => !held(page))] }
    })
  })
  const fewest = Math.min(...tries.map(({ pages }) => pages.length))
  // two pieces out of order bother as much as one joint more
  const { all, pages } = tries
    .filter((one) => one.pages.length === fewest)
    .map(({ all: laid, groups, pages: found }) => {
      const ordered = inOrder(found, groups, area, blockGap)
      return { all: laid, pages: ordered, cost: wrongPairs(ordered, groups) + laid.length }
    })
    .reduce((a, b) => (b.cost < a.cost ? b : a))
  return pages.map((placed) => {
    const sorted = [...placed].sort((a, b) => a.index - b.index)
    const laid = sorted.map((one) => ({ block: all[one.index]!, map: toPage(window, one) }))
    return {
      places: laid.flatMap(({ block, map }) =>
        block.places.map((place) => ({
          part: place.part,
          pattern: place.pattern,
          map: affineThen(place.map, map),
          window: movedBox(place.window, map),
        })),
      ),
      draw: () => [
        headLine(
          window,
          headWords(
            sorted.some(({ index }) => index >= blocks.length),
            set,
          ),
        ),
        ...laid.map(({ block, map }) => group(map, block.draw())),
      ],
    }
  })
}

/** Pages with a lip trial come first: it is sawn before anything else. */
export const holdsTrial = (places: readonly BlockPlace[]): boolean =>
  places.some(({ part }) => part === 'trial')

/** How many strips are cut short, in the order of the tries. */
const fewShort = (count: number): readonly number[] => [
  ...new Set([0, 1, 2, count].filter((n) => n <= count)),
]

const headWords = (strips: boolean, set: string): string =>
  `Set ${set}: ${
    strips
      ? 'cut out. From piece 2 on, cut at the first dashed line and lay that edge on the dashed line of the piece before, cross on cross.'
      : 'cut the parts out.'
  }`

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
