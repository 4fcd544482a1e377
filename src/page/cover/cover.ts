/**
 * whole: every page that the outline or a mark touches; line: only what is traced, and what places it, in rows along the
 * bottom edge; ribbon: the same with the rows turned so that they follow the curve.
 */
export const covers = ['whole', 'line', 'ribbon'] as const
export type Cover = (typeof covers)[number]
