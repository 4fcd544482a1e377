import { isCurved } from '../../../design/kind-traits.ts'
import { pilotDrill } from '../../../ramp/frame/screw-lengths.ts'
import type { SolvedRamp } from '../../../ramp/ramp.ts'
import type { Layer } from '../../../ramp/skin/layer.ts'
import { screwHead } from '../../../stock/list/screw-sort.ts'
import { screwWords } from '../../screw-counts.ts'
import { sectionNumber } from '../../views/plan-view.ts'
import { sheetView } from '../../views/sheet-view.ts'
import { toeSection } from '../../views/toe-section.ts'
import { type Block, caution, check, head, part, step, table } from '../block.ts'
import { type Book, leastShare, ofRamp } from '../book.ts'
import { figure } from '../figure.ts'
import type { Section } from '../pages.ts'
import { checksOf } from './framing.ts'

export const skin = (book: Book): Section => ({
  name: 'skin',
  title: 'Skin',
  blocks: [head('Skin', book.width), ...book.solved.ramps.flatMap((ramp) => skinOf(book, ramp))],
})

const skinOf = (book: Book, ramp: SolvedRamp): readonly Block[] => {
  const { width, units } = book
  const layers = ramp.skin.filter(({ length }) => length > 0)
  return [
    caution(
      'Bent skin is a spring: hold it down until it is screwed, and keep your face away from its free end.',
      width,
    ),
    ...(isCurved(ramp)
      ? [
          figure(
            ofRamp(book, `Section ${sectionNumber}–${sectionNumber} at the toe, between two sides`, ramp),
            (ratio) => toeSection(ramp, units, ratio),
            book,
            { width, height: 95 * Math.max(leastShare, book.share) },
            { width: 380, height: ramp.transition.toe.y + 130 },
          ),
        ]
      : []),
    ...layers.flatMap((layer) => layerOf(book, ramp, layer, layer === layers.at(-1) && layers.length > 1)),
    ...checksOf(book, ramp, ['screw-through', 'bare-skin', 'seam-shared', 'across-seam', 'seam-stud']),
  ]
}

const layerOf = (book: Book, ramp: SolvedRamp, layer: Layer, isTop: boolean): readonly Block[] => {
  const { width, units, show, fine, screw } = book
  const { sheet, length, pieces, widths, rows, marks } = layer
  const count = pieces.length * widths.length
  const name = `Layer ${layer.layer}`
  const size = `${show(length)} × ${show(ramp.width)}`
  const curved = isCurved(ramp)
  const steps: Block[] = []
  let number = 0
  const next = (said: string): void => {
    steps.push(step(++number, said, width))
  }
  next(
    `${name} is ${fine(sheet.thickness)} ${sheet.material}: ${count === 1 ? `one sheet, ${size}` : `${count} sheets, together ${size}`}${sheet.material === 'plywood' && curved ? ', face grain along the width of the ramp' : ''}.`,
  )
  next(
    `Draw the stud lines on the sheet${curved ? ' before you bend it' : ''}: ${marks.map((at) => show(at)).join(', ')} from its ${curved ? 'toe end' : 'end'}.`,
  )
  const said = `${screwWords(rows, (length) => screw('skin', length))}, ${screwHead('skin')}`
  next(`At each cross of the drawing drill ${pilotDrill} before the screw.`)
  next(
    curved
      ? `Lay its toe end ${layer.layer === 1 ? "flush with the top of the sides' front edge" : `flush with that of layer ${layer.layer - 1}, square to the curve`}, press it down stud by stud, the next one up the curve after the last, and screw it on each: ${said}.`
      : `Lay it flush with one end and screw it on: ${said}.`,
  )
  return [
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
    ...steps,
    table(screwTable(book, layer), width),
    check(`Every screw of ${name.toLowerCase()} has bitten, none stands proud, no end lifts.`, width),
  ]
}

/** Room in height for so many figures beside a sheet, and what stands above and below it; mm. */
const figuresRoom = (figures: number): number => Math.min(150, 4 * figures + 60)

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
