import type { QuarterDesign, Stock, Units } from '../../design/design.ts'
import { panelSizes, sideSheet } from '../../design/panel-sizes.ts'
import { type Draft, type Trial, warn } from '../check/check.ts'
import { measured, offer, same } from '../check/offer.ts'
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

/** A side larger than a panel of the stock, lying or standing. */
export const panelFindings = (
  side: Side,
  run: number,
  design: QuarterDesign,
  stock: Stock,
  units: Units,
): readonly Draft[] => {
  const { back } = design
  const sizes = panelSizes(sideSheet(design), stock, units)
  const [low, far] = [Math.min(side.height, side.length), Math.max(side.height, side.length)]
  const room = panelRoom(side.height, sizes)
  if (side.length <= room + same) return []
  const { atLeast } = offer(units)
  const shorterWay = (trial: Trial): Said => {
    const most = back.from === 'deck' ? room - run : room
    const shorter = room > run + 50 ? firstThat(trial, design, backKey(design), most, -1, units) : null
    if (shorter === null) return ''
    return back.from === 'deck'
      ? told`make the deck ${shorter} or less from lip to back, or `
      : told`make it ${shorter} long or less, or `
  }
  const buy = `buy panels of ${atLeast(far)} × ${atLeast(low)} or more`
  return [
    warn('panel-size', (trial: Trial) =>
      tell(
        `a side needs ${atLeast(side.length)} × ${atLeast(side.height)}, a panel of your stock is ${panelWords(sizes, units)}; `,
        shorterWay(trial),
        // those of a list of panels are not for one key to change
        stock.panels.length > 0
          ? buy
          : offering(buy, setOfFile('stock.panel', `${atLeast(low)} x ${atLeast(far)}`)),
      ),
    ),
  ]
}
