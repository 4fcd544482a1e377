import { ownUnits } from '../../length/own-units.ts'
import { showThickness } from '../../length/thickness.ts'
import { showLength, type Units } from '../../length.ts'
import { rounded } from '../../ramp/check/offer.ts'
import type { JointPlate } from '../joint-plate.ts'
import type { ListLine } from './line.ts'
import type { RestPiece } from './rests.ts'

/** Bolts of the plates over joints of a flat and a quarter, a line for each length. `lacking`: plates that are bought. */
export const jointLines = (
  joints: readonly JointPlate[],
  lacking: readonly RestPiece[],
  units: Units,
): readonly ListLine[] =>
  [...new Set(joints.map(({ bolt }) => bolt))].map((bolt) => {
    const own = joints.filter((one) => one.bolt === bolt)
    return {
      part: 'fittings',
      priced: { kind: 'word', word: 'bolts' },
      what: `bolts ${ownUnits('M8 (5/16 in)', units)}, ${rounded(bolt, units)} long, with washers and nuts`,
      count: own.reduce((sum, { holes }) => sum + 2 * (holes.quarter.length + holes.flat.length), 0),
      unit: 'piece',
      note: platesWords(own, joints, lacking, units),
    }
  })

/** Each size of plate with the joints that it lies over, where not all are alike. */
const platesWords = (
  own: readonly JointPlate[],
  all: readonly JointPlate[],
  lacking: readonly RestPiece[],
  units: Units,
): string => {
  const sizeOf = ({ size }: Pick<JointPlate, 'size'>): string => sizeWords(size, units)
  const plates = (size: string): string => {
    const bought = lacking.filter((plate) => sizeOf(plate) === size).length
    const needed = 2 * all.filter((one) => sizeOf(one) === size).length
    const wood = bought === 0 ? 'offcut' : bought < needed ? 'offcut and plywood' : 'plywood'
    return `two plates of ${wood}, ${size}`
  }
  const sizes = [...new Set(own.map(sizeOf))]
  if (own.length === all.length && sizes.length === 1)
    return `${plates(sizes[0]!)}, over each joint of a flat and a quarter`
  return sizes
    .map((size) => {
      const over = own
        .filter((one) => sizeOf(one) === size)
        .map(({ flat, quarter }) => `${flat} and ${quarter}`)
      const joint = over.length > 1 ? 'each joint' : 'the joint'
      return `${plates(size)}, over ${joint} of ${over.join(', ')}`
    })
    .join('; ')
}

/** Two for each joint, as pieces to saw. */
export const platePieces = (joints: readonly JointPlate[]): readonly RestPiece[] =>
  joints.flatMap(({ size, thickness }) => {
    const plate: RestPiece = { size, sheet: { thickness, material: 'plywood' } }
    return [plate, plate]
  })

/** Plates that no rest of the panels holds, a line for each size. `needed`: all there are to be. */
export const plateLines = (
  lacking: readonly RestPiece[],
  needed: readonly RestPiece[],
  units: Units,
): readonly ListLine[] => {
  const sizeOf = ({ size, sheet }: RestPiece): string =>
    `of plywood ${showThickness(sheet.thickness, units, { unit: true })} thick, ${sizeWords(size, units)}`
  return [...new Set(lacking.map(sizeOf))].map((size) => {
    const countOf = (plates: readonly RestPiece[]): number =>
      plates.filter((plate) => sizeOf(plate) === size).length
    const [count, all] = [countOf(lacking), countOf(needed)]
    const more = all > count ? `${all - count} more ${all - count > 1 ? 'are' : 'is'} sawn from a rest` : ''
    return {
      part: 'fittings',
      what: `${count > 1 ? 'plates' : 'plate'} ${size}`,
      count,
      unit: 'piece',
      note: `over the joints of a flat and a quarter: no rest of the panels holds ${count > 1 ? 'them' : 'it'}${more && `; ${more}`}`,
      priced: null,
    }
  })
}

const sizeWords = (size: JointPlate['size'], units: Units): string =>
  size.map((mm) => showLength(mm, units)).join(' × ')
