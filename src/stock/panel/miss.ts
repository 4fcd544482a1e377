import type { Design, QuarterDesign } from '../../design/design.ts'
import { isCurved } from '../../design/kind-traits.ts'
import { showLength, type Units } from '../../length.ts'
import { hasStop } from '../../ramp/check/check.ts'
import { offerSteps, same } from '../../ramp/check/offer.ts'
import { backKey, heightKey, type Key, radiusKey } from '../../ramp/check/remedy.ts'
import { draftQuarter } from '../../ramp/kinds/quarter.ts'
import { aloneAs, type WholeDesign } from '../../ramp/ramp.ts'
import { partsOf } from '../parts.ts'
import type { SheetPart } from '../sheet-part.ts'
import { nothingKnown } from './known.ts'
import type { PanelKind } from './pack.ts'
import { pairFit } from './pair.ts'
import { pairing } from './pairing.ts'
import { type LaidSheet, pieceOf } from './panels.ts'

/** Both sides of a ramp that do not come out of one panel: by how much, and what would bring them there. */
export interface Miss {
  readonly ramp: string
  /** mm of the panel's width, or of its length, whichever is less */
  readonly by: number
  /** as they are typed in that ramp */
  readonly ways: readonly string[]
}

/** For each ramp whose sides lie on two panels of a sheet though each fits one: tried on the whole ramp before it is said. */
export const missesOf = (
  design: Design,
  { ramps }: WholeDesign,
  { parts, panels, lost, sizes }: LaidSheet,
): readonly Miss[] =>
  ramps.flatMap((ramp): readonly Miss[] => {
    const [left, right] = parts.filter((part) => part.faced && part.ramp === ramp.name)
    if (!isCurved(ramp) || !left || !right || left.piece || lost.length > 0) return []
    if (panels.some(({ clamped }) => clamped > 1)) return []
    const homes = [left, right].map((side) =>
      panels.find(({ pieces }) => pieces.some(({ part }) => part === side)),
    )
    if (!homes[0] || homes[0] === homes[1]) return []
    const kinds = sizes.map(([width, length]): PanelKind => ({ width, length, count: 1 }))
    if (together(left, right, design, kinds)) return []
    return [
      { ramp: ramp.name, by: missBy(left, right, design, kinds), ways: waysOut(ramp.design, design, kinds) },
    ]
  })

const sawOf = ({ stock, units }: Design) => ({ kerf: stock.kerf, trim: stock.trim, step: offerSteps[units] })

const together = (a: SheetPart, b: SheetPart, design: Design, kinds: readonly PanelKind[]): boolean => {
  const saw = sawOf(design)
  const pieces = [a, b].map((part) => pieceOf(part, false, 1))
  return pairing(pieces, kinds, saw, nothingKnown()).together(0, 1)
}

/** What the largest panel is too narrow by, or too short. */
const missBy = (a: SheetPart, b: SheetPart, design: Design, kinds: readonly PanelKind[]): number => {
  const { kerf, trim } = sawOf(design)
  const largest = kinds.reduce((most, kind) =>
    kind.length * kind.width > most.length * most.width ? kind : most,
  )
  const [width, length] = [largest.width - 2 * trim, largest.length - 2 * trim]
  const [first, second] = [a, b].map((part) => pieceOf(part, false, 1).blank)
  const over = (along: number, across: number): number => {
    const fit = pairFit(first!, second!, kerf, along, [false, true], across)
    return fit ? fit.width - across : Number.POSITIVE_INFINITY
  }
  return Math.min(over(length, width), over(width, length))
}

/** The nearest height, radius and deck with which both sides fit and nothing else stops. */
const waysOut = (ramp: QuarterDesign, design: Design, kinds: readonly PanelKind[]): readonly string[] => {
  const { units, stock } = design
  const trial = (changed: QuarterDesign): boolean => {
    const { whole, drafts } = draftQuarter(changed, units, stock)
    if (!whole || hasStop(drafts)) return false
    const [left, right] = partsOf({ ...design, ramps: [changed] }, aloneAs(whole)).sheets.filter(
      (part) => part.faced,
    )
    return together(left!, right!, design, kinds)
  }
  const { circle } = ramp.transition
  const step = offerSteps[units]
  /** the nearest below that holds, in steps that can be typed, down to a part of what was asked: below that it is another ramp */
  const nearest = (key: Key, from: number, part: number): number | null => {
    const works = (count: number): boolean => trial(key.typed(ramp, count * step))
    let good = Math.ceil(Math.max(key.range.least, from * part) / step - same)
    let bad = Math.ceil(from / step - same)
    if (good >= bad || !works(good)) return null
    while (bad - good > 1) {
      const middle = Math.floor((good + bad) / 2)
      if (works(middle)) good = middle
      else bad = middle
    }
    return good * step
  }
  const lower = nearest(heightKey(ramp), ramp.height.value, 0.75)
  const tighter = nearest(radiusKey(ramp), circle.radius, 0.75)
  const shorter = nearest(backKey(ramp), ramp.back.value, 0.5)
  const typed = (mm: number): string => showLength(mm, units)
  return [
    ...(lower !== null ? [`height: { ${ramp.height.layer}: ${typed(lower)} }`] : []),
    ...(tighter !== null ? [`circle: { ${circle.layer}: ${typed(tighter)} }`] : []),
    ...(shorter !== null ? [`${ramp.back.from}: ${typed(shorter)}`] : []),
  ]
}

/** A miss that would be shown as 0 is less than a step of the tape. */
const missed = (by: number, units: Units): string =>
  by < offerSteps[units] / 2 ? `less than ${showLength(offerSteps[units], units)}` : showLength(by, units)

/** `both sides of outer miss one panel by 34; one takes them with height: { deck: 610 }` */
export const missWords = ({ ramp, by, ways }: Miss, several: boolean, { units }: Design): string =>
  `both sides${several ? ` of ${ramp}` : ''} miss one panel by ${missed(by, units)}` +
  (ways.length > 0 ? `; ${ways.map((way) => `\`${way}\``).join(' or ')} brings them there` : '')
