/** What a design is measured in, mm: an inch is 25.4 by the agreement of 1959. */
export const unitLength = { mm: 1, in: 25.4 } as const
