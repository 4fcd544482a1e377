import { isCurved } from '../../../design/kind-traits.ts'
import { ownUnits } from '../../../length/own-units.ts'
import { wordList } from '../../../length/word-list.ts'
import { pilotDrill } from '../../../ramp/frame/screw-lengths.ts'
import type { SolvedRamp } from '../../../ramp/ramp.ts'
import type { Layer } from '../../../ramp/skin/layer.ts'
import { screwHead } from '../../../stock/list/screw-sort.ts'
import { screwWords } from '../../screw-counts.ts'
import { bendView } from '../../views/acts/act-views.ts'
import { sectionNumber } from '../../views/plan-view.ts'
import { sheetView } from '../../views/sheet-view.ts'
import { toeSection } from '../../views/toe-section.ts'
import { type Block, caution, check, head, part, step, table, together, words } from '../block.ts'
import { type Book, leastShare, ofRamp } from '../book.ts'
import { figure } from '../figure.ts'
import type { Section } from '../pages.ts'
import { stage } from '../stage.ts'
import { checksOf } from './framing.ts'
import { layerNumber } from './layer-number.ts'

export const skin = (book: Book): Section => ({
  name: 'skin',
  title: 'Skin',
  blocks: [head('Skin', book.width), ...book.solved.ramps.flatMap((ramp) => skinOf(book, ramp))],
})

const skinOf = (book: Book, ramp: SolvedRamp): readonly Block[] => {
  const { width, units, tall } = book
  const layers = ramp.skin.filter(({ length }) => length > 0)
  return [
    ...(isCurved(ramp)
      ? together(
          [
            ...(book.several ? [part(ofRamp(book, 'Before the first layer', ramp), width)] : []),
            caution(
              'Bent skin is a spring: hold it down until it is screwed, and keep your face away from its free end.',
              width,
            ),
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
    ...layers.flatMap((layer) => layerOf(book, ramp, layer, layer === layers.at(-1) && layers.length > 1)),
    ...checksOf(book, ramp, ['screw-through', 'bare-skin', 'seam-shared', 'across-seam', 'seam-stud']),
  ]
}

const layerOf = (book: Book, ramp: SolvedRamp, layer: Layer, isTop: boolean): readonly Block[] => {
  const { width, units, tall } = book
  const { length, pieces, widths, rows, marks } = layer
  const count = pieces.length * widths.length
  const name = `Layer ${layer.layer}`
  const curved = isCurved(ramp)
  return together(
    [
      part(ofRamp(book, isTop ? `${name}, the top sheet` : name, ramp), width),
      figure(
        ofRamp(book, `${name}, flat, seen from above`, ramp),
        (ratio) =>
          sheetView(
            {
              width: ramp.width,
              pieces,
              widths,
              marks: marks.map((at, i) => ({ at, name: `stud ${i + 1}` })),
              rows,
              foot: curved ? 'toe end' : 'first end',
            },
            units,
            ratio,
          ),
        book,
        { width, height: Math.max(115 * Math.max(leastShare, book.share), figuresRoom(rows.length + count)) },
        { width: ramp.width, height: length },
      ),
      ...layerSteps(book, ramp, layer),
      table(screwTable(book, layer), width),
      check(
        `Every screw of ${name.toLowerCase()} has bitten, none stands proud${curved ? ', no end lifts' : ''}.`,
        width,
      ),
    ],
    tall,
  )
}

/** What it takes and how it is put on; of a bent one with a picture of that. */
const layerSteps = (book: Book, ramp: SolvedRamp, layer: Layer): readonly Block[] => {
  const { width, units, show, fine, screw } = book
  const { sheet, length, pieces, widths, rows, marks, below } = layer
  const count = pieces.length * widths.length
  const name = `Layer ${layer.layer}`
  const size = `${show(length)} × ${show(ramp.width)}`
  const marked = wordList(marksOf(book, ramp, layer))
  const curved = isCurved(ramp)
  const takes = `For this: ${marked}; ${screwWords(rows, (length) => screw('skin', length))}, ${screwHead('skin')}.`
  const first = `${name} is ${fine(sheet.thickness)} ${sheet.material}: ${count === 1 ? `one sheet, ${size}` : `${count} sheets that cover ${size}${gapWords(layer, fine)}`}${sheet.material === 'plywood' && curved ? ', face grain along the width of the ramp' : ''}.`
  const lines = `Draw the stud lines on the sheet${curved ? ' before you bend it' : ''}: ${marks.map((at) => show(at)).join(', ')} from ${count > 1 ? `the ${curved ? 'toe ' : ''}end of the layer, its sheets laid together with their gap` : `its ${curved ? 'toe end' : 'end'}`}. At each cross of the drawing drill ${ownUnits(pilotDrill, units)} before the screw.`
  if (!isCurved(ramp))
    return [
      words(takes, width),
      step(1, first, width),
      step(2, lines, width),
      step(3, 'Lay it flush with one end and both sides and screw it on at the crosses.', width),
    ]
  return [
    words(takes, width),
    stage(
      (ratio) => bendView(ramp, units, ratio, { below, length, name: count > 1 ? 'it' : marked }),
      { width: ramp.length, height: ramp.transition.heights.frame },
      (room) => [
        step(1, first, room),
        step(2, lines, room),
        step(
          3,
          `Lay its toe end ${layer.layer === 1 ? "flush with the top of the sides' front edge" : `flush with that of layer ${layer.layer - 1}, square to the curve`}, its side edges flush with the outsides, and screw it on stud 1.`,
          room,
        ),
        step(
          4,
          'One presses its free end down, the other screws it stud by stud, the next one up the curve after the last.',
          room,
        ),
      ],
      width,
    ),
  ]
}

/** Room in height for so many figures beside a sheet, and what stands above and below it; mm. */
const figuresRoom = (figures: number): number => Math.min(150, 4 * figures + 60)

/** The marks of a layer's sheets, as on their panels. */
const marksOf = ({ sheets }: Book, ramp: SolvedRamp, { layer }: Layer): readonly string[] =>
  sheets
    .flatMap(({ parts }) => parts)
    .filter(
      ({ ramp: name, part: of, words }) =>
        of === 'skin' && name === ramp.name && layerNumber(words) === layer,
    )
    .map(({ mark }) => mark)

/** What is left between sheets, which makes a layer longer than its sheets. */
const gapWords = ({ pieces, widths }: Layer, fine: (mm: number) => string): string => {
  const gaps = [pieces, widths].flatMap((all) =>
    all.slice(1).map((next, i) => next.from - all[i]!.from - all[i]!.length),
  )
  const open = gaps.filter((gap) => gap > 0.05)
  return open.length === 0 ? '' : `, a gap of ${fine(open[0]!)} left between them`
}

const screwTable = ({ show, screw }: Book, { rows }: Layer) => ({
  columns: [
    { head: '', kind: 'box' as const },
    { head: 'row at', kind: 'figure' as const },
    { head: 'into', kind: 'words' as const },
    { head: 'screw', kind: 'words' as const },
    { head: 'count', kind: 'right' as const },
    { head: 'from the left edge', kind: 'words' as const },
  ],
  rows: rows.map(({ at, on, stud, across, length }) => [
    '',
    show(at),
    on === 'between' || stud === null
      ? 'the sheets below'
      : `stud ${stud + 1}${on === 'seam' ? ', seam' : ''}`,
    length === null ? 'none' : screw('skin', length),
    `${across.length}`,
    across.map(show).join(', '),
  ]),
})
