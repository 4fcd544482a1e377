import type { LabelPlace } from '../drawing/place-labels.ts'
import { textWidth } from '../drawing/text-width.ts'
import { pathOf } from '../geometry/path.ts'
import type { Curve } from '../ramp/curve/curve.ts'
import type { SkinLayer } from '../ramp/skin/skin.ts'
import { words } from './label-text.ts'

/** The grey on the waste side of the cut line reaches so far into the lowest layer, mm; then what a label keeps off the faces. */
const greyReach = 4
const offFace = 0.5
const sizes = [2.1, 1.9] as const

/** Between places that are tried along a layer, mm. */
const step = 3

/**
 * Where a layer's label may stand: along it, between its faces; else beside the stack, with a leader from its middle. The first free one
 * is taken, so none is made before it is asked for. `from` is the place where the layer begins on the piece, `total` the thickness of
 * the whole skin.
 */
export const layerLabels = function* (
  { layer, below, end, sheet }: SkinLayer,
  curve: Curve,
  from: number,
  total: number,
  said: string,
): Generator<LabelPlace> {
  const middle = curve.offset(below + sheet.thickness / 2)
  const [first, last] = [middle.lengthTo(from), middle.lengthTo(end)]
  const low = below === 0 ? greyReach : offFace
  const lowest = below + low
  const free = sheet.thickness - low - offFace
  for (const size of sizes) {
    const wide = textWidth(said, size, 'regular')
    if (free < 1.35 * size) continue
    const line = curve.offset(lowest + (free - size) / 2)
    for (const along of stations(first + wide / 2 + 1, last - wide / 2 - 2, 8 * layer)) {
      const place = middle.placeAtLength(along)
      yield words(line.point(place), size, said, { angle: curve.slope(place), align: 'middle' })
    }
  }
  for (const tail of [4, 8, 12, 17]) {
    const beside = curve.offset(total + tail)
    for (const along of stations(first + 1, last - 1, 0)) {
      const place = middle.placeAtLength(along)
      const tip = beside.point(place)
      const leader = pathOf(middle.point(place), tip)
      yield {
        ...words({ x: tip.x - 0.8, y: tip.y - sizes[0] / 2 }, sizes[0], said, { align: 'right' }),
        leader,
      }
      yield { ...words({ x: tip.x, y: tip.y + 0.8 }, sizes[0], said, { align: 'middle' }), leader }
    }
  }
}

/** From `skip` below the upper end downward, then what was skipped. */
const stations = (low: number, high: number, skip: number): readonly number[] => {
  if (high < low) return []
  const all = Array.from({ length: Math.floor((high - low) / step) + 1 }, (_, i) => high - i * step)
  return [...all.filter((at) => at <= high - skip), ...all.filter((at) => at > high - skip)]
}
