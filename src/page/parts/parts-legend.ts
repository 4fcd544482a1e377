import type { Units } from '../../design/design.ts'
import { type Drawing, group, type Mark, text } from '../../drawing/drawing.ts'
import { wrapWords } from '../../drawing/paragraph.ts'
import { textWidth } from '../../drawing/text-width.ts'
import type { Point } from '../../geometry/point.ts'
import { capital } from '../../length/capital.ts'
import { letters } from '../../pattern/pens.ts'
import type { StoryStrip, StripKind } from '../../pattern/story-strip.ts'
import { sampleSize, sampleStrip, zeroWords } from './sample-strip.ts'

/** What stands along the left of a page of small parts, read as the strips beside it: title, set, what to do, and once for all strips
 * what edges and rings mean. */
export interface PartsLegend {
  /** room across the lines with what keeps them off the parts, mm */
  readonly height: number
  /** `strips`: some lie on the page; with its lower left corner at a place of the page */
  readonly draw: (at: Point, strips: boolean) => Drawing
}

const size = letters.mark
const leading = 3.4

/** A line no longer than the eye keeps; and from the lines to the parts, mm. */
const longest = 270
const off = 2.5

const joinWords =
  'From piece 2 on, cut at the first dashed line and lay that edge on the dashed line of the piece before, cross on cross.'

const heads: Readonly<Record<StripKind, string>> = {
  layer: 'Layers of skin',
  across: 'Screws across',
  pipe: 'Pipe',
}

const lengthsWords: Readonly<Record<Units, string>> = {
  mm: 'Lengths in mm.',
  in: 'Lengths in inches: + is 1/32 more, – is 1/32 less.',
}

export const partsLegend = (
  title: string,
  set: string,
  strips: readonly StoryStrip[],
  units: Units,
  room: number,
): PartsLegend => {
  const width = Math.min(room, longest)
  const wrapped = (words: readonly string[], wide = width): readonly string[] =>
    words.flatMap((line) => wrapWords(line, wide, size))
  const titles = wrapWords(title, width, size, 'bold')
  const layers = strips.filter(({ kind }) => kind === 'layer')
  const sample = layers.length > 0 && width > sampleSize.width + 70 ? sampleStrip(layers) : null
  const beside = sample ? wrapped(sample.words, width - sampleSize.width - off) : []
  const kinds = [...new Set(strips.map(({ kind }) => kind))].filter((kind) => !sample || kind !== 'layer')
  const first = `Set ${set}: cut out. ${lengthsWords[units]}`
  const said = wrapped([
    sample ? first : `${first} ${joinWords}`,
    ...kinds.map((kind) => `${heads[kind]}: ${kindWords(strips.filter((strip) => strip.kind === kind))}`),
  ])
  const plain = wrapped([`Set ${set}: cut the parts out.`])
  const drawn = sample ? Math.max(sampleSize.height + 1.5, beside.length * leading) : 0
  // the set's code behind the title where there is room
  const aside = off + textWidth(titles.at(-1)!, size, 'bold')
  const [longer] = [plain[0]!, first].sort((a, b) => b.length - a.length)
  const onTitle = sample !== null && aside + textWidth(longer!, size, 'regular') <= width
  const count = titles.length - (onTitle ? 1 : 0) + (strips.length > 0 ? said : plain).length
  const height = count * leading + drawn + off
  const line = (words: string, x: number, top: number, face: 'bold' | 'regular' = 'regular'): Mark =>
    text('note', { x, y: top - leading + 0.9 }, size, words, { face })
  const coded = (words: readonly string[], top: number): Drawing =>
    words.map((one, i) => line(one, onTitle ? aside : 0, top + (onTitle ? leading : 0) - i * leading))
  const down = (of: readonly string[], top: number, face: 'bold' | 'regular' = 'regular'): Drawing =>
    of.map((words, i) => line(words, 0, top - i * leading, face))
  return {
    height,
    draw: ({ x, y }, some) => {
      const under = height - titles.length * leading
      const rest = under - (onTitle ? 0 : leading)
      const marks: Drawing = some
        ? [
            ...coded(said.slice(0, 1), under),
            ...(sample
              ? [
                  group([1, 0, 0, 1, 0, rest - sampleSize.height - 0.7], sample.marks),
                  ...beside.map((words, i) => line(words, sampleSize.width + off, rest - i * leading - 0.3)),
                ]
              : []),
            ...down(said.slice(1), rest - drawn),
          ]
        : coded(plain, under)
      return [group([0, 1, -1, 0, x + height, y], [...down(titles, height, 'bold'), ...marks])]
    },
  }
}

const sentence = (words: string): string => `${capital(words)}.`

/** What edges and signs mean of strips of one kind. */
export const kindWords = (strips: readonly StoryStrip[]): string => {
  const rows = strips.flatMap(({ ramps, rows: own }) =>
    own.flatMap((row) => (row ? [{ ...row, ramps }] : [])),
  )
  const edges = [...new Set(rows.map(({ words }) => words))]
  // edges of one meaning need no names, one of two meanings needs its ramp's
  const named = (words: string): string => {
    const own = rows
      .filter((row) => row.words === words)
      .map(({ edge, ramps }) =>
        rows.some((other) => other.edge === edge && other.words !== words) ? `${edge} (${ramps})` : edge,
      )
    return edges.length > 1 ? `${[...new Set(own)].join(', ')} edge: ${words}` : words
  }
  const rings = [...new Set(strips.flatMap((strip) => strip.rings ?? []))]
  const onTicks = [...new Set(strips.flatMap((strip) => strip.onTicks ?? []))]
  return [
    ...edges.map(named),
    ...rings.map((ring) => `a ring is ${ring}`),
    ...onTicks.map((words) => `a ring on a tick: ${words}`),
    ...zeroWords(strips),
    ...new Set(strips.flatMap(({ notes }) => notes)),
  ]
    .map(sentence)
    .join(' ')
}
