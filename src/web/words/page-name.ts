import type { PlanPage, SetPlan } from '../../index.ts'

type PageKind = PlanPage['kind']

/** What a page without a number of its own is called, and what a reprint knows it by. */
const words: Readonly<Record<Exclude<PageKind, 'tile' | 'parts'>, readonly [asked: string, shown: string]>> =
  {
    map: ['map', 'map'],
    square: ['square', 'test square'],
    trial: ['trial', 'lip trial'],
    strip: ['strips', 'strips'],
  }

export interface PageName {
  /** what a reprint knows it by */
  readonly asked: string
  /** the number in the order of taping, as large on the paper; a word for what bears none */
  readonly shown: string
}

const kindNames = (kind: PageKind): readonly PageName[] => {
  if (kind === 'tile' || kind === 'parts') return []
  const [asked, shown] = words[kind]
  return [{ asked, shown }]
}

/** Of a page: several where parts share it. */
export const pageNames = ({ kind, tile, holds = [] }: PlanPage): readonly PageName[] =>
  tile !== undefined
    ? [{ asked: tile, shown: tile }]
    : kind === 'parts'
      ? holds.flatMap(kindNames)
      : kindNames(kind)

/** `page 3`, `the test square`: a number is never that of the PDF's page. */
export const calledPage = (page: PlanPage): string =>
  page.tile !== undefined
    ? `page ${page.tile}`
    : `the ${pageNames(page)
        .map(({ shown }) => shown)
        .join(' and ')}`

/** All that may be asked for of a set, each once. */
export const namesOf = ({ pages }: SetPlan): readonly PageName[] => [
  ...new Map(pages.flatMap(pageNames).map((name) => [name.asked, name])).values(),
]

/** What the pages of a set are: `7 to tape + map + test square + lip trial`; of several ramps the tiles of each. */
export const madeOf = ({ pages }: SetPlan): string => {
  const tiles = new Map<string, number>()
  const others = new Map<string, number>()
  const count = (counts: Map<string, number>, name: string): unknown =>
    counts.set(name, (counts.get(name) ?? 0) + 1)
  for (const page of pages)
    if (page.tile !== undefined) count(tiles, page.pattern?.split('/')[0] ?? '')
    else
      count(
        others,
        pageNames(page)
          .map(({ shown }) => shown)
          .join(' and '),
      )
  const several = tiles.size > 1
  return [
    ...[...tiles].map(([ramp, of]) => `${of} to tape${several ? ` for ${ramp}` : ''}`),
    ...[...others].map(([name, of]) =>
      of === 1 ? name : / and |s$/.test(name) ? `${of} pages of ${name}` : `${of} ${name}s`,
    ),
  ].join(' + ')
}
