import type { Units } from '../../design/design.ts'
import { numberList } from '../../length/word-list.ts'
import { type Finding, note, warn } from '../check/check.ts'
import { measured, same } from '../check/offer.ts'
import { offering, set } from '../check/told.ts'
import type { Curve } from '../curve/curve.ts'
import { screwGrip, screwLength, screwPoint, screwWithin } from '../frame/screw-lengths.ts'
import type { Stud } from '../frame/stud.ts'
import type { Timber } from '../frame/timber.ts'
import { timberRun } from '../frame/timber-run.ts'
import type { FixedRow, Layer } from './layer.ts'
import type { ScrewRow } from './screw-rows.ts'
import type { LaidLayer } from './skin-plan.ts'

/** Skin past its first or last timber, longer than this, is named: someone will put a screw there. mm */
const bareEnd = 20

/** What the skin is screwed to: the studs under it, and timbers that a screw may meet besides. */
interface Wood {
  readonly curve: Curve
  readonly studs: readonly Stud[]
  readonly timbers: readonly Timber[]
}

export const solveScrews = (
  laid: readonly LaidLayer[],
  wood: Wood,
  units: Units,
): { readonly skin: readonly Layer[]; readonly findings: readonly Finding[] } => {
  const findings: Finding[] = []
  const skin = laid.map((own): Layer => {
    const through = own.below + own.sheet.thickness
    const between = own.rows.some((row) => row.on === 'between')
    const usual = screwLength(through, units)
    const deep = (row: ScrewRow): number => woodAt(wood, row, through)
    const rows = own.rows.map((row): FixedRow => {
      const fits = usual !== null && usual <= deep(row) - screwPoint + same
      return { ...row, length: fits ? usual : screwWithin(deep(row), units) }
    })
    const layer: Layer = {
      ...own,
      rows,
      screws: {
        count: rows.reduce((sum, row) => sum + row.across.length, 0),
        length: rows.length === 0 ? null : between ? screwWithin(through, units) : usual,
      },
    }
    if (between) findings.push(betweenFinding(layer, through, screwWithin(through, units), units))
    else if (usual === null && rows.length > 0) findings.push(longFinding(layer, through, units))
    if (usual !== null) findings.push(...thinFindings(layer, usual, deep, units))
    return layer
  })
  return { skin, findings: [...findings, ...bareFindings(skin, wood, units)] }
}

/** Skin and timber under a screw's head. */
const woodAt = ({ curve, studs }: Wood, row: ScrewRow, through: number): number =>
  through + (row.stud === null ? 0 : (timberRun(curve, row.place, studs[row.stud]!)?.to ?? 0))

const betweenFinding = (
  { layer, sheet }: Layer,
  wood: number,
  length: number | null,
  units: Units,
): Finding => {
  const show = (mm: number): string => measured(mm, units)
  const lies = `layer ${layer}: only the skin, ${show(wood)} thick, lies between studs`
  return length === null || length <= sheet.thickness
    ? warn(
        'screw-through',
        offering(
          `${lies}, and no usual screw holds there without coming through; say \`fasten: studs\``,
          set('fasten', 'studs'),
        ),
      )
    : note('screw-through', `${lies}; screws longer than ${show(length)} come through`)
}

const longFinding = ({ layer }: Layer, through: number, units: Units): Finding =>
  note(
    'screw-long',
    `layer ${layer}: no usual screw goes through ${measured(through, units)} of skin and ${measured(screwGrip[units], units)} into a stud`,
  )

/** Studs too thin for the usual screw: ripped or flat ones. */
const thinFindings = (
  { layer, rows }: Layer,
  usual: number,
  deep: (row: ScrewRow) => number,
  units: Units,
): readonly Finding[] => {
  const show = (mm: number): string => measured(mm, units)
  // the thinner place of a stud with two rows
  const places = new Map<number, { readonly wood: number; readonly length: number | null }>()
  for (const row of rows) {
    if (row.stud === null || row.length === usual) continue
    const here = { wood: deep(row), length: row.length }
    const other = places.get(row.stud)
    if (!other || here.wood < other.wood) places.set(row.stud, here)
  }
  if (places.size === 0) return []
  // the lower number first, those of like figures together
  const alike = new Map<string, number[]>()
  for (const [stud, here] of [...places].sort(([a], [b]) => a - b)) {
    const words =
      `${show(here.wood)} of wood with the skin: ` +
      (here.length === null ? 'no usual screw is short enough' : `${show(here.length)} at most`)
    alike.set(words, [...(alike.get(words) ?? []), stud + 1])
  }
  const words = [...alike].map(([figures, numbers]) => `${numberList('stud', numbers)}, ${figures}`)
  return [
    note(
      'screw-through',
      `layer ${layer}: a screw of ${show(usual)} comes through at ${words.join('; at ')}`,
    ),
  ]
}

/** Ends of the skin that reach past the first and the last timber. */
const bareFindings = (
  skin: readonly Layer[],
  { curve, studs, timbers }: Wood,
  units: Units,
): readonly Finding[] => {
  const [top, first, last] = [skin.at(-1), studs[0], studs.at(-1)]
  const length = top?.screws.length ?? null
  if (!top || !first || !last || length === null) return []
  const show = (mm: number): string => measured(mm, units)
  const wood = top.below + top.sheet.thickness
  const start = curve.lengthTo(top.start)
  const toe =
    start > same ? `from the top sheet's lower end up, ${show(start)} up the curve` : 'from the toe up'
  const ends = [
    { from: start, to: first.at - first.width / 2, words: toe },
    { from: last.at + last.width / 2, to: curve.lengthTo(top.end), words: 'below the upper end of the skin' },
  ]
  return ends.flatMap(({ from, to, words }): Finding[] => {
    const place = curve.placeAtLength((from + to) / 2)
    if (to - from <= bareEnd || length <= wood - screwPoint + same) return []
    if ([...studs, ...timbers].some((timber) => timberRun(curve, place, timber))) return []
    const shorter = screwWithin(wood, units)
    return [
      note(
        'screw-through',
        `no timber lies under the skin for ${show(to - from)} ${words}: a screw of ${show(length)} comes through there; ` +
          (shorter === null ? 'put none' : `${show(shorter)} at most`),
      ),
    ]
  })
}
