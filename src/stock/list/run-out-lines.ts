import type { Stock } from '../../design/design.ts'
import { curvedOf } from '../../design/kind-traits.ts'
import { ownUnits } from '../../length/own-units.ts'
import type { Units } from '../../length.ts'
import { type RunOutBolts, runOutBolt, runOutBolts } from '../../ramp/beside/run-out-bolts.ts'
import { rounded } from '../../ramp/check/offer.ts'
import type { WholeDesign } from '../../ramp/ramp.ts'
import type { ListLine } from './line.ts'

/** Bolts of every run-out that no screw holds. */
export const solvedBolts = (
  ramps: WholeDesign['ramps'],
  stock: Stock,
  units: Units,
): readonly RunOutBolts[] => curvedOf(ramps).flatMap((ramp) => runOutBolts(ramp, stock, units) ?? [])

/** A line for each length. */
export const runOutLines = (bolts: readonly RunOutBolts[], units: Units): readonly ListLine[] =>
  [...new Set(bolts.map(({ length }) => length))].map((length) => ({
    part: 'fittings',
    priced: { kind: 'word', word: 'bolts' },
    what: `bolts ${ownUnits(runOutBolt.size, units)} × ${rounded(length, units)}, countersunk, washers, nuts`,
    count: bolts.reduce((sum, own) => sum + (own.length === length ? own.across.length : 0), 0),
    unit: 'piece',
    note: 'hold the upper end of the run-out: the skin is too thin for screws',
  }))
