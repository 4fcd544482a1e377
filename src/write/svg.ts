import { type Drawing, layers } from '../drawing/drawing.ts'
import { above0, formatNumber } from '../drawing/number.ts'
import { textWidth } from '../drawing/text-width.ts'
import { type Affine, affineRotate, affineThen, affineTranslate } from '../geometry/affine.ts'
import { marksByLayer, type PlainMark } from './placed.ts'
import { svgPathData } from './svg-path.ts'

export interface SvgStyle {
  /** of every coordinate, mm. 4 unless said: what is drawn lies within 0.00005 mm of what is written */
  readonly decimals?: number
  /** what a grey is painted with, 0 black to 1 white; a grey of its own unless said. Anything a paint attribute takes */
  readonly paint?: (grey: number) => string
  readonly fonts?: string
}

export interface SvgPicture {
  readonly drawing: Drawing
  /** what is drawn lies between 0,0 and width, height; mm, y up */
  readonly width: number
  readonly height: number
  /** for those who hear the page */
  readonly title?: string
}

/** Height of a capital of the fonts named, per em: Helvetica and what is cut to its widths. */
const capital = 0.718
const usualFonts = 'Helvetica, Arial, "Liberation Sans", sans-serif'

const greyPaint = (grey: number): string => {
  const value = Math.round(grey * 255)
    .toString(16)
    .padStart(2, '0')
  return `#${value}${value}${value}`
}

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;')

/** Controls, halves of letters, and what is no letter: XML 1.0 takes none of them. */
const forbidden = /[\p{Cc}\p{Cs}\ufffe\uffff]/gu

const inside = (value: number, name: string): number => {
  if (!(value >= 0 && value <= 1)) throw new RangeError(`${name} is ${value}, it must lie in 0 … 1`)
  return value
}

const markElement = (mark: PlainMark, map: Affine, style: Required<SvgStyle>): string => {
  const name = `a ${mark.kind} in layer ${mark.layer}`
  const { decimals, paint } = style
  const number = (value: number): string => formatNumber(value, decimals, name)
  switch (mark.kind) {
    case 'stroke': {
      const { width, dash, grey = 0 } = mark.pen
      const dashes = dash?.length
        ? ` stroke-dasharray="${dash.map((mm) => number(above0(mm, `dash of ${name}`))).join(' ')}"`
        : ''
      return `<path d="${svgPathData(mark.path, map, decimals, name)}" fill="none" stroke="${paint(inside(grey, name))}" stroke-width="${number(above0(width, `pen width of ${name}`))}"${dashes}/>`
    }
    case 'fill':
      return `<path d="${svgPathData({ ...mark.path, closed: true }, map, decimals, name)}" fill="${paint(inside(mark.grey, name))}"/>`
    case 'text': {
      const { size, face, align, at, angle, grey = 0 } = mark
      // letters stand up where y goes down
      const own = affineThen(
        affineThen([1, 0, 0, -1, 0, 0], affineThen(affineRotate(angle), affineTranslate(at.x, at.y))),
        map,
      )
      const turn = own.map((v, i) => formatNumber(v, i < 4 ? 6 : decimals, `place of ${name}`))
      const words = mark.text.replace(forbidden, '\ufffd')
      const anchor = { left: 'start', middle: 'middle', right: 'end' }[align]
      return (
        `<text transform="matrix(${turn.join(' ')})" font-size="${number(above0(size, `size of ${name}`) / capital)}"` +
        `${face === 'bold' ? ' font-weight="bold"' : ''}${anchor === 'start' ? '' : ` text-anchor="${anchor}"`}` +
        // as wide as it was measured, whatever font the reader has
        ` textLength="${number(textWidth(mark.text, size, face))}" lengthAdjust="spacingAndGlyphs" fill="${paint(inside(grey, name))}">${escaped(words)}</text>`
      )
    }
    default:
      return mark satisfies never
  }
}

/** The marks of a drawing as a group for each layer that has some, in drawing order; y down from `height`, mm. */
export const svgLayers = (drawing: Drawing, height: number, style: SvgStyle = {}): string => {
  const full: Required<SvgStyle> = {
    decimals: style.decimals ?? 4,
    paint: style.paint ?? greyPaint,
    fonts: style.fonts ?? usualFonts,
  }
  const byLayer = marksByLayer(drawing, [1, 0, 0, -1, 0, height])
  return layers
    .filter((layer) => byLayer[layer].length > 0)
    .map(
      (layer) =>
        `<g data-layer="${layer}" stroke-linejoin="round" font-family="${escaped(full.fonts)}">\n${byLayer[
          layer
        ]
          .map(({ mark, map }) => `${markElement(mark, map, full)}\n`)
          .join('')}</g>\n`,
    )
    .join('')
}

/** A drawing in real size as a file of its own. Same input, same bytes. Throws RangeError on what cannot be written, naming it. */
export const writeSvg = ({ drawing, width, height, title }: SvgPicture, style: SvgStyle = {}): string => {
  const size = (value: number, name: string): string =>
    formatNumber(above0(value, name), style.decimals ?? 4, name)
  const [w, h] = [size(width, 'the width'), size(height, 'the height')]
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${w}mm" height="${h}mm" viewBox="0 0 ${w} ${h}"${title === undefined ? '' : ' role="img"'}>\n` +
    `${title === undefined ? '' : `<title>${escaped(title.replace(forbidden, '\ufffd'))}</title>\n`}` +
    `${svgLayers(drawing, height, style)}</svg>\n`
  )
}
