export const units = ['mm', 'in'] as const

/** What a bare number of a design file or of the command line is read in. */
export type Units = (typeof units)[number]
