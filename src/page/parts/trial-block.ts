import { type Drawing, group, stroke } from '../../drawing/drawing.ts'
import { type ParagraphStyle, paragraph } from '../../drawing/paragraph.ts'
import { type Affine, affineTranslate } from '../../geometry/affine.ts'
import { boxCorners, pathClip } from '../../geometry/clip.ts'
import { pathOf } from '../../geometry/path.ts'
import type { Point } from '../../geometry/point.ts'
import { pathSample } from '../../geometry/sample.ts'
import type { LipTrial } from '../../pattern/lip/lip-trial.ts'
import { letters, pens } from '../../pattern/pens.ts'
import type { PipeStrip } from '../../pattern/pipe-strip.ts'
import type { Block } from './block.ts'
import type { Size } from './pack.ts'
import { type DrawnTrial, pipeStripMarks, pipeStripSize } from './trial-piece.ts'

/** Words keep this far off the cut line and the piece's edges, mm. */
const clear = { line: 7, edge: 4 } as const

/** Words under a narrow piece need no less width, mm. */
const leastWords = 110

/**
 * A lip trial with all its words: on the wood that is kept where they fit, else under the piece. Null where it fits `room`
 * neither upright nor turned.
 */
export const trialBlock = (trial: DrawnTrial, title: string, set: string, room: Size): Block | null => {
  const { drawing, around: box } = trial
  const [wide, high] = [box.x1 - box.x0, box.y1 - box.y0]
  const map = (x: number, y: number): Affine => affineTranslate(x - box.x0, y - box.y0)
  const fits = ({ width, height }: Size): boolean =>
    (width <= room.width && height <= room.height) || (height <= room.width && width <= room.height)
  const blockOf = (
    { width, height }: Size,
    place: Affine,
    words: Drawing,
    levels: readonly number[],
  ): Block => ({
    width,
    height,
    places: [
      { part: 'trial', pattern: trial.name, map: place, window: { x0: 0, y0: 0, x1: width, y1: height } },
    ],
    draw: () => [group(place, drawing), ...words, ...cornerMarks(width, height, levels)],
  })
  const onWood = wordsOnWood(trial, title, set)
  if (onWood) {
    const size = { width: wide, height: high }
    // the wood's own dashed edges end the block below
    return fits(size) ? blockOf(size, map(0, 0), [group(map(0, 0), onWood)], [high]) : null
  }
  for (const width of [Math.max(wide, leastWords), room.width, room.height]) {
    if (width < wide) continue
    const words = trialWordsAt(trial, title, set, { x: 0, y: 0 }, width)
    const size = { width, height: high + 5 - words.bottom }
    const under = [group(affineTranslate(0, -words.bottom), words.marks)]
    if (fits(size)) return blockOf(size, map((width - wide) / 2, size.height - high), under, [0, size.height])
  }
  return null
}

/** Corners of the block: what lies between them belongs together. */
const cornerMarks = (width: number, height: number, levels: readonly number[]): Drawing =>
  [0, width].flatMap((x) =>
    levels.flatMap((y) =>
      [
        { x: x === 0 ? 5 : width - 5, y },
        { x, y: y === 0 ? 5 : height - 5 },
      ].map((end) => stroke('note', pathOf({ x, y }, end), pens.ruler)),
    ),
  )

/** In the side's mm. Null where the wood has no room. */
const wordsOnWood = (trial: LipTrial, title: string, set: string): Drawing | null => {
  const { piece, outline, floor } = trial
  const points = pathClip(outline, boxCorners(piece)).flatMap((path) => pathSample(path, 1))
  // the lower the words begin, the wider is the wood beside the curve
  for (let top = floor - clear.line; top > piece.y0 + 20; top -= 4) {
    const beside = points.filter(({ y }) => y < top + clear.line)
    const x0 = Math.max(piece.x0, ...beside.map(({ x }) => x).filter((x) => x < trial.middle)) + clear.line
    const x1 = Math.min(piece.x1, ...beside.map(({ x }) => x).filter((x) => x >= trial.middle)) - clear.edge
    if (x1 - x0 < 60) continue
    const words = trialWordsAt(trial, title, set, { x: x0, y: top }, x1 - x0)
    if (words.bottom >= piece.y0 + clear.edge) return words.marks
  }
  return null
}

/** Head, title, code and steps from a point downward. */
const trialWordsAt = (
  { steps }: LipTrial,
  title: string,
  set: string,
  at: Point,
  width: number,
): { readonly marks: Drawing; readonly bottom: number } => {
  const style: ParagraphStyle = { layer: 'note', width, size: 3.2 }
  const head = paragraph(at, 'Lip trial: saw this in scrap first', {
    ...style,
    size: letters.word,
    face: 'bold',
  })
  const sub = paragraph({ x: at.x, y: head.bottom }, title, { ...style, size: letters.small })
  // apart from the title, which may be in letters of any language
  const code = paragraph({ x: at.x, y: sub.bottom }, `set ${set}`, { ...style, size: letters.small })
  let top = code.bottom - 2
  const told: Drawing[] = []
  for (const step of steps) {
    const lines = paragraph({ x: at.x, y: top }, step, style)
    told.push(lines.marks)
    top = lines.bottom - 1
  }
  return { marks: [...head.marks, ...sub.marks, ...code.marks, ...told.flat()], bottom: top }
}

/** The strip that measures the pipe, lying so that its words are level. */
export const pipeBlock = (strip: PipeStrip, name: string): Block => {
  const { width: height, zero } = pipeStripSize
  const width = strip.length + zero
  return {
    width,
    height,
    draw: () => [group([0, -1, 1, 0, 0, height], pipeStripMarks({ x: 0, y: 0 }, strip))],
    // along the strip from its zero line, and across it from the edge with the scale
    places: [
      {
        part: 'pipe',
        pattern: name,
        map: affineTranslate(zero, 0),
        window: { x0: 0, y0: 0, x1: width, y1: height },
      },
    ],
  }
}
