import { isCurved } from '../../../design/kind-traits.ts'
import { boxGrow, boxOverlaps, pointsBounds } from '../../../geometry/bounds.ts'
import { segmentsGap } from '../../../geometry/nearest.ts'
import { pathSegments, polygonOf } from '../../../geometry/path.ts'
import type { Point } from '../../../geometry/point.ts'
import { capital } from '../../../length/capital.ts'
import { massRange } from '../../../length/mass.ts'
import type { Check } from '../../../ramp/check/check.ts'
import { roleWords } from '../../../ramp/frame/deck-timbers.ts'
import { liesWords, rippedWords, timberCorners } from '../../../ramp/frame/timber.ts'
import type { SolvedRamp } from '../../../ramp/ramp.ts'
import { stumpView } from '../../views/acts/act-views.ts'
import { planView } from '../../views/plan-view.ts'
import { studView } from '../../views/stud-view.ts'
import { type Block, caution, check, head, named, part, table, together, words } from '../block.ts'
import { type Book, ofRamp } from '../book.ts'
import { commonEnds } from '../end-words.ts'
import { figure } from '../figure.ts'
import type { Section } from '../pages.ts'
import { screwFigure } from '../screw-figure.ts'
import { noScale, stage } from '../stage.ts'
import { timberMarks, timberName } from '../timber-words.ts'
import { hasBlocks } from './blocks.ts'
import { endScrews, frameSteps, frameTop } from './frame-steps.ts'

export const framing = (book: Book): Section => ({
  name: 'framing',
  title: 'Framing',
  blocks: [
    head('Framing', book.width),
    screwFigure(book),
    ...book.solved.ramps.flatMap((ramp, i, all) => frameOf(book, ramp, all.slice(0, i))),
  ],
})

/** Of the plan's usual height: in less its numbers come among its dimensions. */
const leastPlan = 0.6

const frameOf = (book: Book, ramp: SolvedRamp, before: readonly SolvedRamp[]): readonly Block[] => {
  const { width, units } = book
  const curved = isCurved(ramp)
  const { people, least, most } = book.stock.weight.ramps.find((own) => own.ramp === ramp.name)!.frame
  return [
    named(
      `frame ${ramp.name}`,
      part(ofRamp(book, curved ? 'Where the timbers go' : 'Where the studs go', ramp), width),
    ),
    figure(
      ofRamp(book, 'One side, timbers numbered', ramp),
      (ratio) => studView(ramp, units, ratio),
      book,
      // its dimensions need all of that
      { width, height: 105 },
      { width: ramp.length, height: frameTop(ramp) },
    ),
    named(
      `timbers ${ramp.name}`,
      figure(
        ofRamp(book, 'The frame from above', ramp),
        (ratio) => planView(ramp, units, ratio),
        book,
        { width, height: 120 * Math.max(leastPlan, book.share) },
        { width: ramp.length, height: ramp.width },
      ),
    ),
    part(ofRamp(book, 'Steps', ramp), width),
    {
      ...caution(
        `${people} people lift and turn the frame, ${massRange({ least, most }, units)}; nobody stands under it.`,
        width,
      ),
      withNext: true,
    },
    ...endsOf(book, ramp, before.length > 0),
    ...together([table(studTable(book, ramp), width)], book.tall),
    ...frameSteps(book, ramp),
    check(
      'Both diagonals are equal, the frame stands on all of its sides without rocking, no screw stands proud.',
      width,
    ),
    ...checksOf(book, ramp, [
      'stud-toe',
      'span',
      'deck-timber',
      'flat-studs',
      // once the skin lies it is too late for blocks
      ...(hasBlocks(book, ramp) ? ['seam-across'] : []),
    ]),
  ]
}

/** Where the screws of a timber's ends go, with a picture, and corners that all but touch. */
const endsOf = (book: Book, ramp: SolvedRamp, again: boolean): readonly Block[] => {
  const { width } = book
  const close = closeTimbers(book, ramp)
  const said = (room: number): readonly Block[] =>
    [endScrews(book, ramp, again), close].filter((one) => one !== '').map((one) => words(one, room))
  if (again) return said(width)
  return [stage(() => stumpView(commonEnds(book)), noScale, said, width)]
}

/** Nearer ones leave no room for timber that is a little thicker, mm. */
const touching = 1

/** Studs and timbers that come so near to each other that one must be fitted to the other. */
const closeTimbers = (book: Book, ramp: SolvedRamp): string => {
  const boxes = [...ramp.studs, ...ramp.deckTimbers].map((one) => pointsBounds(timberCorners(one)))
  return ramp.studs
    .flatMap((stud, i) =>
      ramp.deckTimbers.flatMap((timber, k) => {
        if (!boxOverlaps(boxGrow(boxes[i]!, touching), boxes[ramp.studs.length + k]!)) return []
        const [a, b] = [stud, timber].map((one) => polygonOf(...(timberCorners(one) as [Point, ...Point[]])))
        const gap = Math.min(
          ...pathSegments(a!).flatMap((own) =>
            pathSegments(b!).map((other) => segmentsGap(own, other).distance),
          ),
        )
        return gap < touching
          ? [
              `${capital(timberName(book, ramp, i))} and ${timberName(book, ramp, ramp.studs.length + k)} all but touch: hold both in place before either is screwed, and plane a corner of the stud where the wood is thicker than drawn.`,
            ]
          : []
      }),
    )
    .join(' ')
}

/** What the figures say of this ramp that bears on the work at hand. */
export const checksOf = (
  book: Book,
  { name }: SolvedRamp,
  ids: readonly string[],
  belongs: (check: Check) => boolean = () => true,
): readonly Block[] =>
  book.solved.checks
    .filter((one) => one.ramp === name && ids.includes(one.id) && belongs(one))
    .map(({ message }) => checkWords(book, message))

/** The same where no head says which ramp it is of: with its name, where there are several. */
export const namedChecks = (
  book: Book,
  ids: readonly string[],
  of: (ramp: string) => boolean = () => true,
): readonly Block[] =>
  book.solved.checks
    .filter(({ id, ramp }) => ids.includes(id) && of(ramp))
    .map(({ ramp, message }) => checkWords(book, book.several ? `${ramp}: ${message}` : message))

const checkWords = ({ width }: Book, message: string): Block =>
  words(`${capital(message.replaceAll('`', ''))}.`, width)

const studTable = (book: Book, ramp: SolvedRamp) => {
  const { show, fine } = book
  const { section } = ramp.design.studs
  const curved = isCurved(ramp)
  return {
    columns: [
      { head: '', kind: 'box' as const },
      { head: 'number', kind: 'right' as const, face: 'bold' as const },
      { head: 'sawn as', kind: 'words' as const },
      { head: curved ? 'up the curve' : 'from the end', kind: 'figure' as const },
      ...(curved ? [{ head: 'behind the toe', kind: 'figure' as const }] : []),
      { head: 'lies', kind: 'words' as const },
      { head: 'what it is', kind: 'words' as const },
      { head: 'as set', kind: 'blank' as const },
    ],
    rows: [
      ...ramp.studs.map((stud, i) => [
        '',
        `${i + 1}`,
        timberMarks(book, ramp, i),
        show(stud.at),
        // set along the curve: a second place a millimetre off would only be asked about
        ...(curved ? [''] : []),
        liesWords(stud),
        ['stud', rippedWords(stud, section, fine), stud.role === 'seam' ? 'set for a seam' : '']
          .filter((said) => said !== '')
          .join(', '),
        '',
      ]),
      ...(curved
        ? ramp.deckTimbers.map((timber, i) => {
            const sloping = timber.role === 'wheels'
            return [
              '',
              `${ramp.studs.length + i + 1}`,
              timberMarks(book, ramp, ramp.studs.length + i),
              '',
              sloping ? '' : show(timber.x),
              sloping ? 'along the cut' : liesWords(timber),
              `${roleWords(timber.role, ramp)}${sloping ? ': see its step' : ''}`,
              '',
            ]
          })
        : []),
    ],
  }
}
