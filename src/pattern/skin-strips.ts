import type { Units } from '../design/design.ts'
import { showThickness } from '../length/thickness.ts'
import type { Curve } from '../ramp/curve/curve.ts'
import type { SolvedRamp } from '../ramp/ramp.ts'
import type { Layer } from '../ramp/skin/layer.ts'
import { seamWords } from '../ramp/skin/seam-studs.ts'
import {
  endMark,
  gapMarks,
  isOnTick,
  markFigure,
  rowMarks,
  type StoryStrip,
  type StripMark,
  tickAt,
} from './story-strip.ts'

/**
 * One strip for each layer of skin: an edge for the flat sheet before it is bent, and one for the layer's outer face once it
 * lies on the curve, where the same marks lie closer. Zero is the layer's lower end. A layer that stays flat needs one edge.
 */
export const skinStrips = (ramp: SolvedRamp, units: Units): readonly StoryStrip[] =>
  ramp.skin.flatMap((layer): readonly StoryStrip[] => {
    if (layer.length <= 0) return []
    const flat = layerMarks(layer, units)
    const bent = onOuterFace(ramp, layer)
    return [
      {
        name: `${ramp.name}/strip-${layer.layer}`,
        kind: 'layer',
        ramps: ramp.name,
        what: `layer ${layer.layer}`,
        aside: `${showThickness(layer.sheet.thickness, units, { unit: true })} ${layer.sheet.material}`,
        straight: !bent,
        length: layer.length,
        zero: zeroOf(ramp, layer, units),
        rows: bent
          ? [
              { edge: 'FLAT', words: 'lay it on the sheet before bending', marks: flat },
              {
                edge: 'BENT',
                words: "lay it on the bent sheet's outer face",
                marks: [
                  ...flat.slice(0, -1).map((mark) => moved(mark, bent(mark.at), units)),
                  endMark(bent(layer.length), units),
                ],
              },
            ]
          : [{ edge: 'SHEET', words: 'lay it on the sheet', marks: flat }],
        rings: layer.rows.length > 0 ? 'a row of screws' : null,
        onTicks: flat.some((mark) => isOnTick(mark, flat)) ? 'screws go in at that stud' : null,
        notes: [
          'stud marks are middles',
          ...(layer.seams.length > 0 ? ['at a seam one sheet ends, the next starts'] : []),
        ],
      },
    ]
  })

/** The curve that the sheets are bent over; null where they stay flat. */
const bentOver = (ramp: SolvedRamp): Curve | null => {
  switch (ramp.kind) {
    case 'quarter':
      return ramp.transition.curve
    case 'flat':
      return null
    default:
      return ramp satisfies never
  }
}

/** Layers that step back begin farther up, square to the curve. */
const zeroOf = (ramp: SolvedRamp, { below, sheet, start }: Layer, units: Units): string => {
  const curve = bentOver(ramp)
  if (!curve) return "the sheet's end at stud 1"
  const ahead = curve.offset(below + sheet.thickness / 2).lengthTo(start)
  return ahead > 0
    ? `the layer's lower end, ${markFigure(ahead, units)} ${units} up the curve from layer 1's`
    : "the layer's lower end, square above the toe corner"
}

/** The same mark where it lies once the sheet is bent, with its figure there. */
const moved = (mark: StripMark, at: number, units: Units): StripMark => ({
  ...mark,
  at,
  figure: mark.figure === null ? null : markFigure(at, units),
})

/** Studs, seams and rows of screws of the flat sheet; its end is the last. */
const layerMarks = (layer: Layer, units: Units): readonly StripMark[] => {
  const { seams } = layer
  return [
    ...rowMarks([
      // the edges of two sheets stand for the middle of the stud below them
      ...layer.marks.flatMap((at, i): StripMark[] =>
        seams.some(({ stud, second }) => stud === i || second === i)
          ? []
          : [tickAt(at, `stud ${i + 1}`, units)],
      ),
      ...gapMarks(
        layer.pieces,
        (i) => {
          const seam = seams[i]
          return !seam || seam.stud === null ? 'seam' : `seam on ${seamWords(seam)}`
        },
        units,
      ),
      ...layer.rows.map(
        ({ at }): StripMark => ({ at, sign: 'ring', label: 'screws', figure: markFigure(at, units) }),
      ),
    ]),
    endMark(layer.length, units),
  ]
}

/** From a place on the flat sheet to the same on the layer's outer face, square to the curve; null where nothing is bent. */
const onOuterFace = (ramp: SolvedRamp, { below, sheet, start }: Layer): ((at: number) => number) | null => {
  const curve = bentOver(ramp)
  if (!curve) return null
  const [middle, outer] = [0.5, 1].map((t) => curve.offset(below + t * sheet.thickness))
  const [ahead, outerAhead] = [middle!.lengthTo(start), outer!.lengthTo(start)]
  return (at) => outer!.lengthTo(middle!.placeAtLength(at + ahead)) - outerAhead
}
