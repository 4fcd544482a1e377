import { isCurved } from '../../../design/kind-traits.ts'
import { ownUnits } from '../../../length/own-units.ts'
import { wordList } from '../../../length/word-list.ts'
import { sheetWords } from '../../../ramp/check/sheet-words.ts'
import { pilotDrill } from '../../../ramp/frame/screw-lengths.ts'
import type { SolvedRamp } from '../../../ramp/ramp.ts'
import { screwHead } from '../../../ramp/screws/screw-sort.ts'
import { isOfBoard } from '../../../ramp/skin/deck-board.ts'
import type { Layer } from '../../../ramp/skin/layer.ts'
import { ownSheets } from '../../../ramp/skin/own-sheets.ts'
import { skinGapWords, stepBack } from '../../../ramp/skin/skin.ts'
import { isSteel } from '../../../stock/steel-uses.ts'
import { screwWords } from '../../screw-counts.ts'
import { bendView } from '../../views/acts/act-views.ts'
import { sectionNumber } from '../../views/plan-view.ts'
import { sheetView } from '../../views/sheet-view.ts'
import { toeSection } from '../../views/toe-section.ts'
import { type Block, caution, check, head, part, step, together } from '../block.ts'
import { type Book, hasSkin, leastShare, ofRamp } from '../book.ts'
import { figure } from '../figure.ts'
import type { Section } from '../pages.ts'
import { stage } from '../stage.ts'
import { hasBlocks, seamWords } from './blocks.ts'
import { checksOf } from './framing.ts'
import { layerNumber } from './layer-number.ts'
import { marked, sheetWithScrews } from './screw-table.ts'
import { punchWords, sinkWords } from './sheets/hole-words.ts'
import { gapOf } from './sheets/sheet-gap.ts'
import { linesWords, type SkinSheet } from './sheets/skin-lines.ts'
import { steelCaution } from './sheets/steel-words.ts'

/** Null where no ramp has any. */
export const skin = (book: Book): Section | null => {
  const skinned = book.solved.ramps.filter(hasSkin)
  if (skinned.length === 0) return null
  const top = head('Skin', book.width)
  return {
    name: 'skin',
    title: 'Skin',
    blocks: [
      top,
      ...skinned.flatMap((ramp, i) =>
        skinOf(book, ramp, skinned.slice(0, i).find(isCurved) ?? null, i === 0 ? top.height : 0),
      ),
    ],
  }
}

/** `told`: a ramp before it, of which the bending was told. `over`: height of the head on its first page, mm. */
const skinOf = (book: Book, ramp: SolvedRamp, told: SolvedRamp | null, over: number): readonly Block[] => {
  const { width, units, tall } = book
  const layers = ramp.skin.filter(({ length }) => length > 0)
  return [
    ...(isCurved(ramp)
      ? together(
          [
            ...(book.several ? [part(ofRamp(book, 'Before the first layer', ramp), width)] : []),
            ...(told
              ? []
              : [
                  caution(
                    'Bent skin is a spring: hold it down until it is screwed, and keep your face away from its free end.',
                    width,
                  ),
                ]),
            figure(
              ofRamp(book, `Section ${sectionNumber}–${sectionNumber} at the toe, between two sides`, ramp),
              (ratio) => toeSection(ramp, units, ratio),
              book,
              { width, height: 95 * Math.max(leastShare, book.share) },
              { width: 380, height: ramp.transition.toe.y + 130 },
            ),
          ],
          tall,
        )
      : []),
    ...layers.flatMap((layer, i) =>
      // of a flat the first stands under the head at once
      layerOf(
        i === 0 && !isCurved(ramp) ? { ...book, tall: tall - over } : book,
        ramp,
        told,
        layer,
        layer === layers.at(-1) && layers.length > 1,
      ),
    ),
    ...checksOf(book, ramp, [...(hasBlocks(book, ramp) ? [] : ['seam-across']), 'seam-stud']),
  ]
}

/** Where screws of a layer come through, what names no layer with the last; and how one that is screwed between studs is held at its ends. */
const throughOf = (book: Book, ramp: SolvedRamp, layer: Layer): readonly Block[] => {
  const isLast = layer === ramp.skin.findLast(({ length }) => length > 0)
  return [
    ...checksOf(book, ramp, ['screw-through'], (one) => {
      const of = layerNumber(one.message)
      return !isOfBoard(one) && (Number.isNaN(of) ? isLast : of === layer.layer)
    }),
    // what is warned of stands before the first cut
    ...(isLast ? checksOf(book, ramp, ['fasten-between'], ({ level }) => level === 'note') : []),
  ]
}

const layerOf = (
  book: Book,
  ramp: SolvedRamp,
  told: SolvedRamp | null,
  layer: Layer,
  isTop: boolean,
): readonly Block[] => {
  const { width, units, tall } = book
  const { length, pieces, widths, rows, marks } = layer
  const name = `Layer ${layer.layer}`
  const curved = isCurved(ramp)
  const sheets = marked(
    book,
    ownSheets(layer),
    ({ ramp: own, part: of, words: said }) =>
      of === 'skin' && own === ramp.name && layerNumber(said) === layer.layer,
  )
  return together(
    [
      part(ofRamp(book, isTop ? `${name}, the top sheet` : name, ramp), width),
      ...throughOf(book, ramp, layer),
      ...(isSteel(layer.sheet) ? [steelCaution('.', width)] : []),
      ...sheetWithScrews(
        book,
        {
          sheets,
          takes: takesWords(book, ramp, layer, sheets),
          use: 'skin',
          into: ({ on, stud }) =>
            on === 'between' || stud === null
              ? 'the sheets below'
              : `stud ${stud + 1}${on === 'seam' ? ', seam' : ''}`,
        },
        (room) =>
          figure(
            ofRamp(book, `${name} laid out, seen from above`, ramp),
            (ratio) =>
              sheetView(
                {
                  width: ramp.width,
                  pieces,
                  widths,
                  marks: marks.map((at, i) => ({ at, name: `stud ${i + 1}` })),
                  rows,
                  foot: curved ? 'toe end' : 'first end',
                  names: sheets.length > 1 ? sheets.map(({ mark }) => mark) : [],
                },
                units,
                ratio,
              ),
            book,
            {
              width: room,
              unnamed: true,
              height: Math.max(
                // one of a flat is far longer than wide
                (curved ? 88 : 116) * Math.max(leastShare, book.share),
                figuresRoom(rows.length + pieces.length * widths.length),
              ),
            },
            { width: ramp.width, height: length },
          ),
        (room) => layerSteps(book, ramp, told, layer, sheets, room),
      ),
      check(
        `Every screw of ${name.toLowerCase()} has bitten, none stands proud${curved ? ', no end lifts' : ''}.`,
        width,
      ),
    ],
    tall,
  )
}

/** Its sheets and screws. */
const takesWords = (book: Book, ramp: SolvedRamp, layer: Layer, sheets: readonly SkinSheet[]): string => {
  const { units, show, fine, screw } = book
  const { sheet, length, rows } = layer
  const size = `${show(length)} × ${show(ramp.width)}`
  const gap = gapOf(layer)
  const grain =
    sheet.material === 'plywood' && isCurved(ramp) ? ', face grain along the width of the ramp' : ''
  return `${wordList(sheets.map(({ mark }) => mark))}: ${sheetWords(sheet, units)}, ${sheets.length === 1 ? `one sheet, ${size}` : `${sheets.length} sheets that cover ${size}${gap > 0 ? `, a gap of ${fine(gap)} left between them` : ''}`}${grain}; ${screwWords(rows, (long) => screw('skin', long))}, ${screwHead('skin')}${seamWords(book, ramp, layer, 'skin')}.`
}

/** How it is put on; of a bent one with a picture of that. */
const layerSteps = (
  book: Book,
  ramp: SolvedRamp,
  told: SolvedRamp | null,
  layer: Layer,
  sheets: readonly SkinSheet[],
  width: number,
): readonly Block[] => {
  const { units, show, fine } = book
  const { length, below } = layer
  const back = stepBack(ramp.design)
  const marks = wordList(sheets.map(({ mark }) => mark))
  const curved = isCurved(ramp)
  const gap = gapOf(layer)
  // what it is laid on like
  const before = [...(layer.layer > 1 ? [ramp] : []), ...(told && curved ? [told] : [])]
  const again = before.length > 0
  const nearer =
    curved && told === null && layer.layer === 2 && layer.rows.every(({ on }) => on !== 'between')
      ? ` Rows of one stud lie ${back > 0 ? `nearer to its toe end than on layer 1: it starts ${show(back)} further up, and` : 'a little nearer to the toe than those of layer 1:'} inside the curve the way is shorter.`
      : ''
  const steel = isSteel(layer.sheet)
  const drilled = before.some(({ skin: [first] }) => !isSteel(first!.sheet))
    ? ''
    : ` At each cross of the drawing drill ${ownUnits(pilotDrill, units)} before the screw.`
  const lines = `${linesWords(book, layer, sheets, curved)}${nearer}${steel ? ` ${punchWords(units)}` : drilled}`
  // what lies under it is drilled and sunk with it
  const sunk = steel ? `: ${sinkWords(layer.layer > 1 ? 'layer below' : 'stud', units)}` : ''
  const courses = layer.pieces.map(({ from }) => sheets.filter(({ up }) => up.from === from))
  const [lowest, ...higher] = courses.map((course) => wordList(course.map(({ mark }) => mark)))
  const one = sheets.length === 1
  const next = higher.map((course, i) => {
    const row = courses[i + 1]![0]!.rows[0]
    const last = i === higher.length - 1 && isCurved(ramp) && ramp.coping !== null
    return `Lay ${course} above ${i === 0 ? lowest : higher[i - 1]}${gap > 0 ? `, a gap of ${fine(gap)} between them` : ''}, side edges flush${last ? `; the pipe laid in the notch, the upper end stays ${ownUnits(skinGapWords, units)} off it` : ''}. ${row && row.stud !== null ? `Screw its first row into stud ${row.stud + 1}, then on as before.` : 'Screw it on as before.'}`
  })
  if (!isCurved(ramp))
    return [
      ...[
        lines,
        `Lay ${one ? 'it' : lowest} flush with one end and both sides and screw it on at the ${steel ? 'holes' : 'crosses'}${sunk}.`,
        ...next,
      ].map((said, i) => step(i + 1, said, width)),
    ]
  // its end stays clear of the pipe
  const piped =
    ramp.coping && one
      ? `; the pipe laid in the notch, its upper end stays ${ownUnits(skinGapWords, units)} off it`
      : ''
  const placed =
    layer.layer === 1
      ? "flush with the top of the sides' front edge"
      : back > 0
        ? `back by ${show(back)} from that of layer ${layer.layer - 1}, up the curve and square to it`
        : `flush with that of layer ${layer.layer - 1}, square to the curve`
  const toe = `Lay ${one ? 'its toe end' : `the toe end of ${lowest}`} ${placed}, its side edges flush with the outsides${piped}`
  // told and shown with the first layer
  if (again)
    return [
      ...[
        lines,
        `${toe}, and bend${steel ? '' : ', drill'} and screw it as layer 1${layer.layer === 1 && told ? ` of ${told.name}` : ''}${sunk}.`,
        ...next,
      ].map((said, i) => step(i + 1, said, width)),
    ]
  return [
    stage(
      (ratio) => bendView(ramp, units, ratio, { below, length, name: one ? marks : 'it' }),
      { width: ramp.length, height: ramp.transition.heights.frame },
      (room) =>
        [
          lines,
          `${toe}, and screw it on stud 1${sunk}.`,
          `One presses its free end down, the other screws it ${steel ? 'so, ' : ''}stud by stud, the next one up the curve after the last.`,
          ...next,
        ].map((said, i) => step(i + 1, said, room)),
      width,
    ),
  ]
}

/** Room in height for so many figures beside a sheet, and what stands above and below it; mm. */
const figuresRoom = (figures: number): number => Math.min(150, 3.75 * figures + 38)
