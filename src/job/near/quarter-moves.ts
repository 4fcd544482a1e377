import { pathBounds } from '../../geometry/bounds.ts'
import { backKey, heightKey, type Key, radiusKey, toeKey } from '../../ramp/check/remedy.ts'
import { framedSide, sideOfQuarter } from '../../ramp/kinds/quarter.ts'
import { frameQuarter, type QuarterFrame } from '../../ramp/kinds/quarter-frame.ts'
import type { Quarter, SolvedQuarter } from '../../ramp/ramp.ts'
import { isSide, type SheetPart } from '../../stock/sheet-part.ts'
import { type Around, leastToeThat, lessMove, type Move, mostThat, toeMove } from './move.ts'
import { panelLimits, timberLimits } from './stock-limits.ts'

/** Figures of a quarter that a panel, a timber or a page may be saved by: of these parts panels. One that is kept in another follows that. */
export const quarterMoves = (
  ramp: SolvedQuarter,
  parts: readonly SheetPart[],
  around: Around,
): readonly Move[] => {
  const { width, height, back, toe, transition, storesInside } = ramp.design
  if (storesInside !== null) return []
  const { units } = around.design
  const near = (mm: number): readonly number[] => panelLimits(mm, around.sizes, around.design.stock)
  const shorter = (from: number, mm: number): readonly number[] =>
    near(mm).map((limit) => from - (mm - limit))
  const { circle } = transition
  const radius = radiusKey(ramp.design)
  return [
    lessMove('width', width, widths(ramp, parts, around), units),
    lessMove(
      back.from,
      back.value,
      [
        ...parts
          .filter(({ part }) => part === 'side' || part === 'deck-board')
          .flatMap((part) => shorter(back.value, partSize(part)[part.part === 'side' ? 0 : 1])),
        // a side in pieces has none as long as itself
        ...(ramp.splices.length > 0 ? shorter(back.value, ramp.length) : []),
        ...mostThat(back.value, units, fewerPages(ramp, backKey(ramp.design), around)),
      ],
      units,
    ),
    lessMove(
      `height.${height.layer}`,
      height.value,
      [
        ...(parts.some(isSide) ? shorter(height.value, ramp.transition.heights.frame) : []),
        ...shorterParts(ramp, parts, heightKey(ramp.design), around).flatMap((holds) =>
          mostThat(height.value, units, holds),
        ),
      ],
      units,
    ),
    lessMove(
      `transition.circle.${circle.layer}`,
      circle.radius,
      shorterParts(ramp, parts, radius, around).flatMap((holds) => mostThat(circle.radius, units, holds)),
      units,
    ),
    toeMove(
      toe,
      shorterParts(ramp, parts, toeKey, around).flatMap((holds) => leastToeThat(toe, units, holds)),
    ),
  ]
}

/** Widths at which a sheet across the ramp, or a stud, fits its stock once more. */
export const widths = (
  ramp: Pick<Quarter, 'width' | 'studLength'> & { readonly design: Pick<Quarter['design'], 'sides'> },
  parts: readonly SheetPart[],
  { design, sizes }: Around,
): readonly number[] => [
  ...parts
    .filter((part) => !isSide(part))
    .flatMap((part) =>
      panelLimits(partSize(part)[0], sizes, design.stock).map(
        (limit) => ramp.width - (partSize(part)[0] - limit),
      ),
    ),
  // a sheet in parts has none as wide as the ramp
  ...(parts.some(({ part }) => part === 'skin' || part === 'deck-board')
    ? panelLimits(ramp.width, sizes, design.stock)
    : []),
  ...timberLimits(ramp.studLength, design).map(
    (limit) => ramp.width - (ramp.design.sides.count - 1) * (ramp.studLength - limit),
  ),
]

type Holds = (mm: number) => boolean

/** Of a figure that the curve follows: what it must be for a layer of skin, the side or a page less. */
const shorterParts = (
  ramp: SolvedQuarter,
  parts: readonly SheetPart[],
  key: Key,
  around: Around,
): readonly Holds[] => {
  const { stock } = around.design
  const framed = framing(ramp, key, around)
  const near = (mm: number): readonly number[] => panelLimits(mm, around.sizes, stock)
  return [
    ...ramp.skin.flatMap((skin, layer) =>
      (around.mayGain(skin) ? near(skin.length) : []).map(
        (limit): Holds =>
          (mm) =>
            (framed(mm)?.skin[layer]?.length ?? Number.POSITIVE_INFINITY) <= limit,
      ),
    ),
    ...(parts.some(isSide) ? near(ramp.length) : []).map(
      (limit): Holds =>
        (mm) =>
          (framed(mm)?.length ?? Number.POSITIVE_INFINITY) <= limit,
    ),
    fewerPages(ramp, key, around),
  ]
}

/** Curve, skin and timbers of a quarter with another figure for a key; framed once for all that ask about the same one. */
const framing = (ramp: SolvedQuarter, key: Key, { design: { units, stock } }: Around) => {
  const known = new Map<number, QuarterFrame['frame']>()
  return (mm: number): QuarterFrame['frame'] => {
    const found = known.get(mm)
    if (found !== undefined) return found
    const { frame } = frameQuarter(key.typed(ramp.design, mm), units, stock, () => false, { shallow: true })!
    known.set(mm, frame)
    return frame
  }
}

/** Whether the sides take a page less; they are framed where they may. */
const fewerPages =
  (
    ramp: SolvedQuarter,
    key: Key,
    { design: { units, stock }, fewerPages: fewer, mayTakeFewer }: Around,
  ): Holds =>
  (mm) => {
    const changed = key.typed(ramp.design, mm)
    const side = sideOfQuarter(changed, units)
    if (side === null || !mayTakeFewer(ramp, side)) return false
    const framed = framedSide(changed, units, stock)
    return framed !== null && fewer(ramp, framed)
  }

/** Across the ramp, and up it; of a side its length and height. */
export const partSize = ({ outline }: SheetPart): readonly [number, number] => {
  const { x0, y0, x1, y1 } = pathBounds(outline)
  return [x1 - x0, y1 - y0]
}
