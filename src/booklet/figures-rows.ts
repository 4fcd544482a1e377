import { isCurved } from '../design/kind-traits.ts'
import { showAngle } from '../length/show-angle.ts'
import { showLength, type Units } from '../length.ts'
import type { Quarter, Ramp } from '../ramp/ramp.ts'
import { steepnessWord } from '../ramp/steepness.ts'
import { flatRows } from './flat-rows.ts'
import { framingRows, type Row } from './framing-rows.ts'

/** The figures of a ramp as a carpenter reads them: a label and words, lengths in his units. */
export const figuresRows = (ramp: Ramp, units: Units): readonly Row[] =>
  isCurved(ramp) ? quarterRows(ramp, units) : flatRows(ramp, units)

const quarterRows = (ramp: Quarter, units: Units): readonly Row[] => {
  const show = (mm: number): string => showLength(mm, units)
  const { transition, length, deck } = ramp
  const rows: Row[] = []
  if (transition) {
    const { heights, radius } = transition
    rows.push(
      [
        'height',
        `frame ${show(heights.frame)}   deck ${show(heights.deck)}   ridden face at the lip ${show(heights.surface)}`,
      ],
      [
        'curve',
        `${show(transition.arc)} along it, ${show(transition.run)} along the floor; ${showAngle(transition.lipAngle)} at the lip, ${steepnessWord(transition.lipAngle)}; radius frame ${show(radius.frame)}, ridden face ${show(radius.surface)}`,
      ],
      [
        'toe',
        `${show(transition.toe.y)} high, ${showAngle(transition.toeAngle)}; ridden face ${show(transition.toeStep)} above the floor`,
      ],
    )
  }
  return [
    ...rows,
    length !== null && deck !== null && transition
      ? [
          'side',
          `${show(length)} long, ${show(transition.heights.frame)} high; deck ${show(deck)} behind the lip; ramp ${show(ramp.width)} wide`,
        ]
      : ['width', show(ramp.width)],
    ...framingRows(ramp, units),
  ]
}
