import { type Mass, massOf, massTimes, pipeMass, sheetDensities, timberDensity } from '../design/densities.ts'
import type { Design } from '../design/design.ts'
import { pathCentroid } from '../geometry/centroid.ts'
import type { Path } from '../geometry/path.ts'
import type { Ramp, SolvedDesign } from '../ramp/ramp.ts'
import type { Parts } from './parts.ts'
import { designScrews, type RampScrews } from './screws.ts'
import { isSide, type SheetPart } from './sheet-part.ts'

/** kg */
export interface PartWeight extends Mass {
  /** its name on layout and list; pipe, screws and wheels have none */
  readonly mark: string | null
  readonly ramp: string
  readonly words: string
}

export interface RampWeight extends Mass {
  readonly ramp: string
  /** who lift it, each no more than one can in good conditions */
  readonly people: number
  /** sides and timbers alone, before the skin is on */
  readonly frame: Mass & { readonly people: number }
}

export interface Weight extends Mass {
  readonly ramps: readonly RampWeight[]
  readonly parts: readonly PartWeight[]
}

/** What one person lifts in good conditions: 51 lb (the load constant of the NIOSH lifting equation, from memory). kg */
const liftedByOne = 23

/** A wood screw of 4 to 5 mm, kg for each mm of its length; from memory. */
const screwMass: Mass = { least: 6e-5, usual: 8e-5, most: 11e-5 }

/** One wheel with its plate, kg for each mm of its diameter; from memory. */
const wheelMass: Mass = { least: 3e-3, usual: 6e-3, most: 1e-2 }

const sum = (masses: readonly Mass[]): Mass => ({
  least: masses.reduce((all, { least }) => all + least, 0),
  usual: masses.reduce((all, { usual }) => all + usual, 0),
  most: masses.reduce((all, { most }) => all + most, 0),
})

/** How many lift so many kg together: never one alone. */
export const liftersOf = (kilograms: number): number => Math.max(2, Math.ceil(kilograms / liftedByOne))

const lifted = (mass: Mass): Mass & { readonly people: number } => ({
  ...mass,
  people: liftersOf(mass.most),
})

/** Of one face, mm². */
export const areaOf = (outline: Path): number => Math.abs(pathCentroid(outline).area)

/** Each part by its true outline or length, and the whole. */
export const weigh = (
  design: Design,
  { ramps }: SolvedDesign,
  { sheets, timbers }: Parts,
  screws: readonly RampScrews[] = designScrews(design, ramps, timbers),
): Weight => {
  const ofSheet = ({ mark, ramp, words, sheet, outline }: SheetPart): PartWeight => ({
    mark,
    ramp,
    words,
    ...massOf(sheetDensities[sheet.material], areaOf(outline) * sheet.thickness),
  })
  const ofTimber = ({ mark, ramp, words, section, ripped, length }: Parts['timbers'][number]): PartWeight => {
    const [thick, deep] = ripped ?? section
    return { mark, ramp, words, ...massOf(timberDensity, thick * deep * length) }
  }
  const weights = sheets.map(ofSheet)
  const timber = timbers.map(ofTimber)
  const walls = weights.filter((_, i) => isSide(sheets[i]!) || sheets[i]!.part === 'plate')
  const framing = [...walls, ...timber]
  const parts = [...weights, ...timber, ...ramps.flatMap((ramp) => bought(ramp, screws))]
  return {
    ...sum(parts),
    ramps: ramps.map(({ name }) => {
      const own = (all: readonly PartWeight[]): Mass => sum(all.filter(({ ramp }) => ramp === name))
      return { ramp: name, ...lifted(own(parts)), frame: lifted(own(framing)) }
    }),
    parts,
  }
}

const bought = (ramp: Ramp, screws: readonly RampScrews[]): readonly PartWeight[] => {
  const { coping, wheels } = ramp.design
  const long = screws
    .filter((line) => line.ramp === ramp.name)
    .reduce((all, { length, count }) => all + (length ?? 0) * count, 0)
  const own = { mark: null, ramp: ramp.name }
  return [
    ...(coping ? [{ ...own, words: 'pipe', ...massTimes(pipeMass(coping), ramp.width / 1000) }] : []),
    ...(wheels ? [{ ...own, words: 'wheels', ...massTimes(wheelMass, wheels.diameter * wheels.count) }] : []),
    { ...own, words: 'screws', ...massTimes(screwMass, long) },
  ]
}
