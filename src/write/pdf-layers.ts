import { type Layer, layers } from '../drawing/drawing.ts'
import type { PdfDict, PdfObjects, PdfRef } from './pdf-objects.ts'
import { textString } from './pdf-string.ts'

/** Optional content: one group a layer, named as in `layers`, all on. */
export const createLayers = (
  objects: PdfObjects,
): { readonly groups: Record<Layer, PdfRef>; readonly properties: PdfDict } => {
  const refs = layers.map((layer) => objects.register({ Type: 'OCG', Name: textString(layer) }))
  const groups = Object.fromEntries(layers.map((layer, i) => [layer, refs[i]!])) as Record<Layer, PdfRef>
  // in the viewer's list what is to be sawn comes first
  const order = [...refs].reverse()
  const properties = {
    OCGs: refs,
    D: { Name: textString('Layers'), BaseState: 'ON', ON: refs, Order: order },
  }
  return { groups, properties }
}
