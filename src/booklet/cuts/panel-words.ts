import type { Units } from '../../design/design.ts'
import { capital } from '../../length/capital.ts'
import { wordList } from '../../length/word-list.ts'
import type { Panel, PanelPiece } from '../../stock/panel/panels.ts'
import { sheetWords, sizeWords } from '../../stock/panel/sheet-words.ts'
import { cutRows } from './cut-rows.ts'

/** `2 of 6: 9 plywood, 1220 × 2440, two clamped back to back` */
export const panelName = (
  { number, sheet, size, there, clamped }: Panel,
  count: number,
  units: Units,
): string =>
  [
    `${number} of ${count}: ${sheetWords(sheet, units)}`,
    sizeWords(size, units),
    ...(there ? ['one that is there already'] : []),
    ...(clamped > 1 ? ['two clamped back to back'] : []),
  ].join(', ')

/** How the order of cuts is to be read, how the saw is led, and how a face that shows is kept clean. */
const cutsNotes = [
  'Mark the straight cuts before the first is sawn, from the edges of the whole panel. Along: so far from the lower edge. Across: so far from the left end. From edge to edge, or from and to as said, through the part with the pieces named.',
  'Circular saw: along a guide that is clamped on the piece, the blade beside the line on the side that is named. Jigsaw: on the WASTE side.',
  'STOP: where the cut, seen from above, comes to the corner; a hand saw does the rest.',
  'A saw tears the face that lies up. Where it shows: a fine blade, the line scored with a knife or taped over.',
] as const
export const stepsNote = cutsNotes.join(' ')

/** How a drawing of a panel is to be read, line by line. */
export const drawnNotes: readonly string[] = [
  'The long side lies from left to right. The ringed corner of a piece is measured from the left end and from the lower edge; of a side it is where bottom and front edge, or joint, meet.',
  'As printed: as the taped pages lie. Mirrored: traced from a sawn side, turned over.',
  ...cutsNotes,
]

/**
 * Which face of a panel lies up while it is marked and sawn; null where both are alike. A saw in the hand tears the upper face: the
 * better one lies down where nothing is traced.
 */
export const upFace = ({ sheet: { material }, pieces }: Panel): string | null => {
  if (material === 'steel') return null
  if (material === 'hardboard') return 'smooth face UP'
  return pieces.some(({ second }) => second !== null) ? 'better face UP' : 'better face DOWN'
}

/** Which face lies up and what is sawn first, in a line. */
export const beginNote = (panel: Panel, units: Units): string => {
  const [first] = cutRows(panel, units)
  const face = upFace(panel)
  return [
    ...(face ? [`${capital(face)}.`] : []),
    ...(first ? [`First cut, ${first.number}: ${first.words}.`] : []),
  ].join(' ')
}

/** Faces that lie down though they show: what that means. */
const faceNote = (pieces: readonly PanelPiece[]): string | null => {
  const down = pieces.filter(({ part, over }) => part.faced && over).map(({ part }) => part.mark)
  return down.length === 0
    ? null
    : `${wordList(down)} ${down.length > 1 ? 'lie' : 'lies'} with the outside face down: there the panel's back shows outside, its better face inside.`
}

/** What lies in the panel's corner has two edges that nobody saws. */
const edgeNote = ({ pieces, there }: Panel): string | null => {
  const [piece] = pieces
  const alone = pieces.length === 1 && !there && piece!.second === null
  return alone ? "The panel's own left and lower edges are kept: turn its best corner there." : null
}

/** What is to be known of a panel besides its pieces and cuts; null where there is nothing. */
export const panelNoteOnPaper = (panel: Panel): string | null => {
  const notes = [faceNote(panel.pieces), edgeNote(panel)].filter((note) => note !== null)
  return notes.length === 0 ? null : notes.join(' ')
}

/** The same on a screen, with the key that keeps the better face out. */
export const panelNote = (panel: Panel): string | null => {
  const face = faceNote(panel.pieces)
  return face === null
    ? edgeNote(panel)
    : `${face} \`good-face: out\` in \`stock: panels\` keeps the better face out, whatever it takes.`
}
