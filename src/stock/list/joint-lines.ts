import type { Sheet } from '../../design/design.ts'
import { sameSheet } from '../../design/panel-sizes.ts'
import { ownUnits } from '../../length/own-units.ts'
import { showThickness } from '../../length/thickness.ts'
import { showLength, type Units } from '../../length.ts'
import { rounded, same } from '../../ramp/check/offer.ts'
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

/** Panels of one sheet, the largest rectangle that each leaves. */
interface Rests {
  readonly sheet: Sheet
  readonly rests: readonly (readonly [number, number])[]
}

/** Plates that no rest of the panels holds, a line for each size; they are sawn side by side from the rests. */
export const plateLines = (
  joints: readonly JointPlate[],
  panels: readonly Rests[],
  kerf: number,
  units: Units,
): readonly ListLine[] => {
  const left = panels.map(({ sheet, rests }) => ({ sheet, rests: [...rests] }))
  const lacking = joints.flatMap((plate) =>
    [plate, plate].filter(({ size: [long, high], thickness }) => {
      for (const { sheet, rests } of left) {
        if (!sameSheet(sheet, { thickness, material: 'plywood' })) continue
        for (const [i, [a, b]] of rests.entries())
          for (const [along, across] of [
            [a, b],
            [b, a],
          ] as const)
            if (along >= long - same && across >= high - same) {
              rests[i] = [along, across - high - kerf]
              return false
            }
      }
      return true
    }),
  )
  const whatOf = ({ size, thickness }: JointPlate): string =>
    `plates of plywood ${showThickness(thickness, units, { unit: true })} thick, ${size.map((mm) => showLength(mm, units)).join(' × ')}`
  return [...new Set(lacking.map(whatOf))].map((what) => ({
    part: 'fittings',
    what,
    count: lacking.filter((plate) => whatOf(plate) === what).length,
    unit: 'piece',
    note: 'over the joints of a flat and a quarter: no rest of the panels holds them',
    priced: null,
  }))
}
