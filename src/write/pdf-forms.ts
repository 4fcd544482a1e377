import type { PDFContext, PDFRef } from 'pdf-lib'
import type { SharedGroup } from '../drawing/drawing.ts'
import { drawingBounds } from '../drawing/drawing-bounds.ts'
import type { Affine } from '../geometry/affine.ts'
import { boxGrow } from '../geometry/bounds.ts'
import { pointsPerMm } from '../geometry/inch.ts'
import { type ByteSink, createByteSink } from './byte-sink.ts'
import type { PdfPlatform } from './pdf-input.ts'
import { type State, shapeOperators } from './pdf-marks.ts'

/** What pages share, each as a form XObject (ISO 32000-1, 8.10) that they name. */
export interface Forms {
  /** the operators that draw a group where `map` takes it, in points */
  readonly place: (sink: ByteSink, group: SharedGroup, map: Affine, name: string) => void
  /** the XObject resources, once `place` was asked for all */
  readonly embed: (context: PDFContext) => Record<string, PDFRef>
  /** as it stands in the file */
  readonly contents: () => readonly Uint8Array[]
}

interface Form {
  readonly name: string
  readonly marks: SharedGroup['marks']
  /** turn and stretch that it is drawn with: a page only shifts it, so that pens are as wide as elsewhere on the page */
  readonly map: Affine
  readonly content: Uint8Array
  readonly box: readonly number[]
}

/** Turns that differ by less are one: 1e-7 of a mark's length, mm. */
const nearness = 1e-7 * pointsPerMm

const isTurnedAlike = (a: Affine, b: Affine): boolean => {
  for (let i = 0; i < 4; i++) if (Math.abs(a[i]! - b[i]!) > nearness) return false
  return true
}

export const createForms = (deflate: PdfPlatform['deflate']): Forms => {
  const forms: Form[] = []
  const own = createByteSink()

  const made = ({ marks }: SharedGroup, [a, b, c, d]: Affine, what: string): Form => {
    const map: Affine = [a, b, c, d, 0, 0]
    const state: State = {}
    let widest = 0
    // as each page says for itself: a form says it too, for whoever takes it out
    own.words('1 j\n')
    for (const mark of marks) {
      if (mark.kind === 'stroke') widest = Math.max(widest, mark.pen.width)
      shapeOperators(own, mark, map, state, what)
    }
    const { x0, y0, x1, y1 } = boxGrow(drawingBounds(marks, map)!, widest * pointsPerMm)
    return {
      name: `X${forms.length + 1}`,
      marks,
      map,
      content: deflate(own.take()),
      box: [Math.floor(x0), Math.floor(y0), Math.ceil(x1), Math.ceil(y1)],
    }
  }

  return {
    place: (sink, group, map, what) => {
      let form = forms.find((one) => one.marks === group.marks && isTurnedAlike(one.map, map))
      if (!form) {
        form = made(group, map, what)
        forms.push(form)
      }
      sink.words('q 1 0 0 1 ')
      sink.operand(map[4], 4, 'place', what)
      sink.operand(map[5], 4, 'place', what)
      sink.words(`cm /${form.name} Do Q\n`)
    },
    contents: () => forms.map(({ content }) => content),
    embed: (context) =>
      Object.fromEntries(
        forms.map(({ name, content, box }) => [
          name,
          context.register(
            context.stream(content, {
              Type: 'XObject',
              Subtype: 'Form',
              BBox: [...box],
              Resources: {},
              Filter: 'FlateDecode',
            }),
          ),
        ]),
      ),
  }
}
