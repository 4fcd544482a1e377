import { tableFits, tableHeight, tableMarks } from '../../drafting/table.ts'
import { titleBlock, titleBlockHeight } from '../../drafting/title-block.ts'
import type { Drawing } from '../../drawing/drawing.ts'
import type { Box } from '../../geometry/bounds.ts'
import type { Block, FixedBlock } from './block.ts'
import { tableStyle } from './block.ts'
import type { Pages } from './page-words.ts'

/** What a page of the booklet belongs to. */
export interface Section {
  readonly name: string
  readonly title: string
  readonly blocks: readonly Block[]
  /** stands on one page wherever one holds it: it is taken along alone */
  readonly unparted?: boolean
}

export interface BookPage {
  /** the parts on it, as its foot names them */
  readonly title: string
  /** those that begin on it */
  readonly begins: readonly Pick<Section, 'name' | 'title'>[]
  readonly drawing: Drawing
}

export interface Foot {
  readonly title: string
  readonly code: string
  /** what lengths are said in */
  readonly lengths: string
}

const footGap = 3

/** Blocks from the top of a page down, its foot below. */
const footSize = 2.3
const footHeight = titleBlockHeight(footSize) + footGap

/** Room for blocks on one page, mm. */
export const bodyHeight = (window: Box): number => window.y1 - window.y0 - footHeight

/** A page as it fills. */
interface Filling {
  /** drawn when the page is wanted */
  readonly marks: ((pages: Pages) => Drawing)[]
  /** of what stands on it, for words that name its page */
  readonly names: string[]
  readonly titles: string[]
  readonly begins: BookPage['begins'][number][]
}

/** Of a page that is free so far a further section takes its share, unless no drawing of it has room there. */
const roomy = 0.12
/** Up to the end of a section's first drawing: a block so high, mm. */
const drawing = 40

/** Of a section of words so many blocks at least stand with its head. */
const leastSteps = 3

/** Heights of a section's first blocks, to its first drawing or table. */
const firstOf = (blocks: readonly Block[]): number => {
  const at = blocks.findIndex((block) => block.kind === 'table' || block.height > drawing)
  const firsts = blocks.slice(0, at < 0 ? leastSteps : Math.min(at, leastSteps) + 1)
  return firsts.reduce((sum, block) => sum + (block.kind === 'table' ? leastOf(block) : block.height), 0)
}

/** Between two sections on one page, mm. */
const sectionGap = 8

/** How many pages sections take, what share of each is free, and which of them begin on each. */
export const filled = (
  window: Box,
  sections: readonly Section[],
): { readonly pages: number; readonly free: readonly number[]; readonly begins: readonly string[] } => {
  const { pages, free } = fill(window, sections)
  return {
    pages: pages.length,
    free: free.map((mm) => mm / bodyHeight(window)),
    begins: pages.map(({ begins }) => begins.map(({ name }) => name).join()),
  }
}

/** Sections one after the other: each begins a page, but for one that fits whole below the one before, or whose first drawing does where much of the page is free. Throws RangeError on a block that no page holds. */
export const layPages = (window: Box, sections: readonly Section[], foot: Foot): readonly BookPage[] => {
  const { pages } = fill(window, sections)
  const find: Pages = (name) => {
    const at = pages.findIndex(
      ({ names, begins }) => names.includes(name) || begins.some((one) => one.name === name),
    )
    return at < 0 ? null : at + 1
  }
  return pages.map(({ marks, titles, begins }, i) => ({
    title: titles.join(', '),
    begins,
    drawing: [
      ...marks.flatMap((draw) => draw(find)),
      ...footOf(window, foot, partWords(titles), `${i + 1} of ${pages.length}`),
    ],
  }))
}

const fill = (
  window: Box,
  sections: readonly Section[],
): { readonly pages: readonly Filling[]; readonly free: readonly number[] } => {
  const tall = bodyHeight(window)
  const bottom = window.y1 - tall
  const pages: Filling[] = []
  // below each page, mm
  const free: number[] = []
  let y = bottom
  for (const { name, title, blocks, unparted = false } of sections) {
    const turn = (): void => {
      if (pages.length > 0) free.push(y - bottom)
      pages.push({ marks: [], titles: [title], begins: [], names: [] })
      y = window.y1
    }
    const whole = blocks.reduce((sum, block) => sum + heightOf(block), 0)
    const room = y - bottom - sectionGap
    if (
      pages.length > 0 &&
      (whole <= room || (!unparted && room > roomy * tall && firstOf(blocks) <= room))
    ) {
      y -= sectionGap
      pages.at(-1)!.titles.push(title)
    } else turn()
    pages.at(-1)!.begins.push({ name, title })
    const put = (marks: (pages: Pages) => Drawing, height: number): void => {
      pages.at(-1)!.marks.push(marks)
      y -= height
    }
    blocks.forEach((block, i) => {
      if (block.kind === 'fixed') {
        const chain = block.withNext ? chainOf(blocks, i) : block.height
        const needed = chain <= tall ? chain : block.height + leastOf(blocks[i + 1])
        if (block.height > tall + slack)
          throw new RangeError(`a block ${block.height} mm high fits no page of ${tall} mm`)
        if (y - needed < bottom - slack && y < window.y1) turn()
        const at = { x: window.x0, y }
        put((find) => block.marks(at, find), block.height)
        pages.at(-1)!.names.push(...(block.names ?? []))
        return
      }
      const { laid } = block
      for (let from = 0; from < laid.rows.length; ) {
        let count = tableFits(laid, from, y - bottom)
        // a head over a row or two is worth no split
        if (count < Math.min(3, laid.rows.length - from) && y < window.y1) {
          turn()
          count = tableFits(laid, from, y - bottom)
        }
        // nor do the last one or two stand alone under it
        const over = laid.rows.length - from - count
        if (over > 0 && over < 3 && count > 3) count -= 3 - over
        if (count === 0) throw new RangeError('a row of a table is higher than a page')
        const [at, first] = [{ x: window.x0, y }, from]
        put(() => tableMarks(laid, at, first, count), tableHeight(laid, from, count) + afterTable)
        from += count
      }
    })
  }
  return { pages, free: [...free, y - bottom] }
}

const slack = 1e-6
const afterTable = 3

const heightOf = (block: Block): number =>
  block.kind === 'fixed' ? block.height : tableHeight(block.laid) + afterTable

/** Letters of the parts of a page in its foot at most, beside the design's title. */
const mostLetters = 26

const partWords = (titles: readonly string[]): string => {
  const all = titles.join(', ')
  return titles.length > 1 && all.length > mostLetters ? `${titles[0]} …` : all
}

const footOf = (window: Box, { title, code, lengths }: Foot, part: string, page: string): Drawing =>
  titleBlock(
    { x0: window.x0, y0: window.y0, x1: window.x1, y1: window.y0 + footHeight - footGap },
    [
      { name: 'booklet of', value: title },
      { name: 'part', value: part },
      { name: 'set code begins', value: code },
      { name: 'lengths in', value: lengths },
      { name: 'page', value: page },
    ],
    { ...tableStyle, size: footSize },
  )

/** A block and all that stands with it, one after the other. */
const chainOf = (blocks: readonly Block[], from: number): number => {
  let [sum, i] = [0, from]
  for (let block = blocks[i]; block?.kind === 'fixed' && block.withNext; block = blocks[++i])
    sum += block.height
  return sum + leastOf(blocks[i])
}

/** What must stand with a head: the next block, or a table's head and three rows. */
const leastOf = (block: Block | undefined): number => {
  if (!block) return 0
  if (block.kind === 'fixed') return (block as FixedBlock).height
  return tableHeight(block.laid, 0, Math.min(3, block.laid.rows.length))
}
