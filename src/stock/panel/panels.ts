import type { Design, Sheet, Stock, StockPanel, Units } from '../../design/design.ts'
import { panelSizes, sameSheet } from '../../design/panel-sizes.ts'
import { type Affine, affineApply, affineScale, affineThen, affineTranslate } from '../../geometry/affine.ts'
import { segmentAt } from '../../geometry/at.ts'
import type { Box } from '../../geometry/bounds.ts'
import { type Path, pathSegments } from '../../geometry/path.ts'
import { pathMap } from '../../geometry/path-map.ts'
import type { Point } from '../../geometry/point.ts'
import { doubleArea, outerPolygon } from '../../geometry/polygon/outer-polygon.ts'
import { offerSteps } from '../../ramp/check/offer.ts'
import { isSide, type SheetPart } from '../sheet-part.ts'
import { isSteel } from '../steel-uses.ts'
import { closedUp } from './close-up.ts'
import { type Couple, inPairs } from './couples.ts'
import { type Known, nothingKnown } from './known.ts'
import { nest } from './nest.ts'
import { boughtOf, type Filled, type PanelKind, type Place, sameArea } from './pack.ts'
import type { Piece } from './piece.ts'
import { settled } from './place/on-steps.ts'
import { blankOf } from './place/shape.ts'
import type { Sawing } from './saw-order.ts'

/** A piece where it lies: from the panel's left end and its lower edge, the panel's better face up. mm, degrees */
export interface PanelPiece {
  readonly part: SheetPart
  /** sawn with it from the panel that is clamped under this one; else null */
  readonly under: SheetPart | null
  /** the corner that is found with a tape: the toe's, or the lower left one of what has no curve */
  readonly x: number
  readonly y: number
  /** of a curved piece: the other end of its bottom edge */
  readonly second: Point | null
  /** counter-clockwise from the part's own frame */
  readonly turn: number
  /** the face that shows in the ramp lies down */
  readonly over: boolean
  /** true outline on the panel, arcs kept, from that corner */
  readonly outline: Path
  readonly box: Box
}

export interface LaidPanel {
  /** from 1, through all sheets of the design */
  readonly number: number
  readonly sheet: Sheet
  /** short and long side: it lies with the long one from left to right */
  readonly size: readonly [number, number]
  /** lies in the garage already */
  readonly there: boolean
  /** so many lie on each other and are sawn as one */
  readonly clamped: number
  readonly pieces: readonly PanelPiece[]
}

/** The same with the order in which it is sawn. */
export interface Panel extends LaidPanel, Sawing {}

type Unnumbered = Omit<LaidPanel, 'number'>

/** All that is sawn from one material and thickness. */
export interface LaidSheet {
  readonly sheet: Sheet
  readonly parts: readonly SheetPart[]
  readonly panels: readonly LaidPanel[]
  /** parts that no panel holds */
  readonly lost: readonly SheetPart[]
  /** sizes that can be bought, short side first; `usual` where the design does not say them */
  readonly sizes: readonly (readonly [number, number])[]
  readonly usual: boolean
  /** of the tape: pieces lie on whole ones of it where there is room, mm */
  readonly step: number
}

export interface SheetPanels extends LaidSheet {
  readonly panels: readonly Panel[]
}

/** Parts of one material and thickness. */
export interface SheetGroup {
  readonly sheet: Sheet
  readonly parts: readonly SheetPart[]
}

/** In the order in which sheets first come up. */
export const sheetGroups = (parts: readonly SheetPart[]): readonly SheetGroup[] => {
  const groups: { readonly sheet: Sheet; readonly parts: SheetPart[] }[] = []
  for (const part of parts) {
    const own = groups.find(({ sheet }) => sameSheet(sheet, part.sheet))
    if (own) own.parts.push(part)
    else groups.push({ sheet: part.sheet, parts: [part] })
  }
  return groups
}

/** Every part laid on panels of its sheet. */
export const layPanels = (
  { stock, units }: Pick<Design, 'stock' | 'units'>,
  parts: readonly SheetPart[],
  known = nothingKnown(),
): readonly LaidSheet[] => {
  const laid: LaidSheet[] = []
  for (const group of sheetGroups(parts).toSorted((a, b) => turnOf(a) - turnOf(b))) {
    const first = 1 + laid.reduce((sum, { panels }) => sum + panels.length, 0)
    laid.push(laySheet(group, stock, units, first, known))
  }
  return laid
}

/** Panels are numbered as they are sawn: what gives sides, other wood, then steel, which takes another blade. */
const turnOf = ({ sheet, parts }: SheetGroup): number => (parts.some(isSide) ? 0 : isSteel(sheet) ? 2 : 1)

/** What a panel of the search is in the stock. */
interface Source {
  readonly kind: PanelKind
  readonly size: readonly [number, number]
  readonly there: boolean
}

const laySheet = (
  { sheet, parts }: SheetGroup,
  stock: Stock,
  units: Units,
  first: number,
  known: Known,
): LaidSheet => {
  const said = stock.panels.filter((panel) => sameSheet(panel.sheet, sheet))
  const sizes = panelSizes(sheet, stock, units)
  const clamped = Math.max(1, ...said.map((panel) => panel.clamped))
  const saw = { kerf: stock.kerf, trim: stock.trim, step: offerSteps[units] }
  const { pairs, singles } = clamped === 2 ? inPairs(parts) : { pairs: [], singles: parts }
  const sold = sizes.map((size): Source => ({ kind: kindOf(size, null), size, there: false }))
  const offcuts = stock.offcuts
    .filter((piece) => sameSheet(piece.sheet, sheet))
    .map(({ size, count }): Source => ({ kind: kindOf(size, count), size, there: true }))
  const out = said.some(({ goodFace }: StockPanel) => goodFace === 'out')
  const laidWith = (couples: readonly (Source | null)[]) => {
    const panels: Unnumbered[] = []
    const lost: SheetPart[] = []
    const laidOn: Source[] = []
    let bought = 0
    const lay = (all: readonly Couple[], sources: readonly Source[], layers: number): void => {
      const packing = nest(
        all.map(({ part }) => pieceOf(part, out, layers)),
        sources.map(({ kind }) => kind),
        saw,
        known,
      )
      bought += layers * boughtOf(packing)
      // else nothing lies farther apart than the saw asks for
      const mixed = packing.filled.some(({ places }) => places.some(({ shape }) => !shape.square))
      for (const filled of packing.filled) {
        const source = sources.find(({ kind }) => kind === filled.kind)!
        laidOn.push(source)
        const board = { length: source.kind.length, width: source.kind.width, trim: stock.trim }
        const onTape = settled(board, filled.places, saw.step)
        const places = mixed ? closedUp(onTape, saw) : onTape
        panels.push(panelOf({ ...filled, places }, source, all, sheet, layers))
      }
      lost.push(...packing.lost.flatMap((i) => [all[i]!.part, ...(all[i]!.under ? [all[i]!.under!] : [])]))
    }
    if (pairs.length > 0) lay(pairs, [...couples.filter((one) => one !== null), ...sold], 2)
    const left = offcuts.flatMap((source, i) => {
      const taken = 2 * laidOn.filter((own) => own === couples[i]).length
      return taken < source.kind.count! ? [counted(source, source.kind.count! - taken)] : []
    })
    if (singles.length > 0)
      lay(
        singles.map((part) => ({ part, under: null })),
        [...left, ...sold],
        1,
      )
    return { panels, lost, bought }
  }
  // two offcuts of one size lie on each other as well as two panels do, where what is left then takes no panel more
  const couples = offcuts.map((source) =>
    source.kind.count! > 1 ? counted(source, Math.floor(source.kind.count! / 2)) : null,
  )
  const alone = laidWith(offcuts.map(() => null))
  const paired = pairs.length > 0 && couples.some((one) => one !== null) ? laidWith(couples) : alone
  const { panels, lost } =
    paired.lost.length <= alone.lost.length && paired.bought <= alone.bought + sameArea ? paired : alone
  const numbered = inSawingOrder(panels, parts).map((panel, i) => ({ ...panel, number: first + i }))
  return { sheet, parts, panels: numbered, lost, sizes, usual: said.length === 0, step: saw.step }
}

const kindOf = ([width, length]: readonly [number, number], count: number | null): PanelKind => ({
  length,
  width,
  count,
})

const counted = (source: Source, count: number): Source => ({ ...source, kind: { ...source.kind, count } })

export const pieceOf = (part: SheetPart, out: boolean, layers: number): Piece => ({
  blank: blankOf(part.outline),
  alike: JSON.stringify(part.outline),
  grain: part.grain,
  // of a clamped pair each has its own good face out whichever way it lies
  faced: part.faced && layers === 1,
  mustFace: out,
})

const panelOf = (
  { places }: Filled,
  { size, there, kind }: Source,
  all: readonly Couple[],
  sheet: Sheet,
  clamped: number,
): Unnumbered => {
  const piecesOf = (own: readonly Place[]): readonly PanelPiece[] =>
    own.map((place) => panelPiece(place, all[place.piece]!))
  const laid = piecesOf(places)
  const worth = liesWell(laid)
  const other = worth === 0 ? laid : piecesOf(otherWay(places, kind.length))
  const pieces = worth <= liesWell(other) ? laid : other
  return { sheet, size, there, clamped, pieces }
}

/** Less is better: good faces down, then sides of which none lies as its pages do. */
const liesWell = (pieces: readonly PanelPiece[]): number => {
  const curved = pieces.filter(({ second }) => second !== null)
  const down = pieces.filter(({ part, over }) => part.faced && over).length
  return 2 * down + Number(curved.length > 0 && curved.every(isMirrored))
}

/** The same layout from right to left: what is curved lies turned over. */
const otherWay = (places: readonly Place[], length: number): readonly Place[] =>
  places.map((place) => {
    const { shape } = place
    const x = length - place.x - shape.width
    if (shape.square) return { ...place, x }
    const map = affineThen(shape.map, affineThen(affineScale(-1, 1), affineTranslate(shape.width, 0)))
    return {
      ...place,
      x,
      shape: { ...shape, map, over: !shape.over, turn: (360 - shape.turn) % 360 },
    }
  })

const panelPiece = ({ shape, x, y }: Place, { part, under }: Couple): PanelPiece => {
  // turned over, the upper one of a clamped couple is the other hand of it
  if (under && shape.over && part.faced) {
    const swapped = panelPiece({ shape, x, y, piece: 0 }, { part, under: null })
    return { ...swapped, part: under, under: part, over: false }
  }
  const map: Affine = affineThen(shape.map, affineTranslate(x, y))
  const outline = pathMap(part.outline, map)
  const box = { x0: x, y0: y, x1: x + shape.width, y1: y + shape.height }
  const base = { part, under, turn: shape.turn, over: shape.over, box }
  if (shape.square) {
    // from its lower left corner, whichever way it is turned
    const corners = [outline.start, ...outline.pieces.map(({ to }) => to)]
    const first = corners.findIndex((p) => Math.abs(p.x - x) < 1e-6 && Math.abs(p.y - y) < 1e-6)
    const turned = [...corners.slice(first), ...corners.slice(0, first)].filter(
      (p, i, list) => list.findIndex((q) => Math.hypot(p.x - q.x, p.y - q.y) < 1e-6) === i,
    )
    const path: Path = {
      start: turned[0]!,
      pieces: turned.slice(1).map((to) => ({ kind: 'line', to })),
      closed: true,
    }
    return { ...base, outline: path, x, y, second: null }
  }
  return { ...base, outline, ...outline.start, second: affineApply(map, part.outline.pieces[0]!.to) }
}

/** Whether a curved piece lies as the mirror image of its pattern, which shows the outside of a right side, toe at the left. */
export const isMirrored = ({ second, outline }: PanelPiece): boolean =>
  second !== null &&
  doubleArea(pathSegments(outline).flatMap((segment) => [segment.from, segmentAt(segment, 0.5)])) < 0

/** Panels with a side first, which is traced and sawn before all else: the clamped ones, then those on which no side is the mirror image of one that lies on another, as that is traced from it; else by the first part of each, so that those of a layer follow each other. */
const inSawingOrder = (panels: readonly Unnumbered[], parts: readonly SheetPart[]): readonly Unnumbered[] => {
  const first = ({ pieces }: Unnumbered): number => Math.min(...pieces.map(({ part }) => parts.indexOf(part)))
  const sided = ({ pieces }: Unnumbered): boolean => pieces.some(({ part }) => isSide(part))
  const before = (a: Unnumbered, b: Unnumbered): number =>
    sided(a) && sided(b) ? b.clamped - a.clamped || tracedOf(a) - tracedOf(b) : 0
  return panels.toSorted((a, b) => Number(sided(b)) - Number(sided(a)) || before(a, b) || first(a) - first(b))
}

/** The same for sides of which one is traced from another: of one ramp, whole or the same piece of them. */
export const outlineName = ({ part: { ramp, piece } }: Pick<PanelPiece, 'part'>): string =>
  JSON.stringify([ramp, piece?.toe, piece?.lip])

/** Mirrored sides of a ramp of which none lies as printed on the panel. */
const tracedOf = ({ pieces }: Unnumbered): number => {
  const sides = pieces.filter(({ part }) => isSide(part))
  const like = (a: PanelPiece, b: PanelPiece): boolean => outlineName(a) === outlineName(b)
  return sides.filter(
    (side) => isMirrored(side) && !sides.some((other) => like(side, other) && !isMirrored(other)),
  ).length
}

/** Corners of a piece on its panel from the one that is found with a tape, arcs flattened within 0.05 mm. */
export const pieceCorners = ({ outline, x, y }: PanelPiece): readonly Point[] => {
  const corners = outerPolygon(outline, 0.05)
  const first = corners.findIndex((p) => Math.hypot(p.x - x, p.y - y) < 1e-6)
  return [...corners.slice(first), ...corners.slice(0, first)]
}
