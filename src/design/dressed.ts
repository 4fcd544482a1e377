/** Dry timber by the name it is sold under in inches, in mm: American Softwood Lumber Standard PS 20; from memory but 1, 2; 4, 6 and 8. */
const thicknesses = new Map([
  [1, 19],
  [2, 38],
  [4, 89],
])

const widths = new Map([
  [2, 38],
  [3, 64],
  [4, 89],
  [6, 140],
  [8, 184],
  [10, 235],
  [12, 286],
])

/** `38 x 89` for `2x4` in a file of mm; null for what is no such name. */
export const dressedSize = (text: string): string | null => {
  const [, thin, wide] = /^\s*(\d{1,2})\s*[x×]\s*(\d{1,2})\s*$/i.exec(text) ?? []
  const [thickness, width] = [thicknesses.get(Number(thin)), widths.get(Number(wide))]
  return thickness === undefined || width === undefined ? null : `${thickness} x ${width}`
}
