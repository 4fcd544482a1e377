import type { PDFContext, PDFDict, PDFRef } from 'pdf-lib'
import { type Layer, layers } from '../drawing/drawing.ts'
import { textString } from './pdf-string.ts'

/** Optional content: one group a layer, named as in `layers`, all on. */
export const createLayers = (
  context: PDFContext,
): { readonly groups: Record<Layer, PDFRef>; readonly properties: PDFDict } => {
  const refs = layers.map((layer) => context.register(context.obj({ Type: 'OCG', Name: textString(layer) })))
  const groups = Object.fromEntries(layers.map((layer, i) => [layer, refs[i]!])) as Record<Layer, PDFRef>
  // in the viewer's list what is to be sawn comes first
  const order = [...refs].reverse()
  const properties = context.obj({
    OCGs: refs,
    D: { Name: textString('Layers'), BaseState: 'ON', ON: refs, Order: order },
  })
  return { groups, properties }
}
