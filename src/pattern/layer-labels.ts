import type { LabelPlace } from '../drawing/place-labels.ts'
import { textWidth } from '../drawing/text-width.ts'
import { pathOf } from '../geometry/path.ts'
import type { Curve } from '../ramp/curve/curve.ts'
import type { SkinLayer } from '../ramp/skin/skin.ts'
import { labelPlace } from './label-place.ts'

/** The grey on the waste side of the cut line reaches so far into the lowest layer, mm; then what a label keeps off the faces. */
const greyReach = 4
const offFace = 0.5
const sizes = [2.1, 1.9] as const

/** A leader stays so far below the ends of the layers that it crosses, mm. */
const offEnds = 3

/** Between places that are tried along a layer, mm. */
const step = 3

const lowOf = (below: number): number => (below === 0 ? greyReach : offFace)
const freeOf = ({ below, sheet }: Pick<SkinLayer, 'below' | 'sheet'>): number =>
  sheet.thickness - lowOf(below) - offFace

/** Room between its faces for letters of a size. */
const holds = (layer: Pick<SkinLayer, 'below' | 'sheet'>, size: number): boolean =>
  freeOf(layer) >= 1.35 * size

/**
 * In the order in which they are labelled: those too thin for words first, as their leaders cross the others, the outermost before the
 * others, so that they stand beside the stack in its order.
 */
export const inLabelOrder = <T extends { readonly layer: SkinLayer }>(shown: readonly T[]): readonly T[] => {
  const thin = shown.filter(({ layer }) => !sizes.some((size) => holds(layer, size)))
  return [...thin].reverse().concat(shown.filter((one) => !thin.includes(one)))
}

/**
 * Where a layer's label may stand: along it, between its faces; else beside the stack, with a leader from its middle. The first free one
 * is taken, so none is made before it is asked for. `from` is the place where the layer begins on the piece.
 */
export const layerLabels = function* (
  { layer, below, end, sheet }: SkinLayer,
  curve: Curve,
  from: number,
  skin: { readonly thickness: number; readonly layers: readonly SkinLayer[] },
  said: string,
): Generator<LabelPlace> {
  const middle = curve.offset(below + sheet.thickness / 2)
  const [first, last] = [middle.lengthTo(from), middle.lengthTo(end)]
  const lowest = below + lowOf(below)
  const free = freeOf({ below, sheet })
  for (const size of sizes) {
    const wide = textWidth(said, size, 'regular')
    if (!holds({ below, sheet }, size)) continue
    const line = curve.offset(lowest + (free - size) / 2)
    for (const along of stations(first + wide / 2 + 1, last - wide / 2 - 2, 8 * layer)) {
      const place = middle.placeAtLength(along)
      yield labelPlace(line.point(place), size, said, { angle: curve.slope(place), align: 'middle' })
    }
  }
  const ends = skin.layers.filter((outer) => outer.layer > layer).map(({ end }) => middle.lengthTo(end))
  const top = Math.min(last - 1, ...ends.map((at) => at - offEnds))
  for (const tail of [4, 8, 12, 17]) {
    const beside = curve.offset(skin.thickness + tail)
    for (const along of stations(first + 1, top, 0)) {
      const place = middle.placeAtLength(along)
      const tip = beside.point(place)
      const leader = pathOf(middle.point(place), tip)
      yield {
        ...labelPlace({ x: tip.x - 0.8, y: tip.y - sizes[0] / 2 }, sizes[0], said, { align: 'right' }),
        leader,
      }
      yield { ...labelPlace({ x: tip.x, y: tip.y + 0.8 }, sizes[0], said, { align: 'middle' }), leader }
    }
  }
}

/** From `skip` below the upper end downward, then what was skipped. */
const stations = (low: number, high: number, skip: number): readonly number[] => {
  if (high < low) return []
  const all = Array.from({ length: Math.floor((high - low) / step) + 1 }, (_, i) => high - i * step)
  return [...all.filter((at) => at <= high - skip), ...all.filter((at) => at > high - skip)]
}
