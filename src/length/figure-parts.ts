/** The part of a figure before its point or fraction, and the rest: columns are set on the seam. */
export const figureParts = (figure: string): readonly [string, string] => {
  const seam = /^-?\d+(?!\d*\/)/.exec(figure)?.[0] ?? ''
  return [seam, figure.slice(seam.length).trimStart()]
}
