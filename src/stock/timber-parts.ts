import { thinWide } from '../design/section.ts'
import { roleWords } from '../ramp/frame/deck-timbers.ts'
import { rippedTo, type Timber } from '../ramp/frame/timber.ts'
import type { Ramp } from '../ramp/ramp.ts'

/** Something that is sawn from timber. Lengths mm. */
export interface TimberPart {
  /** its name on layout and list; no two alike in a design */
  readonly mark: string
  readonly ramp: string
  readonly part: 'stud' | 'pipe-timber' | 'deck-timber' | 'back-timber' | 'wheel-timber' | 'block'
  /** as it is numbered on the drawings of its ramp, from 1; null of blocks */
  readonly number: number | null
  /** as the builder calls it: `stud 3`, `timber 9, under the deck board`, with its bay where ribs make several; blocks from the toe */
  readonly words: string
  /** thickness and depth as bought */
  readonly section: readonly [number, number]
  /** what that is ripped to; null where it is used as bought */
  readonly ripped: readonly [number, number] | null
  readonly length: number
  /** null of all that are no blocks */
  readonly place: BlockPlace | null
}

/** Where a block is set. */
export interface BlockPlace {
  readonly under: 'skin' | 'deck board'
  /** the seam over its middle, from the ramp's left outer face, mm */
  readonly at: number
  /** the timbers that it fits between, as they are numbered on the drawings */
  readonly between: readonly [number, number]
}

/** Shorter blocks hold no screws, mm. */
const leastBlock = 40

/** Studs, timbers behind the lip, and the blocks under seams that no rib carries, numbered through the design. */
export const timberPartsOf = (ramps: readonly Ramp[]): readonly TimberPart[] =>
  ramps
    .flatMap((ramp) => [...studParts(ramp), ...deckParts(ramp), ...blockParts(ramp)])
    .map((part, i) => ({ ...part, mark: `T${i + 1}` }))

type Unmarked = Omit<TimberPart, 'mark'>

/** One piece for each bay between two sides. */
const inBays = (
  ramp: Ramp,
  timber: Timber,
  index: number,
  part: TimberPart['part'],
  words: string,
): readonly Unmarked[] => {
  const bays = ramp.design.sides.count - 1
  const section = thinWide(ramp.design.studs.section)
  const ripped = rippedTo(timber, section)
  return Array.from({ length: bays }, (_, i) => ({
    ramp: ramp.name,
    part,
    number: index + 1,
    words: bays > 1 ? `${words}, bay ${i + 1} from the left` : words,
    section,
    ripped,
    length: ramp.studLength - platesIn(ramp, index, i) * ramp.design.sides.thickness,
    place: null,
  }))
}

/** Plates that a timber stands on in a bay: one on the right face of each wall but the last, which has it on its left. */
const platesIn = ({ splices, design }: Ramp, timber: number, bay: number): number =>
  splices.every((splice) => splice.timber !== timber) ? 0 : bay === design.sides.count - 2 ? 2 : 1

const studParts = (ramp: Ramp): readonly Unmarked[] =>
  ramp.studs.flatMap((stud, i) => inBays(ramp, stud, i, 'stud', `stud ${i + 1}`))

const deckParts = (ramp: Ramp): readonly Unmarked[] => {
  const parts = {
    pipe: 'pipe-timber',
    backing: 'deck-timber',
    deck: 'deck-timber',
    back: 'back-timber',
    wheels: 'wheel-timber',
  } as const
  return ramp.deckTimbers.flatMap((timber, i) =>
    inBays(
      ramp,
      timber,
      ramp.studs.length + i,
      parts[timber.role],
      `timber ${ramp.studs.length + i + 1}, ${roleWords(timber.role, ramp)}`,
    ),
  )
}

/** Between neighbouring studs, and between neighbouring timbers under the deck board, under each seam across without a rib. */
const blockParts = (ramp: Ramp): readonly Unmarked[] => {
  const bare = (seams: readonly { readonly at: number; readonly rib: boolean }[]): readonly number[] => [
    ...new Set(seams.filter(({ rib }) => !rib).map(({ at }) => Math.round(at))),
  ]
  const skin = bare(ramp.skin.flatMap(({ acrossSeams }) => acrossSeams))
  const blocks = (under: BlockPlace['under'], at: number, rooms: readonly Room[]): readonly Unmarked[] =>
    rooms
      .filter(({ length }) => length >= leastBlock)
      .map(({ length, between }, i) => ({
        ramp: ramp.name,
        part: 'block' as const,
        number: null,
        words: `block ${i + 1} under a seam of the ${under}`,
        section: thinWide(ramp.design.studs.section),
        ripped: null,
        length,
        place: { under, at, between },
      }))
  const studs = ramp.studs.map(({ at, width }, i) => ({ number: i + 1, at, width }))
  const board = ramp.deckBoard ? bare(ramp.deckBoard.acrossSeams) : []
  const under = ramp.deckTimbers
    .map(({ x, width, role }, i) => ({ number: ramp.studs.length + i + 1, at: x, width, role }))
    .filter(({ role }) => role === 'deck' || role === 'backing')
    .sort((a, b) => a.at - b.at)
  return [
    ...skin.flatMap((at) => blocks('skin', at, roomBetween(studs))),
    ...board.flatMap((at) => blocks('deck board', at, roomBetween(under))),
  ]
}

interface Room {
  readonly between: readonly [number, number]
  readonly length: number
}

const roomBetween = (
  all: readonly { readonly number: number; readonly at: number; readonly width: number }[],
): readonly Room[] =>
  all.slice(1).map((next, i) => {
    const last = all[i]!
    return {
      between: [last.number, next.number],
      length: next.at - last.at - (next.width + last.width) / 2,
    }
  })
