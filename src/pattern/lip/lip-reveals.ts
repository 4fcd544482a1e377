import type { Units } from '../../design/design.ts'
import { arrowHead } from '../../drawing/arrow.ts'
import { type Drawing, stroke } from '../../drawing/drawing.ts'
import type { LabelPlace } from '../../drawing/place-labels.ts'
import type { Box } from '../../geometry/bounds.ts'
import { boxCorners, pathClip } from '../../geometry/clip.ts'
import { pathOf, segmentsPath } from '../../geometry/path.ts'
import { type Point, pointAngle, pointDistance, pointToward } from '../../geometry/point.ts'
import { showLength } from '../../length.ts'
import type { SolvedCoping } from '../../ramp/side/coping.ts'
import type { Transition } from '../../ramp/side/transition.ts'
import type { SkinLayer } from '../../ramp/skin/skin.ts'
import { labelPlace } from '../label-place.ts'
import { letters, pens } from '../pens.ts'

/** How far the pipe stands out, drawn: a dimension line, what it is measured from, and where its figure may stand. */
export interface RevealMarks {
  readonly marks: Drawing
  readonly figure: Iterable<LabelPlace>
}

/** Heads need so much line between them; a shorter line has bars alone. mm */
const headsFrom = 5
const headSize = 1.8
const barArm = 1

/** As it is typed behind the key of that name, with a minus for a hyphen: beside a fraction that would be read as a dash. */
const figureOf = (mm: number, units: Units): string =>
  showLength(mm, units, { decimals: 1 }).replace(/^-/, '−')

/** From the top of the deck board to the level of the pipe's top, behind the pipe. */
export const upReveal = (
  { centre, outside, up }: SolvedCoping,
  { deck, frame }: Transition['heights'],
  right: number,
  units: Units,
): RevealMarks => {
  const r = outside / 2
  const top = centre.y + r
  const x = Math.min(centre.x + r + 7, right - 3)
  const said = `up ${figureOf(up, units)}`
  const [low, high] = [Math.min(deck, top), Math.max(deck, top)]
  const beside = (low + high - letters.small) / 2
  // over the ticks of a cut line that no board covers
  const over = high + (deck > frame ? 1.4 : 3.2)
  return {
    marks: [
      stroke('mark', pathOf({ x: centre.x, y: top }, { x: x + 1.5, y: top }), pens.tick),
      ...dimension({ x, y: deck }, { x, y: top }),
    ],
    figure: [
      labelPlace({ x: x + 2.4, y: beside }, letters.small, said),
      labelPlace({ x: x + 0.6, y: over }, letters.small, said),
      labelPlace({ x: x - 0.6, y: over }, letters.small, said, { align: 'right' }),
      labelPlace({ x: x - 2.4, y: beside }, letters.small, said, { align: 'right' }),
      labelPlace({ x: x - 0.6, y: over }, letters.mark, said, { align: 'right' }),
    ],
  }
}

/** The foot of the pipe's middle on the ridden face, and the pipe's farthest point square to it. */
export const outEnds = (
  { centre, outside }: SolvedCoping,
  { curve }: Transition,
  thickness: number,
): { readonly face: Point; readonly pipe: Point; readonly away: number } => {
  const ridden = curve.offset(thickness)
  const { place } = curve.nearest(centre)
  const away = ridden.slope(place) + Math.PI / 2
  return { face: ridden.point(place), pipe: pointToward(centre, away, outside / 2), away }
}

/** From the ridden face, which is drawn on past the end of the skin, square to it to the pipe's farthest point. */
export const outReveal = (
  coping: SolvedCoping,
  transition: Transition,
  skin: readonly SkinLayer[],
  thickness: number,
  piece: Box,
  units: Units,
): RevealMarks => {
  const { centre, out } = coping
  const { curve } = transition
  const { face, pipe, away } = outEnds(coping, transition, thickness)
  // where the pipe lies far from the lip it is left to the words
  if (Math.max(face.y, pipe.y) + barArm >= piece.y1) return { marks: [], figure: [] }
  const ridden = curve.offset(thickness)
  const { place } = curve.nearest(centre)
  const outer = out > 0 ? pipe : face
  const beyond = ridden.placeAtLength(ridden.lengthTo(place) + 4)
  const end = skin.at(-1)?.end ?? place
  return {
    marks: [
      ...(beyond > end
        ? pathClip(segmentsPath(ridden.segments(end, beyond)), boxCorners(piece)).map((path) =>
            stroke('mark', path, pens.tick),
          )
        : []),
      ...dimension(face, pipe),
    ],
    figure: outFigures(outer, away, `out ${figureOf(out, units)}`),
  }
}

/** At the end of a leader, the shorter the better. */
const outFigures = function* (outer: Point, away: number, said: string): Generator<LabelPlace> {
  for (const tail of [5, 8, 11, 14]) {
    const tip = pointToward(outer, away, tail)
    const leader = pathOf(outer, tip)
    const y = tip.y - letters.small / 2
    yield { ...labelPlace({ x: tip.x - 0.9, y }, letters.small, said, { align: 'right' }), leader }
    yield { ...labelPlace({ x: tip.x + 0.9, y }, letters.small, said), leader }
    yield { ...labelPlace({ x: tip.x, y: tip.y + 0.9 }, letters.small, said, { align: 'middle' }), leader }
    yield { ...labelPlace({ x: tip.x - 0.9, y }, letters.mark, said, { align: 'right' }), leader }
  }
}

/** A thin line with a bar across each end, and heads that point outward where it is long enough. */
const dimension = (from: Point, to: Point): Drawing => {
  const long = pointDistance(from, to)
  const along = long > 1e-6 ? pointAngle(from, to) : 0
  return [
    stroke('mark', pathOf(from, to), pens.tick),
    ...(long > 1e-6
      ? [from, to].map((p) =>
          stroke(
            'mark',
            pathOf(pointToward(p, along + Math.PI / 2, barArm), pointToward(p, along - Math.PI / 2, barArm)),
            pens.tick,
          ),
        )
      : []),
    ...(long >= headsFrom
      ? [...arrowHead('mark', to, along, headSize), ...arrowHead('mark', from, along + Math.PI, headSize)]
      : []),
  ]
}
