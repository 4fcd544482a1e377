import type { Design } from '../../design/design.ts'
import { curvedOf, straightOf } from '../../design/kind-traits.ts'
import { ownUnits } from '../../length/own-units.ts'
import { wordList } from '../../length/word-list.ts'
import { showLength } from '../../length.ts'
import { runOutBolt, runOutBolts } from '../../ramp/beside/run-out-bolts.ts'
import { pilotDrill } from '../../ramp/frame/screw-lengths.ts'
import type { WholeDesign } from '../../ramp/ramp.ts'
import { notchDrill } from '../../ramp/side/side.ts'
import { grips } from '../handle.ts'
import type { JointPlate } from '../joint-plate.ts'
import type { Moving } from '../moving.ts'
import { steelUses } from '../steel-uses.ts'
import type { ListLine } from './line.ts'
import { solvedBolts } from './run-out-lines.ts'

/** Holes for the bolts of plates; common practice, no source. */
const plateDrill = '9 mm (3/8 in)'

/** Most have them; to be ticked all the same. */
export const ownedLines = (
  { units, stock }: Pick<Design, 'units' | 'stock'>,
  { ramps }: WholeDesign,
  {
    moving,
    joints,
    people,
  }: { readonly moving: readonly Moving[]; readonly joints: readonly JointPlate[]; readonly people: number },
): readonly ListLine[] => {
  const gripped = (grip: Moving['grip']): boolean =>
    moving.some((one) => one.handle !== null && one.grip === grip)
  const joined = joints.length > 0
  const notched = ramps.some(({ coping }) => coping?.seat === 'square')
  const curved = curvedOf(ramps).length > 0
  const piped = ramps.some(({ pipe }) => pipe !== null)
  const steel = steelUses(ramps)
  const held = solvedBolts(ramps, stock, units)
  // a run-out of steel that no bolts hold is screwed
  const screwed = steelUses(curvedOf(ramps).filter((ramp) => runOutBolts(ramp, stock, units) === null))
  const drilled = [
    ...(piped ? ['pipe'] : []),
    ...steel.filter((use) => use !== 'run-out' || screwed.includes(use)),
  ]
  const bolted = [
    ...(gripped('handle') ? ['handles'] : []),
    ...(joined ? ['plates'] : []),
    ...(held.length > 0 ? ['run-out'] : []),
  ]
  const owned = (
    part: 'tools' | 'protection',
    what: string,
    note = '',
    count = 1,
    unit = 'piece',
  ): ListLine => ({
    part,
    what,
    count,
    unit,
    note,
    priced: null,
  })
  const woodBits = [
    ownUnits(pilotDrill, units),
    ...(gripped('handle') ? [ownUnits(grips.boltHole, units)] : []),
    ...(notched ? [showLength(notchDrill[units], units, { unit: true })] : []),
    ...(joined ? [ownUnits(plateDrill, units)] : []),
    ...(gripped('rope') || straightOf(ramps).length > 0 ? [ownUnits(grips.ropeHole, units)] : []),
  ]
  return [
    owned('tools', 'steel rule, tape, try square, pencil, knife', 'one of each', 1, 'set'),
    owned('tools', 'straightedge as long as a panel', 'guide of the circular saw'),
    ...(curved ? [owned('tools', 'thin straight batten', 'bent along the curve')] : []),
    owned('tools', 'circular saw', 'long straight cuts'),
    owned('tools', 'jigsaw', piped ? 'curve and notch' : curved ? 'curve' : 'short cuts'),
    owned('tools', `drill, wood bits of ${[...new Set(woodBits)].join(', ')}, countersink, screwdriver bits`),
    ...(drilled.length > 0
      ? [
          owned(
            'tools',
            `metal bit${piped ? 's' : ''} ${ownUnits(piped ? '5 and 13 mm (3/16 and 1/2 in)' : '5 mm (3/16 in)', units)}, centre punch`,
            `holes of ${wordList(drilled.map((one) => `the ${one}`))}`,
          ),
        ]
      : []),
    ...(held.length > 0
      ? [
          owned(
            'tools',
            steel.includes('run-out')
              ? `metal bit ${ownUnits(runOutBolt.hole, units)}, centre punch`
              : `wood bit ${ownUnits(runOutBolt.hole, units)}`,
            'bolts of the run-out',
          ),
        ]
      : []),
    ...(piped
      ? [
          owned('tools', 'hacksaw, round file', 'ends of the pipe'),
          owned(
            'tools',
            `wood bit ${ownUnits(pilotDrill, units)}, ${ownUnits('150 mm (6 in)', units)} long; long driver`,
            'of the pipe: no chuck passes its hole',
          ),
        ]
      : []),
    ...(steel.length > 0
      ? [owned('tools', 'metal blade for the jigsaw', `${wordList(steel)} sheet; or let the shop shear it`)]
      : []),
    ...(curved ? [owned('tools', 'chalk line', 'snap lines, where the map has them')] : []),
    ...(bolted.length > 0 ? [owned('tools', 'spanner', `nuts of the ${bolted.join(' and the ')}`)] : []),
    owned('tools', 'clamps', 'hold the guide and the work', 4),
    owned('tools', 'hand saw, hammer, plane, file, sanding block, brush, lamp', 'one of each', 1, 'set'),
    owned('protection', 'eye protection', 'for each who saws or helps', 2),
    owned('protection', 'ear protection', 'for each who saws or helps', 2),
    owned('protection', 'dust mask', 'for each who saws or helps', 2),
    owned('protection', 'gloves', 'for each who lifts; not at a turning tool', people, 'pair'),
  ]
}
