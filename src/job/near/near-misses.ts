import type { Design } from '../../design/design.ts'
import { designTrier } from '../../design/edit.ts'
import { curvedOf, isCurved } from '../../design/kind-traits.ts'
import { wordList } from '../../length/word-list.ts'
import { tracedLine } from '../../pattern/traced-line.ts'
import { type Check, checkOf, note } from '../../ramp/check/check.ts'
import { offerSteps, same, shownOffer } from '../../ramp/check/offer.ts'
import { offering, type Said, set, setOfFile, type Told, tell } from '../../ramp/check/told.ts'
import type { SolvedQuarter, WholeDesign } from '../../ramp/ramp.ts'
import { drawDesign, solveDesign } from '../../ramp/solve.ts'
import { once } from '../../stock/once.ts'
import type { LaidSheet } from '../../stock/panel/panels.ts'
import { partsOf } from '../../stock/parts.ts'
import type { SheetPart } from '../../stock/sheet-part.ts'
import type { FiguresJob } from '../figures.ts'
import { withAnswers } from '../settle/answer-words.ts'
import { type Answer, settled } from '../settle/settle.ts'
import { flatMoves } from './flat-moves.ts'
import { type Around, type Move, nearestBetween } from './move.ts'
import { pageCounter, type SidePages } from './page-counter.ts'
import { partSize, quarterMoves } from './quarter-moves.ts'
import { panelLimits } from './stock-limits.ts'
import { savedFrom, takenWords, takesCounter } from './takes.ts'

/** So many values of a key are tried on the whole design; of one that leaves a figure to be counted out, only the nearest. */
const mostTries = 8

/** How far it is: before each ramp is looked at, which one it is. */
export type RampTold = (ramp: number, of: number) => void

/** The figures with these notes behind their checks. */
export const withNearMisses = (
  job: FiguresJob,
  text: string,
  design: Design,
  told?: RampTold,
): FiguresJob => {
  const { solved, panels } = job
  if (solved.stopped || panels === null || 'faults' in panels) return job
  const misses = nearMisses(text, design, { ...job, solved, sheets: panels.sheets }, told)
  return { ...job, solved: { ...solved, checks: [...solved.checks, ...misses] } }
}

/** The figures of a design without a stop, whose parts find their panels. */
type WholeJob = Pick<FiguresJob, 'pages' | 'answers'> & {
  readonly solved: WholeDesign
  readonly sheets: readonly LaidSheet[]
}

/** What the file saves with one key typed so, in words, and figures that are found anew; null where that saves nothing, or brings a stop or a warning. */
type Saved = (path: string, typed: string) => { readonly gain: string; readonly moved: string } | null

/** Parts that are a little too long for their stock: the nearest value that saves something, each tried on the whole file. */
const nearMisses = (
  text: string,
  design: Design,
  { solved, sheets, pages, answers }: WholeJob,
  told?: RampTold,
): readonly Check[] => {
  const parts = partsOf(design, solved)
  const { takes, mayTakeLess, mayGain } = takesCounter(design, sheets)
  const before = takes(design, parts)
  if (before === null) return []
  const counter = pageCounter()
  const now: SidePages = pages
    ? { cover: pages.takes, pages: pages[pages.takes] }
    : { cover: 'whole', pages: 0 }
  const warned = warnings(solved.checks)
  const trier = once(() => designTrier(text))
  const saved: Saved = (path, typed) => {
    const reading = settled(trier()(path, typed))
    if ('problems' in reading) return null
    // what saves nothing is known without trying a remedy: most values
    const drawn = drawDesign(reading.design, { design, drawn: solved })
    if (drawn.stopped) return null
    const cut = partsOf(reading.design, drawn)
    const fewerPages = once(() => counter.fewer(reading.design, curvedOf(drawn.ramps), now))
    if (!mayTakeLess(reading.design, cut, before) && !fewerPages()) return null
    const after = takes(reading.design, cut)
    const gains = after && savedFrom(before, after)
    if (gains === null || (gains.length === 0 && !fewerPages())) return null
    const changed = withAnswers(solveDesign(reading.design), reading.answers, design.units)
    if (changed.stopped || [...warnings(changed.checks)].some((id) => !warned.has(id))) return null
    // another way to cover the sides is there to be had without the new value
    const taken = counter.taken(reading.design, curvedOf(changed.ramps))
    const fewer = Math.min(now.pages, pages?.[taken.cover] ?? now.pages) - taken.pages
    if (fewer < 0) return null
    const all = fewer === 0 ? gains : [...gains, [`page of ${design.paper}`, fewer] as const]
    return all.length === 0
      ? null
      : { gain: wordList(all.map(takenWords)), moved: movedWords(answers, reading.answers) }
  }
  const counted = answers.some(({ asks: { limits } }) => limits.paper !== null || limits.panels !== null)
  const tries = counted ? 1 : mostTries
  const pagesOf = (ramp: SolvedQuarter): SidePages =>
    solved.ramps.length === 1 ? now : { cover: now.cover, pages: counter.taken(design, [ramp]).pages }
  const around: Around = {
    design,
    sizes: sheets.flatMap((sheet) => sheet.sizes),
    mayGain,
    fewerPages: (ramp, changed) => counter.fewer(design, [changed], pagesOf(ramp)),
    mayTakeFewer: (ramp, side) => counter.mayBeFewer(design, [tracedLine(side)], pagesOf(ramp)),
  }
  return noted(
    [
      ...solved.ramps.flatMap((ramp, i) => {
        told?.(i + 1, solved.ramps.length)
        const own = parts.sheets.filter(
          (part) => part.ramp === ramp.name && (part.piece !== null || mayGain(part)),
        )
        const moves = isCurved(ramp) ? quarterMoves(ramp, own, around) : flatMoves(ramp, own, around)
        const found = answers.flatMap((answer) => (answer.ramp === ramp.name ? [answer.key] : []))
        return moves
          .filter(({ path }) => !found.includes(path))
          .flatMap((move) =>
            moveWords(move, (typed) => saved(`ramps.${i}.${move.path}`, typed), design, tries),
          )
          .map((said) => ({ ramp: ramp.name, said }))
      }),
      ...trimMisses(design, parts.sheets.filter(mayGain), around.sizes, saved),
    ],
    design.ramps.map(({ name }) => name),
  )
}

const warnings = (checks: readonly Check[]): ReadonlySet<string> =>
  new Set(checks.filter(({ level }) => level !== 'note').map(({ id, ramp }) => `${ramp} ${id}`))

/** Figures that the program finds anew. */
const movedWords = (before: readonly Answer[], after: readonly Answer[]): string => {
  const moved = after.filter(({ shown }, i) => shown !== before[i]?.shown)
  return moved.length === 0 ? '' : ` (${wordList(moved.map(({ key, shown }) => `${key} is then ${shown}`))})`
}

interface Miss {
  readonly ramp: string
  readonly said: Said
}

/** One note a ramp. */
const noted = (misses: readonly Miss[], names: readonly string[]): readonly Check[] =>
  [...new Set(misses.map(({ ramp }) => ramp))].map((ramp) => {
    const own = misses.flatMap((miss) => (miss.ramp === ramp ? [miss.said] : []))
    return checkOf(
      note('near-miss', tell(...own.flatMap((said, i) => (i === 0 ? [said] : ['; ', said])))),
      ramp,
      names,
    )
  })

/** The first of the values that saves something, or one nearer that saves the same, in words. */
const moveWords = (
  { path, now, values }: Move,
  saved: (typed: string) => ReturnType<Saved>,
  { units }: Design,
  tries: number,
): readonly Told[] => {
  const step = offerSteps[units]
  const shown = (mm: number): string => shownOffer(Math.round(mm / step), units)
  let bad = now
  for (const good of values.slice(0, tries)) {
    const found = saved(shown(good))
    if (found === null) {
      bad = good
      continue
    }
    const savesAsMuch = (mm: number): boolean => saved(shown(mm))?.gain === found.gain
    const nearer = good + Math.sign(now - good) * step
    // most have none nearer, which one look tells
    const mm =
      Math.abs(good - bad) > step + same && savesAsMuch(nearer)
        ? nearestBetween(bad, nearer, units, savesAsMuch)
        : good
    const typed = shown(mm)
    const { moved } = mm === good ? found : saved(typed)!
    return [
      offering(
        `\`${path}: ${typed}\` in place of ${shownOffer(now / step, units)} saves ${found.gain}${moved}`,
        set(path, typed),
      ),
    ]
  }
  return []
}

/** Panels that need no trimming, where that is what a piece misses them by. */
const trimMisses = (
  { stock, ramps }: Design,
  parts: readonly SheetPart[],
  sizes: readonly (readonly [number, number])[],
  saved: Saved,
): readonly Miss[] => {
  const misses = (trim: number): number =>
    parts.reduce(
      (sum, part) =>
        sum + partSize(part).reduce((all, mm) => all + panelLimits(mm, sizes, { ...stock, trim }).length, 0),
      0,
    )
  if (stock.trim < same || misses(stock.trim) === misses(0)) return []
  const gain = saved('stock.trim', '0')
  return gain === null
    ? []
    : [
        {
          ramp: ramps[0]!.name,
          said: offering(
            `panels that need no trimming (\`stock: { trim: 0 }\`) save ${gain.gain}${gain.moved}`,
            setOfFile('stock.trim', '0'),
          ),
        },
      ]
}
