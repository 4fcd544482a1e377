import type { Units } from '../design/design.ts'
import { kindTraits } from '../design/kind-traits.ts'
import type { SolvedRamp } from '../ramp/ramp.ts'
import type { Layer } from '../ramp/skin/layer.ts'
import { endMark, gapMarks, markFigure, rowMarks, type StoryStrip, type StripRow } from './story-strip.ts'

/** Where the screws of a row lie across the ramp: two layers to a strip, one on each of its edges. Zero is the left side. */
export const acrossStrips = (ramp: SolvedRamp, units: Units): readonly StoryStrip[] => {
  const layers = ramp.skin.filter(({ rows }) => rows.length > 0)
  return Array.from({ length: Math.ceil(layers.length / 2) }, (_, i): StoryStrip => {
    const two = layers.slice(2 * i, 2 * i + 2)
    const [first, second] = two.map((layer) => acrossRow(layer, ramp.width, units))
    return {
      name: `${ramp.name}/strip-across-${i + 1}`,
      kind: 'across',
      ramps: ramp.name,
      what: acrossName(two.map(({ layer }) => `layer ${layer}`)),
      aside: null,
      straight: true,
      length: ramp.width,
      zero: `left side's outer face; ${leftOf(ramp)}`,
      rows: second ? [first!, second] : [first!],
      rings: 'a screw',
      onTicks: null,
      notes: [],
    }
  })
}

/** A strip by its rows. */
export const acrossName = (rows: readonly string[]): string => `across, ${rows.join(' and ')}`

/** Which side is the left one. */
export const leftOf = ({ kind }: SolvedRamp): string => `left is as seen from ${kindTraits[kind].start}`

const acrossRow = (layer: Layer, width: number, units: Units): StripRow => {
  const { screws, every } = commonest(layer)
  return {
    edge: `LAYER ${layer.layer}`,
    words: every ? 'the screws of each row' : 'the screws of most rows',
    marks: [
      ...rowMarks([
        ...gapMarks(layer.widths, () => 'seam', units),
        ...screws.map((at) => ({
          at,
          sign: 'ring' as const,
          label: markFigure(at, units),
          figure: null,
        })),
      ]),
      endMark(width, units),
    ],
  }
}

/** Rows differ only where a screw below stands in the way. */
const commonest = ({ rows }: Layer): { readonly screws: readonly number[]; readonly every: boolean } => {
  const alike = (a: readonly number[], b: readonly number[]): boolean => a.join() === b.join()
  const counted = rows.map(({ across }) => ({
    across,
    count: rows.filter((row) => alike(row.across, across)).length,
  }))
  const best = counted.reduce((a, b) => (b.count > a.count ? b : a))
  return { screws: best.across, every: best.count === rows.length }
}
