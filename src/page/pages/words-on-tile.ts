import type { Drawing } from '../../drawing/drawing.ts'
import { type TextMark, textCorners } from '../../drawing/text-box.ts'
import { affineIdentity } from '../../geometry/affine.ts'
import { type Occupancy, occupancyCopy, occupyUnder } from '../room/occupancy.ts'
import { grownWord, keepOff, on } from '../room/word-room.ts'
import { edgeNames } from '../tile/edge-names.ts'
import { woodOf } from '../tile/ground.ts'
import { keepWaste } from '../tile/keep-waste.ts'
import { levelMarks } from '../tile/level-marks.ts'
import { patternWords } from '../tile/pattern-words.ts'
import { pointNames } from '../tile/point-names.ts'
import { spliceNotes } from '../tile/splice-notes.ts'
import type { Tile } from '../tile/tile.ts'
import { jointWords } from '../tile/tile-joints.ts'
import { labelMarks, woodNote } from '../timber/label-marks.ts'
import { nameLean } from '../timber/name-lean.ts'
import { otherScrews } from '../timber/other-screws.ts'
import type { TimberBox } from '../timber/timber-box.ts'
import type { TileFacts } from './tile-facts.ts'

/** Round the name of an edge: nearer, WASTE and it would be read as one. mm */
const nameApart = 5

/** Round the names of timbers, mm. */
const nameAir = 1.4

/** What is written on a tile, in its window but for what is said else. */
export interface TileWords {
  /** points, the pattern's own words, joints of pieces */
  readonly named: Drawing
  /** marks of heights, in the pattern */
  readonly levels: Drawing
  /** names of timbers and plates */
  readonly labels: Drawing
  /** edges, WASTE and what is kept, joints of pages, where a timber's other screws are */
  readonly others: readonly TextMark[]
  /** by their timbers, in words: other screws for which its wood has no room */
  readonly elsewhere: ReadonlyMap<number, string>
}

/** Each word beside what is there before it; `shown` and `boxes`: the timbers of the tile, and their sections. */
export const wordsOnTile = (
  tile: Tile,
  facts: TileFacts,
  shown: readonly number[],
  boxes: readonly TimberBox[],
  room: Occupancy,
): TileWords => {
  const { pattern } = facts
  const points = pointNames(pattern, tile, room)
  const told = patternWords(pattern.marks, tile, room)
  const named = [...points, ...told, ...spliceNotes(pattern, tile, room)]
  const levels = levelMarks(pattern.levels, tile, room)
  const wood = woodOf(tile, facts.wood)
  const timbers = pattern.screws.length
  const lean = nameLean(boxes)
  const labels = pattern.labels.flatMap((label, i) => {
    if (i < timbers && !shown.includes(i)) return []
    const marks = labelMarks(label, pattern.markPaths[i]!, tile, room, wood, lean)
    keepOff(room, marks, on.never)
    // words and signs that come later stand clear of a name
    for (const mark of marks)
      if (mark.kind === 'text') occupyUnder(room, textCorners(mark, affineIdentity), nameAir, on.never)
    return marks
  })
  const others: TextMark[] = []
  const write = (more: readonly TextMark[]): void => {
    others.push(...more)
    keepOff(room, more, on.never)
  }
  const sides = (free: Occupancy): readonly TextMark[] => keepWaste(tile, pattern, wood, free)
  const before = occupancyCopy(room)
  const names = edgeNames(pattern, tile, room, told)
  // rather than not at all a word stands nearer
  for (const name of names) occupyUnder(room, grownWord(name, nameApart), 0, on.rather)
  const beside = sides(room)
  // on which side to saw is said before what an edge is called
  const first = names.length > 0 && beside.length < 2 ? sides(occupancyCopy(before)) : beside
  if (first.length > beside.length) {
    room.taken.set(before.taken)
    write(first)
    for (const word of first) occupyUnder(room, grownWord(word, nameApart), 0, on.rather)
    write(edgeNames(pattern, tile, room, told))
  } else write([...names, ...beside])
  write(jointWords(tile, room))
  const elsewhere = new Map<number, string>()
  for (const i of shown) {
    const said = otherScrews(pattern.screws[i]!, tile, facts.tiles)
    const note = said ? woodNote(said, pattern.markPaths[i]!, tile, room, lean) : []
    write(note)
    if (said && note.length === 0) elsewhere.set(i, said.words)
  }
  return { named, levels, labels, others, elsewhere }
}
