/** A count with its noun: `1 page`, `3 pages`. */
export const countWords = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`
