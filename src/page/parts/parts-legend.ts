import { type Drawing, group, type Mark, text } from '../../drawing/drawing.ts'
import { wrapWords } from '../../drawing/paragraph.ts'
import type { Point } from '../../geometry/point.ts'
import { letters } from '../../pattern/pens.ts'
import type { DesignStrips } from '../../pattern/ramp-strips.ts'
import type { StoryStrip, StripKind } from '../../pattern/story-strip.ts'

/** What stands along the left of a page of small parts, read as the strips beside it: title, set, what to do, and once for all strips
 * what edges and rings mean and what a tape does without one. */
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

const heads: Readonly<Record<StripKind, string>> = {
  layer: 'Layers of skin',
  across: 'Screws across',
  pipe: 'Pipe',
}

export const partsLegend = (
  title: string,
  set: string,
  { strips, byTape }: DesignStrips,
  room: number,
): PartsLegend => {
  const width = Math.min(room, longest)
  const kinds = [...new Set(strips.map(({ kind }) => kind))]
  const wrapped = (words: readonly string[]): readonly string[] =>
    words.flatMap((line) => wrapWords(line, width, size))
  const titles = wrapWords(title, width, size, 'bold')
  const said = wrapped([
    `Set ${set}: cut out. From piece 2 on, cut at the first dashed line and lay that edge on the dashed line of the piece before, cross on cross.`,
    ...kinds.map((kind) => `${heads[kind]}: ${kindWords(strips.filter((strip) => strip.kind === kind))}`),
    ...tapeWords(byTape),
  ])
  const plain = wrapped([`Set ${set}: cut the parts out.`])
  const count = titles.length + (strips.length > 0 ? said : plain).length
  const height = count * leading + off
  return {
    height,
    draw: ({ x, y }, some) => {
      const line = (words: string, i: number): Mark =>
        text('note', { x: 0, y: height - (i + 1) * leading + 0.9 }, size, words, {
          face: i < titles.length ? 'bold' : 'regular',
        })
      return [group([0, 1, -1, 0, x + height, y], [...titles, ...(some ? said : plain)].map(line))]
    },
  }
}

const sentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`

const kindWords = (strips: readonly StoryStrip[]): string => {
  const rows = strips.flatMap(({ rows: own }) => own.flatMap((row) => (row ? [row] : [])))
  const edges = [...new Set(rows.map(({ words }) => words))]
  // edges of one meaning need no names
  const named = (words: string): string => {
    const own = [...new Set(rows.filter((row) => row.words === words).map(({ edge }) => edge))]
    return edges.length > 1 && own[0] !== '' ? `${own.join(', ')} edge: ${words}` : words
  }
  const rings = [...new Set(strips.flatMap((strip) => strip.rings ?? []))]
  const onTicks = [...new Set(strips.flatMap((strip) => strip.onTicks ?? []))]
  return [
    ...edges.map(named),
    ...rings.map((ring) => `a ring is ${ring}`),
    ...onTicks.map((words) => `a ring on a tick: ${words}`),
    ...[...new Set(strips.map(({ zero }) => zero))].map((zero) => `marks count from zero: ${zero}`),
    ...new Set(strips.flatMap(({ notes }) => notes)),
  ]
    .map(sentence)
    .join(' ')
}

/** What lies evenly, by the place where the tape is hooked. */
const tapeWords = (rows: DesignStrips['byTape']): readonly string[] => {
  const zeros = [...new Set(rows.map(({ zero }) => zero))]
  return zeros.map((zero) => {
    const own = rows.filter((row) => row.zero === zero)
    return `No strip, mark with a tape from the ${zero.replace(/^the /, '')}. ${own
      .map(({ what, words, figures }) => sentence(`${what}, ${words}: ${figures.join(', ')}`))
      .join(' ')}`
  })
}
