import { inch } from '../geometry/inch.ts'

/** Thickness of dry boards by the name they are sold under, inches: American Softwood Lumber Standard PS 20; from memory but 1, 2. */
export const dressedThicknesses: ReadonlyMap<number, number> = new Map([
  [1, 0.75],
  [2, 1.5],
  [4, 3.5],
])

/** Width alike; PS 20, from memory but 4, 6 and 8. */
export const dressedWidths: ReadonlyMap<number, number> = new Map([
  [2, 1.5],
  [3, 2.5],
  [4, 3.5],
  [6, 5.5],
  [8, 7.25],
  [10, 9.25],
  [12, 11.25],
])

/** Names in inches that may as well be cm begin here. */
const leastCm = 4

/** What `2x4` may be in a file of mm: dry timber `38 x 89`, and `4x6` as well `40 x 60`, in cm; the thickness first. Null for what is no such name. */
export const dressedSize = (text: string): { readonly dry: string; readonly cm: string | null } | null => {
  const [, ...typed] = /^\s*(\d{1,2})\s*[x×]\s*(\d{1,2})\s*$/i.exec(text) ?? []
  const [thin, wide] = typed.map(Number).sort((a, b) => a - b) as [number, number]
  const [thickness, width] = [dressedThicknesses.get(thin), dressedWidths.get(wide)]
  return thickness === undefined || width === undefined
    ? null
    : {
        dry: [thickness, width].map((inches) => Math.round(inches * inch)).join(' x '),
        cm: thin < leastCm ? null : `${10 * thin} x ${10 * wide}`,
      }
}
