import type { Flat } from '../../ramp/ramp.ts'
import { isSide, type SheetPart } from '../../stock/sheet-part.ts'
import { type Around, lessMove, type Move } from './move.ts'
import { partSize, widths } from './quarter-moves.ts'
import { panelLimits } from './stock-limits.ts'

/** Figures of a flat that a panel or a timber may be saved by. */
export const flatMoves = (ramp: Flat, parts: readonly SheetPart[], around: Around): readonly Move[] => {
  const { design, sizes } = around
  const { length, height } = ramp.design
  const shorter = (from: number, mm: number): readonly number[] =>
    panelLimits(mm, sizes, design.stock).map((limit) => from - (mm - limit))
  const sides = parts.filter(isSide)
  const skins = parts.filter(({ part }) => part === 'skin')
  return [
    lessMove('width', ramp.width, widths(ramp, parts, around), design.units),
    lessMove(
      'length',
      length,
      [
        ...sides.flatMap((part) => shorter(length, partSize(part)[0])),
        ...skins.flatMap((part) => shorter(length, partSize(part)[1])),
        // a side in pieces has none as long as itself
        ...(ramp.splices.length > 0 ? shorter(length, ramp.length) : []),
      ],
      design.units,
    ),
    lessMove(
      `height.${height.layer}`,
      height.value,
      sides.flatMap((part) => shorter(height.value, partSize(part)[1])),
      design.units,
    ),
  ]
}
