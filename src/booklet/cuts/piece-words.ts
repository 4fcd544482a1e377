import type { Units } from '../../design/design.ts'
import { pathBounds } from '../../geometry/bounds.ts'
import { wordList } from '../../length/word-list.ts'
import { showLength } from '../../length.ts'
import { isMirrored, type Panel, type PanelPiece } from '../../stock/panel/panels.ts'
import type { SawStep } from '../../stock/panel/saw-order.ts'
import { isSteel } from '../../stock/steel-uses.ts'

/** `S1`, or `S1 + S2` for two that are sawn as one. */
export const markWords = ({ part, under }: PanelPiece): string =>
  under ? `${part.mark} + ${under.mark}` : part.mark

/** What a piece is, with its ramp where there are several. */
const nameWords = ({ part, under }: PanelPiece, several: boolean): string =>
  [part, ...(under ? [under] : [])]
    .map(({ ramp, words }) => (several ? `${ramp}, ${words}` : words))
    .join(' + ')

/** As it lies: from left to right, and from below to above. */
const extentWords = ({ box }: PanelPiece, units: Units): string =>
  `${showLength(box.x1 - box.x0, units)} × ${showLength(box.y1 - box.y0, units)}`

/** A piece in a table: its mark, what it is, its extent, how far from the left end and from the lower edge. */
export const pieceCells = (
  piece: PanelPiece,
  several: boolean,
  units: Units,
): readonly [mark: string, what: string, extent: string, left: string, below: string] => [
  markWords(piece),
  nameWords(piece, several),
  extentWords(piece, units),
  showLength(piece.x, units),
  showLength(piece.y, units),
]

const straight = 1e-3

type StraightStep = Extract<SawStep, { readonly at: number }>

/** The end of a curved piece that its numbers lead to: its toe, or the joint that is nearer to the toe. */
const frontName = ({ piece }: PanelPiece['part']): 'toe' | 'joint' => (piece && !piece.toe ? 'joint' : 'toe')

/** Which of its two lengths goes the way one rides: a sheet that is nearly square is easily laid turned. */
const riddenWords = ({ part }: PanelPiece, units: Units): string => {
  if (!['skin', 'deck-board', 'run-out'].includes(part.part)) return ''
  const { x0, x1, y0, y1 } = pathBounds(part.outline)
  return Math.abs(x1 - x0 - (y1 - y0)) < straight ? '' : `ridden along its ${showLength(y1 - y0, units)}`
}

/** Which way a piece lies, and which face of a curved one is up; nothing of one that is the same all round. */
export const lieWords = (piece: PanelPiece, units: Units): string => {
  const { part, under, second, over, x, y } = piece
  if (!second) return riddenWords(piece, units)
  const [dx, dy] = [second.x - x, second.y - y]
  const level = Math.abs(dx) >= Math.abs(dy)
  const toe = level ? (dx > 0 ? 'left' : 'right') : dy > 0 ? 'below' : 'above'
  // its wood lies on the left of the way from the toe, or on the right of one that is turned over
  const { box } = piece
  const middle = { x: (box.x0 + box.x1) / 2, y: (box.y0 + box.y1) / 2 }
  const up = level ? middle.y > (y + second.y) / 2 : middle.x > (x + second.x) / 2
  const bottom = level ? (up ? 'below' : 'above') : up ? 'left' : 'right'
  const tilted = Math.min(Math.abs(dx), Math.abs(dy)) > straight
  const show = (mm: number): string => showLength(mm, units)
  return [
    `${frontName(part)} ${toe}, bottom edge ${bottom}`,
    ...(tilted ? [`askew: the other end of the bottom edge ${show(second.x)}, ${show(second.y)}`] : []),
    ...(part.faced ? [`OUTSIDE FACE ${over ? 'DOWN' : 'UP'}`] : []),
    ...(under?.faced ? [`${under.mark} under it with its OUTSIDE FACE DOWN`] : []),
    isMirrored(piece) ? 'mirrored' : 'as printed',
  ].join('; ')
}

/** A wider strip is an offcut, mm. */
const widestTrim = 50

/** Whether a cut takes a strip off the panel's own left end or lower edge: nothing lies there, as far as it goes. */
const trims = ({ kind, at, from, to, blade }: StraightStep, { pieces }: Panel): boolean =>
  blade === 'before' &&
  at <= widestTrim &&
  pieces.every(({ box: { x0, x1, y0, y1 } }) =>
    kind === 'rip'
      ? x1 <= from || x0 >= to || y0 >= at - straight
      : y1 <= from || y0 >= to || x0 >= at - straight,
  )

/** A blade has no wood on its other side in a strip that is no wider, mm. */
const bladeWide = 4

/** What is to be known of a strip that a cut takes off the panel's own edge. */
const stripWords = (step: StraightStep, panel: Panel, show: (mm: number) => string): string => {
  const [width, length] = panel.size
  const strip = step.blade === 'before' ? step.at : (step.kind === 'rip' ? width : length) - step.at
  if (strip < bladeWide)
    return `, ${show(strip)} off the panel's edge: where the saw will not hold it, ${isSteel(panel.sheet) ? 'file' : 'plane'} it off`
  return trims(step, panel) ? `, trims ${show(step.at)} off` : ''
}

/** One line of the order of cuts. */
export const sawStepWords = (step: SawStep, panel: Panel, units: Units): string => {
  const { pieces } = panel
  const [width, length] = panel.size
  const show = (mm: number): string => showLength(mm, units)
  if (step.kind === 'out') {
    const own = pieces.find(({ part }) => part.mark === step.mark)!
    return `saw ${markWords(own)} out: circular saw short of its corners, then the jigsaw`
  }
  const rip = step.kind === 'rip'
  const whole = step.from < 1 && step.to > (rip ? length : width) - 1
  const side = rip ? (step.blade === 'past' ? 'above' : 'below') : step.blade === 'past' ? 'right' : 'left'
  const part = whole ? '' : `, ${show(step.from)} to ${show(step.to)}, the part with ${wordList(step.marks)}`
  return `${rip ? 'along' : 'across'} at ${show(step.at)}${part}, blade ${side}${stripWords(step, panel, show)}`
}
