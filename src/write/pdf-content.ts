import { type Drawing, layers, type Mark } from '../drawing/drawing.ts'
import { affineScale } from '../geometry/affine.ts'
import { pointsPerMm } from '../geometry/inch.ts'
import type { ByteSink } from './byte-sink.ts'
import type { Fonts } from './pdf-fonts.ts'
import type { Forms } from './pdf-forms.ts'
import { type State, shapeOperators, textOperators } from './pdf-marks.ts'
import { marksAndShared } from './placed.ts'

/** Where what is no path of the page itself comes from. */
export interface Resources {
  readonly fonts: Fonts
  readonly forms: Forms
}

/** Writes the content stream of a page: each layer once, as marked content, in drawing order. */
export const writePageContent = (
  sink: ByteSink,
  drawing: Drawing,
  number: number,
  { fonts, forms }: Resources,
): void => {
  const byLayer = marksAndShared(drawing, affineScale(pointsPerMm))
  const state: State = {}
  // round joins: no spikes where a curve meets a straight; butt caps: a line ends where it is drawn to
  sink.words('1 j\n')
  for (const layer of layers) {
    const marks = byLayer[layer]
    if (marks.length === 0) continue
    sink.words(`/OC /${layer} BDC\n`)
    const nameOf = (kind: Mark['kind']): string => `a ${kind} in layer ${layer} of page ${number}`
    const names = {
      stroke: nameOf('stroke'),
      fill: nameOf('fill'),
      text: nameOf('text'),
      group: nameOf('group'),
    }
    let inText = false
    for (const { mark, map } of marks) {
      const name = names[mark.kind]
      if (inText !== (mark.kind === 'text')) {
        sink.words(inText ? 'ET\n' : 'BT\n')
        inText = !inText
      }
      if (mark.kind === 'text') textOperators(sink, mark, map, fonts, state, name)
      else if (mark.kind === 'group') forms.place(sink, mark, map, name)
      else shapeOperators(sink, mark, map, state, name)
    }
    sink.words(inText ? 'ET\nEMC\n' : 'EMC\n')
  }
}
