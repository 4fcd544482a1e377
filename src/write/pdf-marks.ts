import { formatNumber } from '../drawing/number.ts'
import { type Affine, affineRotate, affineThen } from '../geometry/affine.ts'
import { pointsPerMm } from '../geometry/inch.ts'
import type { ByteSink } from './byte-sink.ts'
import type { Fonts } from './pdf-fonts.ts'
import { pathOperators } from './pdf-path.ts'
import type { PlainMark } from './placed.ts'

type StrokeMark = Extract<PlainMark, { kind: 'stroke' }>
type FillMark = Extract<PlainMark, { kind: 'fill' }>
type TextMark = Extract<PlainMark, { kind: 'text' }>

/** The part of the graphics state that marks set: an operator is written only where its value changes. */
export interface State {
  width?: string
  dash?: string
  strokeGrey?: string
  fillGrey?: string
  font?: string
  /** the last ones: most marks have what the one before had, and nothing is written then */
  pen?: StrokeMark['pen']
  grey?: number
  em?: number
  face?: string
}

type Value = Exclude<keyof State, 'pen' | 'grey' | 'em' | 'face'>

const change = (sink: ByteSink, state: State, key: Value, operator: string): void => {
  if (state[key] === operator) return
  state[key] = operator
  sink.words(`${operator}\n`)
}

const positive = (value: number, name: string): number => {
  if (value <= 0) throw new RangeError(`${name} is ${value}, it must be above 0`)
  return value
}

const grey = (value: number, name: string): string => {
  if (value < 0 || value > 1) throw new RangeError(`${name} is ${value}, it must lie in 0 … 1`)
  return formatNumber(value, 3, name)
}

const mmLength = (mm: number, name: string): string => formatNumber(mm * pointsPerMm, 4, name)

const penOperators = (sink: ByteSink, pen: StrokeMark['pen'], state: State, name: string): void => {
  const last = state.pen
  if (pen === last) return
  if (pen.width !== last?.width) {
    const width = mmLength(positive(pen.width, `pen width of ${name}`), `pen width of ${name}`)
    change(sink, state, 'width', `${width} w`)
  }
  if (!last || pen.dash !== last.dash) {
    const dash = (pen.dash ?? []).map((mm) => mmLength(positive(mm, `dash of ${name}`), `dash of ${name}`))
    change(sink, state, 'dash', `[${dash.join(' ')}] 0 d`)
  }
  if (!last || pen.grey !== last.grey)
    change(sink, state, 'strokeGrey', `${grey(pen.grey ?? 0, `grey of ${name}`)} G`)
  state.pen = pen
}

const fillOperator = (sink: ByteSink, value: number, state: State, name: string): void => {
  if (value === state.grey) return
  change(sink, state, 'fillGrey', `${grey(value, `grey of ${name}`)} g`)
  state.grey = value
}

const fontOperator = (sink: ByteSink, font: string, em: number, state: State, name: string): void => {
  if (em === state.em && font === state.face) return
  change(sink, state, 'font', `/${font} ${mmLength(em, `size of ${name}`)} Tf`)
  state.em = em
  state.face = font
}

/** A stroke or a fill; `map` takes its frame to points. */
export const shapeOperators = (
  sink: ByteSink,
  mark: StrokeMark | FillMark,
  map: Affine,
  state: State,
  name: string,
): void => {
  if (mark.kind === 'stroke') penOperators(sink, mark.pen, state, name)
  else fillOperator(sink, mark.grey, state, name)
  pathOperators(sink, mark.path, map, name)
  sink.words(mark.kind === 'stroke' ? 'S\n' : 'f\n')
}

/** A text between BT and ET. Tm carries the whole map, so that a corrected or mirrored page takes its words along. */
export const textOperators = (
  sink: ByteSink,
  mark: TextMark,
  map: Affine,
  fonts: Fonts,
  state: State,
  name: string,
): void => {
  const { font, em, width, squeeze, shown } = fonts.set(
    mark.text,
    positive(mark.size, `size of ${name}`),
    mark.face,
  )
  const back = mark.align === 'left' ? 0 : mark.align === 'middle' ? -width / 2 : -width
  const turn = affineRotate(mark.angle)
  const cos = turn[0]
  const sin = turn[1]
  // squeezed, set back along its line, turned, moved
  const { x, y } = mark.at
  const own = affineThen([squeeze * cos, squeeze * sin, -sin, cos, cos * back + x, sin * back + y], map)
  fillOperator(sink, mark.grey ?? 0, state, name)
  fontOperator(sink, font, em, state, name)
  // Tf holds the em in points, so the matrix is left with turn and stretch alone
  for (let i = 0; i < 6; i++)
    if (i < 4) sink.operand(own[i]! / pointsPerMm, 6, 'place', name)
    else sink.operand(own[i]!, 4, 'place', name)
  sink.words(`Tm ${shown} Tj\n`)
}
