import type { QuarterDesign } from '../../../design/design.ts'
import { isCurved } from '../../../design/kind-traits.ts'
import { capital } from '../../../length/capital.ts'
import { ownUnits } from '../../../length/own-units.ts'
import { numberList, wordList } from '../../../length/word-list.ts'
import { pilotDrill } from '../../../ramp/frame/screw-lengths.ts'
import { liesWords } from '../../../ramp/frame/timber.ts'
import type { SolvedRamp } from '../../../ramp/ramp.ts'
import { screwHead } from '../../../ramp/screws/screw-sort.ts'
import { frameScrews } from '../../../stock/screws.ts'
import { squareView, stageView } from '../../views/stage-view.ts'
import { type Block, named, step } from '../block.ts'
import { type Book, hasSkin, screwsOf } from '../book.ts'
import { endWords } from '../end-words.ts'
import { stage } from '../stage.ts'
import { outWhile } from '../store-words.ts'
import { timberName } from '../timber-words.ts'
import { blockScrews, blockSteps } from './blocks.ts'

/** Of its sides, mm. */
export const frameTop = (ramp: SolvedRamp): number =>
  isCurved(ramp) ? ramp.transition.heights.frame : ramp.heights.frame

/** Said of the screws in a timber's ends: how many in each, how long, and the drill; empty where there are none. */
export const endScrews = (book: Book, ramp: SolvedRamp, again: boolean): string => {
  const own = screwsOf(book, ramp, 'frame')
  const [usual] = own
  if (!usual) return ''
  const all = own.reduce((sum, { count }) => sum + count, 0) - blockScrews(book, ramp)
  const plated = own.slice(1).map(({ length }) => `${said(book, length)} through a plate`)
  if (again) {
    const told = endWords(book, book.solved.ramps[0]!)
    const other = endWords(book, ramp).filter((words) => !told.includes(words))
    return `As before, each end of a timber takes ${frameScrews} screws of ${[said(book, usual.length), ...plated].join(', ')}, ${all} in all.${other.length > 0 ? ` ${capital(other.join('; '))}.` : ''}`
  }
  return (
    `Each end of a timber takes ${frameScrews} screws of ${[said(book, usual.length), ...plated].join(', ')}, ${screwHead('frame')}, through the side, ${all} in all. ` +
    `They sit where no screw from above meets them. ${capital(endWords(book, ramp).join('; '))}. Mark them on the outside of both sides alike. ${ramp.design.sides.count > 2 ? 'Through a rib they go from the open bay; the timber behind takes its own at a slant, from its two faces, low down. ' : ''}` +
    `Drill ${ownUnits(pilotDrill, book.units)} before each, near the end of a timber above all. A stud's upper ${ramp.studs.some(({ lies }) => lies === 'edge') ? 'edge' : 'face'} lies flush with the ${isCurved(ramp) ? 'curve, square to it' : 'upper edge of the sides'}.`
  )
}

/** The sizes of a frame's screws: the usual one, and that of timbers on plates; null where none is short enough. */
const frameSizes = (book: Book, ramp: SolvedRamp): readonly (string | null)[] =>
  screwsOf(book, ramp, 'frame').map(({ length }) => (length === null ? null : book.screw('frame', length)))

/** `both screws in each end`: of timbers by their indices, with their size where any take longer ones; then those on plates, in a sentence of their own. */
const endScrewsOf = (
  ramp: SolvedRamp,
  [usual, plated]: readonly (string | null)[],
  indices: readonly number[],
): { readonly said: string; readonly apart: string } => {
  if (ramp.splices.length === 0 || !usual || !plated) return { said: 'both screws in each end', apart: '' }
  const on = indices.filter((i) => ramp.splices.some(({ timber }) => timber === i))
  // plates lie on the right of each rib alone
  const bare =
    ramp.design.sides.count > 2 ? `, of ${usual} in each on the left of a rib, where no plate is` : ''
  const long = `${frameScrews} screws of ${plated} in each end${bare}`
  if (on.length === indices.length) return { said: long, apart: bayFirst(ramp) }
  const [first] = on
  const noun = first === undefined || first < ramp.studs.length ? 'stud' : 'timber'
  const numbers = numberList(
    noun,
    on.map((i) => i + 1),
  )
  return {
    said: `${frameScrews} screws of ${usual} in each end`,
    apart: on.length > 0 ? ` ${capital(numbers)}: ${long}.${bayFirst(ramp)}` : '',
  }
}

/** The long screw goes through rib and plate from the bay on the left, while that is open. */
const bayFirst = (ramp: SolvedRamp): string =>
  ramp.design.sides.count > 2
    ? ` Where a plate lies on a rib, the rightmost bay as seen from ${isCurved(ramp) ? 'the toe' : 'its first end'} comes first, then the next to its left: through a rib the long screws go from its left face.`
    : ''

const said = ({ screw }: Book, length: number | null): string =>
  length === null ? 'no usual length' : screw('frame', length)

/** In the order in which the frame grows, each group with its picture. */
export const frameSteps = (book: Book, ramp: SolvedRamp): readonly Block[] => {
  const { width, units, show, drawn } = book
  const curved = isCurved(ramp)
  const screws = frameSizes(book, ramp)
  const where = curved ? 'up the curve' : 'from the end'
  const [front, rear] = curved ? ['toe', 'back'] : ['near end', 'far end']
  let number = 0
  const done: number[] = []
  /** Timbers that are set now, by their indices, and what is said of them. */
  const group = (now: readonly number[], said: readonly string[]): readonly Block[] => {
    const before = [...done]
    done.push(...now)
    const first = number + 1
    number += said.length
    return [
      stage(
        (ratio) =>
          drawn(`${ramp.name} with ${now.join()} ${ratio}`, () => stageView(ramp, units, ratio, now, before)),
        { width: ramp.length, height: frameTop(ramp) },
        (room) => said.map((one, i) => step(first + i, one, room)),
        width,
      ),
    ]
  }
  const studWords = (i: number): string => {
    const stud = ramp.studs[i]!
    return `${timberName(book, ramp, i)}, ${liesWords(stud)}, its middle ${show(stud.at)} ${where}`
  }
  const corners = cornersOf(ramp)
  const later = ramp.studs.map((_, i) => i).filter((i) => !corners.includes(i))
  const behind = ramp.deckTimbers.map((_, i) => ramp.studs.length + i).filter((i) => !corners.includes(i))
  const timberWords = (i: number, held: string): string =>
    i < ramp.studs.length
      ? `Screw ${studWords(i)}, ${held}${ramp.studs[i]!.role === 'seam' ? ': it carries a seam of the skin' : ''}.`
      : deckWords(book, ramp, i - ramp.studs.length, held)
  const bays = ramp.design.sides.count > 2 ? ' in every bay' : ''
  return [
    step(
      ++number,
      `Mark every timber on the inside of ${ramp.design.sides.count > 2 ? 'all sides and ribs' : 'both sides'}: ${curved ? 'studs by a tape bent along the sawn edge, the others along the bottom edge and squared up from there, both from the toe' : 'from one end'}; half a timber to either side of the mark, an X where it goes.${behindFoot(book, ramp)}`,
      width,
    ),
    ...(corners.length > 0
      ? group(corners, [
          'Stand the sides up, bottoms down on a level floor.',
          ...corners.map((i) => timberWords(i, `one screw in each end${bays} for now`)),
        ])
      : []),
    stage(
      (ratio) => squareView(ramp, units, ratio, corners),
      { width: ramp.length, height: ramp.width },
      (room) => [
        step(
          ++number,
          `Measure from corner to opposite corner, left ${front} to right ${rear} and right ${front} to left ${rear}, along the floor and across the top. Push the frame until both are equal, then drive the second screws. Measure once more.`,
          room,
        ),
      ],
      width,
    ),
    ...(later.length > 0 ? group(later, [studsWords(ramp, later, screws)]) : []),
    ...(behind.length > 0 ? group(behind, [behindWords(book, ramp, behind, screws)]) : []),
    ...blockSteps(book, ramp).map((one) => step(++number, one, width)),
    named(`rubber ${ramp.name}`, step(++number, rubberWords(ramp), width)),
    step(
      ++number,
      `Measure both diagonals again${hasSkin(ramp) ? ' before any skin goes on: the skin keeps the frame as it is then' : ', before anything goes on the frame'}.`,
      width,
    ),
  ]
}

/** What keeps it from sliding, put on while it is light: its bottom edges are sealed, and skin and deck come later. */
const rubberWords = ({ design }: SolvedRamp): string =>
  `Turn the frame over while it is bare and light, tack the rubber strip under the bottom edges of its sides${design.sides.count > 2 ? ' and ribs' : ''} and set it down again: it helps to keep the ramp from sliding.`

/** Timbers behind the end of the bottom edge, where the back corner is cut off: how they are measured then. */
const behindFoot = (book: Book, ramp: SolvedRamp): string => {
  if (!isCurved(ramp)) return ''
  const foot = ramp.length - ramp.design.chamfer
  const far = ramp.deckTimbers.flatMap(({ x, role }, i) =>
    x > foot && role !== 'wheels'
      ? [`timber ${ramp.studs.length + i + 1} at ${book.show(ramp.length - x)}`]
      : [],
  )
  return far.length > 0
    ? ` Behind the end of the bottom edge, along the top from the back edge: ${wordList(far)}.`
    : ''
}

/** The timbers that hold the corners of a frame while it is squared, by their indices: the first stud; at the back what lies lowest and what lies highest, else the last stud. */
const cornersOf = ({ studs, deckTimbers }: SolvedRamp): readonly number[] => {
  const last = studs.length - 1
  if (last < 0) return []
  const back = Math.max(...deckTimbers.map(({ x }) => x))
  const rear = deckTimbers
    .map(({ x, role }, i) => ({
      i: studs.length + i,
      corner: role === 'back' || role === 'wheels' || x === back,
    }))
    .filter(({ corner }) => corner)
    .map(({ i }) => i)
  return [0, ...(rear.length > 0 ? rear : last > 0 ? [last] : [])]
}

const deckWords = (book: Book, ramp: SolvedRamp, i: number, held: string): string => {
  const { show } = book
  const timber = ramp.deckTimbers[i]!
  const name = timberName(book, ramp, ramp.studs.length + i)
  if (timber.role === 'wheels' && isCurved(ramp))
    return `Screw ${name}, its broad face along the cut of the back corner, its middle ${cutWords(book, ramp.design, ramp.wheels!.recess)}${outWhile(book, ramp.name, ramp.studs.length + i + 1)}, ${held}.`
  return `Screw ${name}, ${liesWords(timber)}, its middle ${show(timber.x)} behind the toe${levelWords(book, ramp, i)}, ${held}.`
}

/** Less is told as flush, mm. */
const flush = 0.5

/** Of the timber that lies along the cut of the back bottom corner: its middle is that of the cut. */
const cutWords = ({ show }: Book, { chamfer }: QuarterDesign, recess: number): string =>
  `${show(chamfer * Math.SQRT1_2)} from either corner of the cut, its face ${recess < flush ? 'flush with it' : `${show(recess)} inside it`}`

/** Where the top of a timber lies, or of several that lie so. */
const levelWords = (book: Book, ramp: SolvedRamp, i: number, count = 1): string => {
  const top = count > 1 ? 'their tops' : 'its top'
  switch (ramp.deckTimbers[i]!.role) {
    case 'pipe':
      return `, ${top} level with the notch's floor`
    case 'back':
      return `, on the floor${outWhile(book, ramp.name, ramp.studs.length + i + 1, count)}`
    default:
      return `, ${top} level with the side's top`
  }
}

/** All studs between the corners at once: where each goes stands in the table. */
const studsWords = (
  ramp: SolvedRamp,
  indices: readonly number[],
  screws: readonly (string | null)[],
): string => {
  const studs = numberList(
    'stud',
    indices.map((i) => i + 1),
  )
  const order = isCurved(ramp) ? 'up the curve, one after the other' : 'one after the other'
  const marks = indices.length === 1 ? 'its mark' : `their marks, ${order}`
  const { said, apart } = endScrewsOf(ramp, screws, indices)
  return `Screw ${studs} on ${marks}, as the table says: ${said}.${apart} ${tickWords(indices)}`
}

const tickWords = (indices: readonly number[]): string =>
  `Tick ${indices.length === 1 ? 'it' : 'each'} in the table.`

/** Timbers behind the lip, by where their tops lie. */
const behindWords = (
  book: Book,
  ramp: SolvedRamp,
  indices: readonly number[],
  screws: readonly (string | null)[],
): string => {
  const groups = new Map<string, number[]>()
  for (const i of indices) {
    const said = levelWords(book, ramp, i - ramp.studs.length)
    groups.set(said, [...(groups.get(said) ?? []), i + 1])
  }
  const told = [...groups.values()].map(
    (numbers) =>
      `${wordList(numbers.map(String))}${levelWords(book, ramp, numbers[0]! - ramp.studs.length - 1, numbers.length)}`,
  )
  const { said, apart } = endScrewsOf(ramp, screws, indices)
  const tops = indices.length === 1 ? [...groups.keys()].join('') : `: ${told.join('; ')}`
  return `Screw ${numberList(
    'timber',
    indices.map((i) => i + 1),
  )} as the table says, ${said}${tops}.${apart} ${tickWords(indices)}`
}
