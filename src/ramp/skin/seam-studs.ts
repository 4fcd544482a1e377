import { offerSteps } from '../check/offer.ts'
import type { Stand, Stud } from '../frame/stud.ts'
import { leastPiece, type Seam, seamReach, upSeams } from './seams.ts'
import type { SkinLayer } from './skin.ts'
import {
  type FlatToCurve,
  type Framing,
  flatToCurve,
  framingFor,
  type Ground,
  insideStud,
  practice,
} from './skin-framing.ts'

/**
 * The studs, and those that sheets need besides: where one is too thin for the two rows of screws at a seam a twin beside it,
 * the seam on their joint; else one of its own, as far up as the sheet reaches. Where no more fits, the seam is left as it
 * was.
 */
export const withSeamStuds = (ground: Ground, skin: readonly SkinLayer[], stand: Stand): readonly Stud[] => {
  if (skin.every(({ length, sheet }) => length <= ground.panelOf(sheet)[0])) return ground.studs
  let { studs } = ground
  let taken: ReadonlySet<Stud> = new Set()
  for (const layer of skin) {
    const framing = framingFor(ground, layer.sheet)
    const bent = flatToCurve(framing.curve, layer)
    const seamsOn = (all: readonly Stud[]): readonly Seam[] =>
      upSeams(
        { ...framing, studs: all },
        layer,
        bent,
        new Set(all.flatMap((stud, i) => (taken.has(stud) ? [i] : []))),
      )
    let seams = seamsOn(studs)
    for (let i = 0; i < seams.length; i++) {
      if (hasOwn(seams[i])) continue
      const added = seamStud({ ...framing, studs }, layer, bent, seams, i, taken, stand)
      if (!added) break
      const more = [...studs, added].sort((a, b) => a.at - b.at)
      const found = seamsOn(more)
      // one whose wood is too thin for the screws helps nobody
      if (!hasOwn(found[i])) break
      studs = more
      seams = found
    }
    taken = new Set(seams.flatMap((seam) => seamStudsOf(seam).map((i) => studs[i]!)))
  }
  return studs
}

const hasOwn = (seam: Seam | undefined): boolean => seam !== undefined && seam.stud !== null && !seam.shared

/** Indices of the studs that a seam lies on. */
export const seamStudsOf = ({ stud, second }: Seam): readonly number[] =>
  [stud, second].filter((i) => i !== null)

/** The stud under a seam, or the two, as people number them. */
export const seamWords = (seam: Seam): string => {
  const numbers = seamStudsOf(seam).map((i) => i + 1)
  return `${numbers.length > 1 ? 'studs' : 'stud'} ${numbers.join(' and ')}`
}

/** What one seam without a stud needs; null where nothing fits. */
const seamStud = (
  framing: Framing,
  layer: SkinLayer,
  { markOf }: FlatToCurve,
  seams: readonly Seam[],
  bare: number,
  taken: ReadonlySet<Stud>,
  stand: Stand,
): Stud | null => {
  const { studs, units } = framing
  const { gap, edge } = practice[units]
  const before = seams[bare - 1]?.at
  const least = (before ?? 0) + leastPiece
  const most = Math.min(
    seamReach(before === undefined ? 0 : before + gap / 2, framing),
    layer.length - leastPiece,
  )
  /** whether a seam may lie there along the frame's curve: within reach, and well off those of the layer below */
  const serves = (at: number): boolean => {
    const mark = markOf({ ...studs[0]!, at })
    return mark >= least && mark <= most && [...taken].every((other) => Math.abs(other.at - at) >= leastPiece)
  }
  const twins = studs.slice(1, -1).flatMap((stud) => {
    if (stud.lies !== 'edge' || taken.has(stud)) return []
    return [-1, 1].flatMap((side) => {
      const seam = stud.at + (side * stud.width) / 2
      const twin = serves(seam) ? stand(stud.at + side * stud.width, studs) : null
      return twin ? [{ twin, seam }] : []
    })
  })
  const thick = gap + 2 * (edge + insideStud)
  const thin = studs.slice(1, -1).every(({ lies, width }) => lies === 'flat' || width < thick)
  if (thin)
    return (
      twins.reduce<(typeof twins)[number] | null>((a, b) => (a && a.seam >= b.seam ? a : b), null)?.twin ??
      null
    )
  // down from the end of the sheet's reach, along the frame's curve
  const [first, last] = [studs[0]!, studs.at(-1)!]
  const step = offerSteps[units]
  for (let at = Math.floor(last.at / step) * step; at > first.at; at -= step) {
    const own = serves(at) ? stand(at, studs) : null
    if (own) return own
  }
  return null
}
