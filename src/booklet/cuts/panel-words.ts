import type { Stock, Units } from '../../design/design.ts'
import { capital } from '../../length/capital.ts'
import { wordList } from '../../length/word-list.ts'
import { showLength } from '../../length.ts'
import { sheetWords } from '../../ramp/check/sheet-words.ts'
import type { Panel, PanelPiece } from '../../stock/panel/panels.ts'
import { sizeWords } from '../../stock/panel/sheet-words.ts'
import { isSteel } from '../../stock/steel-uses.ts'
import { cutRows } from './cut-rows.ts'
import { sawingPractice } from './side-edges.ts'

/** `2 of 6: 9 plywood, 1220 × 2440, two clamped back to back` */
export const panelName = (
  { number, sheet, size, there, clamped }: Panel,
  count: number,
  units: Units,
): string =>
  [
    `${number} of ${count}: ${sheetWords(sheet, units)}`,
    sizeWords(size, units),
    // elsewhere it runs along the long side
    ...(sheet.material === 'plywood' && Math.abs(size[0] - size[1]) < 1 ? ['face grain left to right'] : []),
    ...(there ? ['one that is there already'] : []),
    ...(clamped > 1 ? ['two clamped back to back'] : []),
  ].join(', ')

/** Whether any piece is traced from taped pages or a sawn side. */
export const hasCurved = (panels: readonly Panel[]): boolean =>
  panels.some(({ pieces }) => pieces.some(({ second }) => second !== null))

/** How the order of cuts is to be read, and how the saw is led. */
export const cutsNotes = ({ kerf }: Stock, units: Units, curved: boolean): readonly string[] => [
  `Mark the ${curved ? 'straight cuts first' : 'cuts'}, from the edges of the whole panel${curved ? '; trace a curve before its piece is sawn' : ''}. Along: so far from the lower edge; across: so far from the left end; all the way, or from and to as said.`,
  `STOP: where the cut, seen from above, comes to the number; a hand saw does the rest. Elsewhere the blade may run on by ${showLength(sawingPractice.past, units, { unit: true })}. Circular saw: along a guide clamped on the piece, the blade on the side that is named; it takes ${showLength(kerf, units, { decimals: 1 })}. Jigsaw: on the WASTE side.`,
]

/** How a face that shows is kept clean. */
export const tornNote =
  'A saw tears the upper face: where that shows, a fine blade, the line scored or taped over.'

/** The booklet says it in its steps. */
export const markNote = 'Write its mark on each piece before it is sawn free.'

export const stepsNote = (stock: Stock, units: Units, curved: boolean): string =>
  [...cutsNotes(stock, units, curved), markNote, tornNote].join(' ')

/** What is trimmed first, and that what lies in a panel's corner has two edges that nobody saws. */
export const ownEdges =
  "No edge is trimmed before the first cut: a cut that trims says so. At 0 and 0 the panel's own edges are kept: turn its best corner there."

/** How a drawing of a panel is to be read; the booklet says before its steps how the cuts are, and in them how a face is kept clean. */
export const panelRule = (curved: boolean): string =>
  `The long side lies from left to right. The ringed corner of a piece is measured from the left end and from the lower edge${curved ? '; of a side it is where bottom and front edge, or joint, meet' : ''}. ${ownEdges}${curved ? ' As printed: as the taped pages lie. Mirrored: traced from a sawn side or from the pages, turned over.' : ''} Each figure is rounded by itself: a sum may differ in its last place.`

/** All of it, where there are no steps beside it. */
export const drawnNotes = (stock: Stock, units: Units, curved: boolean): readonly string[] => [
  panelRule(curved),
  ...cutsNotes(stock, units, curved),
  `${markNote} ${tornNote}`,
]

/**
 * Which face of a panel lies up while it is marked and sawn; null where both are alike. A saw in the hand tears the upper face: the
 * better one lies down where nothing is traced.
 */
export const upFace = ({ sheet, pieces }: Panel): string | null => {
  if (isSteel(sheet)) return null
  if (sheet.material === 'hardboard') return 'smooth face UP'
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
    : `${wordList(down)} ${down.length > 1 ? 'lie' : 'lies'} with the outside face down, so the panel's back shows there: take one with two good faces, or fill and paint.`
}

/** Its rules are not those of wood. */
const steelNote = ({ sheet }: Panel): string | null =>
  isSteel(sheet)
    ? 'Steel: no circular saw. Metal shears on the line itself, which take nothing, or a jigsaw with a metal blade on the side that is named; gloves on and all of it clamped down; file every edge. Many who sell it shear it to size.'
    : null

/** What is to be known of a panel besides its pieces and cuts; null where there is nothing. */
export const panelNoteOnPaper = (panel: Panel): string | null => {
  const notes = [faceNote(panel.pieces), steelNote(panel)].filter((note) => note !== null)
  return notes.length === 0 ? null : notes.join(' ')
}

/** The same on a screen, with the key that keeps the better face out. */
export const panelNote = (panel: Panel): string | null => {
  const face = faceNote(panel.pieces)
  return face === null
    ? panelNoteOnPaper(panel)
    : `${face} \`good-face: out\` in \`stock: panels\` keeps the better face out, whatever it takes.`
}
