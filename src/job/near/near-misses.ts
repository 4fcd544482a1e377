import type { Design, QuarterDesign } from '../../design/design.ts'
import { editDesign } from '../../design/edit.ts'
import { isCurved } from '../../design/kind-traits.ts'
import { readDesign } from '../../design/read.ts'
import { pathBounds } from '../../geometry/bounds.ts'
import { wordList } from '../../length/word-list.ts'
import { type Check, note } from '../../ramp/check/check.ts'
import { offerSteps, same, shownOffer } from '../../ramp/check/offer.ts'
import { backKey, heightKey, type Key } from '../../ramp/check/remedy.ts'
import { draftQuarter } from '../../ramp/kinds/quarter.ts'
import type { SolvedQuarter, WholeDesign } from '../../ramp/ramp.ts'
import { solveDesign } from '../../ramp/solve.ts'
import { sheetsOf } from '../../stock/panel/sheets.ts'
import { partsOf } from '../../stock/parts.ts'
import type { SheetPart } from '../../stock/sheet-part.ts'
import type { FiguresJob } from '../figures.ts'
import { panelLimits, timberLimits } from './stock-limits.ts'
import { pageCounter, type SidePages, savedFrom, takenWords, takesOf } from './takes.ts'

/** So many values of a key are tried on the whole design. */
const mostTries = 4
/** A figure is not moved farther than to this share of it: beyond that it is another ramp. */
const least = 0.95

/** The figures with these notes behind their checks. A file that leaves a figure to the program gets none: its figures are not typed. */
export const withNearMisses = (job: FiguresJob, text: string, design: Design): FiguresJob => {
  const { solved, answers } = job
  return solved.stopped || answers.length > 0
    ? job
    : { ...job, solved: { ...solved, checks: [...solved.checks, ...nearMisses(text, design, solved)] } }
}

type Sizes = readonly (readonly [number, number])[]
/** What the file saves with one key typed so, in words; empty where that saves nothing, or brings a stop or a warning. */
type Saved = (path: string, typed: string) => string

/** Parts that are a little too long for their stock: the nearest value that saves something, each tried on the whole file. */
export const nearMisses = (text: string, design: Design, solved: WholeDesign): readonly Check[] => {
  const parts = partsOf(design, solved)
  const laid = sheetsOf(design, parts)
  const sidePages = pageCounter()
  const before = takesOf(design, solved, sidePages)
  if ('faults' in laid || before === null) return []
  const warned = warnings(solved.checks)
  const saved: Saved = (path, typed) => {
    const reading = readDesign(editDesign(text, path, typed))
    if ('problems' in reading) return ''
    const changed = solveDesign(reading.design)
    if (changed.stopped || [...warnings(changed.checks)].some((id) => !warned.has(id))) return ''
    const after = takesOf(reading.design, changed, sidePages)
    const gains = after && savedFrom(before, after)
    return wordList((gains ?? []).map(takenWords))
  }
  const sizes = laid.sheets.flatMap((sheet) => sheet.sizes)
  return noted([
    ...solved.ramps.flatMap((ramp, i) =>
      isCurved(ramp) && ramp.design.storesInside === null
        ? rampMisses(ramp, i, { design, parts: parts.sheets, sizes, saved, sidePages })
        : [],
    ),
    ...trimMisses(design, parts.sheets, sizes, saved),
  ])
}

const warnings = (checks: readonly Check[]): ReadonlySet<string> =>
  new Set(checks.filter(({ level }) => level !== 'note').map(({ id, ramp }) => `${ramp} ${id}`))

interface Miss {
  readonly ramp: string
  readonly words: string
}

/** One note a ramp. */
const noted = (misses: readonly Miss[]): readonly Check[] =>
  [...new Set(misses.map(({ ramp }) => ramp))].map((ramp) => ({
    ramp,
    ...note('near-miss', misses.flatMap((miss) => (miss.ramp === ramp ? [miss.words] : [])).join('; ')),
  }))

interface Looking {
  readonly design: Design
  readonly parts: readonly SheetPart[]
  readonly sizes: Sizes
  readonly saved: Saved
  readonly sidePages: SidePages
}

const rampMisses = (ramp: SolvedQuarter, i: number, looking: Looking): readonly Miss[] => {
  const { design, sizes, saved, sidePages } = looking
  const { width, height, back, sides } = ramp.design
  const own = looking.parts.filter((part) => part.ramp === ramp.name)
  const near = (mm: number): readonly number[] => panelLimits(mm, sizes, design.stock)
  const step = offerSteps[design.units]
  const told = (path: string, now: number, values: readonly number[]): readonly Miss[] => {
    const counts = [...new Set(values.map((mm) => Math.floor(mm / step + same)))]
      .filter((count) => count * step < now - same && count * step >= now * least - same)
      .sort((a, b) => b - a)
    for (const count of counts.slice(0, mostTries)) {
      const typed = shownOffer(count, design.units)
      const gain = saved(`ramps.${i}.${path}`, typed)
      if (gain !== '')
        return [
          {
            ramp: ramp.name,
            words: `\`${path}: ${typed}\` in place of ${shownOffer(now / step, design.units)} saves ${gain}`,
          },
        ]
    }
    return []
  }
  const frame = ramp.transition.heights.frame
  const shorter = (from: number, mm: number): readonly number[] =>
    near(mm).map((limit) => from - (mm - limit))
  return [
    ...told('width', width, [
      ...own
        .filter(({ part }) => part !== 'side' && part !== 'rib')
        .flatMap((part) => shorter(width, sizeOf(part)[0])),
      ...timberLimits(ramp.studLength, design).map(
        (limit) => width - (sides.count - 1) * (ramp.studLength - limit),
      ),
    ]),
    ...told(back.from, back.value, [
      ...own
        .filter(({ part }) => part === 'side' || part === 'deck-board')
        .flatMap((part) => shorter(back.value, sizeOf(part)[part.part === 'side' ? 0 : 1])),
      ...fewerPages(ramp, backKey(ramp.design), back.value, design, sidePages),
    ]),
    ...told(`height.${height.layer}`, height.value, [
      ...shorter(height.value, frame),
      ...ramp.skin.flatMap(({ length }, layer) =>
        near(length).flatMap((limit) => heightFor(ramp.design, layer, limit, design)),
      ),
      ...fewerPages(ramp, heightKey(ramp.design), height.value, design, sidePages),
    ]),
  ]
}

/** The most, in steps and down to the least, that holds; none where the least does not. */
const mostThat = (now: number, step: number, holds: (mm: number) => boolean): readonly number[] => {
  let [good, bad] = [Math.ceil((now * least) / step - same), Math.ceil(now / step - same)]
  if (good >= bad || !holds(good * step)) return []
  while (bad - good > 1) {
    const middle = Math.floor((good + bad) / 2)
    if (holds(middle * step)) good = middle
    else bad = middle
  }
  return [good * step]
}

/** The height at which a layer of skin is no longer than its limit. */
const heightFor = (
  ramp: QuarterDesign,
  layer: number,
  limit: number,
  { units, stock }: Design,
): readonly number[] =>
  mostThat(ramp.height.value, offerSteps[units], (mm) => {
    const { skin } = draftQuarter(heightKey(ramp).typed(ramp, mm), units, stock).ramp
    return skin[layer] !== undefined && skin[layer].length <= limit
  })

/** The value at which the sides take a page less. */
const fewerPages = (
  { design: ramp }: SolvedQuarter,
  key: Key,
  now: number,
  design: Design,
  sidePages: SidePages,
): readonly number[] => {
  const { units, stock } = design
  const pagesOf = (mm: number): number => {
    const { whole } = draftQuarter(key.typed(ramp, mm), units, stock)
    return whole
      ? sidePages(design, { stopped: false, ramps: [whole], checks: [] })
      : Number.POSITIVE_INFINITY
  }
  const pages = pagesOf(now)
  return mostThat(now, offerSteps[units], (mm) => pagesOf(mm) < pages)
}

/** Panels that need no trimming, where that is what a piece misses them by. */
const trimMisses = (
  { stock, ramps }: Design,
  parts: readonly SheetPart[],
  sizes: Sizes,
  saved: Saved,
): readonly Miss[] => {
  const misses = (trim: number): number =>
    parts.reduce(
      (sum, part) =>
        sum + sizeOf(part).reduce((all, mm) => all + panelLimits(mm, sizes, { ...stock, trim }).length, 0),
      0,
    )
  if (stock.trim === 0 || misses(stock.trim) === misses(0)) return []
  const gain = saved('stock.trim', '0')
  return gain === ''
    ? []
    : [{ ramp: ramps[0]!.name, words: `panels that need no trimming (\`stock: { trim: 0 }\`) save ${gain}` }]
}

/** Across the ramp, and up it; of a side its length and height. */
const sizeOf = ({ outline }: SheetPart): readonly [number, number] => {
  const { x0, y0, x1, y1 } = pathBounds(outline)
  return [x1 - x0, y1 - y0]
}
