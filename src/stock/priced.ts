import type { Priced } from '../design/design.ts'

/** Sizes this near are the same, mm. */
const near = 0.05

/** Whether a price is of what a line asks for; that of a sheet without a size is of every size. */
export const samePriced = (a: Priced, b: Priced): boolean => {
  switch (a.kind) {
    case 'sheet':
      return (
        b.kind === 'sheet' &&
        a.sheet.material === b.sheet.material &&
        Math.abs(a.sheet.thickness - b.sheet.thickness) < near &&
        (a.size === null || (b.size !== null && sameSize(a.size, b.size)))
      )
    case 'timber':
      return b.kind === 'timber' && Math.abs(a.length - b.length) < near && sameSize(a.section, b.section)
    case 'word':
      return b.kind === 'word' && a.word === b.word
    default:
      return a satisfies never
  }
}

const sameSize = (a: readonly [number, number], b: readonly [number, number]): boolean =>
  a.every((size, i) => Math.abs(size - b[i]!) < near)
