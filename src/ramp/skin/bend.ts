import type { QuarterDesign, Sheet, Units } from '../../design/design.ts'
import { inch } from '../../geometry/inch.ts'
import { showThickness } from '../../length/thickness.ts'
import { wordList } from '../../length/word-list.ts'
import { showLength } from '../../length.ts'
import { type Draft, note, type Trial, warn } from '../check/check.ts'
import { measured, offer, same, sheetsText } from '../check/offer.ts'
import { soldPlywood } from '../check/practice.ts'
import { firstThat, orWays, radiusKey } from '../check/remedy.ts'
import { offering, set, type Told, told } from '../check/told.ts'

const foot = 12 * inch

/** `easy`: the face grain lies along the axis of the curve, here the ramp's width; `hard`: it runs up the curve. mm */
interface BendRow {
  readonly thickness: number
  readonly easy: number
  readonly hard: number
}

/** Least radii to which dry plywood bends: APA, "Bending Plywood", form TT-003. Single panels may crack at them. */
const rows: readonly BendRow[] = [
  { thickness: inch / 4, easy: 2 * foot, hard: 5 * foot },
  { thickness: (5 * inch) / 16, easy: 2 * foot, hard: 6 * foot },
  { thickness: (3 * inch) / 8, easy: 3 * foot, hard: 8 * foot },
  { thickness: inch / 2, easy: 6 * foot, hard: 12 * foot },
  { thickness: (5 * inch) / 8, easy: 8 * foot, hard: 16 * foot },
  { thickness: (3 * inch) / 4, easy: 12 * foot, hard: 20 * foot },
]

/** What a thickness as measured may be over a row of the table and still count as that row, mm. */
const slack = 0.1

/** Ramp practice, no source: hardboard up to here takes every usual radius. mm */
const thinHardboard = 6.5

/** The row of the table that holds for a thickness: the next thicker one when it lies between; null past the table. */
export const bendRow = (thickness: number): BendRow | null =>
  rows.find((row) => row.thickness >= thickness - slack) ?? null

interface Bent {
  readonly layer: number
  readonly sheet: Sheet
  readonly row: BendRow | null
  /** of its outer face, the tighter one */
  readonly radius: number
}

const bentLayers = (skin: readonly Sheet[], frameRadius: number): readonly Bent[] => {
  let above = 0
  return skin.map((sheet, i) => {
    above += sheet.thickness
    return { layer: i + 1, sheet, row: bendRow(sheet.thickness), radius: frameRadius - above }
  })
}

const isPlywood = ({ sheet }: Bent): boolean => sheet.material === 'plywood'

const cracks = (bent: Bent): boolean =>
  isPlywood(bent) && (bent.row === null || bent.radius < bent.row.easy - same)

/** Layers of one thickness together. */
const alike = (layers: readonly Bent[]): readonly (readonly Bent[])[] =>
  [...new Set(layers.map(({ sheet }) => sheet.thickness))].map((thickness) =>
    layers.filter(({ sheet }) => sheet.thickness === thickness),
  )

/** `layers 1 and 2 (9 mm plywood)` */
const named = (those: readonly Bent[], units: Units): string =>
  `layer${those.length > 1 ? 's' : ''} ${wordList(those.map(({ layer }) => `${layer}`))} (${showThickness(those[0]!.sheet.thickness, units, { unit: true })} plywood)`

/** Whether each layer bends to the radius of its own curve, in words: at most one warning, with what works. */
export const bendFindings = (design: QuarterDesign, frameRadius: number, units: Units): readonly Draft[] => {
  const { skin } = design
  const show = (mm: number): string => measured(mm, units)
  const { atLeast, atMost } = offer(units)
  const layers = bentLayers(skin, frameRadius)
  const findings: Draft[] = []
  const broken = layers.filter(cracks)
  if (broken.length > 0) {
    const reasons = alike(broken).map((those) => {
      const { row } = those[0]!
      const radius = Math.min(...those.map((bent) => bent.radius))
      return row === null
        ? `${named(those, units)} ${those.length > 1 ? 'are' : 'is'} thicker than any in the bending table (${show(rows.at(-1)!.thickness)})`
        : `${named(those, units)} may crack at a radius of ${atMost(radius)}: ` +
            `the least is ${atLeast(row.easy)} with the face grain along the ramp's width, ${atLeast(row.hard)} the other way`
    })
    const remedy = (trial: Trial): Told =>
      orWays(
        [...thinnerWay(trial, design, frameRadius, units), ...radiusWay(trial, design, layers, units)],
        `${thinnerBends(design, frameRadius, units) ? 'thinner plywood bends so far, but something else stops with it: see to that first, or' : 'no plywood bends so far;'} take ${show(6)} hardboard`,
      )
    findings.push(warn('skin-bend', (trial: Trial) => told`${reasons.join('; ')}; ${remedy(trial)}`))
  }
  const turned = layers.filter((bent) => isPlywood(bent) && !cracks(bent) && bent.radius < bent.row!.hard)
  if (turned.length > 0)
    findings.push(
      note(
        'skin-bend',
        `lay the face grain of ${alike(turned)
          .map((those) => {
            const { easy, hard } = those[0]!.row!
            return `${named(those, units)} along the ramp's width: so ${those.length > 1 ? 'they bend' : 'it bends'} to a radius of ${atLeast(easy)}, the other way only to ${atLeast(hard)}`
          })
          .join('; of ')}`,
      ),
    )
  for (const { layer, sheet } of layers)
    if (sheet.material === 'hardboard' && sheet.thickness > thinHardboard)
      findings.push(
        note(
          'skin-bend',
          `layer ${layer} (${showThickness(sheet.thickness, units, { unit: true })} hardboard) is thicker than the ${show(6)} that takes every usual curve; bend a piece first`,
        ),
      )
  return findings
}

interface ThinnerSkin {
  readonly thickness: number
  /** sheets of it in place of one */
  readonly times: (sheet: Sheet) => number
  readonly replaced: readonly Sheet[]
}

/** The skin with sheets of each thickness that is sold, in layers enough for every one that is broken, the thickest first. */
const thinnerSkins = (
  skin: readonly Sheet[],
  broken: readonly boolean[],
  units: Units,
): readonly ThinnerSkin[] => {
  return [...soldPlywood[units]].reverse().map((thickness) => {
    const times = (sheet: Sheet): number => Math.ceil((sheet.thickness - slack) / thickness)
    const replaced = skin.flatMap((sheet, i): readonly Sheet[] =>
      broken[i]
        ? Array.from({ length: times(sheet) }, () => ({ thickness, material: 'plywood' as const }))
        : [sheet],
    )
    return { thickness, times, replaced }
  })
}

const totalOf = (sheets: readonly Sheet[]): number =>
  sheets.reduce((sum, { thickness }) => sum + thickness, 0)

/** Whether a row of the table bends to this curve, whatever else it does to the ramp. */
const thinnerBends = ({ skin, transition }: QuarterDesign, frameRadius: number, units: Units): boolean => {
  const broken = bentLayers(skin, frameRadius).map(cracks)
  return thinnerSkins(skin, broken, units).some(({ replaced }) => {
    const under = transition.circle.layer === 'frame' ? 0 : totalOf(replaced) - totalOf(skin)
    return !bentLayers(replaced, frameRadius + under).some(cracks)
  })
}

/** The thickest plywood that bends when it is taken, in layers enough, for every layer that does not. */
const thinnerWay = (
  trial: Trial,
  design: QuarterDesign,
  frameRadius: number,
  units: Units,
): readonly Told[] => {
  const { skin } = design
  const broken = bentLayers(skin, frameRadius).map(cracks)
  for (const { thickness, times, replaced } of thinnerSkins(skin, broken, units)) {
    if (!trial({ ...design, skin: replaced })) continue
    const places = skin.flatMap((sheet, i) =>
      broken[i] ? [`${times(sheet)} ${times(sheet) > 1 ? 'sheets' : 'sheet'} for layer ${i + 1}`] : [],
    )
    return [
      offering(
        `take ${showLength(thickness, units, { unit: true })} plywood instead, ${wordList(places)}${grownBy(skin, replaced, units)}`,
        set('skin', sheetsText(replaced, units)),
      ),
    ]
  }
  return []
}

/** What the other sheets do to the thickness of the whole skin, where a rule can tell. */
const grownBy = (skin: readonly Sheet[], replaced: readonly Sheet[], units: Units): string => {
  const by = totalOf(replaced) - totalOf(skin)
  return Math.abs(by) < slack
    ? ''
    : ` (the skin is then ${measured(Math.abs(by), units)} ${by > 0 ? 'thicker' : 'thinner'})`
}

/** The least radius at which the skin bends as it is; none for a sheet past the table. */
const radiusWay = (
  trial: Trial,
  design: QuarterDesign,
  layers: readonly Bent[],
  units: Units,
): readonly Told[] => {
  const ply = layers.filter(isPlywood)
  if (ply.some(({ row }) => row === null)) return []
  const { layer, radius } = design.transition.circle
  const least = radius + Math.max(...ply.map(({ row, radius }) => row!.easy - radius))
  const larger = firstThat(trial, design, radiusKey(design), least, 1, units)
  return larger ? [told`a ${layer} radius of ${larger} or more`] : []
}
