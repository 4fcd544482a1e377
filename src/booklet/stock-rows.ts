import type { Design, Units } from '../design/design.ts'
import { massAtMost, massRange } from '../length/mass.ts'
import { showAngle } from '../length/show-angle.ts'
import { numberList, wordList } from '../length/word-list.ts'
import { showLength } from '../length.ts'
import { comesOut } from '../ramp/stored.ts'
import type { Moving } from '../stock/moving.ts'
import type { StockTaking } from '../stock/stock.ts'

type Row = readonly [label: string, words: string]

/** What a ramp weighs, the room it takes, the doors it passes, and how its wheels carry it. */
export const stockRows = (name: string, stock: StockTaking, units: Units): readonly Row[] => {
  const show = (mm: number): string => showLength(mm, units)
  const { least, most, people } = stock.weight.ramps.find(({ ramp }) => ramp === name)!
  const { standing, withRunOut, doors } = stock.sizes.find(({ ramp }) => ramp === name)!
  const rolling = stock.rolling.find(({ ramp }) => ramp === name)
  return [
    [
      'weight',
      `${massRange({ least, most }, units)}, for ${people} to lift; stands on ${show(standing[0])} × ${show(standing[1])}, ${show(standing[2])} high${withRunOut ? `, with its run-out ${show(withRunOut[0])} long` : ''}; ` +
        `passes a door ${show(doors.flat[0])} wide, on edge one ${show(doors.edge[0])} wide, room for hands apart`,
    ],
    ...(rolling ? [['wheels', wheelWords(rolling, units)] as const] : []),
  ]
}

const wheelWords = (
  { count, clearance, tip, lift, across, rated, hands }: NonNullable<Moving['rolling']>,
  units: Units,
): string => {
  const show = (mm: number): string => showLength(mm, units)
  return (
    `${count} wheels, at ${wordList(across.map(show))} from the left, ${show(clearance)} off the floor; they carry from ${showAngle(tip.least, 0)} on, ` +
    `with the toe lifted ${show(lift)} and ${massRange(hands, units)} in the hands; each rated for ${massAtMost(rated, units)} or more`
  )
}

/** What must be out of the way for that. */
const withoutWords = (names: readonly string[], storings: StockTaking['storings']): string => {
  const shut = storings.filter(({ ramp, low }) => names.includes(ramp) && comesOut(low.timber))
  const rolled = distinct(shut.filter(({ low }) => low.wheels).map(({ outer }) => outer))
  const plain = distinct(shut.map(({ outer }) => outer)).filter((outer) => !rolled.includes(outer))
  // one that holds two has each timber out once
  const numbersOf = (one: string): readonly number[] =>
    distinct(shut.flatMap(({ outer, low }) => (outer === one ? low.numbers : []))).sort((p, q) => p - q)
  const out = [
    ...(plain.length > 0 ? [`the timber in the back bottom corner of ${wordList(plain)}`] : []),
    ...rolled.map((outer) => `${numberList('timber', numbersOf(outer))} of ${outer} with its wheels`),
  ]
  return out.length === 0 ? '' : `, without ${wordList(out)}`
}

const distinct = <T>(all: readonly T[]): T[] => [...new Set(all)]

/** What is bought of timber, and the whole of several ramps. */
export const stockLines = (
  { timber, weight, floor, sets, storings }: StockTaking,
  { units, ramps, space }: Design,
): readonly string[] => {
  const show = (mm: number): string => showLength(mm, units)
  const boards = timber.map(({ section, boards: own, least }) => {
    const lengths = [...new Set(own.map(({ length }) => length))].map(
      (length) => `${own.filter((board) => board.length === length).length} of ${show(length)}`,
    )
    return `${section.map((mm) => showLength(mm, units, { decimals: 1 })).join(' × ')}: ${wordList(lengths)}${least ? '' : ' (perhaps not the least)'}`
  })
  const stored = sets.filter(({ ramps: names }) => names.length > 1)
  return [
    ...(boards.length > 0 ? [`timber: ${boards.join('; ')}`] : []),
    ...(ramps.length > 1 ? [`all ramps weigh ${massRange(weight.ramps, units)}`] : []),
    ...stored.map(
      ({ ramps: names, size: [l, w, h] }) =>
        `put away, ${wordList(names)} take ${show(l)} × ${show(w)}, ${show(h)} high${withoutWords(names, storings)}`,
    ),
    ...(floor && space
      ? [
          `of the garage ${floor.area.toFixed(1)} m² (${(floor.area / 0.09290304).toFixed(0)} sq ft) stay free${
            floor.rectangle
              ? `, of that ${show(floor.rectangle[0])} × ${show(floor.rectangle[1])} in one piece`
              : ', though not all ramps stand in one row'
          }`,
        ]
      : []),
  ]
}
