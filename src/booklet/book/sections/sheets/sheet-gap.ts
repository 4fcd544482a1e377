import type { Layer } from '../../../../ramp/skin/layer.ts'

/** What is left between sheets, mm; 0 where there is none. */
export const gapOf = ({ pieces, widths }: Pick<Layer, 'pieces' | 'widths'>): number =>
  [pieces, widths]
    .flatMap((all) => all.slice(1).map((next, i) => next.from - all[i]!.from - all[i]!.length))
    .find((gap) => gap > 0.05) ?? 0
