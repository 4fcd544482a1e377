import { type Drawing, type Face, stroke, text } from '../../drawing/drawing.ts'
import { textWidth } from '../../drawing/text-width.ts'
import { circle } from '../../geometry/path.ts'
import { pens } from '../../pattern/pens.ts'
import type { StoryStrip } from '../../pattern/story-strip.ts'
import { type Said, stripNotes } from './strip-notes.ts'
import { type StripPiece, stripDepth, stripHeight, stripOver } from './strip-pieces.ts'

/** Heights of a capital: as wanted, and the smallest that a short piece brings about. mm */
const size = 2.1
const leastSize = 1.7

/** From one line to the next, and between two things said, mm. */
const lines = { leading: 2.8, apart: 4 } as const

/** Room of a short piece, mm. */
const shortRoom = 100

/** Words keep off the cross at a joint, mm. */
const ends = 3.4

/** A ring of the legend, and what it takes before its words, mm. */
const legendRing = 0.9
const ringRoom = 2 * legendRing + 0.8

/** Middle of the two lines, from the lower edge of a strip. */
export const linesMiddle = ({ strip }: StripPiece): number =>
  firstLine(strip) + (size - lines.leading - 0.3 * size) / 2

/** In the middle between two rows; under a single row as far off the edge below as can be. mm */
const firstLine = (strip: StoryStrip): number =>
  stripHeight(strip) - stripDepth.row - size - (strip.rows[1] ? 0.45 : 0.1)

/** Two lines along the middle: what the piece is, where it is laid, and what its edges and marks mean. */
export const pieceLines = (piece: StripPiece, set: string): Drawing => {
  const room = piece.to - piece.from - 2 * ends
  const code = `set ${set}`
  const { title, scale, codeBelow } = titleOf(piece, code, room)
  const taken = { first: wide(title, scale, 'bold') + lines.apart, second: 0 }
  const free = {
    first: room - (codeBelow ? 0 : wide(code, scale) + lines.apart),
    second: room - (codeBelow ? wide(code, scale) + lines.apart : 0),
  }
  const notes = stripNotes(piece)
  // smaller, on a short piece in fewer words, before something is left out
  const fewest = notes.map((note) => ({ ...note, words: note.words.slice(-1) }))
  const all = [size, 1.95, 1.8, leastSize].flatMap((one) =>
    (room > shortRoom ? [notes] : [notes, fewest]).map((said) => ({
      one,
      placed: laidOut(said, taken, free, one),
    })),
  )
  const best = all.reduce((a, b) => (b.placed.length > a.placed.length ? b : a))
  const left = stripOver + ends
  const first = firstLine(piece.strip)
  const second = first - lines.leading
  return [
    text('note', { x: left, y: first }, scale, title, { face: 'bold' }),
    text('note', { x: left + room, y: codeBelow ? second : first }, scale, code, { align: 'right' }),
    ...best.placed.flatMap(({ words, ring, x, line }): Drawing => {
      const at = { x: left + x, y: line === 'first' ? first : second }
      return [
        ...(ring
          ? [stroke('note', circle({ x: at.x + legendRing, y: at.y + best.one / 2 }, legendRing), pens.tick)]
          : []),
        text('note', { x: at.x + (ring ? ringRoom : 0), y: at.y }, best.one, words),
      ]
    }),
  ]
}

const wide = (words: string, scale: number, face: Face = 'regular'): number => textWidth(words, scale, face)

/** The fullest title that leaves the code its place beside it; on a short piece both are smaller, or the code stands below. */
const titleOf = (
  { strip, number, count }: StripPiece,
  code: string,
  room: number,
): { readonly title: string; readonly scale: number; readonly codeBelow: boolean } => {
  const of = count > 1 ? `, piece ${number} of ${count}` : ''
  const titles = [`${strip.title}${of}`, `${strip.brief}${of}`]
  const beside = (title: string, scale: number): boolean =>
    wide(title, scale, 'bold') + wide(code, scale) + lines.apart <= room
  for (const scale of [size, 1.9, leastSize])
    for (const title of titles) if (beside(title, scale)) return { title, scale, codeBelow: false }
  const title = titles[1]!
  const scale = Math.min(size, room / wide(title, 1, 'bold'), room / wide(code, 1))
  return { title, scale, codeBelow: true }
}

interface Placed {
  readonly words: string
  readonly ring: boolean
  readonly x: number
  readonly line: 'first' | 'second'
}

/** Each on the second line while there is room, else on what is left of the first, else not at all. */
const laidOut = (
  notes: readonly Said[],
  taken: Readonly<Record<Placed['line'], number>>,
  free: Readonly<Record<Placed['line'], number>>,
  scale: number,
): readonly Placed[] => {
  const at = { ...taken }
  const placed: Placed[] = []
  for (const { words: tries, ring } of notes) {
    const long = (words: string): number => wide(words, scale) + (ring ? ringRoom : 0)
    const [found] = tries.flatMap((words) =>
      (['second', 'first'] as const)
        .filter((line) => at[line] + long(words) <= free[line])
        .map((line) => ({ words, line })),
    )
    if (!found) continue
    placed.push({ ...found, ring, x: at[found.line] })
    at[found.line] += long(found.words) + lines.apart
  }
  return placed
}
