/** A row of screws, as a layer of skin and the deck board have them. */
interface Row {
  readonly across: readonly number[]
  /** mm; null where no usual screw is short enough */
  readonly length: number | null
}

export interface ScrewCount {
  readonly length: number | null
  readonly count: number
}

/** How many screws of each length, the longest first; what no usual length fits comes last. */
export const screwCounts = (rows: readonly Row[]): readonly ScrewCount[] => {
  const counts = new Map<number | null, number>()
  for (const { across, length } of rows) counts.set(length, (counts.get(length) ?? 0) + across.length)
  return [...counts]
    .map(([length, count]) => ({ length, count }))
    .filter(({ count }) => count > 0)
    .sort((a, b) => (b.length ?? 0) - (a.length ?? 0))
}

/** `42 screws of 1 5/8, 6 of 3/4` */
export const screwWords = (rows: readonly Row[], show: (mm: number) => string): string => {
  const counts = screwCounts(rows)
  if (counts.length === 0) return '0 screws'
  const of = ({ count, length }: ScrewCount, i: number): string =>
    `${count}${i === 0 ? ' screws' : ''} ${length === null ? 'that no usual length fits' : `of ${show(length)}`}`
  return counts.map(of).join(', ')
}
