import type { QuarterDesign, RampDesign, Stock, Units } from '../../design/design.ts'
import { panelSizes, sideSheet } from '../../design/panel-sizes.ts'
import { inch } from '../../geometry/inch.ts'
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
  /** a panel that would do, to be bought; null where none is sold so large */
  readonly buy: Said | null
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
  const { atLeast } = offer(units)
  return {
    room,
    words: `a side needs ${atLeast(length)} × ${atLeast(height)}, a panel of your stock is ${panelWords(sizes, units)}; `,
    buy: boughtFor(length, height, stock, units),
  }
}

/**
 * Sizes of plywood that most yards sell or order, short side first, the smallest first; common practice, no source.
 */
const soldPanels: Readonly<Record<Units, Sizes>> = {
  mm: [
    [1220, 2440],
    [1250, 2500],
    [1220, 3050],
    [1500, 3000],
    [1525, 3050],
  ],
  in: [
    [48 * inch, 96 * inch],
    [48 * inch, 120 * inch],
    [60 * inch, 120 * inch],
  ],
}

export const inPieces = 'let each side be pieces that meet over a stud'

export const noneSold = `hardly any panel is sold so large: ${inPieces}`

/** null where none that is sold is so large. */
const boughtFor = (length: number, height: number, stock: Stock, units: Units): Said | null => {
  const ownSizes = stock.panels.length > 0
  // what other sheets need the panel for stays
  const [least, most] = ownSizes ? [0, 0] : stock.panel
  const sold = soldPanels[units].find(
    (size) => size[0] >= least - same && size[1] >= most - same && length <= panelRoom(height, [size]) + same,
  )
  if (!sold) return null
  const [low, far] = sold.map((mm) => offer(units).nearest(mm))
  const buy = `buy panels of ${far} × ${low}`
  // those of a list of panels are not for one key to change
  return ownSizes ? buy : offering(buy, setOfFile('stock.panel', `${low} x ${far}`))
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
  const otherWay = (shorter: Said): Said =>
    buy ?? (shorter === '' ? `${noneSold}, where one has room for that, or make the ramp smaller` : inPieces)
  return [
    warn('panel-size', (trial: Trial) => {
      const shorter = shorterWay(trial)
      return tell(words, shorter, otherWay(shorter))
    }),
  ]
}
