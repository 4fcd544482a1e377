/** What is left of a value once all whole `by` are taken off: 0 or more and less than `by`, which is above 0. */
export const modulo = (value: number, by: number): number => value - Math.floor(value / by) * by
