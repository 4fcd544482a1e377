import type { Box } from '../../geometry/bounds.ts'
import { lengthsShort } from '../lengths-note.ts'
import type { Block } from './block.ts'
import { type Book, type BookFacts, bookOf } from './book.ts'
import { type BookPage, bodyHeight, filled, layPages, type Section } from './pages.ts'
import { buying } from './sections/buying.ts'
import { care } from './sections/care.ts'
import { coping } from './sections/coping.ts'
import { cutting } from './sections/cutting/cutting.ts'
import { panelsName } from './sections/cutting/panels.ts'
import { deck } from './sections/deck.ts'
import { finishing } from './sections/finishing.ts'
import { first } from './sections/first.ts'
import { flat } from './sections/flat.ts'
import { framing } from './sections/framing.ts'
import { glance } from './sections/glance.ts'
import { moving } from './sections/moving.ts'
import { pieces } from './sections/pieces.ts'
import { skin } from './sections/skin.ts'

/** The parts of a booklet by the builder's day; those that a design has no use for come out as null. */
const sections: Readonly<Record<string, (book: Book) => Section | null>> = {
  glance,
  buying,
  first,
  cutting,
  framing,
  skin,
  coping,
  deck,
  flat,
  finishing,
  moving,
  care,
}

/** Names of all parts, in their order. */
export const sectionNames: readonly string[] = Object.keys(sections)

export interface BookletOptions {
  /** of a page, mm */
  readonly window: Box
  /** names of the parts wanted; null for all */
  readonly only: readonly string[] | null
  /** first part of the set code: the same on every page plotted of this design */
  readonly code: string
}

/** Smaller drawings, the largest first, are taken where they save a page: one of which more than this is free, or where that much of all of them is. */
const sparse = 0.75
const halfEmpty = 0.2
const shares = [0.86, 0.72, 0.6, 0.5]

/** A part with its drawings at a share of their usual height. */
const partOf = (name: string, share: number, book: Book): Section | null =>
  book.drawn(`part ${name} ${share}`, () => sections[name]!({ ...book, share }))

/** The largest share that does; null where the smallest does not: what that does not save none saves. */
const largestOf = (tried: readonly number[], does: (share: number) => boolean): number | null =>
  does(tried.at(-1)!) ? tried.find(does)! : null

/** A part whose pages are not all but empty, if that can be. */
const sectionOf = (name: string, book: Book, window: Box): Section | null => {
  const usual = partOf(name, 1, book)
  if (usual === null) return null
  const { pages, free } = filled(window, [usual])
  const wasted = free.reduce((sum, own) => sum + own, 0) / pages
  if (pages < 2 || (free.at(-1)! < sparse && wasted < halfEmpty)) return usual
  const share = largestOf(shares, (one) => filled(window, [partOf(name, one, book)!]).pages < pages)
  return share === null ? usual : partOf(name, share, book)
}

/** The pages for the bench: drawings, tables and steps with this build's own numbers. Same input, same pages. */
export const layBooklet = (facts: BookFacts, { window, only, code }: BookletOptions): readonly BookPage[] => {
  const book = bookOf(facts, window.x1 - window.x0, bodyHeight(window), only ?? sectionNames)
  const wanted = sectionNames
    .filter((name) => !only || only.includes(name))
    .flatMap((name) => sectionOf(name, book, window) ?? [])
  return layPages(window, withPieces(closed(wanted, book, window), book, window), {
    title: facts.design.title,
    code,
    lengths: lengthsShort(facts.design.units),
  })
}

/** Where all pieces may be listed, the best first: at the end of a part, or before a block of it that has a name. */
const listing: readonly (readonly [part: string, before?: string])[] = [
  ['first'],
  ['cutting', panelsName],
  ['cutting'],
  ['glance'],
]

/** The table of all pieces where a page is free for it: it is worth none of its own, and moves no part to another page. */
const withPieces = (wanted: readonly Section[], book: Book, window: Box): readonly Section[] => {
  if (!wanted.some(({ name }) => name === 'cutting')) return wanted
  const table = pieces(book)
  if (table.height > book.tall) return wanted
  const before = filled(window, wanted)
  for (const [name, place] of listing) {
    const listed = wanted.map((one) => (one.name === name ? withBlock(one, table, place) : one))
    const { pages, begins } = filled(window, listed)
    if (pages === before.pages && begins.join(';') === before.begins.join(';')) return listed
  }
  return wanted
}

const withBlock = (section: Section, block: Block, before: string | undefined): Section => {
  const { blocks } = section
  const at = blocks.findIndex(
    (one) => one.kind === 'fixed' && before !== undefined && one.names?.includes(before),
  )
  return { ...section, blocks: at < 0 ? [...blocks, block] : blocks.toSpliced(at, 0, block) }
}

/** Parts whose drawings may be smaller for the sake of the whole. */
const drawnParts = ['framing', 'skin', 'deck', 'moving']
/** What that must gain of a page, or save one. */
const gain = 0.12

/** All parts one after the other, the drawings of one after the other smaller where what follows moves up by much. */
const closed = (usual: readonly Section[], book: Book, window: Box): readonly Section[] => {
  const endOf = (all: readonly Section[]): number => {
    const { pages, free } = filled(window, all)
    return pages - (free.at(-1) ?? 0)
  }
  let [best, end] = [usual, endOf(usual)]
  for (const name of drawnParts.filter((one) => usual.some((own) => own.name === one))) {
    const at = (share: number): readonly Section[] =>
      best.map((one) => (one.name === name ? partOf(name, share, book)! : one))
    const share = largestOf(shares.slice(0, 2), (one) => {
      const own = endOf(at(one))
      return own <= end - gain || Math.ceil(own) < Math.ceil(end)
    })
    if (share === null) continue
    best = at(share)
    end = endOf(best)
  }
  return best
}
