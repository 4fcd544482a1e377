import { type Drawing, type Face, text } from '../../drawing/drawing.ts'
import { textWidth } from '../../drawing/text-width.ts'
import { letters } from '../../pattern/pens.ts'
import type { StoryStrip } from '../../pattern/story-strip.ts'
import { stripNotes } from './strip-notes.ts'
import { type StripPiece, stripDepth, stripHeight, stripOver } from './strip-pieces.ts'

/** Heights of the name's capitals, the largest that fits; of all else; and the least that is read, mm. */
const nameSizes = [3.6, 3.2, 2.8, 2.4] as const
const size = letters.mark
const leastSize = letters.least

/** From one line to the next, and between two things said, mm. */
const lines = { leading: 3, apart: 4 } as const

/** Words keep off the cross at a joint, mm. */
const ends = 3.4

/** Middle of the lines, from the lower edge of a strip. */
export const linesMiddle = ({ strip }: StripPiece): number => bandMiddle(strip)

/** In the middle between two rows; under a single row as far off the edge below as can be. mm */
const bandMiddle = (strip: StoryStrip): number =>
  stripHeight(strip) - stripDepth.row - stripDepth.words / 2 + (strip.rows[1] ? 0 : 0.55)

/** What the piece is and where it is laid: on one line with its name large, on a short piece in two lines of small letters. */
export const pieceLines = (piece: StripPiece, set: string): Drawing => {
  const room = piece.to - piece.from - 2 * ends
  const code = `set ${set}`
  const middle = bandMiddle(piece.strip)
  const left = stripOver + ends
  const name = nameOf(piece)
  const notes = noteTries(piece)
  for (const scale of nameSizes)
    for (const said of notes.whole) {
      const [after, beside] = [left + wide(name, scale, 'bold') + lines.apart, wide(said, size)]
      if (after + beside + lines.apart + wide(code, size) > left + room) continue
      const low = middle - size / 2
      return [
        text('note', { x: left, y: middle - scale / 2 }, scale, name, { face: 'bold' }),
        text('note', { x: after, y: low }, size, said),
        text('note', { x: left + room, y: low }, size, code, { align: 'right' }),
      ]
    }
  return twoLines(piece, code, room)
}

const wide = (words: string, scale: number, face: Face = 'regular'): number => textWidth(words, scale, face)

const nameOf = ({ strip, number, count }: StripPiece): string =>
  [
    ...(strip.ramps === '' ? [] : [strip.ramps]),
    strip.what,
    ...(count > 1 ? [`piece ${number} of ${count}`] : []),
  ].join(' · ')

/** The notes as one line, the fullest first: `whole` say all that a builder needs, `brief` where it is laid alone. */
const noteTries = (
  piece: StripPiece,
): { readonly whole: readonly string[]; readonly brief: readonly string[] } => {
  const { lay, blank, aside } = stripNotes(piece)
  const joined = (...said: readonly (string | null | undefined)[]): string =>
    said.filter((one) => one !== null && one !== undefined).join('. ')
  return {
    whole: [joined(lay[0], blank?.[0], aside), joined(lay[1], blank?.[1], aside), joined(lay[1], blank?.[1])],
    brief: [joined(lay.at(-1), blank?.[1]), lay[1]!, lay.at(-1)!],
  }
}

/** Name above, notes below, the code where there is room. */
const twoLines = (piece: StripPiece, code: string, room: number): Drawing => {
  const { strip, number, count } = piece
  const brief = [strip.what, ...(count > 1 ? [`${number} of ${count}`] : [])].join(' · ')
  const middle = bandMiddle(strip)
  const [first, second] = [middle + lines.leading / 2 - size / 2, middle - lines.leading / 2 - size / 2]
  const left = stripOver + ends
  const right = left + room
  const notes = noteTries(piece)
  const tries = [size, leastSize].flatMap((scale) =>
    [nameOf(piece), brief].flatMap((name) =>
      [...notes.whole, ...notes.brief].flatMap((said) => {
        const [named, noted, coded] = [wide(name, scale, 'bold'), wide(said, scale), wide(code, scale)]
        const beside = named + lines.apart + coded <= room
        const below = noted + lines.apart + coded <= room
        return named <= room && noted <= room && (beside || below)
          ? [{ scale, name, said, beside, apart: beside && below }]
          : []
      }),
    ),
  )
  // rather fewer words than a note under the code
  const full = tries.find(
    ({ scale, name, said, apart }) =>
      apart && scale === size && name === nameOf(piece) && notes.whole.includes(said),
  )
  const found = full ?? tries[0]
  if (found)
    return [
      text('note', { x: left, y: first }, found.scale, found.name, { face: 'bold' }),
      text('note', { x: left, y: second }, found.scale, found.said),
      text('note', { x: right, y: found.beside ? first : second }, found.scale, code, { align: 'right' }),
    ]
  // nothing but what it is: its place is told by the joint's words
  return [
    text('note', { x: left, y: first }, leastSize, brief, { face: 'bold' }),
    text('note', { x: right, y: second }, leastSize, code, { align: 'right' }),
  ]
}
