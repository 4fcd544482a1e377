import { same } from '../check/offer.ts'
import type { Stand, Stud } from '../frame/stud.ts'
import { type Bed, moreStuds } from './seam-additions.ts'
import { type Choice, type Cost, chooseOf, chooseSeams, isBetter, under } from './seam-choice.ts'
import { staggered } from './seam-stagger.ts'
import { fewestPieces, type LayerWays, layerWays, type Met, waysBeside } from './seam-ways.ts'
import type { Seam } from './seams.ts'
import { seatsIn } from './seats.ts'
import type { SkinLayer } from './skin.ts'
import { flatToCurve, type Ground, insideSeam, insideStud, practice } from './skin-framing.ts'

/** The studs, those that sheets need besides among them, and the seams of each layer. */
export interface SeamPlan {
  readonly studs: readonly Stud[]
  readonly seams: readonly (readonly Seam[])[]
}

/** Studs in their order up the curve, the ways to lay each layer on them, and what is chosen. */
interface Laying {
  readonly studs: readonly Stud[]
  readonly layers: readonly LayerWays[]
  readonly choice: Choice
}

/** A laying with more studs, in so many pieces more than the fewest; null where it costs more than the limit. */
type Beside = (base: Laying, added: readonly Stud[], limit: Cost, more: number) => Laying | null

/**
 * Where the sheets of all layers meet, with a stud besides, or a few, wherever that saves a seam without one, or a sheet: beside one
 * that is too thin for two rows of screws a twin, the seam on their joint; else one of its own, or a pair.
 */
export const planSeams = (
  ground: Ground,
  skin: readonly SkinLayer[],
  stand: Stand,
  /** whether studs may stand close: the joints of a side in pieces need room between two */
  close: boolean,
): SeamPlan => {
  const courses = skin.map((layer) => ({
    length: layer.length,
    reach: { most: ground.panelOf(layer.sheet)[0], gap: practice[ground.units].gap },
    lying: flatToCurve(ground.curve, layer),
  }))
  const fewest = courses.reduce((sum, course) => sum + fewestPieces(course), 0)
  if (fewest === courses.length) return { studs: ground.studs, seams: skin.map(() => []) }
  const bed = { curve: ground.curve, units: ground.units, courses, stand: standOnce(stand) }
  const laid = (inside: number): Laying => laidOn({ ...bed, inside }, ground.studs, fewest)
  const roomy = close ? laid(insideSeam) : null
  // where wood on all sides of both rows costs a sheet, or leaves a seam without any, they come nearer to its edges
  const { studs, layers, choice } =
    roomy === null ? laid(insideStud) : isFree(roomy, fewest) ? roomy : cheaper(laid(insideStud), roomy)
  const met = staggered(layers, choice)
  return { studs, seams: met.map((own, k) => seamsOf(own, met[k - 1] ?? [], studs)) }
}

/** Whether a laying costs nothing that another could save. */
const isFree = ({ choice: { lost, pieces } }: Laying, fewest: number): boolean =>
  lost === 0 && pieces <= fewest

/** The one that costs less; the second where they cost the same. */
const cheaper = (a: Laying, b: Laying): Laying => (isBetter(costOf(a), costOf(b)) ? a : b)

/** The layers on these studs, and on more where that saves anything. */
const laidOn = (bed: Bed, studs: readonly Stud[], fewest: number): Laying => {
  const { curve, units, courses, inside } = bed
  const seats = courses.map(({ lying }) => seatsIn(curve, lying, units, inside))
  const known: Laying[] = []
  const laid = (on: readonly Stud[]): Laying => {
    const found = known.find((one) => areAlike(one.studs, on))
    if (found) return found
    const layers = courses.map((course, k) => layerWays({ ...course, seats: seats[k]!(on) }))
    const laying = { studs: on, layers, choice: chooseSeams(layers)! }
    known.push(laying)
    return laying
  }
  const beside: Beside = (base, added, limit, more) => {
    const on = withStuds(base.studs, added)
    const layers = base.layers.map((layer, k) => waysBeside(layer, seats[k]!(on), more))
    if (layers.every((layer, k) => layer === base.layers[k])) return null
    const choice = chooseOf(layers, more, limit)
    return choice && { studs: on, layers, choice }
  }
  const first = laid(studs)
  let best = first
  // between two studs at least
  while (best.studs.length > 1 && !isFree(best, fewest)) {
    const found = bettered(bed, first, best, beside)
    if (!found) break
    best = laid(found.studs)
  }
  return thinned(best, laid)
}

const areAlike = (a: readonly Stud[], b: readonly Stud[]): boolean =>
  a.length === b.length && a.every((stud, i) => stud === b[i])

/** In their order up the curve. */
const withStuds = (studs: readonly Stud[], added: readonly Stud[]): readonly Stud[] => {
  const all = [...studs]
  for (const stud of added) {
    let i = all.length
    while (i > 0 && all[i - 1]!.at > stud.at) i--
    all.splice(i, 0, stud)
  }
  return all
}

/** Whether a stud fits in the panel is asked once a place, whatever it stands among. */
const standOnce = (stand: Stand): Stand => {
  const known = new Map<number, Stud | null>()
  return (at, among) => {
    const stud = known.get(at) ?? (known.has(at) ? null : stand(at, []))
    known.set(at, stud)
    if (!stud) return null
    for (const other of among)
      if (Math.abs(at - other.at) < (stud.width + other.width) / 2 - same) return null
    return stud
  }
}

const seamsOf = (met: readonly Met[], below: readonly Met[], studs: readonly Stud[]): readonly Seam[] => {
  const taken = below.flatMap(({ seat }) => seat?.studs ?? [])
  return met.map(({ at, seat }): Seam => {
    const [stud, second] = (seat?.studs ?? []).map((own) => studs.indexOf(own))
    return {
      at,
      stud: stud ?? null,
      second: second ?? null,
      shared: seat?.studs.some((own) => taken.includes(own)) ?? false,
    }
  })
}

const costOf = ({ choice: { lost, pieces } }: Laying): readonly number[] => [lost, pieces]

const worthOf = ({ studs, choice: { lost, pieces, smallest, together } }: Laying): readonly number[] => [
  lost,
  pieces,
  studs.length,
  -smallest,
  -together,
]

/** The best that one addition brings, of the first kind of which any brings something; null where none does. */
const bettered = (bed: Bed, first: Laying, from: Laying, beside: Beside): Laying | null => {
  const kinds = moreStuds(bed, from.studs, from.choice)
  const known: (readonly (readonly Stud[])[])[] = []
  // in the fewest sheets first: there are not many ways to lay them
  for (const more of [0, 1])
    for (const [i, { anew, additions }] of kinds.entries()) {
      let best: Laying | null = null
      known[i] ??= additions()
      for (const added of known[i]) {
        const now = beside(anew ? first : from, added, best?.choice ?? under(from.choice), more)
        if (now && (!best || isBetter(worthOf(now), worthOf(best)))) best = now
      }
      if (best) return best
    }
  return null
}

/** Without those added ones that it can do without. */
const thinned = (from: Laying, laid: (studs: readonly Stud[]) => Laying): Laying => {
  let best = from
  for (const stud of from.studs.filter(({ role }) => role === 'seam')) {
    const less = laid(best.studs.filter((other) => other !== stud))
    if (!isBetter(costOf(best), costOf(less))) best = less
  }
  return best
}

/** Indices of the studs that a seam lies on. */
export const seamStudsOf = ({ stud, second }: Seam): readonly number[] =>
  [stud, second].filter((i) => i !== null)

/** The stud under a seam, or the two, as people number them. */
export const seamWords = (seam: Seam): string => {
  const numbers = seamStudsOf(seam).map((i) => i + 1)
  return `${numbers.length > 1 ? 'studs' : 'stud'} ${numbers.join(' and ')}`
}
