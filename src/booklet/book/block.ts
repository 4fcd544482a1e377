import { type DraftStyle, draftStyle, lineTypes } from '../../drafting/line-types.ts'
import { type LaidTable, layTable, type Table, tableHeight, tableMarks } from '../../drafting/table.ts'
import { type Drawing, fill, group, stroke, text } from '../../drawing/drawing.ts'
import { paragraph } from '../../drawing/paragraph.ts'
import { affineTranslate } from '../../geometry/affine.ts'
import { pathOf, polygonOf, rectangle } from '../../geometry/path.ts'
import type { Point } from '../../geometry/point.ts'
import { type Pages, someWidePage, withPages } from './page-words.ts'

/** Something that stands whole on a page; mm. */
export interface FixedBlock {
  readonly kind: 'fixed'
  readonly height: number
  readonly marks: (topLeft: Point, pages: Pages) => Drawing
  /** stands on the page of what follows */
  readonly withNext: boolean
  /** names under which words find its page */
  readonly names?: readonly string[]
}

/** A table, which may go on on the next page under its head. */
export interface TableBlock {
  readonly kind: 'table'
  readonly laid: LaidTable
}

export type Block = FixedBlock | TableBlock

/** Heights of a capital, mm: heads, parts of a section, words; 2.8 mm is 11 pt. */
export const sizes = { head: 5.5, part: 3.6, body: 2.8 } as const

/** Tables are a little smaller than words. */
export const tableStyle: DraftStyle = { ...draftStyle, size: 2.5, lines: lineTypes(0.18) }

const layer = 'note'

export const gap = (height: number): FixedBlock => ({
  kind: 'fixed',
  height,
  marks: () => [],
  withNext: false,
})

const lines = (
  words: string,
  width: number,
  size: number,
  options: {
    readonly bold?: boolean
    readonly indent?: number
    readonly after?: number
    readonly withNext?: boolean
  } = {},
): FixedBlock => {
  const { bold = false, indent = 0, after = 1.2, withNext = false } = options
  const style = { layer, width: width - indent, size, face: bold ? 'bold' : 'regular' } as const
  const height = -paragraph({ x: 0, y: 0 }, withPages(words, someWidePage), style).bottom + after
  return {
    kind: 'fixed',
    height,
    withNext,
    marks: ({ x, y }, pages) => paragraph({ x: x + indent, y }, withPages(words, pages), style).marks,
  }
}

export const head = (words: string, width: number): FixedBlock =>
  lines(words, width, sizes.head, { bold: true, after: 3, withNext: true })

export const part = (words: string, width: number): FixedBlock => {
  const inner = lines(words, width, sizes.part, { bold: true, after: 1.5, withNext: true })
  const before = 2.5
  return {
    ...inner,
    height: inner.height + before,
    marks: ({ x, y }, pages) => inner.marks({ x, y: y - before }, pages),
  }
}

export const words = (said: string, width: number): FixedBlock => lines(said, width, sizes.body)

const signRoom = 7

const signed = (sign: (topLeft: Point) => Drawing, said: string, width: number): FixedBlock => {
  const inner = lines(said, width, sizes.body, { indent: signRoom, after: 1.4 })
  return { ...inner, marks: (topLeft, pages) => [...sign(topLeft), ...inner.marks(topLeft, pages)] }
}

/** A numbered thing to do. */
export const step = (number: number, said: string, width: number): FixedBlock =>
  signed(
    ({ x, y }) => [
      text(layer, { x: x + signRoom - 2.2, y: y - sizes.body }, sizes.body, `${number}`, {
        face: 'bold',
        align: 'right',
      }),
    ],
    said,
    width,
  )

/** Something to look at or measure before going on, with a box to tick. */
export const check = (said: string, width: number): FixedBlock =>
  signed(
    ({ x, y }) => {
      const size = sizes.body
      return [stroke(layer, rectangle(x + 0.2, y - size, x + 0.2 + size, y), { width: 0.25 })]
    },
    said,
    width,
  )

/** What may hurt: a triangle with a mark in it. */
export const caution = (said: string, width: number): FixedBlock =>
  signed(
    ({ x, y }) => {
      const [left, right, top] = [x + 1.2, x + signRoom - 1.8, y]
      const bottom = top - 3.4
      const middle = (left + right) / 2
      return [
        stroke(layer, polygonOf({ x: left, y: bottom }, { x: right, y: bottom }, { x: middle, y: top }), {
          width: 0.35,
        }),
        stroke(layer, pathOf({ x: middle, y: top - 1.1 }, { x: middle, y: bottom + 1.05 }), { width: 0.4 }),
        fill(layer, rectangle(middle - 0.2, bottom + 0.35, middle + 0.2, bottom + 0.75), 0),
      ]
    },
    said,
    width,
  )

export const table = (rows: Table, width: number): TableBlock => ({
  kind: 'table',
  laid: layTable(rows, width, tableStyle),
})

/** Blocks of one column as one that is not parted. */
export const stack = (blocks: readonly Block[]): FixedBlock => {
  const heightOf = (block: Block): number =>
    block.kind === 'fixed' ? block.height : tableHeight(block.laid) + 2
  return {
    kind: 'fixed',
    height: blocks.reduce((sum, block) => sum + heightOf(block), 0),
    withNext: false,
    names: blocks.flatMap((block) => (block.kind === 'fixed' ? (block.names ?? []) : [])),
    marks: ({ x, y }, pages) => {
      let top = y
      return blocks.flatMap((block) => {
        const at = { x, y: top }
        top -= heightOf(block)
        return block.kind === 'fixed' ? block.marks(at, pages) : tableMarks(block.laid, at)
      })
    },
  }
}

/** Two columns, tops level; the second begins so far to the right. */
export const beside = (left: FixedBlock, right: FixedBlock, from: number): FixedBlock => ({
  kind: 'fixed',
  height: Math.max(left.height, right.height),
  withNext: false,
  names: [...(left.names ?? []), ...(right.names ?? [])],
  marks: ({ x, y }, pages) => [...left.marks({ x, y }, pages), ...right.marks({ x: x + from, y }, pages)],
})

/** A block whose page words find by a name. */
export const named = (name: string, block: FixedBlock): FixedBlock => ({
  ...block,
  names: [...(block.names ?? []), name],
})

/** Blocks that stand on one page, where one holds them all. */
export const together = (blocks: readonly Block[], tall: number): readonly Block[] => {
  const one = stack(blocks)
  return one.height <= tall ? [one] : blocks
}

/** A drawing whose lower left corner is at 0,0, as a block. */
export const drawn = (marks: Drawing, height: number, indent = 0): FixedBlock => ({
  kind: 'fixed',
  height,
  withNext: false,
  marks: ({ x, y }) => [group(affineTranslate(x + indent, y - height), marks)],
})
