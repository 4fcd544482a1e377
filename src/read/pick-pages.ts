import type { PageKind, PlanPage, PlanPlace, SetPlan } from '../drawing/set-plan.ts'

export interface Picked {
  /** numbers in the plan, each once, in the set's order */
  readonly numbers: readonly number[]
  readonly unknown: readonly UnknownPage[]
  /** pages of the set that this file does not hold */
  readonly absent: readonly string[]
}

export interface UnknownPage {
  readonly said: string
  /** in a set whose tiles have a row letter each: those that lie nearest to where one of that name would lie; at most three */
  readonly near: readonly string[]
}

/** Pages of a kind may be asked for by a word: all of them. Tiles have names of their own; pages of several parts have those of the parts too. */
const pageWords: Readonly<Record<PageKind, string | null>> = {
  map: 'map',
  square: 'square',
  trial: 'trial',
  tile: null,
  strip: 'strips',
  parts: 'parts',
}
const wordedKinds = (Object.keys(pageWords) as PageKind[]).flatMap((kind) => {
  const word = pageWords[kind]
  return word === null ? [] : [{ kind, word }]
})

/** Words that all pages of a kind are asked for by. */
export const kindWords: readonly string[] = wordedKinds.map(({ word }) => word)

/**
 * Pages by the number of a tile, by kind, or by the name that a viewer shows; capitals or not. `here`: numbers of the pages that
 * there are; `labels`: their names by these numbers.
 */
export const pickPages = (
  plan: SetPlan,
  here: readonly number[],
  said: readonly string[],
  labels: ReadonlyMap<number, string> = new Map(),
): Picked => {
  const held = new Set(here)
  const found = said.map((word) => ({ word, pages: pagesCalled(plan, labels, word) }))
  const picked = found.map(({ word, pages }) => ({ word, pages, here: pages.filter((n) => held.has(n)) }))
  return {
    numbers: [...new Set(picked.flatMap(({ here }) => here))].sort((a, b) => a - b),
    unknown: found
      .filter(({ pages }) => pages.length === 0)
      .map(({ word }) => ({ said: word, near: nearTiles(plan, word) })),
    absent: picked.filter(({ pages, here }) => pages.length > 0 && here.length === 0).map(({ word }) => word),
  }
}

/** The tiles of a set in the order of taping: their taping numbers count from 1. */
export const tilesInOrder = (plan: SetPlan): readonly PlanPage[] =>
  plan.pages.filter(({ kind }) => kind === 'tile')

const pagesCalled = (plan: SetPlan, labels: ReadonlyMap<number, string>, said: string): readonly number[] => {
  const word = said.trim().toLowerCase()
  if (/^\d+$/.test(word)) return nth(tilesInOrder(plan), Number(word)).map(pageNumber)
  const [, name = word, which] = /^(\D+?)-?(\d+)$/.exec(word) ?? []
  const kind = wordedKinds.find((known) => singular(known.word) === singular(name))?.kind
  const pages = kind === undefined ? [] : plan.pages.filter((page) => holdsKind(page, kind))
  if (which === undefined && pages.length > 0) return pages.map(pageNumber)
  const labelled = [...labels].filter(([, label]) => spaced(label) === spaced(word)).map(([page]) => page)
  if (labelled.length > 0) return labelled
  if (kind === undefined) return plan.pages.filter(({ tile }) => tile?.toLowerCase() === word).map(pageNumber)
  return nth(pages, Number(which)).map(pageNumber)
}

/** A shell splits at blanks: dashes stand for them. */
const spaced = (name: string): string =>
  name
    .trim()
    .toLowerCase()
    .replace(/[\s-]+/g, ' ')

const nth = (pages: readonly PlanPage[], number: number): readonly PlanPage[] =>
  pages.slice(number - 1, number)

/** A page of several parts is one of each kind that it holds. */
export const holdsKind = ({ kind, holds, places }: PlanPage, wanted: PageKind): boolean =>
  kind === wanted || (kind === 'parts' && (holds?.includes(wanted) ?? named(places, wanted)))

/** Plans did not always say what such a page holds: then the names of its patterns do. */
const named = (places: readonly PlanPlace[], wanted: PageKind): boolean =>
  places.some(({ pattern }) =>
    wanted === 'trial' ? pattern.endsWith('/lip') : wanted === 'strip' && pattern.includes('/strip-'),
  )

const pageNumber = ({ page }: PlanPage): number => page

const singular = (word: string): string => word.replace(/s$/, '')

/** The words that call up pages of this set, and how many pages each. */
export const pageWordsOf = (plan: SetPlan): readonly { readonly word: string; readonly count: number }[] =>
  wordedKinds.flatMap(({ kind, word }) => {
    const count = plan.pages.filter((page) => holdsKind(page, kind)).length
    return count === 0 ? [] : [{ word, count }]
  })

/** Row and column of a tile's name as sets had them, both from 1: `B3` is row 2, column 3. */
const tilePlace = (tile: string): { readonly row: number; readonly column: number } | undefined => {
  const [, letters, digits] = /^([A-Z]{1,2})(\d{1,4})$/.exec(tile.trim().toUpperCase()) ?? []
  if (letters === undefined || digits === undefined) return undefined
  const row = [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0)
  return { row, column: Number(digits) }
}

const nearTiles = (plan: SetPlan, said: string): readonly string[] => {
  const wanted = tilePlace(said)
  if (!wanted) return []
  const ranked = tilesInOrder(plan).flatMap(({ tile = '' }) => {
    const place = tilePlace(tile)
    return place
      ? [{ tile, far: Math.abs(place.row - wanted.row) + Math.abs(place.column - wanted.column) }]
      : []
  })
  return ranked
    .sort((a, b) => a.far - b.far)
    .slice(0, 3)
    .map(({ tile }) => tile)
}
