import type { Units } from '../design/design.ts'
import { showLength } from '../length.ts'
import type { Ramp } from '../ramp/ramp.ts'

/** A long thin strip that carries marks at full size, every one from one zero; mm along it. */
export interface StoryStrip {
  readonly name: string
  /** what it is laid to, in the builder's words */
  readonly title: string
  readonly length: number
  /** along the upper edge, and along the lower edge */
  readonly rows: readonly StripRow[]
}

export interface StripRow {
  /** said once at the zero end */
  readonly words: string
  readonly marks: readonly { readonly at: number; readonly label: string }[]
}

/**
 * One strip for each layer of skin: its upper edge for the flat sheet before it is bent, its lower edge for the layer's upper
 * face once it lies on the curve, where the same studs lie closer. Zero is the toe end.
 */
export const skinStrips = (ramp: Ramp, units: Units): readonly StoryStrip[] => {
  const { transition } = ramp
  if (!transition) return []
  return ramp.skin.map((layer): StoryStrip => {
    const { curve } = transition
    const upper = curve.offset(layer.below + layer.sheet.thickness)
    const label = (i: number): string => `stud ${i + 1}`
    const flat = layer.marks.map((at, i) => ({ at, label: label(i) }))
    const bent = ramp.studs
      .slice(0, layer.marks.length)
      .map((stud, i) => ({ at: upper.lengthTo(curve.placeAtLength(stud.at)), label: label(i) }))
    const end = (at: number) => ({ at, label: 'end' })
    return {
      name: `${ramp.name}/strip-${layer.layer}`,
      title: `${ramp.name}, skin layer ${layer.layer}: ${showLength(layer.sheet.thickness, units, { unit: true, decimals: 1 })} ${layer.sheet.material}`,
      length: layer.length,
      rows: [
        { words: 'flat sheet, before it is bent', marks: [...flat, end(layer.length)] },
        { words: 'on its upper face, once bent', marks: [...bent, end(upper.lengthTo(layer.end))] },
      ],
    }
  })
}
