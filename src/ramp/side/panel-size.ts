import type { QuarterDesign, RampDesign, Stock, Units } from '../../design/design.ts'
import { panelSizes, sideSheet } from '../../design/panel-sizes.ts'
import { rangeAt } from '../../design/schema.ts'
import { pathLength } from '../../geometry/length.ts'
import { type Draft, type Trial, warn } from '../check/check.ts'
import { measured, offer, same } from '../check/offer.ts'
import { footing, leastWood } from '../check/practice.ts'
import { backKey, firstThat } from '../check/remedy.ts'
import { offering, type Said, setOfFile, tell, told } from '../check/told.ts'
import type { Side } from './side.ts'

type Sizes = readonly (readonly [number, number])[]

/** How long a part of a height may be that comes out of one of the panels, lying or standing; 0 where none is so wide. mm */
export const panelRoom = (height: number, sizes: Sizes): number =>
  Math.max(
    ...sizes.map(([short, long]) => (height <= short + same ? long : height <= long + same ? short : 0)),
  )

/** `2440 × 1220`, several of them after each other. */
export const panelWords = (sizes: Sizes, units: Units): string =>
  sizes.map(([short, long]) => `${measured(long, units)} × ${measured(short, units)}`).join(' or ')

/** How long its top edge is: what of the deck stands behind the notch, mm. */
const topOf = ({ edges }: Side): number =>
  edges.filter(({ name }) => name === 'top').reduce((sum, { path }) => sum + pathLength(path), 0)

interface Large {
  /** how long it may be at that height; mm */
  readonly room: number
  readonly words: string
  /** the panel that would do, to be bought */
  readonly buy: Said
}

/** A side larger than a panel of the stock, lying or standing; null where one holds it. */
export const largeSide = (
  { length, height }: Pick<Side, 'length' | 'height'>,
  design: RampDesign,
  stock: Stock,
  units: Units,
): Large | null => {
  const sizes = panelSizes(sideSheet(design), stock, units)
  const room = panelRoom(height, sizes)
  if (length <= room + same) return null
  const { atLeast, atLeastMm } = offer(units)
  const ownSizes = stock.panels.length > 0
  // what other sheets need the panel for stays
  const [short, long] = ownSizes ? [0, 0] : stock.panel
  const most = Math.max(long, length, height)
  const [low, far] = [atLeast(Math.max(short, Math.min(length, height))), atLeast(most)]
  const buy = `buy panels of ${far} × ${low} or more`
  return {
    room,
    words: `a side needs ${atLeast(length)} × ${atLeast(height)}, a panel of your stock is ${panelWords(sizes, units)}; `,
    // those of a list of panels are not for one key to change
    buy:
      ownSizes || atLeastMm(most) > rangeAt('stock.panel').most
        ? buy
        : offering(buy, setOfFile('stock.panel', `${low} x ${far}`)),
  }
}

/** A side that comes out of no panel, and how much shorter it would. */
export const panelFindings = (
  side: Side,
  run: number,
  design: QuarterDesign,
  stock: Stock,
  units: Units,
): readonly Draft[] => {
  const large = largeSide(side, design, stock, units)
  if (large === null) return []
  const { room, words, buy } = large
  const { back } = design
  const shorterWay = (trial: Trial): Said => {
    const before = back.from === 'deck' ? 0 : run
    const most = room - run + before
    const key = backKey(design)
    // a deck to stand on, with enough wood behind the notch
    const least = Math.max(key.range.least, before + footing[units], back.value - (topOf(side) - leastWood))
    const shorter =
      most >= least - same
        ? firstThat(trial, design, { ...key, range: { ...key.range, least } }, most, -1, units)
        : null
    if (shorter === null) return ''
    return back.from === 'deck'
      ? told`make the deck ${shorter} or less from lip to back, or `
      : told`make it ${shorter} long or less, or `
  }
  return [warn('panel-size', (trial: Trial) => tell(words, shorterWay(trial), buy))]
}
