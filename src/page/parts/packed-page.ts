import { type Drawing, group } from '../../drawing/drawing.ts'
import { type Affine, affineApply, affineThen, affineTranslate } from '../../geometry/affine.ts'
import { type Box, pointsBounds } from '../../geometry/bounds.ts'
import type { StoryStrip } from '../../pattern/story-strip.ts'
import type { Block, BlockPlace } from './block.ts'
import { inOrder, partings, wrongPairs } from './in-order.ts'
import { type Packed, packColumns, packings, type Size } from './pack.ts'
import type { PartsLegend } from './parts-legend.ts'
import { stripBlock } from './strip-block.ts'
import { stripPieces } from './strip-pieces.ts'

/** One page of small parts, in ideal page mm. */
export interface PackedPage {
  readonly draw: () => Drawing
  readonly places: readonly BlockPlace[]
}

/** Parts keep this far apart: scissors and eyes need it, mm. */
const blockGap = 4

/** So many pieces out of order, or joints, are better than one page more. */
const pageCost = 5

/** Room for parts on a page beside the legend. */
export const packedArea = (window: Box, legend: PartsLegend): Size => ({
  width: window.x1 - window.x0 - legend.height,
  height: window.y1 - window.y0,
})

/** Blocks, those of strips behind them and before these what is told of all, on as few pages as are found, beside their legend. */
export const packedPages = (
  window: Box,
  blocks: readonly Block[],
  told: readonly Block[],
  strips: readonly StoryStrip[],
  set: string,
  legend: PartsLegend,
): readonly PackedPage[] => {
  const area = packedArea(window, legend)
  const [long, short] = [Math.max(area.width, area.height), Math.min(area.width, area.height)]
  // pieces as long as the page; or some as long as it is wide, which find room beside other blocks
  const cutFor = (room: number) =>
    strips.map((strip, i) =>
      stripPieces(strip, room).map((piece) => ({ strip: i, block: stripBlock(piece, set) })),
    )
  const [inLong, inShort] = [cutFor(long), cutFor(short)]
  const tries = fewShort(strips.length).flatMap((few) => {
    const pieces = strips.flatMap((_, i) => (i < few ? inShort : inLong)[i]!)
    const all = [...blocks, ...told, ...pieces.map(({ block }) => block)]
    const groups = [...[...blocks, ...told].map(() => null), ...pieces.map((piece) => piece.strip)]
    return packings(all, area, blockGap, blocks.length).map((found) => {
      // in the order in which they are printed
      const held = (placed: readonly Packed[]): boolean =>
        placed.some(({ index }) => holdsTrial(all[index]!.places))
      return { all, groups, pages: [...found.filter(held), ...found.filter((page) => !held(page))] }
    })
  })
  // two pieces out of order, or parted by another strip's, bother as much as one joint more
  const best = tries
    .map(({ all: laid, groups, pages: found }) => {
      const ordered = inOrder(found, groups, area, blockGap)
      return {
        all: laid,
        pages: ordered,
        cost: pageCost * found.length + wrongPairs(ordered, groups) + partings(ordered, groups) + laid.length,
      }
    })
    .reduce((a, b) => (b.cost < a.cost ? b : a))
  const columns =
    blocks.length === 0 ? inColumns([...told, ...inLong.flat().map(({ block }) => block)], area) : null
  // strips alone lie in their order, if that takes no more than one page more
  const { all, pages } = columns && columns.pages.length <= best.pages.length + 1 ? columns : best
  const place = toPage(window, legend)
  return pages.map((placed) => {
    const sorted = [...placed].sort((a, b) => a.index - b.index)
    const laid = sorted.map((one) => ({ block: all[one.index]!, map: place(one) }))
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
        ...legend.draw(
          { x: window.x0, y: window.y0 },
          sorted.some(({ index }) => index >= blocks.length + told.length),
        ),
        ...laid.map(({ block, map }) => group(map, block.draw())),
      ],
    }
  })
}

const inColumns = (all: readonly Block[], area: Size) => ({ all, pages: packColumns(all, area, blockGap) })

/** Pages with a lip trial come first: it is sawn before anything else. */
export const holdsTrial = (places: readonly BlockPlace[]): boolean =>
  places.some(({ part }) => part === 'trial')

/** How many strips are cut short, in the order of the tries. */
const fewShort = (count: number): readonly number[] => [
  ...new Set([0, 1, 2, count].filter((n) => n <= count)),
]

/** Packed from the top of the page down, to the right of the legend. */
const toPage =
  (window: Box, { height: beside }: PartsLegend) =>
  ({ box, turned }: Packed): Affine => {
    const [x, y] = [window.x0 + beside + box.x0, window.y1 - box.y1]
    return turned ? [0, 1, -1, 0, x + box.x1 - box.x0, y] : affineTranslate(x, y)
  }

const movedBox = ({ x0, y0, x1, y1 }: Box, map: Affine): Box =>
  pointsBounds([affineApply(map, { x: x0, y: y0 }), affineApply(map, { x: x1, y: y1 })])
