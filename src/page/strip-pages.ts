import type { Box } from '../geometry/bounds.ts'
import type { StoryStrip } from '../pattern/story-strip.ts'
import type { Block } from './block.ts'
import { type PackedPage, packBlocks, packedArea } from './packed-page.ts'
import { stripBlock } from './strip-block.ts'
import { stripPieces } from './strip-pieces.ts'

/** Strips, and other parts before them, on as few pages as are found: in pieces as long as the page, else as it is wide. */
export const stripPages = (
  window: Box,
  others: readonly Block[],
  strips: readonly StoryStrip[],
  set: string,
): readonly PackedPage[] => {
  const { width, height } = packedArea(window)
  const lengths = [Math.max(width, height), Math.min(width, height)]
  let best: readonly PackedPage[] | undefined
  for (const room of lengths) {
    const pieces = strips.flatMap((strip) => stripPieces(strip, room).map((piece) => stripBlock(piece, set)))
    const pages = packBlocks(window, [...others, ...pieces], headWords(strips.length > 0, set))
    if (!best || pages.length < best.length) best = pages
  }
  return best!
}

const headWords = (strips: boolean, set: string): string =>
  `Set ${set}: ${
    strips
      ? "cut the strips out, tape each one's pieces at their dashed lines, lay its zero where it says."
      : 'cut the parts out along their frames.'
  }`
