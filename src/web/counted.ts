/** `1 page`, `7 pages` */
export const counted = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`
