import { ownUnits } from '../../length/own-units.ts'
import { showLength, type Units } from '../../length.ts'
import { rounded } from '../../ramp/check/offer.ts'
import type { JointPlate } from '../joint-plate.ts'
import type { ListLine } from './line.ts'

/** Bolts of the plates over joints of a flat and a quarter, a line for each length. */
export const jointLines = (joints: readonly JointPlate[], units: Units): readonly ListLine[] =>
  [...new Set(joints.map(({ bolt }) => bolt))].map((bolt) => {
    const own = joints.filter((one) => one.bolt === bolt)
    return {
      part: 'fittings',
      priced: { kind: 'word', word: 'bolts' },
      what: `bolts ${ownUnits('M8 (5/16 in)', units)}, ${rounded(bolt, units)} long, with washers and nuts`,
      count: own.reduce((sum, { holes }) => sum + 2 * (holes.quarter.length + holes.flat.length), 0),
      unit: 'piece',
      note: platesWords(own, own.length === joints.length, units),
    }
  })

/** Each size of plate with the joints that it lies over, where not all are alike. */
const platesWords = (own: readonly JointPlate[], all: boolean, units: Units): string => {
  const sizeOf = ({ size }: JointPlate): string => size.map((mm) => showLength(mm, units)).join(' × ')
  const sizes = [...new Set(own.map(sizeOf))]
  if (all && sizes.length === 1)
    return `two plates of offcut, ${sizes[0]}, over each joint of a flat and a quarter`
  return sizes
    .map((size) => {
      const over = own
        .filter((one) => sizeOf(one) === size)
        .map(({ flat, quarter }) => `${flat} and ${quarter}`)
      const joint = over.length > 1 ? 'each joint' : 'the joint'
      return `two plates of offcut, ${size}, over ${joint} of ${over.join(', ')}`
    })
    .join('; ')
}
