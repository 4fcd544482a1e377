import type { Units } from '../../design/design.ts'
import { type Finding, note, warn } from '../check/check.ts'
import { measured, same, wordList } from '../check/offer.ts'
import type { Curve } from '../curve/curve.ts'
import { screwGrip, screwLength, screwPoint, screwWithin } from '../frame/screw-lengths.ts'
import type { Stud } from '../frame/stud.ts'
import type { Timber } from '../frame/timber.ts'
import { timberRun } from '../frame/timber-run.ts'
import type { ScrewRow } from './screw-rows.ts'
import type { SkinLayer } from './skin.ts'
import type { LayerPlan } from './skin-plan.ts'

/** Skin past its first or last timber, longer than this, is named: someone will put a screw there. mm */
const bareEnd = 20

/** What one layer is screwed with. Lengths mm; null where no usual screw will do. */
export interface LayerScrews {
  readonly count: number
  /** of all but those that would come through */
  readonly length: number | null
  /** one for each row of the plan */
  readonly rows: readonly (number | null)[]
}

/** What the skin is screwed to: the studs under it, and timbers that a screw may meet besides. */
interface Wood {
  readonly curve: Curve
  readonly studs: readonly Stud[]
  readonly timbers: readonly Timber[]
}

export const solveScrews = (
  skin: readonly SkinLayer[],
  plans: readonly LayerPlan[],
  wood: Wood,
  units: Units,
): { readonly screws: readonly LayerScrews[]; readonly findings: readonly Finding[] } => {
  const findings: Finding[] = []
  const screws = plans.map((plan, i): LayerScrews => {
    const layer = skin[i]!
    const through = layer.below + layer.sheet.thickness
    const between = plan.rows.some((row) => row.on === 'between')
    const usual = screwLength(through, units)
    const deep = (row: ScrewRow): number => woodAt(wood, row, through)
    const rows = plan.rows.map((row) =>
      usual !== null && usual <= deep(row) - screwPoint + same ? usual : screwWithin(deep(row), units),
    )
    if (between) findings.push(betweenFinding(layer, through, screwWithin(through, units), units))
    else if (usual === null && plan.rows.length > 0) findings.push(longFinding(plan, through, units))
    if (usual !== null) findings.push(...thinFindings(plan, rows, usual, deep, units))
    return {
      count: plan.rows.reduce((sum, row) => sum + row.across.length, 0),
      length: plan.rows.length === 0 ? null : between ? screwWithin(through, units) : usual,
      rows,
    }
  })
  return { screws, findings: [...findings, ...bareFindings(skin, screws, wood, units)] }
}

/** Skin and timber under a screw's head. */
const woodAt = ({ curve, studs }: Wood, row: ScrewRow, through: number): number =>
  through + (row.stud === null ? 0 : (timberRun(curve, row.place, studs[row.stud]!)?.to ?? 0))

const betweenFinding = (
  { layer, sheet }: SkinLayer,
  wood: number,
  length: number | null,
  units: Units,
): Finding => {
  const show = (mm: number): string => measured(mm, units)
  const lies = `layer ${layer}: only the skin, ${show(wood)} thick, lies between studs`
  return length === null || length <= sheet.thickness
    ? warn(
        'screw-through',
        `${lies}, and no usual screw holds there without coming through; say \`fasten: studs\``,
      )
    : note('screw-through', `${lies}; screws longer than ${show(length)} come through`)
}

const longFinding = ({ layer }: LayerPlan, through: number, units: Units): Finding =>
  note(
    'screw-long',
    `layer ${layer}: no usual screw goes through ${measured(through, units)} of skin and ${measured(screwGrip[units], units)} into a stud`,
  )

/** Studs too thin for the usual screw: ripped or flat ones. */
const thinFindings = (
  { layer, rows }: LayerPlan,
  own: readonly (number | null)[],
  usual: number,
  deep: (row: ScrewRow) => number,
  units: Units,
): readonly Finding[] => {
  const show = (mm: number): string => measured(mm, units)
  // the thinner place of a stud with two rows
  const places = new Map<number, { readonly wood: number; readonly length: number | null }>()
  rows.forEach((row, i) => {
    if (row.stud === null || own[i] === usual) return
    const here = { wood: deep(row), length: own[i]! }
    const other = places.get(row.stud)
    if (!other || here.wood < other.wood) places.set(row.stud, here)
  })
  if (places.size === 0) return []
  // the lower number first, those of like figures together
  const alike = new Map<string, number[]>()
  for (const [stud, here] of [...places].sort(([a], [b]) => a - b)) {
    const words =
      `${show(here.wood)} of wood with the skin: ` +
      (here.length === null ? 'no usual screw is short enough' : `${show(here.length)} at most`)
    alike.set(words, [...(alike.get(words) ?? []), stud + 1])
  }
  const words = [...alike].map(([figures, numbers]) => `${studWords(numbers)}, ${figures}`)
  return [
    note(
      'screw-through',
      `layer ${layer}: a screw of ${show(usual)} comes through at ${words.join('; at ')}`,
    ),
  ]
}

/** `stud 1`, `studs 1 and 2`, `studs 1, 3 to 7 and 9`: numbers in their order. */
const studWords = (numbers: readonly number[]): string => {
  const runs: (readonly [number, number])[] = []
  for (const number of numbers) {
    const last = runs.at(-1)
    if (last && last[1] === number - 1) runs[runs.length - 1] = [last[0], number]
    else runs.push([number, number])
  }
  const words = runs.flatMap(([from, to]) =>
    to - from < 2 ? (from === to ? [`${from}`] : [`${from}`, `${to}`]) : [`${from} to ${to}`],
  )
  return `${numbers.length === 1 ? 'stud' : 'studs'} ${wordList(words)}`
}

/** Ends of the skin that reach past the first and the last timber. */
const bareFindings = (
  skin: readonly SkinLayer[],
  screws: readonly LayerScrews[],
  { curve, studs, timbers }: Wood,
  units: Units,
): readonly Finding[] => {
  const [top, first, last] = [skin.at(-1), studs[0], studs.at(-1)]
  const length = screws.at(-1)?.length ?? null
  if (!top || !first || !last || length === null) return []
  const show = (mm: number): string => measured(mm, units)
  const wood = top.below + top.sheet.thickness
  const ends = [
    { from: curve.lengthTo(top.start), to: first.at - first.width / 2, words: 'from the toe up' },
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
