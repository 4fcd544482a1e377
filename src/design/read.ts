import { quote } from '../length/quote.ts'
import type { Units } from '../length.ts'
import { type Asks, asksOf } from './asks.ts'
import { type Checking, checkMap } from './check/check.ts'
import { completeMap, missing } from './check/complete.ts'
import { kindsOf } from './check/kinds.ts'
import { resolveLikes } from './check/like.ts'
import { nameRamps, type RampMap } from './check/names.ts'
import { checkStores, widthsFromStores } from './check/stores-inside.ts'
import type { Design, PaperName } from './design.ts'
import type { EntryMap } from './file/entry.ts'
import { parseDesign } from './file/parse.ts'
import { saidMap, saidPrices, saidText, saidWord, says } from './file/said.ts'
import { type KeyPath, saidIn } from './file/said-keys.ts'
import type { Tree, TreeMap } from './file/tree.ts'
import { kindTraits } from './kind-traits.ts'
import { withoutGuess, wrongUnits } from './plausible.ts'
import type { Place, Problem } from './problem.ts'
import { problemReport } from './report.ts'
import { resolveRamp, resolveSpace, resolveStock } from './resolve.ts'
import { rowExample } from './row.ts'
import { rampPath, rangeAt, rowAt } from './schema.ts'

export type DesignReading = { readonly design: Design } | { readonly problems: readonly Problem[] }

/** A design that may leave a figure of each ramp to the program: usual figures stand for those that are open. */
export interface OpenDesign {
  readonly design: Design
  /** of each ramp, in their order */
  readonly asks: readonly (Asks | null)[]
  /** where the file says `solve`, or asks for it */
  readonly places: readonly (Place | null)[]
}

/** A design of figures alone: one that leaves a figure to the program is a problem here. Never throws on any text. */
export const readDesign = (text: string): DesignReading => {
  const reading = readOpenDesign(text)
  if ('problems' in reading) return reading
  const open = reading.asks.findIndex((asks) => asks !== null)
  if (open < 0) return { design: reading.design }
  const { key } = reading.asks[open]!
  return {
    problems: [
      {
        code: 'solve',
        path: `ramps[${open}].${key}`,
        place: reading.places[open]!,
        message: `\`${key}\` is left to the program: find it first`,
      },
    ],
  }
}

export type OpenReading = OpenDesign | { readonly problems: readonly Problem[] }

/** The whole way from text to design; all problems together, in the order of the file. Never throws on any text. */
export const readOpenDesign = (text: string): OpenReading => {
  const problems = problemReport()
  return readTree(parseDesign(text, problems.report), problems)
}

/** A tree that was read before. */
export const readOpenTree = (tree: Tree): OpenReading => readTree(tree, problemReport())

/** What a text says of each key, and what it means, out of one look at it. */
export const readSaid = (
  text: string,
): { readonly said: ReadonlyMap<KeyPath, string>; readonly reading: OpenReading } => {
  const problems = problemReport()
  const tree = parseDesign(text, problems.report)
  return { said: saidIn(tree, text), reading: readTree(tree, problems) }
}

/** `undefined` is a text that is no tree, which is reported already. */
const readTree = (
  tree: Tree | undefined,
  { problems, report }: ReturnType<typeof problemReport>,
): OpenReading => {
  const found = (): { readonly problems: readonly Problem[] } => ({
    problems: [...problems].sort((a, b) => a.place.offset - b.place.offset),
  })

  if (tree === undefined) return found()
  if (tree.kind !== 'map') {
    const what = tree.kind === 'list' ? 'a list' : quote(tree.text)
    report(
      'not-a-map',
      '',
      tree.place,
      `a design is made of keys such as \`title:\` and \`ramps:\`; here stands ${what}`,
    )
    return found()
  }

  const on: Checking = { units: unitsOf(tree), report }
  const top = completeMap(checkMap(tree, rowAt(''), '', on), rowAt(''), '', on)
  const ramps = nameRamps(rampMaps(tree, on), report)
  const maps = resolveLikes(ramps, report).map(
    (map, i) => map && completeMap(map, rowAt(rampPath(ramps[i]!.kind)), `ramps[${i}]`, on),
  )
  checkStores(ramps, maps, report)
  const wrong = on.units === undefined ? null : wrongUnits(problems, on.units)
  if (wrong !== null) {
    report('units', 'units', valueAt(tree, 'units')!.place, wrong, on.units === 'mm' ? 'in' : 'mm')
    return { problems: found().problems.map(withoutGuess) }
  }
  if (problems.length > 0) return found()

  const complete = maps as readonly EntryMap[]
  const asks = complete.map((map, i) =>
    kindTraits[ramps[i]!.kind].curved ? asksOf(map, ramps[i]!.map, `ramps[${i}]`, report) : null,
  )
  const units: Units = saidWord(top, 'units')
  const width = rangeAt('ramps[quarter].width')
  const design: Design = {
    title: saidText(top, 'title'),
    units,
    paper: saidWord<PaperName>(top, 'paper'),
    stock: resolveStock(saidMap(top, 'stock')),
    ...(says(top, 'prices') && { prices: saidPrices(top, 'prices') }),
    ...(says(top, 'space') && { space: resolveSpace(saidMap(top, 'space')) }),
    ramps: widthsFromStores(complete.map(resolveRamp), complete, width, units, report),
  }
  return problems.length > 0 ? found() : { design, asks, places: complete.map(({ place }) => place) }
}

const valueAt = (map: TreeMap, key: string): Tree | undefined =>
  map.pairs.find((pair) => pair.key.text === key)?.value

/** Asked before anything is read, as every length depends on it. */
const unitsOf = (map: TreeMap): Units | undefined => {
  const tree = valueAt(map, 'units')
  const word = tree?.kind === 'scalar' ? tree.text.trim().toLowerCase() : ''
  return word === 'mm' || word === 'in' ? word : undefined
}

const rampMaps = (map: TreeMap, on: Checking): readonly RampMap[] => {
  const row = rowAt('ramps')
  const tree = valueAt(map, 'ramps')
  const { least, most } = rangeAt('ramps')
  if (tree === undefined) {
    on.report('missing-key', 'ramps', map.place, missing(row, on.units ?? 'mm'))
    return []
  }
  if (tree.kind !== 'list' || tree.items.length < least) {
    const what = tree.kind === 'list' ? 'an empty list' : tree.kind === 'map' ? 'a map' : quote(tree.text)
    const example = rowExample(row, on.units ?? 'mm')
    on.report(
      'shape',
      'ramps',
      tree.place,
      `\`ramps\` takes a list with a \`-\` before each ramp, not ${what}; e.g. \`${example}\``,
    )
    return []
  }
  if (tree.items.length > most)
    on.report(
      'too-many',
      'ramps',
      tree.items[most]!.place,
      `${tree.items.length} ramps are too many for one design; at most ${most}: split the file`,
    )
  const items = tree.items.slice(0, most)
  const kinds = kindsOf(items.filter((item) => item.kind === 'map'))
  let count = 0
  return items.flatMap((item, i) => {
    if (item.kind === 'map') {
      const kind = kinds[count++]!
      return [{ kind, map: checkMap(item, rowAt(rampPath(kind)), `ramps[${i}]`, on) }]
    }
    const what = item.kind === 'list' ? 'a list' : quote(item.text)
    on.report(
      'shape',
      `ramps[${i}]`,
      item.place,
      `a ramp is made of keys such as \`width:\` and \`height:\`; here stands ${what}`,
    )
    return []
  })
}
