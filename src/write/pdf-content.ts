import { type Drawing, layers } from '../drawing/drawing.ts'
import { formatNumber } from '../drawing/number.ts'
import { type Affine, affineRotate, affineScale, affineThen, affineTranslate } from '../geometry/affine.ts'
import { pointsPerMm } from '../geometry/inch.ts'
import type { Fonts } from './pdf-fonts.ts'
import { pathOperators } from './pdf-path.ts'
import { marksByLayer, type PlainMark } from './placed.ts'

type StrokeMark = Extract<PlainMark, { kind: 'stroke' }>
type TextMark = Extract<PlainMark, { kind: 'text' }>

/** The part of the graphics state that marks set: an operator is written only where its value changes. */
interface State {
  width?: string
  dash?: string
  strokeGrey?: string
  fillGrey?: string
  font?: string
}

const change = (state: State, key: keyof State, operator: string): string => {
  if (state[key] === operator) return ''
  state[key] = operator
  return `${operator}\n`
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

const penOperators = (pen: StrokeMark['pen'], state: State, name: string): string => {
  const dash = (pen.dash ?? []).map((mm) => mmLength(positive(mm, `dash of ${name}`), `dash of ${name}`))
  const width = mmLength(positive(pen.width, `pen width of ${name}`), `pen width of ${name}`)
  return (
    change(state, 'width', `${width} w`) +
    change(state, 'dash', `[${dash.join(' ')}] 0 d`) +
    change(state, 'strokeGrey', `${grey(pen.grey ?? 0, `grey of ${name}`)} G`)
  )
}

/** A text between BT and ET. Tm carries the whole map, so that a corrected or mirrored page takes its words along. */
const textOperators = (mark: TextMark, map: Affine, fonts: Fonts, state: State, name: string): string => {
  const { font, em, width, squeeze, shown } = fonts.set(
    mark.text,
    positive(mark.size, `size of ${name}`),
    mark.face,
  )
  const back = mark.align === 'left' ? 0 : mark.align === 'middle' ? -width / 2 : -width
  const turned = affineThen(affineRotate(mark.angle), affineTranslate(mark.at.x, mark.at.y))
  const own = affineThen(affineThen([squeeze, 0, 0, 1, back, 0], turned), map)
  // Tf holds the em in points, so the matrix is left with turn and stretch alone
  const matrix = own.map((v, i) =>
    formatNumber(i < 4 ? v / pointsPerMm : v, i < 4 ? 6 : 4, `place of ${name}`),
  )
  return (
    change(state, 'fillGrey', `${grey(mark.grey ?? 0, `grey of ${name}`)} g`) +
    change(state, 'font', `/${font} ${mmLength(em, `size of ${name}`)} Tf`) +
    `${matrix.join(' ')} Tm ${shown} Tj\n`
  )
}

/** The content stream of a page, ASCII: each layer once, as marked content, in drawing order. */
export const pageContent = (drawing: Drawing, number: number, fonts: Fonts): string => {
  const byLayer = marksByLayer(drawing, affineScale(pointsPerMm))
  const state: State = {}
  // round joins: no spikes where a curve meets a straight; butt caps: a line ends where it is drawn to
  let out = '1 j\n'
  for (const layer of layers) {
    const marks = byLayer.get(layer)!
    if (marks.length === 0) continue
    out += `/OC /${layer} BDC\n`
    let inText = false
    for (const { mark, map } of marks) {
      const name = `a ${mark.kind} in layer ${layer} of page ${number}`
      if (inText !== (mark.kind === 'text')) {
        out += inText ? 'ET\n' : 'BT\n'
        inText = !inText
      }
      switch (mark.kind) {
        case 'stroke':
          out += `${penOperators(mark.pen, state, name)}${pathOperators(mark.path, map, name)}S\n`
          break
        case 'fill':
          out += change(state, 'fillGrey', `${grey(mark.grey, `grey of ${name}`)} g`)
          out += `${pathOperators(mark.path, map, name)}f\n`
          break
        case 'text':
          out += textOperators(mark, map, fonts, state, name)
          break
        default:
          mark satisfies never
      }
    }
    out += inText ? 'ET\nEMC\n' : 'EMC\n'
  }
  return out
}
