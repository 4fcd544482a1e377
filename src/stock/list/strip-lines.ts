import type { Design } from '../../design/design.ts'
import { curvedOf } from '../../design/kind-traits.ts'
import { sideSheet } from '../../design/panel-sizes.ts'
import { showThickness } from '../../length/thickness.ts'
import { wordList } from '../../length/word-list.ts'
import { showLength } from '../../length.ts'
import { type StripJoints, stripJoints } from '../../ramp/beside/run-out-strips.ts'
import { rounded } from '../../ramp/check/offer.ts'
import type { SolvedQuarter, WholeDesign } from '../../ramp/ramp.ts'
import type { ListLine } from './line.ts'
import { type Rests, takenFrom } from './rests.ts'

/** What is packed under run-outs where no rest of the panels of the sides holds it. */
export const stripLines = (
  { units, stock }: Pick<Design, 'units' | 'stock'>,
  ramps: WholeDesign['ramps'],
  panels: readonly Rests[],
): readonly ListLine[] => {
  const packed = curvedOf(ramps).flatMap((ramp) => {
    const joints = stripJoints(ramp, units)
    const size = joints && ([ramp.width, rowsHigh(ramp, joints, stock.kerf)] as const)
    return size ? [{ ramp, joints, size, sheet: sideSheet(ramp.design) }] : []
  })
  return takenFrom(panels, packed, stock.kerf).lacking.map(
    ({ ramp, joints, sheet }): ListLine => ({
      part: 'fittings',
      what: `strips ${showThickness(sheet.thickness, units)} thick under the run-out${ramps.length > 1 ? ` of ${ramp.name}` : ''}, ${rounded(ramp.width, units)} long`,
      count: joints.strips.length,
      unit: 'piece',
      note: `${wordList(joints.strips.map((strip) => showLength(strip.high, units)))} high, plywood or a board: no rest of the panels holds them whole with their short pieces; shorter offcuts do end to end`,
      priced: null,
    }),
  )
}

/** All strips of a run-out above each other, with the short pieces of their gaps in rows as long as they are, mm. */
export const rowsHigh = (
  { width, design }: Pick<SolvedQuarter, 'width' | 'design'>,
  { strips, pieces }: StripJoints,
  kerf: number,
): number =>
  strips.reduce((sum, { high, before }, i) => {
    const gap = before - (i > 0 ? strips[i - 1]!.before + design.sides.thickness : 0)
    const inRow = Math.max(1, Math.floor((width + kerf) / (gap + kerf)))
    return sum + (high + kerf) * (1 + Math.ceil(pieces / inRow))
  }, 0)
