import { type Drawing, stroke, text } from '../../drawing/drawing.ts'
import { textWidth } from '../../drawing/text-width.ts'
import { circle, pathOf, rectangle } from '../../geometry/path.ts'
import { capital } from '../../length/capital.ts'
import { letters, pens } from '../../pattern/pens.ts'
import type { StoryStrip } from '../../pattern/story-strip.ts'

/** What a drawn strip of the legend takes, mm. */
export const sampleSize = { width: 150, height: 9.8 } as const

/** Ends of the strip: its zero line, and the dashed line on which the next piece is laid; depth of a tick and of a ring. mm */
const [zeroAt, dashedAt] = [5, 144]
const deep = { tick: 4, ring: 3.5, radius: 0.9 } as const
const size = letters.mark

/** A strip of a layer as a builder will see it, each of its marks with what it stands for; and what is said beside it. */
export const sampleStrip = (
  layers: readonly StoryStrip[],
): { readonly marks: Drawing; readonly words: readonly string[] } => {
  const { width, height } = sampleSize
  const rows = layers.flatMap(({ rows: own }) => own.flatMap((row) => (row ? [row] : [])))
  const named = [...new Map(rows.map((row) => [row.edge, row.words]))]
  const ring = layers.find(({ rings }) => rings !== null)?.rings ?? null
  const onTick = layers.find(({ onTicks }) => onTicks !== null)?.onTicks ?? null
  const seams = layers.some(({ notes }) => notes.some((note) => note.startsWith('at a seam')))
  const signs: { readonly width: number; readonly at: (x: number) => Drawing }[] = []
  const sign = (words: string, lead: number, marks: (x: number) => Drawing): void => {
    signs.push({
      width: lead + textWidth(words, size, 'regular') + 4,
      at: (x) => [...marks(x), text('note', { x: x + lead, y: height - 0.5 - size }, size, words)],
    })
  }
  sign('stud: its middle', 1.3, tick)
  if (onTick !== null) sign('and its screws', 2, (x) => [...tick(x), ...ringMarks(x)])
  if (ring !== null) sign('screws', 2, (x) => [...stem(x), ...ringMarks(x)])
  if (seams) sign('one sheet ends, the next starts', 3.3, (x) => [...tick(x), ...tick(x + 2)])
  let x = zeroAt + 16
  const placed = signs.flatMap(({ width: wide, at }) => {
    if (x + wide > dashedAt) return []
    const marks = at(x)
    x += wide
    return marks
  })
  const middle = height / 2 - 0.9
  const [upper, lower] = named
  return {
    marks: [
      stroke('note', rectangle(0, 0, width, height), pens.tick),
      stroke('note', pathOf({ x: zeroAt, y: 0 }, { x: zeroAt, y: height }), pens.mark),
      stroke('note', pathOf({ x: dashedAt, y: 0 }, { x: dashedAt, y: height }), pens.joint),
      ...[-1, 1].map((slant) =>
        stroke(
          'note',
          pathOf({ x: dashedAt - 2, y: middle - slant * 2 }, { x: dashedAt + 2, y: middle + slant * 2 }),
          pens.cross,
        ),
      ),
      text('note', { x: zeroAt + 1.2, y: 0.6 }, size, 'zero line'),
      text(
        'note',
        { x: dashedAt - 3, y: middle - size / 2 },
        size,
        'dashed: cut the next piece at its own, lay it on this, cross on cross',
        {
          align: 'right',
        },
      ),
      ...(upper
        ? [text('note', { x: zeroAt + 1.2, y: height - 0.5 - size }, size, upper[0], { face: 'bold' })]
        : []),
      ...(lower ? [text('note', { x: zeroAt + 20, y: 0.6 }, size, lower[0], { face: 'bold' })] : []),
      ...placed,
    ],
    words: [
      ...named.map(([edge, words]) => `${edge} edge: ${words}.`),
      ...zeroWords(layers).map((words) => `${capital(words)}.`),
    ],
  }
}

/** Where marks count from; where that is not one place for all strips, of which strips each is. */
export const zeroWords = (strips: readonly StoryStrip[]): readonly string[] => {
  const zeros = [...new Set(strips.map(({ zero }) => zero))]
  return zeros.map((zero) => {
    const own = strips.filter((strip) => strip.zero === zero)
    const named = own.map(({ ramps, what }) => [...(ramps === '' ? [] : [ramps]), what].join(', '))
    return zeros.length > 1 ? `zero of ${named.join('; ')}: ${zero}` : `marks count from zero: ${zero}`
  })
}

const { height } = sampleSize

const tick = (x: number): Drawing => [
  stroke('note', pathOf({ x, y: height }, { x, y: height - deep.tick }), pens.mark),
]

const stem = (x: number): Drawing => [
  stroke('note', pathOf({ x, y: height }, { x, y: height - deep.ring + deep.radius }), pens.mark),
]

const ringMarks = (x: number): Drawing => [
  stroke('note', circle({ x, y: height - deep.ring }, deep.radius), pens.tick),
]
