import type { Units } from '../design/design.ts'
import { showLength } from '../length.ts'
import type { Ramp } from '../ramp/ramp.ts'
import type { SkinLayer } from '../ramp/skin.ts'
import type { LayerPlan } from '../ramp/skin-plan.ts'
import { endMark, gapMarks, rowMarks, type StoryStrip, type StripMark } from './story-strip.ts'

/**
 * One strip for each layer of skin: its upper edge for the flat sheet before it is bent, its lower edge for the layer's upper
 * face once it lies on the curve, where the same marks lie closer. Zero is the toe end. A layer that stays flat needs one edge.
 */
export const skinStrips = (ramp: Ramp, units: Units): readonly StoryStrip[] =>
  ramp.skin.flatMap((layer): readonly StoryStrip[] => {
    const plan = ramp.plans.find((one) => one.layer === layer.layer)
    if (layer.length <= 0) return []
    const flat = layerMarks(layer, plan, units)
    const bent = onUpperFace(ramp, layer)
    const words = { words: 'flat sheet, before it is bent', marks: flat }
    return [
      {
        name: `${ramp.name}/strip-${layer.layer}`,
        title: `${ramp.name}, skin layer ${layer.layer}: ${showLength(layer.sheet.thickness, units, { unit: true, decimals: 1 })} ${layer.sheet.material}`,
        length: layer.length,
        zero: ramp.kind === 'quarter' ? 'toe end' : 'one end',
        rows: bent
          ? [
              words,
              {
                words: 'its upper face, once bent',
                marks: [
                  ...flat.slice(0, -1).map((mark) => ({ ...mark, at: bent(mark.at) })),
                  endMark(bent(layer.length), units),
                ],
              },
            ]
          : [{ ...words, words: 'sheet' }],
        rings: plan && plan.rows.length > 0 ? 'row of screws' : null,
      },
    ]
  })

/** Studs, seams and rows of screws of the flat sheet; its end is the last. */
const layerMarks = (layer: SkinLayer, plan: LayerPlan | undefined, units: Units): readonly StripMark[] => {
  const seams = plan?.seams ?? []
  return [
    ...rowMarks([
      // the edges of two sheets stand for the middle of the stud below them
      ...layer.marks.flatMap((at, i): StripMark[] =>
        seams.some(({ stud }) => stud === i) ? [] : [{ at, sign: 'tick', label: `stud ${i + 1}` }],
      ),
      ...gapMarks(plan?.pieces ?? [], (i) => {
        const stud = seams[i]?.stud ?? null
        return stud === null ? 'seam' : `seam on stud ${stud + 1}`
      }),
      ...(plan?.rows ?? []).map(({ at }): StripMark => ({ at, sign: 'ring', label: 'screws' })),
    ]),
    endMark(layer.length, units),
  ]
}

/** From a place on the flat sheet to the same on the layer's upper face, square to the curve; null where nothing is bent. */
const onUpperFace = (ramp: Ramp, { below, sheet, start }: SkinLayer): ((at: number) => number) | null => {
  if (ramp.kind !== 'quarter' || !ramp.transition) return null
  const { curve } = ramp.transition
  const [middle, upper] = [0.5, 1].map((t) => curve.offset(below + t * sheet.thickness))
  const [ahead, upperAhead] = [middle!.lengthTo(start), upper!.lengthTo(start)]
  return (at) => upper!.lengthTo(middle!.placeAtLength(at + ahead)) - upperAhead
}
