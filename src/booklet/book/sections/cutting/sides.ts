import type { Point } from '../../../../geometry/point.ts'
import { showLength } from '../../../../length.ts'
import type { Pattern } from '../../../../pattern/pattern.ts'
import type { SolvedQuarter } from '../../../../ramp/ramp.ts'
import { notchDrill } from '../../../../ramp/side/side.ts'
import type { Panel } from '../../../../stock/panel/panels.ts'
import { type SideEdge, sideEdges } from '../../../cuts/side-edges.ts'
import { copyView, guideView, tapedView } from '../../../views/acts/panel-views.ts'
import { jigsawView } from '../../../views/acts/tool-views.ts'
import { type Act, shown, told } from '../../act.ts'
import { beside, stack, step } from '../../block.ts'
import type { Book } from '../../book.ts'
import { onPage } from '../../page-words.ts'
import { noScale } from '../../stage.ts'
import { copied, copyWay, type LaidSide, laidSides, pagesLie } from './copied-sides.ts'
import { pieceNames } from './joining.ts'
import { aloneNotched, betweenNotches, notchBlocks } from './notches.ts'
import { copiedPieces, pagesLieOn, panelsOf, splicedSides } from './spliced-sides.ts'

/** How the side that lies as the pages do is made, and those that are traced from it. */
interface SideActs {
  readonly first: readonly Act[]
  readonly copies: readonly Act[]
}

/** The sides of one outline: taped, traced, sawn, checked, and copied. */
const sideActs = (book: Book, ramp: SolvedQuarter, pattern: Pattern): SideActs => {
  const { several, width } = book
  const spliced = ramp.splices.length > 0
  const laid = spliced ? [] : laidSides(book, ramp)
  const [first] = laid
  const [inPieces] = spliced ? splicedSides(book, ramp) : []
  const own = first ? first.piece.part.mark : inPieces ? inPieces.mark : 'the first side'
  const cells = cellsOf(book, ramp)
  const taped = [
    `Tape the ${cells.length} pages of the side${several ? ` of ${ramp.name}` : ''} (${book.paper} paper) in the order of their numbers and check the distances on their map. ${
      first
        ? pagesLie(first)
        : inPieces
          ? pagesLieOn(inPieces)
          : `Lay them on the place of each of its pieces ${pieceNames(ramp)} in turn: each is traced with its joint.`
    }`,
    `Trace the curve, the edges and the marks of ${own}. Go over the curve once along a thin batten that is bent to it: no bump.`,
  ]
  const straight = `Saw the straight edges of ${own} in the order of its panel${inPieces && panelsOf(inPieces) > 1 ? 's' : ''}${first && straightCut(first.panel) ? ', from its cut 1 on' : ''}, beside the line on the WASTE side; STOP where the order says so. A fine blade, and the line scored with a knife or taped over, keep the upper face from tearing.`
  const curved = [
    `Then saw the curve${ramp.coping ? ` and the notch${ramp.coping.seat === 'square' ? ', into its hole from both sides,' : ''}` : ''} with the jigsaw, on the WASTE side. Smooth down to the middle of the line. Ease no edge yet.`,
    `${spliced ? `Lay the pieces of ${own} together, check them` : `Check ${own}`} by the table${onPage(`checks ${ramp.name}`)}, and lay the pages back on its edge.`,
  ]
  return {
    first: [
      ...(first ? [pictured(book, first, taped, cells)] : told(taped, width)),
      ...(ramp.coping?.seat === 'square' ? [notchAct(book, ramp)] : []),
      ...(first ? [pictured(book, first, [straight], null)] : told([straight], width)),
      shown(curved, () => jigsawView(first ? own : 'kept'), noScale, width),
    ],
    copies: inPieces
      ? told([copiedPieces(inPieces, laidSides(book, ramp)).join(' '), ...servesWords(pattern)], width)
      : copyActs(book, laid, pattern, true),
  }
}

/** What each page shows of a ramp's side. */
const cellsOf = ({ covered }: Book, { name }: SolvedQuarter): readonly (readonly Point[])[] =>
  covered.find(({ ramp }) => ramp === name)?.cells ?? []

/** Drilled before it is sawn; where the design has one notch alone, beside its drawing. */
const notchAct = (book: Book, ramp: SolvedQuarter): Act => {
  const said = `In the inner corner of the notch${aloneNotched(book) ? '' : onPage('notches')} drill a hole of ${showLength(notchDrill[book.units], book.units, { unit: true })} on the WASTE side, touching both of its lines, so that it takes nothing of the pipe's seat. The notch is sawn later.`
  if (!aloneNotched(book)) return told([said], book.width)[0]!
  const half = (book.width - betweenNotches) / 2
  const [drawing, sizes] = notchBlocks(book, ramp, half)
  return {
    count: 1,
    blocks: (first) => [
      beside(stack([drawing]), stack([step(first, said, half), sizes]), half + betweenNotches),
    ],
  }
}

/** The first cut of a panel, where it runs from edge to edge, and the way to what is kept of it. */
const straightCut = ({ steps: [first] }: Panel): Pick<SideEdge, 'cut' | 'inward'> | null => {
  if (!first || first.kind === 'out') return null
  const { at, from, to, blade } = first
  const rip = first.kind === 'rip'
  const [a, b] = [from, to].map((along) => (rip ? { x: along, y: at } : { x: at, y: along }))
  const away = blade === 'past' ? Math.PI : 0
  return {
    inward: rip ? Math.PI / 2 - away : away,
    cut: { segment: { kind: 'line', from: a!, to: b! }, stops: [] },
  }
}

/** Steps beside the panel on which a side lies: under its pages, or as its first edge is sawn. */
const pictured = (
  book: Book,
  { panel, piece }: LaidSide,
  said: readonly string[],
  /** the pages that lie on it; null as it is sawn */
  cells: readonly (readonly Point[])[] | null,
): Act => {
  const { width, units } = book
  const [short, long] = panel.size
  const thing = { width: long, height: short }
  if (cells) return shown(said, (ratio) => tapedView(panel, piece, cells, ratio), thing, width)
  const edge = straightCut(panel) ?? sideEdges(piece, panel, units).find(({ cut }) => cut !== null)
  return edge
    ? shown(said, (ratio) => guideView(panel, piece, edge, ratio), thing, width)
    : told(said, width)[0]!
}

/** What else the pages of a pattern are for. */
const servesWords = ({ serves: [, ...others] }: Pattern): readonly string[] =>
  others.length > 0 ? [`The same pages serve ${others.join('; ')}.`] : []

/** The other sides of a ramp, traced from the first: with a picture, where none was shown before. */
const copyActs = (
  { width }: Book,
  laid: readonly LaidSide[],
  pattern: Pattern,
  picture: boolean,
): readonly Act[] => {
  const [first, ...rest] = laid
  const said = [
    `${(first ? copied(first, rest) : ['Turn it over for the other side and trace it, so that both outside faces come outside.']).join(' ')} ${first && rest.length === 0 ? 'Clamp' : 'Saw as before, clamp'} all together and smooth their edges as one.`.trimStart(),
    ...servesWords(pattern),
  ]
  if (!first || rest.length === 0 || !picture) return told(said, width)
  // turning over is what goes wrong
  const copy = rest.find((one) => copyWay(first, one) === 'turned over') ?? rest[0]!
  const boxes = [first.piece.box, copy.piece.box]
  const thing = {
    width: boxes.reduce((sum, { x0, x1 }) => sum + x1 - x0, 0),
    height: Math.max(...boxes.map(({ y0, y1 }) => y1 - y0)),
  }
  return [
    shown(said, (ratio) => copyView(first.piece, copy.piece, copyWay(first, copy), ratio), thing, width),
  ]
}

/** The same for another ramp, what differs alone. */
const againActs = (book: Book, ramp: SolvedQuarter, before: SolvedQuarter, pattern: Pattern): SideActs => {
  const laid = laidSides(book, ramp)
  const [first] = laid
  if (
    ramp.splices.length > 0 ||
    !first ||
    before.splices.length > 0 ||
    ramp.coping?.seat !== before.coping?.seat
  )
    return sideActs(book, ramp, pattern)
  return {
    first: told(
      [
        `The same with ${ramp.name}: tape its ${cellsOf(book, ramp).length} pages in their order and check their distances. ${pagesLie(first)} Trace, drill, saw and check ${first.piece.part.mark} as before, by its own table${onPage(`checks ${ramp.name}`)}.`,
      ],
      book.width,
    ),
    copies: copyActs(book, laid, pattern, false),
  }
}

/** The first side of each ramp and what is traced from it, in the order in which the panels say their cuts. */
export const orderedSides = (
  book: Book,
  own: readonly { readonly ramp: SolvedQuarter; readonly pattern: Pattern }[],
): readonly Act[] => {
  const turnOf = ({ piece }: LaidSide): number =>
    book.sheets
      .flatMap(({ panels }) => panels)
      .flatMap(({ steps }) => steps)
      .findIndex((one) => one.kind === 'out' && one.mark === piece.part.mark)
  const sorted = own
    .map((one) => ({ ...one, turns: laidSides(book, one.ramp).map(turnOf) }))
    .sort((a, b) => (a.turns[0] ?? 0) - (b.turns[0] ?? 0))
  return sorted
    .flatMap(({ ramp, pattern, turns: [turn = 0, ...later] }, i) => {
      const { first, copies } =
        i === 0 ? sideActs(book, ramp, pattern) : againActs(book, ramp, sorted[0]!.ramp, pattern)
      return [
        { turn, acts: first },
        { turn: Math.max(turn, ...later.slice(0, 1)), acts: copies },
      ]
    })
    .sort((a, b) => a.turn - b.turn)
    .flatMap(({ acts }) => acts)
}
