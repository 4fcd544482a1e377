import type { QuarterDesign, Units } from '../../design/design.ts'
import { quote } from '../../length/quote.ts'
import { numberList } from '../../length/word-list.ts'
import { type Finding, note, warn } from '../check/check.ts'
import { measured, offer, rounded, same } from '../check/offer.ts'
import { backKey, firstThat, heightKey } from '../check/remedy.ts'
import { offering, type Said, set, type Told, tell, told, typedWith } from '../check/told.ts'
import type { Quarter, SolvedQuarter } from '../ramp.ts'
import type { Low, Part, Slid, Storing } from '../stored.ts'
import { isWhole } from '../storing/body.ts'
import { pairOf, slideIn, standingBox } from '../storing/storing.ts'

/** A ramp so changed, solved; null where something stops it. */
export type Redraw = (changed: QuarterDesign) => SolvedQuarter | null

/** How far the heads of screws stand out of a side, both sides together, unless they are sunk. mm, common practice, no source */
const heads = 6

/** Whether a ramp goes into the one it is stored in, pushed in from the back on the floor, toe first. */
export const storesFindings = (
  ramp: Quarter,
  outer: Quarter,
  /** null where one of the two could not be solved */
  storing: Storing | null,
  units: Units,
  redraw: Redraw,
): readonly Finding[] => {
  const name = quote(outer.name)
  const ribs = outer.design.sides.count - 2
  const high = isWhole(ramp) && isWhole(outer) ? highWords(ramp, outer, redraw, units) : null
  if (ribs > 0) {
    const twoSides = { of: { ramp: outer.name }, key: 'sides.count', value: '2' } as const
    const two = `give ${name} two sides only (sides: { count: 2 })`
    return [
      warn(
        'stores-fit',
        tell(
          ...(high ? [typedWith(high, twoSides), '; besides, '] : []),
          `${name} has ${ribs === 1 ? 'a middle rib' : `${ribs} middle ribs`}, ${rounded(outer.studLength, units)} from side to side, `,
          `and this ramp is ${rounded(ramp.width, units)} wide${high ? '' : ': it does not go in'}; `,
          high ? `${two} too` : offering(two, twoSides),
        ),
      ),
    ]
  }
  if (storing === null || !isWhole(ramp) || !isWhole(outer)) return []
  const wide = headFindings(ramp, units)
  return high
    ? [warn('stores-fit', high), ...wide]
    : [...depthFindings(ramp, outer, storing, redraw, units), ...wide]
}

/** Too high to go in, and how much lower it does; null where it is not. */
const highWords = (ramp: SolvedQuarter, outer: SolvedQuarter, redraw: Redraw, units: Units): Told | null => {
  const name = quote(outer.name)
  const { y1: top } = standingBox(ramp)
  const under = clearance(outer)
  if (top <= under + same) return null
  const { height } = ramp.design
  const lower = firstThat(
    (changed) => {
      const drawn = redraw(changed)
      return drawn !== null && standingBox(drawn).y1 <= under + same
    },
    ramp.design,
    heightKey(ramp.design),
    // the face at the lip rises by no less than half of what the frame does
    Math.min(height.value, height.value - (top - under) / 2),
    -1,
    units,
  )
  return tell(
    `this ramp is ${measured(top, units)} high, and ${name} has ${measured(under, units)} under the timbers of its deck: it does not go in; `,
    lower === null
      ? `make ${name} ${offer(units).atLeast(top - under)} higher`
      : told`make its ${height.layer} height ${lower} or less, or ${name} as much higher`,
  )
}

const depthFindings = (
  ramp: SolvedQuarter,
  outer: SolvedQuarter,
  { slid: [first, ...others], low, behind }: Storing,
  redraw: Redraw,
  units: Units,
): readonly Finding[] => {
  const name = quote(outer.name)
  const slide = first!
  const words: Said[] = []
  if (behind !== null)
    words.push(
      `${quote(behind)} is kept in ${name} too, and this ramp stops behind it: keep this one elsewhere, or in ${quote(behind)} if it goes in there`,
    )
  if (slide.out > same) {
    // that is reckoned without another before it
    const shorter = behind === null ? shorterWay(ramp, outer, slide, redraw, units) : null
    words.push(
      tell(
        `${behind === null ? 'it' : 'this one'} stands ${measured(slide.out, units)} out at the back of ${name}${tightWords(slide, outer, units)}`,
        ...(shorter === null ? [] : ['; ', shorter]),
      ),
    )
    const other = others.find(({ out }) => out <= same)
    if (other) words.push(`${other.way} it goes in whole`)
  }
  // what to take out for a ramp that is to be kept elsewhere is no help
  if (low.timber !== 'none' && (behind === null || slide.out <= same)) words.push(lowWords(low, name, units))
  return words.length > 0
    ? [
        (behind !== null && slide.out > same ? warn : note)(
          'stores-fit',
          tell(
            'pushed in on the floor, toe first: ',
            ...words.flatMap((one, i) => (i === 0 ? [one] : ['; ', one])),
          ),
        ),
      ]
    : []
}

/** What to do about what stands low at the other's back. */
const lowWords = ({ timber, height, numbers, wheels }: Low, name: string, units: Units): string => {
  const which = wheels
    ? `${numberList('timber', numbers)} of ${name} with its wheels`
    : `the timber in the back bottom corner of ${name}`
  const what = `${which}, ${rounded(height, units)} high`
  if (timber === 'lift over') return `lift it over ${what}`
  const way = wheels
    ? `in the way: take them out, and ${name} does not roll then`
    : 'in the way: leave it out'
  const raise = timber === 'leave out or raise' ? ', or keep this ramp on packing as high' : ''
  return `${what}, ${wheels ? 'are' : 'is'} ${way}${raise}`
}

/** The deck or length that goes in whole. Where it stops it does not depend on what lies behind it. */
const shorterWay = (
  ramp: SolvedQuarter,
  outer: SolvedQuarter,
  { out }: Slid,
  redraw: Redraw,
  units: Units,
): Told | null => {
  const { from, value } = ramp.design.back
  const shorter = firstThat(
    (changed) => {
      const drawn = redraw(changed)
      return drawn !== null && slideIn(pairOf(drawn, outer), 'toe-first').out <= same
    },
    ramp.design,
    backKey(ramp.design),
    value - out,
    -1,
    units,
  )
  return shorter === null
    ? null
    : told`a ${from === 'deck' ? 'deck' : 'length'} of ${shorter} or less goes in whole`
}

const tightWords = ({ tight }: Slid, outer: SolvedQuarter, units: Units): string =>
  tight === null
    ? ''
    : `: ${own(tight.part)} meets ${other(tight.meets, outer)} ${rounded(tight.y, units)} above the floor`

const own = (part: Part): string => {
  switch (part.kind) {
    case 'side':
      return 'its side'
    case 'board':
      return 'its deck board'
    case 'pipe':
    case 'wheels':
      return `its ${part.kind}`
    case 'skin':
    case 'stud':
      return `its ${part.kind}`
    default:
      return part satisfies never
  }
}

const other = (part: Part, outer: SolvedQuarter): string => {
  switch (part.kind) {
    case 'side':
      return 'the side'
    case 'board':
      return 'the deck board'
    case 'pipe':
    case 'wheels':
      return `the ${part.kind}`
    case 'skin':
      return `layer ${part.number} of the skin`
    case 'stud':
      return part.number <= outer.studs.length
        ? `stud ${part.number}`
        : `timber ${part.number} behind the lip`
    default:
      return part satisfies never
  }
}

const headFindings = ({ design }: Quarter, units: Units): readonly Finding[] => {
  const clearance = design.storesInside?.clearance ?? 0
  return clearance >= heads - same
    ? []
    : [
        note(
          'stores-fit',
          offering(
            `a clearance of ${measured(clearance, units)} leaves no room for screws' heads on its sides: sink them, or take ${offer(units).atLeast(heads)} or more`,
            set('stores-inside.clearance', offer(units).atLeast(heads)),
          ),
        ),
      ]
}

/** Height of what lies lowest under the outer ramp's deck, before the back bottom corner. */
const clearance = (outer: SolvedQuarter): number =>
  Math.min(
    outer.side.height,
    ...outer.deckTimbers
      .filter(({ role }) => role === 'deck' || role === 'backing')
      .map(({ y, depth }) => y - depth),
  )
