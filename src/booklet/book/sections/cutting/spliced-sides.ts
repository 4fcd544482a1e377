import { wordList } from '../../../../length/word-list.ts'
import type { SolvedQuarter } from '../../../../ramp/ramp.ts'
import { isMirrored } from '../../../../stock/panel/panels.ts'
import type { SheetPart } from '../../../../stock/sheet-part.ts'
import { markWords } from '../../../cuts/piece-words.ts'
import type { Book } from '../../book.ts'
import { copyWay, cutOut, type LaidSide, laidSides, panelWords } from './copied-sides.ts'

/** A side that is sawn in pieces. */
export interface SplicedSide {
  readonly mark: string
  /** from the toe, each where it lies */
  readonly pieces: readonly LaidSide[]
}

const partsOf = ({ piece: { part, under } }: LaidSide): readonly SheetPart[] =>
  under ? [part, under] : [part]

/** The sides of a ramp in pieces: first the one whose pieces lie as the pages do, or most of them. */
export const splicedSides = (book: Pick<Book, 'sheets'>, ramp: SolvedQuarter): readonly SplicedSide[] => {
  const laid = laidSides(book, ramp)
  const own = laid.flatMap((one) => partsOf(one).map((part) => ({ one, part })))
  const marks = [...new Set(own.map(({ part }) => part.piece!.of))]
  return marks
    .map((mark) => ({
      mark,
      pieces: own
        .filter(({ part }) => part.piece!.of === mark)
        .sort((a, b) => (a.part.mark < b.part.mark ? -1 : 1))
        .map(({ one }) => one),
    }))
    .sort((a, b) => turnedIn(a) - turnedIn(b))
}

const turnedIn = ({ pieces }: SplicedSide): number => pieces.filter(({ piece }) => isMirrored(piece)).length

/** How many panels its pieces come from. */
export const panelsOf = ({ pieces }: SplicedSide): number => new Set(pieces.map(({ panel }) => panel)).size

const names = (pieces: readonly LaidSide[]): string => wordList(pieces.map(({ piece }) => markWords(piece)))

/** `S2a and S2b lie as printed on panel 2`, panel by panel. */
const lieOn = (pieces: readonly LaidSide[], how: string): readonly string[] =>
  [...new Set(pieces.map(({ panel }) => panel))].map((panel) => {
    const own = pieces.filter((one) => one.panel === panel)
    return `${names(own)} ${own.length > 1 ? 'lie' : 'lies'} ${how} on ${panelWords(own[0]!)}`
  })

/** Which face of the pages comes up; what is cut out of them is laid on last. */
const layPages = (straight: readonly LaidSide[], turned: readonly LaidSide[]): string => {
  if (turned.length === 0) return 'Lay the taped pages there in turn, print up'
  const up = straight.length > 0 ? `Lay the taped pages there, print up, on ${names(straight)} first. ` : ''
  return `${up}On ${names(turned)} the pages are laid turned over: ${cutOut} and lay them there, print DOWN`
}

/** Where the pages lie on the pieces of the first side. */
export const pagesLieOn = ({ mark, pieces }: SplicedSide): string => {
  const turned = pieces.filter(({ piece }) => isMirrored(piece))
  const straight = pieces.filter((one) => !turned.includes(one))
  const [whole] = partsOf(pieces[0]!).filter(({ piece }) => piece!.of === mark)
  const words = whole!.words.replace(/, piece \w$/, '')
  return [
    `They show ${mark}, ${/\d$/.test(words) ? '' : 'the '}${words}: ${wordList([...lieOn(straight, 'as printed'), ...lieOn(turned, 'mirrored')])}.`,
    `Mark the corner of each piece, toe or joint, by its two numbers and draw its bottom edge. ${layPages(straight, turned)}: that corner on its corner, bottom edge on bottom edge. Each piece is traced with its joint.`,
  ].join(' ')
}

/** How the pieces of the other sides are marked and sawn. */
export const copiedPieces = (first: SplicedSide, laid: readonly LaidSide[]): readonly string[] => {
  const pairs = laid
    .filter(({ piece }) => first.pieces.every((one) => one.piece !== piece))
    .flatMap((copy) => {
      const from = first.pieces.find((one) => letterOf(one) === letterOf(copy))
      return from ? [{ copy, from }] : []
    })
    .sort((a, b) => (markWords(a.copy.piece) < markWords(b.copy.piece) ? -1 : 1))
  const turned = pairs.filter(({ copy, from }) => copyWay(from, copy) === 'turned over')
  const alike = pairs.filter((one) => !turned.includes(one))
  const own = (all: typeof pairs): string =>
    wordList([...new Set(all.map(({ from }) => from.piece.part.mark))].sort())
  const copies = (all: typeof pairs): string => names(all.map(({ copy }) => copy))
  const lay = 'each on its like, corner on corner and bottom edge on bottom edge, and trace it'
  return [
    ...(turned.length > 0
      ? [
          `${copies(turned)} ${turned.length > 1 ? 'are mirror images' : 'is a mirror image'}: turn ${own(turned)} over, lay ${lay}.`,
        ]
      : []),
    ...(alike.length > 0 ? [`${copies(alike)}: lay ${own(alike)} on with the same face up, ${lay}.`] : []),
    `${pairs.length > 0 ? 'Saw as before, clamp' : 'Clamp'} pieces of one letter together and smooth their edges as one.`,
  ]
}

/** Of a piece, as its mark ends. */
const letterOf = ({ piece: { part } }: LaidSide): string => part.mark.slice(-1)
