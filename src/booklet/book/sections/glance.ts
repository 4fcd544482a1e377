import { curvedOf, isCurved } from '../../../design/kind-traits.ts'
import { tableHeight } from '../../../drafting/table.ts'
import { group, text } from '../../../drawing/drawing.ts'
import { affineTranslate } from '../../../geometry/affine.ts'
import { capital } from '../../../length/capital.ts'
import { showAngle } from '../../../length/show-angle.ts'
import { showThickness } from '../../../length/thickness.ts'
import { sheetWords } from '../../../ramp/check/sheet-words.ts'
import type { SolvedRamp } from '../../../ramp/ramp.ts'
import { steepnessWord } from '../../../ramp/steepness.ts'
import { isSide, type SheetPart } from '../../../stock/sheet-part.ts'
import { lengthsNote } from '../../lengths-note.ts'
import { amountWords } from '../../list/list-words.ts'
import { stockRows } from '../../stock-rows.ts'
import { frontView } from '../../views/front-view.ts'
import { explodedView, type PartKind } from '../../views/round/exploded-view.ts'
import { roundView } from '../../views/round/round-view.ts'
import { sideView } from '../../views/side-view.ts'
import { matesSize } from '../../views/size-mates.ts'
import { viewMarks } from '../../views/view.ts'
import { type Block, beside, caution, drawn, head, part, stack, table, words } from '../block.ts'
import { type Book, leastShare, ofRamp } from '../book.ts'
import { figure } from '../figure.ts'
import { workHours } from '../hours.ts'
import { onPage } from '../page-words.ts'
import type { Section } from '../pages.ts'
import { contents } from './contents.ts'
import { layerNumber } from './layer-number.ts'

/** Height of a ramp's picture on the first page, and what stays free below it, mm: of several each is high enough for its dimensions. */
const leastPicture = 45
const leastOfSeveral = 76
const mostPicture = 130
const spare = 4

/** The picture, the sizes, what it takes: a page that stands alone; then the other views. */
export const glance = (book: Book): Section => {
  const { design, width, solved, units } = book
  const { ramps } = solved
  const legend = lengthsNote(units)
  const title = head(design.title, width)
  const told = [
    ...sizesAndRound(book),
    words(`${legend}${curvedOf(ramps).length > 0 ? ' Left and right are as seen from the toe.' : ''}`, width),
    ...takes(book).map((line) => words(line, width)),
    ...guard(book),
  ]
  // the pictures take what the words leave of the first page; of several more, and words go on
  const room = book.tall - title.height - stack(told).height - spare
  const alone = ramps.length === 1
  const height = Math.max(alone ? leastPicture : leastOfSeveral, Math.min(mostPicture, room / ramps.length))
  const fromTheSide = (most: number) =>
    ramps.map((ramp, index) =>
      figure(
        ofRamp(book, 'From the side', ramp),
        // a door beside one of several would make all of them small
        (ratio) => sideView({ ramp, units, ratio, index, mates: alone }),
        book,
        { width, height, most },
        { width: ramp.length, height: alone ? matesSize.height : topOf(ramp) },
      ),
    )
  // what stands over each other is compared: all at the scale of the smallest
  const largest = Math.min(...fromTheSide(Number.POSITIVE_INFINITY).map(({ ratio }) => ratio))
  return {
    name: 'glance',
    title: 'At a glance',
    blocks: [
      title,
      ...fromTheSide(largest),
      ...told,
      ...ramps.flatMap((ramp) => partsView(book, ramp)),
      ...frontViews(book),
      contents(book),
    ],
  }
}

/** Beside the table of sizes, and the least that a picture there takes, mm. */
const aside = { air: 6, width: 45, height: 45 } as const
/** Its name over it, mm. */
const [nameSize, nameRoom] = [2.5, 5] as const

/** The sizes; beside them, where they leave room, the first curved ramp in the round. */
const sizesAndRound = (book: Book): readonly Block[] => {
  const { width, solved, units, drawn: once } = book
  const sizes = table(figuresTable(book), width)
  const room = width - sizes.laid.width - aside.air
  const ramp = curvedOf(solved.ramps)[0] ?? solved.ramps[0]!
  if (room < aside.width) return [sizes]
  const height = Math.max(aside.height, tableHeight(sizes.laid)) - nameRoom
  const { box: whole } = once('round', () => roundView(ramp, units, 1))
  const ratio = Math.min(room / (whole.x1 - whole.x0), height / (whole.y1 - whole.y0))
  const view = once(`round ${ratio}`, () => roundView(ramp, units, ratio))
  const { x0, x1, y0, y1 } = view.box
  const name = ofRamp(book, 'In the round', ramp)
  const own = [
    group(affineTranslate(-x0, -y0), viewMarks(view)),
    text('note', { x: 0, y: y1 - y0 + 2 }, nameSize, name, { face: 'bold' }),
  ]
  return [
    beside(
      stack([sizes]),
      drawn(own, y1 - y0 + nameRoom, (room - (x1 - x0)) / 2),
      sizes.laid.width + aside.air,
    ),
  ]
}

const topOf = (ramp: SolvedRamp): number =>
  isCurved(ramp) ? ramp.transition.heights.deck : ramp.heights.surface

/** One column a ramp. */
const figuresTable = ({ solved: { ramps }, show }: Book) => {
  const rows: readonly (readonly [string, (ramp: SolvedRamp) => string])[] = [
    ['height of the deck', (ramp) => (isCurved(ramp) ? show(ramp.transition.heights.deck) : '')],
    [
      'height of the ridden face where it would meet the lip',
      (ramp) => (isCurved(ramp) ? show(ramp.transition.heights.surface) : ''),
    ],
    ['height of the ridden face', (ramp) => (isCurved(ramp) ? '' : show(ramp.heights.surface))],
    ['length of the sides', (ramp) => show(ramp.length)],
    ['width', (ramp) => show(ramp.width)],
    ['radius of the ridden face', (ramp) => (isCurved(ramp) ? show(ramp.transition.radius.surface) : '')],
    ['radius of the frame', (ramp) => (isCurved(ramp) ? show(ramp.transition.radius.frame) : '')],
    ['along the curve of the frame', (ramp) => (isCurved(ramp) ? show(ramp.transition.arc) : '')],
    [
      'slope at the lip',
      (ramp) =>
        isCurved(ramp)
          ? `${showAngle(ramp.transition.lipAngle)}, ${steepnessWord(ramp.transition.lipAngle)}`
          : '',
    ],
  ]
  return {
    columns: [
      { head: 'what', kind: 'words' as const },
      ...ramps.map(({ name }) => ({ head: ramps.length > 1 ? name : 'size', kind: 'right' as const })),
    ],
    rows: rows
      .map(([name, of]) => [name, ...ramps.map(of)])
      .filter(([, ...cells]) => cells.some((cell) => cell !== '')),
  }
}

/** What it takes, in words: panels, boards, weight, hours. */
const takes = (book: Book): readonly string[] => {
  const { stock, design, solved } = book
  const hours = workHours(book)
  const sheets = stock.list.filter((line) => line.part === 'sheets')
  const timber = stock.list.filter((line) => line.part === 'timber')
  const said = (lines: typeof sheets): string =>
    lines.map((line) => `${amountWords(line)} of ${line.what}`).join('; ')
  return [
    ...(sheets.length > 0 ? [`Panels: ${said(sheets)}.`] : []),
    ...(timber.length > 0 ? [`Timber: ${said(timber)}.`] : []),
    ...solved.ramps.flatMap((ramp) =>
      stockRows(ramp.name, stock, design.units)
        .slice(0, 1)
        .map(([label, words]) => `${book.several ? `${ramp.name}, ` : ''}${label} ${words}.`)
        .map(capital),
    ),
    ...stock.storings
      .filter(({ stored }) => stored)
      .map(({ ramp, outer }) => `${capital(ramp)} is kept inside ${outer}${onPage(`stored ${ramp}`)}.`),
    `Work: ${hours.least} to ${hours.most} hours for one who has built before and a helper; more hands for the lifting. Reckoned: ${hours.how}.`,
  ]
}

const guard = ({ solved: { checks }, width }: Book): readonly Block[] =>
  checks.some(({ id }) => id === 'guard-height')
    ? [
        caution(
          'The deck is high. A surface more than 30 in (762 mm) up: guards are commonly required; ask your building office.',
          width,
        ),
      ]
    : []

/** What lies on what. */
const partsView = (book: Book, ramp: SolvedRamp): readonly Block[] => {
  const { width, units } = book
  return [
    part(ofRamp(book, 'The parts', ramp), width),
    figure(
      ofRamp(book, 'What lies on what, with the marks of the pieces', ramp),
      (ratio) => explodedView(ramp, units, ratio, (own) => partWords(book, ramp, own)),
      book,
      { width, height: 110 * Math.max(leastShare, book.share) },
      { width: ramp.length, height: topOf(ramp) },
    ),
  ]
}

/** `layer 1, 9 plywood: K1`: marks as on the panels and timbers. */
const partWords = ({ units, fine, sheets }: Book, ramp: SolvedRamp, own: PartKind): string => {
  const parts = sheets.flatMap(({ parts: all }) => all).filter((one) => one.ramp === ramp.name)
  const marked = (of: (one: SheetPart) => boolean): string => {
    const marks = parts.filter(of).map(({ mark }) => mark)
    return marks.length < 3 ? marks.join(', ') : `${marks[0]} to ${marks.at(-1)}`
  }
  switch (own.kind) {
    case 'frame':
      return `frame: sides ${marked(isSide)}, timbers`
    case 'layer': {
      const { sheet } = ramp.skin.find(({ layer }) => layer === own.layer)!
      const marks = marked(({ part: of, words: said }) => of === 'skin' && layerNumber(said) === own.layer)
      return `layer ${own.layer}, ${sheetWords(sheet, units)}: ${marks}`
    }
    case 'run-out':
      return `run-out sheet: ${marked(({ part: of }) => of === 'run-out')}`
    case 'deck-board':
      return `deck board, ${showThickness(ramp.deckBoard!.sheet.thickness, units)}: ${marked(({ part: of }) => of === 'deck-board')}`
    case 'pipe':
      return `pipe, ${fine(isCurved(ramp) && ramp.coping ? ramp.coping.outside : 0)} outside`
  }
}

/** Two beside each other where there are several. */
const frontViews = (book: Book): readonly Block[] => {
  const { width, units, solved, several } = book
  const views = solved.ramps.map((ramp) =>
    figure(
      ofRamp(book, isCurved(ramp) ? 'From the front, before the toe' : 'From one end', ramp),
      (ratio) => frontView(ramp, units, ratio),
      book,
      { width: several ? width * half : width, height: 75 * Math.max(leastShare, book.share) },
      { width: ramp.width, height: topOf(ramp) },
    ),
  )
  return several
    ? views.flatMap((view, i) =>
        i % 2 > 0 ? [] : views[i + 1] ? [beside(view, views[i + 1]!, width * (1 - half))] : [view],
      )
    : views
}
const half = 0.47
