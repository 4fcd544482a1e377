import type { Priced } from '../design/design.ts'

/** Sizes this near are the same, mm. */
const near = 0.05

/** Whether a price is of what a line asks for. */
export const samePriced = (a: Priced, b: Priced): boolean => {
  switch (a.kind) {
    case 'sheet':
      return (
        b.kind === 'sheet' &&
        a.sheet.material === b.sheet.material &&
        Math.abs(a.sheet.thickness - b.sheet.thickness) < near
      )
    case 'timber':
      return (
        b.kind === 'timber' &&
        Math.abs(a.length - b.length) < near &&
        a.section.every((size, i) => Math.abs(size - b.section[i]!) < near)
      )
    case 'word':
      return b.kind === 'word' && a.word === b.word
    default:
      return a satisfies never
  }
}
