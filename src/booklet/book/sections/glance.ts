import { isCurved } from '../../../design/kind-traits.ts'
import type { SolvedRamp } from '../../../ramp/ramp.ts'
import { steepnessWord } from '../../../ramp/steepness.ts'
import { countWords } from '../../list/list-words.ts'
import { stockRows } from '../../stock-rows.ts'
import { explodedView } from '../../views/exploded-view.ts'
import { frontView } from '../../views/front-view.ts'
import { sideView } from '../../views/side-view.ts'
import { matesSize } from '../../views/size-mates.ts'
import { type Block, beside, caution, gap, head, part, stack, table, words } from '../block.ts'
import { type Book, ofRamp } from '../book.ts'
import { figure } from '../figure.ts'
import { workHours } from '../hours.ts'
import type { Section } from '../pages.ts'

/** A guard is commonly required from here on (International Residential Code 2018, R312.1), mm. */
const guardHeight = 762

/** Height of a ramp's picture on the first page, and what stays free below it, mm. */
const leastPicture = 45
const mostPicture = 130
const spare = 4

/** The picture, the sizes, what it takes: a page that stands alone; then the other views. */
export const glance = (book: Book): Section => {
  const { design, width, solved, units } = book
  const { ramps } = solved
  const legend = units === 'in' ? 'Lengths in inches: + is 1/32 more, – is 1/32 less.' : 'Lengths in mm.'
  const title = head(design.title, width)
  const told = [
    table(figuresTable(book), width),
    words(legend, width),
    ...takes(book).map((line) => words(line, width)),
    ...guard(book),
  ]
  // the pictures take what the words leave of the first page
  const room = book.tall - title.height - stack(told).height - spare
  // a door beside a ramp asks for more
  const shares = ramps.length === 2 ? [0.42, 0.58] : [1 / ramps.length, 1 / ramps.length]
  const high = (share: number): number => Math.max(leastPicture, Math.min(mostPicture, share * room))
  const first = ramps.reduce((least, ramp, i) => (ramp.length < ramps[least]!.length ? i : least), 0)
  return {
    name: 'glance',
    title: 'At a glance',
    blocks: [
      title,
      ...ramps.map((ramp, index) =>
        figure(
          ofRamp(book, 'From the side', ramp),
          (ratio) => sideView({ ramp, units, ratio, index, mates: index === first && ramps.length < 3 }),
          units,
          { width, height: high(shares[index === first ? 1 : 0]!) },
          {
            width: ramp.length,
            height: index === first && ramps.length < 3 ? matesSize.height : topOf(ramp),
          },
        ),
      ),
      ...told,
      ...ramps.flatMap((ramp) => partsView(book, ramp)),
      ...frontViews(book),
    ],
  }
}

const topOf = (ramp: SolvedRamp): number =>
  isCurved(ramp) ? ramp.transition.heights.deck : ramp.heights.surface

/** One column a ramp. */
const figuresTable = ({ solved: { ramps }, show }: Book) => {
  const rows: readonly (readonly [string, (ramp: SolvedRamp) => string])[] = [
    ['height of the deck', (ramp) => (isCurved(ramp) ? show(ramp.transition.heights.deck) : '')],
    [
      'height of the ridden face at the top',
      (ramp) => show(isCurved(ramp) ? ramp.transition.heights.surface : ramp.heights.surface),
    ],
    ['length of the sides', (ramp) => show(ramp.length)],
    ['width', (ramp) => show(ramp.width)],
    ['radius of the ridden face', (ramp) => (isCurved(ramp) ? show(ramp.transition.radius.surface) : '')],
    ['radius of the frame', (ramp) => (isCurved(ramp) ? show(ramp.transition.radius.frame) : '')],
    ['along the curve of the frame', (ramp) => (isCurved(ramp) ? show(ramp.transition.arc) : '')],
    [
      'slope at the lip',
      (ramp) =>
        isCurved(ramp)
          ? `${((ramp.transition.lipAngle * 180) / Math.PI).toFixed(1)}°, ${steepnessWord(ramp.transition.lipAngle)}`
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
    lines.map((line) => `${countWords(line)} of ${line.what}`).join('; ')
  return [
    ...(sheets.length > 0 ? [`Panels: ${said(sheets)}.`] : []),
    ...(timber.length > 0 ? [`Timber: ${said(timber)}.`] : []),
    ...solved.ramps.flatMap((ramp) =>
      stockRows(ramp.name, stock, design.units)
        .slice(0, 1)
        .map(([label, words]) => `${book.several ? `${ramp.name}, ` : ''}${label} ${words}.`)
        .map((line) => line.slice(0, 1).toUpperCase() + line.slice(1)),
    ),
    `Work: ${hours.least} to ${hours.most} hours for one who has built before and a helper for the lifting. Reckoned: ${hours.how}.`,
  ]
}

const guard = ({ solved: { ramps }, width }: Book): readonly Block[] =>
  ramps.some((ramp) => topOf(ramp) > guardHeight)
    ? [
        caution(
          'The deck is high. A surface more than 30 in (762 mm) up: guards are commonly required; ask your building office.',
          width,
        ),
      ]
    : []

/** What lies on what. */
const partsView = (book: Book, ramp: SolvedRamp): readonly Block[] => {
  const { width, units, fine } = book
  const lists = explodedView(ramp, units, 0.05, fine).names
  const letters = 'ABCDEFGHIJKLMNOP'
  const exploded = figure(
    ofRamp(book, 'What lies on what', ramp),
    (ratio) => explodedView(ramp, units, ratio, fine).view,
    units,
    { width: width * 0.68, height: 110 * book.share },
    { width: ramp.length, height: topOf(ramp) },
  )
  return [
    part(ofRamp(book, 'The parts', ramp), width),
    beside(
      exploded,
      stack([
        gap(12),
        table(
          {
            columns: [
              { head: '', kind: 'words', face: 'bold' },
              { head: 'part', kind: 'words' },
            ],
            rows: lists.map((name, i) => [letters[i]!, name]),
          },
          width * 0.3,
        ),
      ]),
      width * 0.7,
    ),
  ]
}

/** Two beside each other where there are several. */
const frontViews = (book: Book): readonly Block[] => {
  const { width, units, solved, several } = book
  const views = solved.ramps.map((ramp) =>
    figure(
      ofRamp(book, isCurved(ramp) ? 'From the front, before the toe' : 'From one end', ramp),
      (ratio) => frontView(ramp, units, ratio),
      units,
      { width: several ? width * half : width, height: 75 * book.share },
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
