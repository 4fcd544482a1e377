import type { Coping, FlatDesign, QuarterDesign, Units } from '../../design/design.ts'
import type { Range } from '../../design/plausible.ts'
import { rampPath, rangeAt } from '../../design/schema.ts'
import { thinSide } from '../../design/section.ts'
import type { Trial } from './check.ts'
import { offerSteps, same, sectionText, shownOffer } from './offer.ts'
import { offering, type Said, set, type Told, tell } from './told.ts'

/** One length of a design that a remedy may change. */
export interface Key<D = QuarterDesign> {
  /** its path in the ramp */
  readonly path: string
  readonly range: Range
  readonly typed: (design: D, mm: number) => D
  /** what is typed for such a length, where it is not the length alone */
  readonly text?: (design: D, shown: string, units: Units) => string
}

const rangeOf = (key: string): Range => rangeAt(`${rampPath('quarter')}.${key}`)

type By<K extends Coping['by']['kind']> = Extract<Coping['by'], { kind: K }>

const reveal = (key: 'up' | 'out'): Key => ({
  path: `coping.${key}`,
  range: rangeOf(`coping.${key}`),
  typed: (d, mm) => ({
    ...d,
    coping: { ...d.coping!, by: { ...(d.coping!.by as By<'reveals'>), [key]: mm } },
  }),
})

const cutOut = (key: 'along' | 'down'): Key => ({
  path: `coping.notch.${key}`,
  range: rangeOf(`coping.notch.${key}`),
  typed: (d, mm) => ({
    ...d,
    coping: { ...d.coping!, by: { ...(d.coping!.by as By<'notch'>), [key]: mm } },
  }),
})

export const upKey = reveal('up')
export const outKey = reveal('out')
export const alongKey = cutOut('along')
export const downKey = cutOut('down')

export const widthKey: Key = {
  path: 'width',
  range: rangeOf('width'),
  typed: (d, width) => ({ ...d, width }),
}
export const toeKey: Key = { path: 'toe', range: rangeOf('toe'), typed: (d, toe) => ({ ...d, toe }) }
export const chamferKey: Key = {
  path: 'chamfer.leg',
  range: rangeOf('chamfer.leg'),
  typed: (d, chamfer) => ({ ...d, chamfer }),
}
/** How thick the wheels are, their plates as far off the floor as before. */
export const wheelKey: Key = {
  path: 'wheels.diameter',
  range: rangeOf('wheels.diameter'),
  typed: (d, diameter) => ({ ...d, wheels: { ...d.wheels!, diameter } }),
}
export const everyKey: Key = {
  path: 'studs.every',
  range: rangeOf('studs.every'),
  typed: (d, every) => ({ ...d, studs: { ...d.studs, every } }),
}
/** The same of a flat, and its width. */
export const flatEveryKey: Key<FlatDesign> = {
  path: 'studs.every',
  range: rangeAt(`${rampPath('flat')}.studs.every`),
  typed: (d, every) => ({ ...d, studs: { ...d.studs, every } }),
}
export const flatWidthKey: Key<FlatDesign> = {
  path: 'width',
  range: rangeAt(`${rampPath('flat')}.width`),
  typed: (d, width) => ({ ...d, width }),
}
/** From one timber to the next under the deck board. */
export const deckKey: Key = {
  path: 'studs.deck',
  range: rangeOf('studs.deck'),
  typed: (d, deck) => ({ ...d, studs: { ...d.studs, deck } }),
}
/** How thick the deck board is. */
export const boardKey: Key = {
  path: 'deck-board',
  range: rangeOf('deck-board'),
  typed: (d, thickness) => ({ ...d, deckBoard: { ...d.deckBoard!, thickness } }),
  text: (d, shown) => `${shown} ${d.deckBoard!.material}`,
}
/** How deep the studs are ripped. */
export const depthKey: Key = {
  path: 'studs.section',
  range: rangeOf('studs.section'),
  typed: (d, depth) => ({ ...d, studs: { ...d.studs, section: [thinSide(d.studs.section), depth] } }),
  text: (d, shown, units) => sectionText(thinSide(d.studs.section), shown, units),
}
export const stepBackKey: Key = {
  path: 'run-out.step-back',
  range: rangeOf('run-out.step-back'),
  typed: (d, back) => ({ ...d, runOut: { kind: 'stepped', back } }),
}
export const heightKey = ({ height: { layer } }: QuarterDesign): Key => ({
  path: `height.${layer}`,
  range: rangeOf(`height.${layer}`),
  typed: (d, value) => ({ ...d, height: { layer, value } }),
})
export const radiusKey = ({ transition: { circle } }: QuarterDesign): Key => ({
  path: `transition.circle.${circle.layer}`,
  range: rangeOf(`transition.circle.${circle.layer}`),
  typed: (d, radius) => ({ ...d, transition: { ...d.transition, circle: { ...circle, radius } } }),
})
export const tangentKey = ({ transition: { tangent } }: QuarterDesign): Key => ({
  path: `transition.tangent.${tangent.layer}`,
  range: rangeOf(`transition.tangent.${tangent.layer}`),
  typed: (d, height) => ({ ...d, transition: { ...d.transition, tangent: { ...tangent, height } } }),
})
/** The deck or the whole side, whichever is said. */
export const backKey = ({ back: { from } }: QuarterDesign): Key => ({
  path: from,
  range: rangeOf(from),
  typed: (d, value) => ({ ...d, back: { from, value } }),
})

/** A value that works: mm, its words as they may be typed, and the offer to type it. */
export interface Offered extends Told {
  readonly mm: number
}

/** A value of a key as it is offered. */
export const offered = <D>(
  design: D,
  { path, text }: Key<D>,
  mm: number,
  shown: string,
  units: Units,
): Offered => ({ mm, ...offering(shown, set(path, text ? text(design, shown, units) : shown)) })

/**
 * The first value from `from` upward (1) or downward (-1), in steps that can be typed, with which the trial holds; null where
 * none within the key's range does. Steps grow by a quarter and are halved back, so where values work here and there it is
 * the first of some of them.
 */
export const firstThat = <D = QuarterDesign>(
  trial: Trial<D>,
  design: D,
  key: Key<D>,
  from: number,
  towards: 1 | -1,
  units: Units,
): Offered | null => {
  const { range, typed } = key
  const step = offerSteps[units]
  const start =
    towards > 0
      ? Math.ceil((Math.max(from, range.least) - same / 2) / step)
      : Math.floor((Math.min(from, range.most) + same / 2) / step)
  const end = towards > 0 ? Math.floor((range.most + same) / step) : Math.ceil((range.least - same) / step)
  const most = (end - start) * towards
  const good = (count: number): boolean => trial(typed(design, (start + count * towards) * step))
  let bad = -1
  for (let count = 0; count <= most; ) {
    if (good(count)) {
      let best = count
      while (best - bad > 1) {
        const middle = Math.floor((bad + best) / 2)
        if (good(middle)) best = middle
        else bad = middle
      }
      const found = start + best * towards
      return offered(design, key, found * step, shownOffer(found, units), units)
    }
    bad = count
    const next = count + Math.max(1, Math.floor(count / 4))
    count = count < most && next > most ? most : next
  }
  return null
}

/** Warnings of a pipe badly seated: a value beside one that brings them is worth a little more change. */
const illSeated = ['notch-wood', 'notch-wall', 'pipe-behind-face', 'pipe-under-deck'] as const

/** How much more, mm. */
const near = 60

/** `firstThat`, or the first near to it that brings none of these warnings; where not said, that seats the pipe well. */
export const quietThat = (
  trial: Trial,
  design: QuarterDesign,
  key: Key,
  from: number,
  towards: 1 | -1,
  units: Units,
  without: readonly string[] = illSeated,
): Offered | null => {
  const first = firstThat(trial, design, key, from, towards, units)
  if (first === null) return null
  const quiet: Trial = (changed) => trial(changed, without)
  const { least, most } = key.range
  const range = { least: Math.max(least, first.mm - near), most: Math.min(most, first.mm + near) }
  return firstThat(quiet, design, { ...key, range }, first.mm, towards, units) ?? first
}

/** The end of the words of a value that works, where it brings a warning all the same: its id, and what it says. */
export const bringing = (
  trial: Trial,
  design: QuarterDesign,
  { typed }: Key,
  { mm }: Offered,
  [id, says]: readonly [id: string, says: string],
): string => (trial(typed(design, mm), [id]) ? '' : ` (then ${says})`)

/** `firstThat` for several keys of one design. */
export const firstOf =
  (design: QuarterDesign, units: Units, trial: Trial) =>
  (key: Key, from: number, towards: 1 | -1): Offered | null =>
    firstThat(trial, design, key, from, towards, units)

/** Ways out as the end of a message, or what is said where there is none. */
export const orWays = (ways: readonly (Said | null)[], otherwise: Said): Told => {
  const found = ways.filter((way) => way !== null)
  return found.length > 0
    ? tell(...found.flatMap((way, i) => (i === 0 ? [way] : [', or ', way])))
    : tell(otherwise)
}

/** Said where no one number puts it right: what else stops cannot be seen yet. */
export const manyFaults = 'leave out the coping and the chamfer first, and put them back one by one'
