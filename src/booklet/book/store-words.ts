import { isCurved } from '../../design/kind-traits.ts'
import { numberList, wordList } from '../../length/word-list.ts'
import { bestWay, comesOut, type Storing } from '../../ramp/stored.ts'
import type { Book } from './book.ts'

type Stored = Pick<Storing, 'ramp' | 'outer' | 'low' | 'stored'>

const putAway = <S extends Stored>(storings: readonly S[]): readonly S[] =>
  storings.filter(({ stored }) => stored)

/** The ramps for which timbers of this one come out. */
const outFor = (storings: readonly Stored[], outer: string): readonly Stored[] =>
  putAway(storings).filter((one) => one.outer === outer && comesOut(one.low.timber))

const isOrAre = (names: readonly string[]): string =>
  `${wordList(names)} ${names.length === 1 ? 'is' : 'are'}`

/** ` (it is taken out while inner is kept inside: heads left bare)`, of a timber as on the paper; empty where it stays. */
export const outWhile = ({ stock }: Book, outer: string, number: number, count = 1): string => {
  const names = outFor(stock.storings, outer).flatMap(({ ramp, low }) =>
    low.numbers.includes(number) ? [ramp] : [],
  )
  const it = count === 1 ? 'it is' : 'they are'
  return names.length === 0 ? '' : ` (${it} taken out while ${isOrAre(names)} kept inside: heads left bare)`
}

/** `timber 11 of outer` and so on: whose screws nobody fills or paints over. */
export const bareTimbers = ({ stock, solved }: Book): readonly string[] =>
  solved.ramps.flatMap(({ name }) => {
    const [first] = outFor(stock.storings, name)
    return first ? [`${numberList('timber', first.low.numbers)} of ${name}`] : []
  })

const timbersOf = ({ outer, low }: Stored): string =>
  `${numberList('timber', low.numbers)} of ${outer}${low.wheels ? ' with its wheels, low' : ', on the floor'} at its back`

/** The ramps around one, the outermost first. */
const around = (storings: readonly Storing[], { outer }: Storing): readonly Storing[] => {
  const own = storings.find(({ ramp }) => ramp === outer)
  return own ? [...around(storings, own), own] : []
}

/** Outermost first: nobody lifts or pushes a ramp with another loose in it. */
const inOrder = (storings: readonly Storing[]): readonly Storing[] =>
  storings.toSorted((a, b) => around(storings, a).length - around(storings, b).length)

/** How each ramp comes into the one that it is kept in. */
export const storeSteps = (book: Book): readonly { readonly ramp: string; readonly said: string }[] => {
  const storings = putAway(book.stock.storings)
  return inOrder(storings).flatMap((storing) => {
    const said = storeStep(book, storings, storing)
    return said === null ? [] : [{ ramp: storing.ramp, said }]
  })
}

const storeStep = (
  { solved, show, fine }: Book,
  storings: readonly Storing[],
  storing: Storing,
): string | null => {
  const { ramp, outer, slid } = storing
  const own = solved.ramps.find(({ name }) => name === outer)
  if (!own || !isCurved(own)) return null
  const inner = solved.ramps.find(({ name }) => name === ramp)
  const best = bestWay({ slid })
  const room = inner ? (own.width - 2 * own.design.sides.thickness - inner.width) / 2 : 0
  const { out, over, again } = timberWords(storings, storing)
  const first = [
    ...(inner?.design.runOut?.kind === 'sheet' ? ['take its run-out off'] : []),
    ...out,
    ...(over.length > 0 ? [`lift it over ${over.join(', then over ')}`] : []),
  ]
  const before =
    out.length + over.length > 0 ? `${first.join('; ')}. Push ${ramp}` : [...first, 'push it'].join('; ')
  return `Put ${ramp} into ${outer}: ${before} in from the back, level on the floor, ${best.way.replace('-', ' ')}, until its foremost edge is ${show(Math.max(0, best.front))} behind the toe of ${outer}'s sides, not of its skin${room > 0 ? `, with ${fine(room)} of room at either side, less what bolt heads take` : ''}${best.out > 0.5 ? `: ${show(best.out)} of it stay outside` : ', all of it inside'}.${again}`
}

/** What is done about low timbers as this ramp goes in: each is out before something covers its screws, and once. */
const timberWords = (storings: readonly Storing[], storing: Storing) => {
  const { ramp, outer, low } = storing
  const beside = outFor(storings, outer)
  const held = outFor(storings, ramp)
  const nested = around(storings, storing).length > 0
  const outHere = !nested && beside[0] === storing
  const still = low.wheels ? ', and do not roll it then' : ''
  const out = [
    ...(held[0]
      ? [
          `take out ${timbersOf(held[0])}: ${wordList(held.map((one) => one.ramp))} goes in there, and ${outer} covers its screws`,
        ]
      : []),
    ...(outHere ? [`take out ${timbersOf(storing)}${still}`] : []),
  ]
  const over = [...around(storings, storing), storing]
    .filter((one) => one.low.timber === 'lift over' && outFor(storings, one.outer).length === 0)
    .map(timbersOf)
  const numbers = [...(outHere ? low.numbers : []), ...(held[0]?.low.numbers ?? [])]
  const names = [...(outHere ? beside : [storing]), ...held].map((one) => one.ramp)
  const [timber, their] = numbers.length === 1 ? ['timber', 'its'] : ['timbers', 'their']
  const again =
    numbers.length === 0
      ? ''
      : ` Screw the ${timber} in again once ${isOrAre(names)} out; ${their} screws come from the outsides, heads bare.`
  return { out, over, again }
}
