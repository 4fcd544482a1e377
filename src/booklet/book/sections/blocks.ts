import { isCurved } from '../../../design/kind-traits.ts'
import { thinWide } from '../../../design/section.ts'
import { ownUnits } from '../../../length/own-units.ts'
import { numberList, wordList } from '../../../length/word-list.ts'
import { pilotDrill } from '../../../ramp/frame/screw-lengths.ts'
import type { SolvedRamp } from '../../../ramp/ramp.ts'
import { practice } from '../../../ramp/skin/skin-framing.ts'
import { frameScrews, seamScrews, shortBlock } from '../../../stock/screws.ts'
import type { BlockPlace } from '../../../stock/timber-parts.ts'
import { type Book, screwsOf } from '../book.ts'

interface Block extends BlockPlace {
  readonly mark: string
}

const blocksOf = ({ timbers }: Book, ramp: SolvedRamp): readonly Block[] =>
  timbers.flatMap(({ ramp: name, mark, place }) => (place && name === ramp.name ? [{ mark, ...place }] : []))

export const hasBlocks = (book: Book, ramp: SolvedRamp): boolean => blocksOf(book, ramp).length > 0

/** ` and 20 of 4.5 × 40 into the blocks under its seams: ...`: how a layer or the deck board is held there; empty where there are none. */
export const seamWords = (
  book: Book,
  ramp: SolvedRamp,
  sheet: Parameters<typeof seamScrews>[1],
  use: 'skin' | 'deck board',
): string => {
  const own = book.timbers.filter((timber) => timber.ramp === ramp.name)
  const [line] = seamScrews(own, sheet, use)
  if (!line) return ''
  const size = line.length === null ? '' : ` of ${book.screw(use, line.length)}`
  return `, and ${line.count}${size} into the blocks under its seams: two in each on either side, one where a block is shorter than ${book.show(shortBlock)}, ${book.fine(practice[book.units].edge)} off the sheet's edge, clear of the slanted screws and of the layer below`
}

/** How many screws of a frame go into its blocks. */
export const blockScrews = (book: Book, ramp: SolvedRamp): number =>
  2 * frameScrews * blocksOf(book, ramp).length

/** The blocks under seams without a rib: where each goes and how it lies, then how it is held; empty where there are none. */
export const blockSteps = (book: Book, ramp: SolvedRamp): readonly string[] => {
  const blocks = blocksOf(book, ramp)
  if (blocks.length === 0) return []
  const lines = [...new Set(blocks.map(({ at }) => at))].sort((a, b) => a - b)
  const told = lines.map((at) => {
    const own = blocks.filter((block) => block.at === at)
    const groups = (['skin', 'deck board'] as const).flatMap((under) => {
      const all = own.filter((block) => block.under === under)
      return all.length > 0 ? [`under the ${under} ${betweenWords(all)}`] : []
    })
    return `${book.show(at)} from the left, ${groups.join(', ')}`
  })
  const level = 'its upper face level with theirs'
  const lies = !isCurved(ramp)
    ? level
    : [
        ...(blocks.some(({ under }) => under === 'skin')
          ? ['under the skin so deep that a batten bent over the studs touches its middle']
          : []),
        ...(blocks.some(({ under }) => under === 'deck board') ? [`under the deck board ${level}`] : []),
      ].join(', ')
  return [
    `Before any sheet covers them, set the blocks under seams that no rib carries: ${told.join('; ')}. Measure from the outside of the left side; the seam lies over a block's middle. Each lies flat between its two timbers, ${lies}. Fit each in its place.`,
    heldWords(book, ramp, blocks),
  ]
}

const numberedWords = (marks: readonly string[]): string =>
  numberList(
    'T',
    marks.map((mark) => Number(mark.slice(1))),
  )
    .replace(/^Ts? /, '')
    .replace(/\d+/g, 'T$&')

/** `T12 to T16 between studs 1 to 6`: of blocks that follow each other in one line. */
const betweenWords = (blocks: readonly Block[]): string => {
  const noun = blocks[0]!.under === 'skin' ? 'stud' : 'timber'
  const follow = blocks.slice(1).every(({ between }, i) => between[0] === blocks[i]!.between[1])
  if (!follow)
    return wordList(blocks.map(({ mark, between }) => `${mark} between ${numberList(noun, between)}`))
  const numbers = [blocks[0]!.between[0], ...blocks.map(({ between }) => between[1])]
  return `${numberedWords(blocks.map(({ mark }) => mark))} between ${numberList(noun, numbers)}`
}

/** How deep its screws cross the joint at a block's end: so much of the thinner wood there, that their points stay in it. */
const crossing = 0.4

/** From above, since no screw can be driven along a line of blocks. */
const heldWords = (book: Book, ramp: SolvedRamp, blocks: readonly Block[]): string => {
  const { show } = book
  const [usual] = screwsOf(book, ramp, 'frame')
  const [thin] = thinWide(ramp.design.studs.section)
  const timbers = [...ramp.studs, ...ramp.deckTimbers]
  const met = blocks.flatMap(({ between }) => between.map((number) => timbers[number - 1]!.depth))
  const down = crossing * Math.min(thin, ...met)
  const length = usual?.length ?? null
  const size = length === null ? '' : ` of ${book.screw('frame', length)}`
  // half of a screw in the block, half in the timber
  const from = length === null ? null : Math.sqrt((length / 2) ** 2 - down ** 2)
  const begins =
    from === null
      ? ''
      : `. They begin ${show(from)} from its end and cross the joint ${show(down)} below the top`
  const [near, far] = offEdges(ramp, blocks, book.units)
  return `Screw each block from above, at a slant: ${frameScrews} screws${size} in each end, ${blockScrews(book, ramp)} in all${begins}; at ${isCurved(ramp) ? 'the end nearer to the toe' : 'its near end'} ${show(near)} in from either long edge, at the other ${show(far)}, so that those of two blocks pass each other. Drill ${ownUnits(pilotDrill, book.units)} first, sink the heads. Mark on the sheets, as each is laid, where the blocks lie: it is screwed to them on its side of the seam.`
}

/** Screws of two ends that pass each other, and a screw of the sheets over them, keep this apart, mm. */
const passing = { ends: 10, sheets: 8 } as const

/** How far in from a block's long edges the screws of its two ends go: those that pass each other and the sheets' screws best, near to the edges. mm */
const offEdges = (
  ramp: SolvedRamp,
  blocks: readonly Block[],
  units: Book['units'],
): readonly [number, number] => {
  const half = thinWide(ramp.design.studs.section)[1] / 2
  const { edge, gap } = practice[units]
  const beside = blocks.flatMap(({ at }) => [at - edge - gap / 2, at + edge + gap / 2])
  const sheets = [...ramp.skin.flatMap(({ rows }) => rows), ...(ramp.deckBoard?.rows ?? [])]
    .flatMap(({ across }) => across)
    .concat(beside)
  const ways = Array.from({ length: 20 }, (_, i) => Math.min(10, half / 3) + i).filter(
    (off) => half - off >= passing.sheets,
  )
  const clear = (off: number): number =>
    Math.min(
      passing.sheets,
      ...blocks.flatMap(({ at }) =>
        [at - half + off, at + half - off].flatMap((p) => sheets.map((other) => Math.abs(other - p))),
      ),
    )
  const worth = new Map(ways.map((off) => [off, clear(off)]))
  let best: readonly [number, number] = [half / 3, half / 2]
  let most = 0
  for (const near of ways)
    for (const far of ways) {
      const now = Math.min(far - near, passing.ends) + worth.get(near)! + worth.get(far)!
      if (far > near && now > most + 1e-9) [best, most] = [[near, far], now]
    }
  return best
}
