import { OPS } from './pdfjs.ts'

/** Points of the page (1/72 in, y up), whatever matrices the page stacks. */
export interface PdfPoint {
  readonly x: number
  readonly y: number
}

export type PdfSegment =
  | { readonly kind: 'move' | 'line'; readonly to: PdfPoint }
  | { readonly kind: 'cubic'; readonly c1: PdfPoint; readonly c2: PdfPoint; readonly to: PdfPoint }
  | { readonly kind: 'close' }

export interface PdfBox {
  readonly x0: number
  readonly y0: number
  readonly x1: number
  readonly y1: number
}

interface Painted {
  /** name of the innermost optional-content group, '' outside of all */
  readonly layer: string
  /** bounds of the clip, points; undefined where nothing clips */
  readonly clip: PdfBox | undefined
  /** 0 black … 1 white, in steps of 1/255 */
  readonly grey: number
}

export interface PdfStroke extends Painted {
  /** points */
  readonly width: number
  readonly dash: readonly number[]
  readonly path: readonly PdfSegment[]
}

export interface PdfFill extends Painted {
  readonly path: readonly PdfSegment[]
}

export interface PdfText extends Painted {
  readonly text: string
  /** start of the baseline, its direction in radians */
  readonly x: number
  readonly y: number
  readonly angle: number
  /** em square to the baseline, and advance along it, points */
  readonly size: number
  readonly width: number
  /** linear part of the text matrix on the page, a b c d, without the em */
  readonly matrix: readonly [number, number, number, number]
}

export interface PageMarks {
  readonly strokes: readonly PdfStroke[]
  readonly fills: readonly PdfFill[]
  readonly texts: readonly PdfText[]
}

type Matrix = readonly [number, number, number, number, number, number]

/** first · second in PDF's sense: `first` acts on the point first. */
const times = (m: Matrix, n: Matrix): Matrix => [
  m[0] * n[0] + m[1] * n[2],
  m[0] * n[1] + m[1] * n[3],
  m[2] * n[0] + m[3] * n[2],
  m[2] * n[1] + m[3] * n[3],
  m[4] * n[0] + m[5] * n[2] + n[4],
  m[4] * n[1] + m[5] * n[3] + n[5],
]

const on = (m: Matrix, x: number, y: number): PdfPoint => ({
  x: m[0] * x + m[2] * y + m[4],
  y: m[1] * x + m[3] * y + m[5],
})

interface State {
  ctm: Matrix
  width: number
  dash: readonly number[]
  strokeGrey: number
  fillGrey: number
  clip: PdfBox | undefined
  fontSize: number
  charSpacing: number
  wordSpacing: number
  scale: number
  rise: number
}

/** pdf.js hands paths over as numbers: 0 move, 1 line, 2 cubic, 4 close. */
const readPath = (data: Float32Array, ctm: Matrix): PdfSegment[] => {
  const path: PdfSegment[] = []
  const at = (i: number): PdfPoint => on(ctm, data[i]!, data[i + 1]!)
  for (let i = 0; i < data.length; ) {
    const code = data[i]!
    if (code === 0 || code === 1) {
      path.push({ kind: code === 0 ? 'move' : 'line', to: at(i + 1) })
      i += 3
    } else if (code === 2) {
      path.push({ kind: 'cubic', c1: at(i + 1), c2: at(i + 3), to: at(i + 5) })
      i += 7
    } else if (code === 4) {
      path.push({ kind: 'close' })
      i += 1
    } else throw new Error(`path code ${code}`)
  }
  return path
}

const pathBox = (path: readonly PdfSegment[]): PdfBox => {
  const points = path.flatMap((s) =>
    s.kind === 'close' ? [] : s.kind === 'cubic' ? [s.c1, s.c2, s.to] : [s.to],
  )
  const [xs, ys] = [points.map((p) => p.x), points.map((p) => p.y)]
  return { x0: Math.min(...xs), y0: Math.min(...ys), x1: Math.max(...xs), y1: Math.max(...ys) }
}

const boxMeet = (a: PdfBox | undefined, b: PdfBox): PdfBox =>
  a
    ? {
        x0: Math.max(a.x0, b.x0),
        y0: Math.max(a.y0, b.y0),
        x1: Math.min(a.x1, b.x1),
        y1: Math.min(a.y1, b.y1),
      }
    : b

/** `#rrggbb`, as pdf.js gives every colour; throws on a colour that is no grey. */
const greyOf = (colour: string): number => {
  const [r, g, b] = [1, 3, 5].map((i) => Number.parseInt(colour.slice(i, i + 2), 16))
  if (r !== g || g !== b) throw new Error(`colour ${colour} is no grey`)
  return r! / 255
}

interface Glyph {
  readonly unicode: string
  readonly width: number
  readonly isSpace: boolean
}

const strokeOps = new Set([
  OPS.stroke,
  OPS.closeStroke,
  OPS.fillStroke,
  OPS.eoFillStroke,
  OPS.closeFillStroke,
  OPS.closeEOFillStroke,
])
const fillOps = new Set([
  OPS.fill,
  OPS.eoFill,
  OPS.fillStroke,
  OPS.eoFillStroke,
  OPS.closeFillStroke,
  OPS.closeEOFillStroke,
])

/** Plays an operator list of pdf.js and collects what it paints. Throws on operators that it does not know. */
export const readPageMarks = (
  fns: readonly number[],
  // biome-ignore lint/suspicious/noExplicitAny: pdf.js does not type them
  argLists: readonly any[],
  groupName: (id: string) => string,
): PageMarks => {
  const strokes: PdfStroke[] = []
  const fills: PdfFill[] = []
  const texts: PdfText[] = []
  let state: State = {
    ctm: [1, 0, 0, 1, 0, 0],
    width: 1,
    dash: [],
    strokeGrey: 0,
    fillGrey: 0,
    clip: undefined,
    fontSize: 0,
    charSpacing: 0,
    wordSpacing: 0,
    scale: 1,
    rise: 0,
  }
  const stack: State[] = []
  const nesting: (string | undefined)[] = []
  let clipPending = false
  let textMatrix: Matrix = [1, 0, 0, 1, 0, 0]
  let lineMatrix: Matrix = textMatrix
  let leading = 0

  const layer = (): string => nesting.findLast((name) => name !== undefined) ?? ''
  const save = (): void => {
    stack.push({ ...state })
  }
  const restore = (): void => {
    const top = stack.pop()
    if (!top) throw new Error('Q without q')
    state = top
  }
  const nextLine = (x: number, y: number): void => {
    lineMatrix = times([1, 0, 0, 1, x, y], lineMatrix)
    textMatrix = lineMatrix
  }
  const show = (glyphs: readonly (Glyph | number)[]): void => {
    const { fontSize, scale, rise } = state
    const start = times([1, 0, 0, 1, 0, rise], times(textMatrix, state.ctm))
    let advance = 0
    let text = ''
    for (const glyph of glyphs)
      if (typeof glyph === 'number') advance -= (glyph / 1000) * fontSize * scale
      else {
        text += glyph.unicode
        const gap = state.charSpacing + (glyph.isSpace ? state.wordSpacing : 0)
        advance += ((glyph.width / 1000) * fontSize + gap) * scale
      }
    textMatrix = times([1, 0, 0, 1, advance, 0], textMatrix)
    const along = Math.hypot(start[0], start[1])
    texts.push({
      layer: layer(),
      clip: state.clip,
      grey: state.fillGrey,
      text,
      x: start[4],
      y: start[5],
      angle: Math.atan2(start[1], start[0]),
      size: (Math.abs(start[0] * start[3] - start[1] * start[2]) / along) * fontSize,
      width: advance * along,
      matrix: [start[0], start[1], start[2], start[3]],
    })
  }
  const paint = (op: number, data: Float32Array | null): void => {
    const path = data ? readPath(data, state.ctm) : []
    if (path.length > 0) {
      const clip = state.clip
      const [a, b, c, d] = state.ctm
      const size = Math.sqrt(Math.abs(a * d - b * c))
      if (fillOps.has(op)) fills.push({ layer: layer(), clip, grey: state.fillGrey, path })
      if (strokeOps.has(op))
        strokes.push({
          layer: layer(),
          clip,
          grey: state.strokeGrey,
          width: state.width * size,
          dash: state.dash.map((v) => v * size),
          path,
        })
      if (clipPending) state.clip = boxMeet(clip, pathBox(path))
    }
    clipPending = false
  }

  // biome-ignore lint/suspicious/noExplicitAny: pdf.js does not type them
  const play = (fn: number, args: any): void => {
    switch (fn) {
      case OPS.save:
        save()
        return
      case OPS.restore:
        restore()
        return
      case OPS.transform:
        state.ctm = times(args as Matrix, state.ctm)
        return
      case OPS.paintFormXObjectBegin: {
        save()
        const [matrix, box] = args as [Matrix | null, readonly number[] | null]
        if (matrix) state.ctm = times(matrix, state.ctm)
        if (box) {
          const corners = [
            [box[0]!, box[1]!],
            [box[2]!, box[1]!],
            [box[2]!, box[3]!],
            [box[0]!, box[3]!],
          ].map(([x, y]): PdfSegment => ({ kind: 'line', to: on(state.ctm, x!, y!) }))
          state.clip = boxMeet(state.clip, pathBox(corners))
        }
        return
      }
      case OPS.paintFormXObjectEnd:
        restore()
        return
      case OPS.setLineWidth:
        state.width = args[0]
        return
      case OPS.setDash:
        state.dash = [...args[0]]
        return
      case OPS.setStrokeRGBColor:
        state.strokeGrey = greyOf(args[0])
        return
      case OPS.setFillRGBColor:
        state.fillGrey = greyOf(args[0])
        return
      case OPS.clip:
      case OPS.eoClip:
        clipPending = true
        return
      case OPS.constructPath:
        paint(args[0], args[1][0])
        return
      case OPS.beginMarkedContentProps:
        nesting.push(args[0] === 'OC' && args[1] ? groupName(args[1].id) : undefined)
        return
      case OPS.beginMarkedContent:
        nesting.push(undefined)
        return
      case OPS.endMarkedContent:
        if (nesting.length === 0) throw new Error('EMC without BDC')
        nesting.pop()
        return
      case OPS.beginText:
        textMatrix = [1, 0, 0, 1, 0, 0]
        lineMatrix = textMatrix
        return
      case OPS.setFont:
        state.fontSize = args[1]
        return
      case OPS.setTextMatrix:
        textMatrix = Array.from(args[0] as Float32Array) as unknown as Matrix
        lineMatrix = textMatrix
        return
      case OPS.moveText:
        nextLine(args[0], args[1])
        return
      case OPS.setLeadingMoveText:
        leading = -args[1]
        nextLine(args[0], args[1])
        return
      case OPS.setLeading:
        leading = -args[0]
        return
      case OPS.nextLine:
        nextLine(0, -leading)
        return
      case OPS.setCharSpacing:
        state.charSpacing = args[0]
        return
      case OPS.setWordSpacing:
        state.wordSpacing = args[0]
        return
      case OPS.setHScale:
        state.scale = args[0] / 100
        return
      case OPS.setTextRise:
        state.rise = args[0]
        return
      case OPS.showText:
        show(args[0])
        return
      case OPS.dependency:
      case OPS.endText:
      case OPS.setLineCap:
      case OPS.setLineJoin:
      case OPS.setMiterLimit:
        return
      default:
        throw new Error(`operator ${Object.entries(OPS).find(([, v]) => v === fn)?.[0] ?? fn} is not read`)
    }
  }
  for (const [i, fn] of fns.entries()) play(fn, argLists[i])
  if (stack.length > 0) throw new Error(`${stack.length} q without Q`)
  if (nesting.length > 0) throw new Error(`${nesting.length} BDC without EMC`)
  return { strokes, fills, texts }
}
