import type { Mass } from '../design/densities.ts'
import type { Design } from '../design/design.ts'
import { degreesOf } from '../geometry/degrees.ts'
import type { Point } from '../geometry/point.ts'
import type { Part } from '../ramp/stored.ts'
import { gripHoles } from './handle.ts'
import type { Cost } from './list/cost.ts'
import type { CostedLine } from './list/line.ts'
import type { StockTaking, Supplies } from './stock.ts'
import type { SectionPlan } from './timber/boards.ts'

const pair = ({ x, y }: Point): readonly [number, number] => [x, y]
const mass = ({ least, usual, most }: Mass) => ({ least, usual, most })
const partName = (part: Part) => ({ part: part.kind, number: 'number' in part ? part.number : null })

/** As scripts read it: mm, degrees, kg, m². Where a stop leaves the design open all of it is null. */
export const stockFigures = (stock: Supplies | null, design: Design) => ({
  timber: stock && timberFigures(stock.timber),
  ...(stock?.list ? listFigures({ list: stock.list, cost: stock.cost }, design) : { list: null, cost: null }),
  screws: stock?.screws ?? null,
  weight: stock && {
    ...mass(stock.weight),
    ramps: stock.weight.ramps.map((own) => ({
      ramp: own.ramp,
      ...mass(own),
      people: own.people,
      frame: { ...mass(own.frame), people: own.frame.people },
    })),
    parts: stock.weight.parts.map((own) => ({
      mark: own.mark,
      ramp: own.ramp,
      what: own.words,
      ...mass(own),
    })),
  },
  size: stock && sizeFigures(stock),
  storing:
    stock?.storings.map(({ ramp, outer, slid, low, stored }) => ({
      ramp,
      outer,
      ways: slid.map(({ way, depth, out, front, tight }) => ({
        way,
        depth,
        out,
        front,
        tight: tight && {
          x: tight.x,
          y: tight.y,
          own: partName(tight.part),
          meets: partName(tight.meets),
        },
      })),
      low: { way: low.timber, height: low.height },
      stored,
    })) ?? null,
  joints: stock?.joints ?? null,
  wheels:
    stock?.moving.map(({ ramp, balance, handle, grip, rolling }) => ({
      ramp,
      balance: pair(balance),
      handle: handle && pair(handle),
      holes: handle ? gripHoles(handle, grip).map(pair) : [],
      rolling: rolling && {
        diameter: rolling.diameter,
        height: rolling.height,
        count: rolling.count,
        centre: pair(rolling.centre),
        clearance: rolling.clearance,
        recess: rolling.recess,
        tip: { least: degreesOf(rolling.tip.least), most: degreesOf(rolling.tip.most) },
        lift: rolling.lift,
        across: rolling.across,
        timber: rolling.timber,
        rated: rolling.rated,
        hands: mass(rolling.hands),
      },
    })) ?? null,
})

/** Every board with what is sawn from it; mm. */
export const timberFigures = (timber: readonly SectionPlan[]) =>
  timber.flatMap(({ boards }) =>
    boards.map(({ section, length, cuts, left }) => ({ section, length, cuts, left })),
  )

/** The shopping list alone. `cost` is null where the design has no prices. */
export const listFigures = (
  { list, cost }: { readonly list: readonly CostedLine[]; readonly cost: Cost | null },
  { prices }: Pick<Design, 'prices'>,
) => ({
  list: list.map(({ part, what, count, unit, note, each, cost: own }) => ({
    part,
    what,
    count,
    unit,
    note,
    each,
    cost: own,
  })),
  cost: cost && prices ? { currency: `${prices.before}${prices.behind}`.trim(), ...cost } : null,
})

/** `standing`, `carried` and `stored` at the top are those of the largest. */
const sizeFigures = ({ sizes, sets, floor }: StockTaking) => {
  const room = ([l, w, h]: readonly [number, number, number]): number => l * w * h
  const largest = sizes.reduce((a, b) => (room(b.standing) > room(a.standing) ? b : a))
  return {
    standing: largest.standing,
    carried: largest.carried,
    stored: sets.find(({ ramps }) => ramps.includes(largest.ramp))!.size,
    ramps: sizes.map(({ ramp, standing, withRunOut, carried, doors }) => ({
      ramp,
      standing,
      withRunOut,
      carried,
      doors,
    })),
    sets: sets.map(({ ramps: names, size }) => ({ names, size })),
    floor,
  }
}
