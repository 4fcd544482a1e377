import type { PlanPage, PlanPlace, SetPlan } from '../drawing/set-plan.ts'
import { tilesInOrder } from './pick-pages.ts'

/**
 * Which page of a set of before pages proved themselves a page is, by the words that are printed on it: the set's code, and
 * what no other page of the set has. Null where they leave a doubt.
 */
export const pageOfWords = (content: Uint8Array, plan: SetPlan): PlanPage | null => {
  const words = shownIn(content)
  if (!words.includes(plan.set)) return null
  const said = signOf(words, plan.set)
  const [page, ...others] = plan.pages.filter((one) => planned(plan, one) === said)
  return page && others.length === 0 ? page : null
}

/** The texts of a page, each in a line of its own; WinAnsi, escapes undone. */
const shownIn = (content: Uint8Array): string => {
  const lines: string[] = []
  for (const [, text] of winAnsi(content).matchAll(/\(((?:[^\\()]|\\.)*)\) Tj/g))
    lines.push(
      text!
        .replace(/\\(\d{3})/g, (_, code: string) => String.fromCharCode(Number.parseInt(code, 8)))
        .replace(/\\(.)/g, '$1'),
    )
  return lines.join('\n')
}

const winAnsi = (bytes: Uint8Array): string => new TextDecoder('windows-1252').decode(bytes)

/** What the words of a page say that tells it from the others. */
const signOf = (words: string, set: string): string => {
  const [, tile] = words.match(new RegExp(`^tile ([A-Z]+\\d+) · \\d+ of \\d+ · set ${set}$`, 'm')) ?? []
  if (tile !== undefined) return `tile ${tile}`
  const [, first] = words.match(/ Pages? (\d+) to \d+ \(tiles /) ?? []
  if (first !== undefined) return `map before ${first}`
  if (words.includes('the dots are for a scan')) return 'square'
  return parts(
    count(words, /^Lip trial: saw this/gm),
    [...words.matchAll(/^(.+), (?:skin )?layer (\d+)(?::.*)?, piece \d+ of \d+$/gm)].map(
      ([, ramp, layer]) => `${ramp}/strip-${layer}`,
    ),
  )
}

/** The same of a page of the plan. */
const planned = (plan: SetPlan, page: PlanPage): string => {
  switch (page.kind) {
    case 'tile':
      return `tile ${page.tile}`
    case 'map': {
      const tiles = tilesInOrder(plan)
      return `map before ${tiles.findIndex((tile) => tile.page > page.page) + 1}`
    }
    case 'square':
      return 'square'
    default:
      return parts(
        page.places.filter(({ pattern }) => pattern.endsWith('/lip')).length,
        page.places.flatMap(({ pattern }: PlanPlace) => (/\/strip-\d+$/.test(pattern) ? [pattern] : [])),
      )
  }
}

const parts = (trials: number, layers: readonly string[]): string =>
  `${trials} trials, strips ${[...layers].sort().join(', ')}`

const count = (words: string, form: RegExp): number => [...words.matchAll(form)].length
