/** What is found first by whole millimetres to either side of a place, no farther away than `most`; null for nothing. */
export const aside = <T>(at: number, most: number, found: (at: number) => T | null): T | null => {
  for (let by = 1; by <= most; by++) {
    const result = found(at + by) ?? found(at - by)
    if (result !== null) return result
  }
  return null
}
