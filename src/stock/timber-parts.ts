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
  const blocks = (seam: string, room: readonly number[]): readonly Unmarked[] =>
    room
      .filter((length) => length >= leastBlock)
      .map((length, i) => ({
        ramp: ramp.name,
        part: 'block' as const,
        number: null,
        words: `block ${i + 1} under a seam of the ${seam}`,
        section: thinWide(ramp.design.studs.section),
        ripped: null,
        length,
      }))
  const studs = ramp.studs.map(({ at, width }) => ({ at, width }))
  const board = ramp.deckBoard ? bare(ramp.deckBoard.acrossSeams) : []
  const under = ramp.deckTimbers
    .filter(({ role }) => role === 'deck' || role === 'backing')
    .map(({ x, width }) => ({ at: x, width }))
    .sort((a, b) => a.at - b.at)
  return [
    ...skin.flatMap(() => blocks('skin', roomBetween(studs))),
    ...board.flatMap(() => blocks('deck board', roomBetween(under))),
  ]
}

const roomBetween = (all: readonly { readonly at: number; readonly width: number }[]): readonly number[] =>
  all.slice(1).map((next, i) => next.at - all[i]!.at - (next.width + all[i]!.width) / 2)
