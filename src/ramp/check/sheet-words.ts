import type { Sheet, Units } from '../../design/design.ts'
import { showThickness } from '../../length/thickness.ts'
import { wordList } from '../../length/word-list.ts'

/** `18 plywood`, `23/32 plywood`: as it may be typed. */
export const sheetWords = ({ thickness, material }: Sheet, units: Units): string =>
  `${showThickness(thickness, units)} ${material}`

/** `9 mm plywood and 6 mm hardboard` */
export const sheetList = (sheets: readonly Sheet[], units: Units): string =>
  wordList(
    sheets.map(({ thickness, material }) => `${showThickness(thickness, units, { unit: true })} ${material}`),
  )
