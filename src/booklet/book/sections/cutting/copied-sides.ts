import { wordList } from '../../../../length/word-list.ts'
import type { SolvedQuarter } from '../../../../ramp/ramp.ts'
import { isMirrored } from '../../../../stock/panel/panels.ts'
import { isSide } from '../../../../stock/sheet-part.ts'
import type { CopyWay } from '../../../views/acts/panel-views.ts'
import type { Book } from '../../book.ts'
import { onPage } from '../../page-words.ts'

/** The sides of a ramp where they lie: first the one that lies as the pages do, which the others are traced from. */
export const laidSides = ({ sheets }: Pick<Book, 'sheets'>, ramp: SolvedQuarter) =>
  sheets
    .flatMap(({ panels }) => panels)
    .flatMap((panel) =>
      panel.pieces
        .filter(({ part }) => part.ramp === ramp.name && isSide(part))
        .map((piece) => ({ panel, piece })),
    )
    .sort((a, b) => Number(isMirrored(a.piece)) - Number(isMirrored(b.piece)))

export type LaidSide = ReturnType<typeof laidSides>[number]

/** `S1, the left side,`, `S3, rib 2,`. */
const sideName = ({ piece: { part, under } }: LaidSide): string =>
  under
    ? `${part.mark} and ${under.mark}, clamped,`
    : `${part.mark}, ${/\d$/.test(part.words) ? '' : 'the '}${part.words},`

export const panelWords = ({ panel: { number } }: LaidSide): string =>
  `panel ${number}${onPage(`panel ${number}`)}`

/** Before pages are laid print down: their lines are seen no more. */
export const cutOut = 'cut them out on the middle of their lines, prick their marks through,'

/** Where the pages lie on the first side. */
export const pagesLie = (first: LaidSide): string => {
  const [it, lies] = first.piece.under ? ['they', 'lie'] : ['it', 'lies']
  const mirrored = isMirrored(first.piece)
  const where = mirrored
    ? `${sideName(first)} ${lies} mirrored on ${panelWords(first)}`
    : `They show ${sideName(first)} as ${it} ${lies} on ${panelWords(first)}`
  const lay = mirrored
    ? `The pages are laid on turned over: ${cutOut} and lay them there, print DOWN:`
    : 'Lay the taped pages there, print up:'
  return `${where}. Mark the toe corner by its two numbers and draw the bottom edge. ${lay} toe corner on toe corner, bottom edge on bottom edge.`
}

/** How the other sides of a ramp are marked. */
export const copied = (first: LaidSide, others: readonly LaidSide[]): readonly string[] => {
  const turned = others.filter((one) => copyWay(first, one) === 'turned over')
  const alike = others.filter((one) => !turned.includes(one))
  const list = (all: readonly LaidSide[]): string => wordList(all.map(({ piece }) => piece.part.mark))
  const own = first.piece.part.mark
  return [
    ...(turned.length > 0
      ? [
          `${list(turned)} ${turned.length > 1 ? 'are mirror images' : 'is the mirror image'}: turn ${own} over, lay it on the place of ${list(turned)}, toe corner on toe corner, and trace it.`,
        ]
      : []),
    ...(alike.length > 0
      ? [
          `${list(alike)}: lay ${own} on with the same face up${alike.every((one) => copyWay(first, one) === 'half a turn') ? ', turned half round' : ''}, toe corner on toe corner and bottom edge on bottom edge, and trace it.`,
        ]
      : []),
  ]
}

/** How the first side comes to lie on the place of another. */
export const copyWay = ({ piece: first }: LaidSide, { piece: copy }: LaidSide): CopyWay => {
  if (isMirrored(copy) !== isMirrored(first)) return 'turned over'
  const turn = Math.abs(copy.turn - first.turn) % 360
  return Math.abs(turn - 180) < 1 ? 'half a turn' : 'same face up'
}
