import type { QuarterDesign, Stock, Units } from '../../design/design.ts'
import { type Draft, type Trial, warn } from '../check/check.ts'
import { measured, offer, same } from '../check/offer.ts'
import { backKey, firstThat } from '../check/remedy.ts'
import type { Side } from './side.ts'

/** A side larger than a panel of the stock, lying or standing. */
export const panelFindings = (
  side: Side,
  run: number,
  design: QuarterDesign,
  stock: Stock,
  units: Units,
): readonly Draft[] => {
  const { back } = design
  const show = (mm: number): string => measured(mm, units)
  const [short, long] = stock.panel
  const [low, far] = [Math.min(side.height, side.length), Math.max(side.height, side.length)]
  if (low <= short + same && far <= long + same) return []
  // a panel may lie or stand
  const room = side.height <= short + same ? long : side.height <= long + same ? short : 0
  const { atLeast } = offer(units)
  const shorterWay = (trial: Trial): string => {
    const most = back.from === 'deck' ? room - run : room
    const shorter = room > run + 50 ? firstThat(trial, design, backKey(design), most, -1, units) : null
    if (shorter === null) return ''
    return back.from === 'deck'
      ? `make the deck ${shorter.shown} or less, or `
      : `make it ${shorter.shown} long or less, or `
  }
  return [
    warn(
      'panel-size',
      (trial: Trial) =>
        `a side needs ${atLeast(side.length)} × ${atLeast(side.height)}, a panel of your stock is ${show(long)} × ${show(short)}; ` +
        `${shorterWay(trial)}buy panels of ${atLeast(far)} × ${atLeast(low)} or more`,
    ),
  ]
}
