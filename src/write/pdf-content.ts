import { type Drawing, layers } from '../drawing/drawing.ts'
import { affineScale } from '../geometry/affine.ts'
import { pointsPerMm } from '../geometry/inch.ts'
import type { ByteSink } from './byte-sink.ts'
import type { Fonts } from './pdf-fonts.ts'
import { type State, shapeOperators, textOperators } from './pdf-marks.ts'
import { marksByLayer, type PlainMark } from './placed.ts'

/** Writes the content stream of a page: each layer once, as marked content, in drawing order. */
export const pageContent = (sink: ByteSink, drawing: Drawing, number: number, fonts: Fonts): void => {
  const byLayer = marksByLayer(drawing, affineScale(pointsPerMm))
  const state: State = {}
  // round joins: no spikes where a curve meets a straight; butt caps: a line ends where it is drawn to
  sink.words('1 j\n')
  for (const layer of layers) {
    const marks = byLayer[layer]
    if (marks.length === 0) continue
    sink.words(`/OC /${layer} BDC\n`)
    const nameOf = (kind: PlainMark['kind']): string => `a ${kind} in layer ${layer} of page ${number}`
    const names = { stroke: nameOf('stroke'), fill: nameOf('fill'), text: nameOf('text') }
    let inText = false
    for (const { mark, map } of marks) {
      const name = names[mark.kind]
      if (inText !== (mark.kind === 'text')) {
        sink.words(inText ? 'ET\n' : 'BT\n')
        inText = !inText
      }
      if (mark.kind === 'text') textOperators(sink, mark, map, fonts, state, name)
      else shapeOperators(sink, mark, map, state, name)
    }
    sink.words(inText ? 'ET\nEMC\n' : 'EMC\n')
  }
}
