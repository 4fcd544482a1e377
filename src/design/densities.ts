import { inch } from '../geometry/inch.ts'
import { pound } from '../length/mass.ts'
import type { Coping, Material } from './design.ts'

/** What a thing may weigh: a usual value, and what it is found between. */
export interface Mass {
  readonly least: number
  readonly usual: number
  readonly most: number
}

export const massTimes = ({ least, usual, most }: Mass, by: number): Mass => ({
  least: least * by,
  usual: usual * by,
  most: most * by,
})

/** What so much of a thing weighs: kg/m³ and mm³ to kg. */
export const massOf = (density: Mass, volume: number): Mass => massTimes(density, volume / 1e9)

/** kg/m³ in a pound per cubic foot */
const perFoot = pound / (0.012 * inch) ** 3

const between = (least: number, most: number, usual = (least + most) / 2): Mass => ({ least, usual, most })

/**
 * Of sheets, kg/m³. Softwood plywood: 3.0 lb/ft² an inch of thickness, ±15 %; hardboard: 50 to 65 lb/ft³ (published weights).
 * Steel: from memory, EN 1991-1-1 has 7850. Another sheet: not known; from light plywood to sheets of paper and resin, from
 * memory.
 */
export const sheetDensities: Readonly<Record<Material, Mass>> = {
  plywood: between(36 * perFoot * 0.85, 36 * perFoot * 1.15),
  hardboard: between(50 * perFoot, 65 * perFoot),
  steel: between(7800, 7900),
  other: between(450, 1450),
}

/**
 * Of timber, kg/m³: its published weights are reckoned at 35 lb/ft³. The range is that of a dry light spruce and a pine that is
 * half dry, by the formula of the AWC NDS Supplement with specific gravities from memory (0.36 at 12 %, 0.55 at 19 %).
 */
export const timberDensity: Mass = between(24 * perFoot, 37.5 * perFoot, 35 * perFoot)

/** Walls of steel pipe by its outside, mm: schedule 40 of ASME B36.10M; EN 10255 medium, from memory. Plastic drain pipe has those of schedule 40. */
const walls: readonly (readonly [outside: number, wall: number])[] = [
  [1.66 * inch, 0.14 * inch],
  [1.9 * inch, 0.145 * inch],
  [2.375 * inch, 0.154 * inch],
  [2.875 * inch, 0.203 * inch],
  [76.1, 3.6],
]

/** How far an outside may be off a row of the table and still be that pipe, mm. */
const slack = 1

/** Of steel, and of ABS and PVC, kg/m³; from memory. */
const pipeDensities: Readonly<Record<Coping['material'], Mass>> = {
  steel: sheetDensities.steel,
  plastic: between(1040, 1420),
}

/** Of a pipe, kg a metre. One that is in no table may be thin tube or thick pipe: a thirtieth to a twelfth of its outside. */
export const pipeMass = ({ outside, material }: Pick<Coping, 'outside' | 'material'>): Mass => {
  const wall = walls.find(([size]) => Math.abs(size - outside) <= slack)?.[1]
  const [thin, thick] = wall === undefined ? [outside / 30, outside / 12] : [wall, wall]
  const area = (t: number): number => (Math.PI * (outside - t) * t) / 1e6
  const { least, usual, most } = pipeDensities[material]
  return { least: area(thin) * least, usual: area((thin + thick) / 2) * usual, most: area(thick) * most }
}
