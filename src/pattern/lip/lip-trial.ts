import type { Units } from '../../design/design.ts'
import { leaderDot } from '../../drafting/leader.ts'
import { cross } from '../../drawing/cross.ts'
import { type Drawing, fill, type Mark, stroke } from '../../drawing/drawing.ts'
import { type LabelPlace, placeLabels } from '../../drawing/place-labels.ts'
import { bisect } from '../../geometry/bisect.ts'
import type { Box } from '../../geometry/bounds.ts'
import { circle, type Path, pathOf, rectangle, segmentsPath } from '../../geometry/path.ts'
import { ownUnits } from '../../length/own-units.ts'
import { showThickness } from '../../length/thickness.ts'
import { wordList } from '../../length/word-list.ts'
import { showLength } from '../../length.ts'
import { measured, same } from '../../ramp/check/offer.ts'
import { revealWords } from '../../ramp/check/reveal-words.ts'
import type { Curve } from '../../ramp/curve/curve.ts'
import type { SolvedQuarter } from '../../ramp/ramp.ts'
import type { SolvedCoping } from '../../ramp/side/coping.ts'
import { type SkinLayer, skinGapWords } from '../../ramp/skin/skin.ts'
import { inLabelOrder, layerLabels } from '../layer-labels.ts'
import { pens } from '../pens.ts'
import { reliefHole } from '../relief-hole.ts'
import {
  boardLabels,
  curveKeepLabels,
  holeLabels,
  keepLabels,
  pipeLabels,
  wasteLabels,
} from './lip-labels.ts'
import { outEnds, outReveal, upReveal } from './lip-reveals.ts'

/** The lip at full size with pipe, skin and deck board, in the mm of the side it belongs to. */
export interface LipTrial {
  readonly name: string
  readonly outline: Path
  /** the piece of scrap to saw, an axis-parallel box */
  readonly piece: Box
  /** the lowest level that the notch reaches, and the upright through the pipe's middle */
  readonly floor: number
  readonly middle: number
  /** pipe, skin ends, deck board */
  readonly marks: Drawing
  readonly steps: readonly string[]
}

/** Wood to hold on to round the notch, mm: down the curve, under the notch, behind its wall. */
const hold = { front: 90, under: 90, behind: 80 }
const leastHold = 0.2

/** A pipe far behind the ridden face has its foot on it high over the deck; so much is shown. mm */
const mostOver = 30

/** Null for a ramp without a pipe (there is nothing to try) and for too narrow a page. `width` and `height` are the room on the page, mm. */
export const lipTrial = (
  ramp: SolvedQuarter,
  width: number,
  height: number,
  units: Units,
): LipTrial | null => {
  const { side, coping } = ramp
  const piece = coping && pieceOf(ramp, coping, width, height)
  if (!piece) return null
  const { lines, labels, shown, layerWords } = trialParts(ramp, coping, piece, units)
  const placed = placeLabels(labels, [...lines, stroke('cut', side.outline, pens.cut)], piece)
  const unnamed = shown < layerWords.length || placed.slice(4, 4 + shown).includes(null)
  return {
    name: `${ramp.name}/lip`,
    outline: side.outline,
    piece,
    floor: coping.centre.y - coping.outside / 2,
    middle: coping.centre.x,
    marks: [
      ...lines,
      ...placed.flatMap((label, i) => (label ? labelMarks(label, i >= 4 && i < 4 + shown) : [])),
    ],
    steps: trialSteps(ramp, coping, piece, unnamed ? layerWords : [], units),
  }
}

/** `dotted`: its leader begins with a dot inside what it names. */
const labelMarks = ({ text, leader }: LabelPlace, dotted: boolean): Drawing => [
  ...(leader ? [stroke('mark', leader, pens.tick)] : []),
  ...(leader && dotted ? [fill('mark', circle(leader.start, leaderDot(text.size)), 0)] : []),
  text,
]

/** The scrap round the notch with all that stands over it; null where a page holds hardly any wood beside the notch. */
const pieceOf = (
  { side, transition, skin, skinThickness }: SolvedQuarter,
  coping: SolvedCoping,
  width: number,
  height: number,
): Box | null => {
  const { lip, curve, heights } = transition
  const r = coping.outside / 2
  const wall = coping.centre.x + r
  const skinEnds = skin.map(({ below, end, sheet }) => curve.offset(below + sheet.thickness).point(end).y)
  const { face } = outEnds(coping, transition, skinThickness)
  const top =
    Math.max(heights.deck, coping.centre.y + r, ...skinEnds, Math.min(face.y, heights.deck + mostOver)) + 8
  // a narrow page holds less wood on both sides of the notch
  const share = Math.min(1, (width - coping.along) / (hold.front + hold.behind))
  if (share < leastHold) return null
  return {
    x0: Math.max(0, lip.x - hold.front * share),
    x1: Math.min(wall + hold.behind * share, side.length),
    y0: Math.max(0, top - height, coping.centre.y - r - hold.under),
    y1: top,
  }
}

/** What is drawn on the piece and what it is called; `shown`: how many layers of skin reach it. */
const trialParts = (ramp: SolvedQuarter, coping: SolvedCoping, piece: Box, units: Units) => {
  const { transition, skin, skinThickness } = ramp
  const { curve, heights } = transition
  const show = (mm: number): string => showLength(mm, units, { decimals: 1 })
  const r = coping.outside / 2
  const wall = coping.centre.x + r
  const board = boardOf(ramp)
  const { path: scrap, corner } = scrapEdge(piece, curve, heights.frame)
  const shown = skin.flatMap((layer) => {
    const from = shownFrom(layer, curve, { corner, left: piece.x0 })
    return from < layer.end ? [{ layer, from }] : []
  })
  const hole = reliefHole(coping, units)
  const up = upReveal(coping, heights, piece.x1, units)
  const out = outReveal(coping, transition, skin, skinThickness, piece, units)
  const lines: Drawing = [
    ...shown.map(({ layer, from }) => skinMark(layer, curve, from)),
    stroke('mark', circle(coping.centre, r), pens.mark),
    ...cross('mark', coping.centre, 4, pens.mark),
    ...(hole?.marks ?? []),
    ...(board > 0 ? [stroke('mark', rectangle(wall, heights.frame, piece.x1, heights.deck), pens.mark)] : []),
    ...up.marks,
    ...out.marks,
    stroke('mark', scrap, pens.stud),
  ]
  const laid = skin.filter(({ length }) => length > 0)
  const layerWords = laid.map(
    ({ layer, sheet }) => `layer ${layer}: ${showThickness(sheet.thickness, units, { unit: true })}`,
  )
  const labels = [
    wasteLabels(coping.centre, r),
    keepLabels(wall, heights.frame, coping.centre.y - r),
    up.figure,
    out.figure,
    ...inLabelOrder(shown).map(({ layer, from }) =>
      layerLabels(
        layer,
        curve,
        from,
        { thickness: skinThickness, layers: shown.map((one) => one.layer) },
        layerWords[laid.indexOf(layer)]!,
      ),
    ),
    pipeLabels(coping.centre, r, `pipe ${show(coping.outside)}`),
    ...(hole ? [holeLabels(hole)] : []),
    ...(board > 0
      ? [boardLabels(piece.x1, wall, heights.deck, board, `deck board ${showThickness(board, units)}`)]
      : []),
    curveKeepLabels(curve, corner, ramp.side.curveEnd),
  ]
  return { lines, labels, shown: shown.length, layerWords }
}

/** Its thickness, mm. */
const boardOf = ({ transition: { heights } }: SolvedQuarter): number => heights.deck - heights.frame

/** `layers`: those that are named here, as their labels found no room. */
const trialSteps = (
  ramp: SolvedQuarter,
  coping: SolvedCoping,
  piece: Box,
  layers: readonly string[],
  units: Units,
): readonly string[] => {
  const { side, transition, design } = ramp
  const show = (mm: number): string => showLength(mm, units, { decimals: 1 })
  const r = coping.outside / 2
  // the floor's front end on the curve, and the lowest level that is sawn
  const off = [
    { by: piece.x0 - transition.curve.point(side.curveEnd).x, what: 'its notch', where: 'to the front' },
    { by: piece.y0 - (coping.centre.y - r), what: 'its notch', where: 'below' },
    { by: piece.x0 - (coping.centre.x - r), what: 'the pipe itself', where: 'to the front' },
  ].filter(({ by }) => by > same)
  const skinned = ramp.skin.length > 0
  const offcuts = [...(skinned ? ['skin'] : []), ...(boardOf(ramp) > 0 ? ['deck board'] : [])]
  const given = design.coping?.by.kind === 'notch' ? '"along" and "down"' : '"up" and "out"'
  return [
    `The pipe should stand ${revealWords(coping, design, (mm) => `${show(mm)} ${units}`, ' and ')}: that is its reveal.${coping.seat === 'round' ? ` The notch is round, radius ${show(r)} ${units}.` : ''}`,
    `Saw this on the grey side of its thick line in a scrap of the side's plywood (dashed edges anywhere near), ${offcuts.length > 0 ? `screw on offcuts of ${wordList(offcuts)}, ` : ''}${skinned ? `each layer of skin ${ownUnits(skinGapWords, units)} short of the pipe, ` : ''}lay the real pipe in, and run a hand and a wheel over it.`,
    ...(off.length > 0
      ? [
          `The pipe is too thick for one page: past the edge of this piece ${wordList(
            off.map(({ by, what, where }) => `${what} goes on ${measured(by, units)} ${where}`),
          )}. Take a larger scrap, and the rest from the side's own pages.`,
        ]
      : []),
    ...(layers.length > 0 ? [`Skin from the studs outward: ${layers.join('; ')}.`] : []),
    `Too proud or too low: change ${given} in your design file (the text that you wrote) and plot again, before the first side is cut.`,
  ]
}

/** The straight edges of the scrap, dashed, from the curve round to the top line; and the curve's place where they start. */
const scrapEdge = (
  piece: Box,
  curve: Curve,
  top: number,
): { readonly path: Path; readonly corner: number } => {
  const low = curve.placeAtHeight(piece.y0)
  const right = { x: piece.x1, y: piece.y0 }
  const end = { x: piece.x1, y: top }
  if (low !== null && low >= curve.toe && curve.point(low).x >= piece.x0)
    return { path: pathOf(curve.point(low), right, end), corner: low }
  const corner =
    curve.point(curve.toe).x >= piece.x0
      ? curve.toe
      : bisect((place) => curve.point(place).x - piece.x0, curve.toe, curve.lip)
  return { path: pathOf(curve.point(corner), { x: piece.x0, y: piece.y0 }, right, end), corner }
}

/** The place where a layer begins on the piece. */
const shownFrom = (
  { below, end, sheet }: SkinLayer,
  curve: Curve,
  piece: { readonly corner: number; readonly left: number },
): number => {
  // the upper face lies farthest to the left
  const upper = curve.offset(below + sheet.thickness)
  const beyond = (place: number): number => upper.point(place).x - piece.left
  if (beyond(piece.corner) >= 0) return Math.min(piece.corner, end)
  return beyond(end) <= 0 ? end : bisect(beyond, piece.corner, end)
}

/** A layer near the lip: its two faces up to the square cut. */
const skinMark = ({ below, end, sheet }: SkinLayer, curve: Curve, from: number): Mark => {
  const [lower, upper] = [curve.offset(below), curve.offset(below + sheet.thickness)]
  return stroke(
    'mark',
    segmentsPath([
      ...lower.segments(from, end),
      { kind: 'line', from: lower.point(end), to: upper.point(end) },
      ...upper.segments(end, from),
    ]),
    pens.mark,
  )
}
