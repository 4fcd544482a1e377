/**
 * Student's t: how many standard errors hold a figure 95 times of 100, for so many points more than needed. Source: the usual
 * table of the 97.5 % quantile, from memory; a test integrates the density.
 */
const table: readonly number[] = [
  12.7062, 4.3027, 3.1824, 2.7764, 2.5706, 2.4469, 2.3646, 2.306, 2.2622, 2.2281, 2.201, 2.1788, 2.1604,
  2.1448, 2.1314, 2.1199, 2.1098, 2.1009, 2.093, 2.086, 2.0796, 2.0739, 2.0687, 2.0639, 2.0595, 2.0555,
  2.0518, 2.0484, 2.0452, 2.0423,
]

/** `spare` from 1 */
export const studentT = (spare: number): number =>
  // beyond the table by the first terms of its series in 1 / spare
  table[spare - 1] ?? 1.95996 + 2.37227 / spare + 2.8225 / (spare * spare)
