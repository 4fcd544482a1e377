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

/** Names in inches that may as well be cm begin here. */
const leastCm = 4

/** What `2x4` may be in a file of mm: dry timber `38 x 89`, and `4x6` as well `40 x 60`, in cm; the thickness first. Null for what is no such name. */
export const dressedSize = (text: string): { readonly dry: string; readonly cm: string | null } | null => {
  const [, ...typed] = /^\s*(\d{1,2})\s*[x×]\s*(\d{1,2})\s*$/i.exec(text) ?? []
  const [thin, wide] = typed.map(Number).sort((a, b) => a - b) as [number, number]
  const [thickness, width] = [thicknesses.get(thin), widths.get(wide)]
  return thickness === undefined || width === undefined
    ? null
    : { dry: `${thickness} x ${width}`, cm: thin < leastCm ? null : `${10 * thin} x ${10 * wide}` }
}
