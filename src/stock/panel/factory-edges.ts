import { same } from '../../ramp/check/offer.ts'
import { areaOf, type Filled, type Packing, type PanelKind, type Place, type Saw } from './pack.ts'
import { drawnSize, type Piece } from './piece.ts'

/** More sums than this are not looked through: then pieces may fill a panel. */
const mostSums = 4000

/**
 * The same pieces on fewer panels, where rectangles fit side by side once the panel's own edges are kept; else what was found.
 * A panel less is worth an edge: the trim stays where it costs none. What is curved, and what lies in the garage, stays as it is.
 */
export const onFactoryEdges = (
  packing: Packing,
  pieces: readonly Piece[],
  saw: Saw,
  search: (pieces: readonly Piece[], kinds: readonly PanelKind[], saw: Saw) => Packing,
): Packing => {
  const { filled, lost } = packing
  if (saw.trim < same || filled.length < 2) return packing
  const isOpen = ({ kind, places }: Filled): boolean =>
    kind.count === null && places.every(({ shape }) => shape.square)
  const open = filled.filter(isOpen)
  const bought = sizeOf(open)
  const numbers = open.flatMap(({ places }) => places.map(({ piece }) => piece)).sort((a, b) => a - b)
  const own = numbers.map((i) => pieces[i]!)
  const kinds = [...new Set(open.map(({ kind }) => kind))]
  if (open.length < 2 || !mayBeLess(own, open, saw.kerf) || !mayFill(own, kinds, saw)) return packing
  const found = search(own, kinds, { ...saw, trim: 0 })
  if (found.lost.length > 0 || sizeOf(found.filled) > bought - same) return packing
  const fewer = found.filled.map(({ kind, places }) => ({
    kind,
    places: trimmed(places, kind, saw).map((place) => ({ ...place, piece: numbers[place.piece]! })),
  }))
  const at = filled.findIndex(isOpen)
  const others = filled.filter((one) => !isOpen(one))
  return { filled: [...others.slice(0, at), ...fewer, ...others.slice(at)], lost }
}

const sizeOf = (filled: readonly Filled[]): number => filled.reduce((sum, { kind }) => sum + areaOf(kind), 0)

/** Whether the area allows a panel less: of pieces and panel each with one kerf, which no layout saves. */
const mayBeLess = (pieces: readonly Piece[], open: readonly Filled[], kerf: number): boolean => {
  const grown = (kind: PanelKind): number => (kind.length + kerf) * (kind.width + kerf)
  const taken = pieces.reduce((sum, piece) => {
    const { width, height } = drawnSize(piece)
    return sum + (width + kerf) * (height + kerf)
  }, 0)
  const largest = Math.max(...open.map(({ kind }) => grown(kind)))
  const sizes = new Set(open.map(({ kind }) => kind)).size
  return sizes > 1 || Math.ceil(taken / largest - same) < open.length
}

/** Whether some pieces in a row, a kerf between them, take more than the trimmed panel and no more than the whole: if none do, the trim costs no panel. */
const mayFill = (pieces: readonly Piece[], kinds: readonly PanelKind[], { kerf, trim }: Saw): boolean => {
  const sizes = pieces.map((piece) => ({ ...drawnSize(piece), grain: piece.grain }))
  const along = sizes.map(({ width, height, grain }) =>
    grain === 'x' ? [width] : grain === 'y' ? [height] : [width, height],
  )
  const across = sizes.map(({ width, height, grain }) =>
    grain === 'x' ? [height] : grain === 'y' ? [width] : [width, height],
  )
  return kinds.some(
    ({ length, width }) => rowFills(along, length, trim, kerf) || rowFills(across, width, trim, kerf),
  )
}

/** `ways`: of each piece the lengths that it may take of the row. */
const rowFills = (
  ways: readonly (readonly number[])[],
  length: number,
  trim: number,
  kerf: number,
): boolean => {
  /** in hundredths, each with its kerf */
  const rows = new Set<number>([0])
  const most = Math.ceil((length + kerf + same) * 100)
  const least = Math.floor((length - 2 * trim + kerf) * 100)
  for (const sizes of ways) {
    for (const row of [...rows])
      for (const size of sizes) {
        const next = row + Math.round((size + kerf) * 100)
        if (next > most) continue
        // one that fills it alone keeps its ends anyhow
        if (row > 0 && next >= least) return true
        rows.add(next)
      }
    if (rows.size > mostSums) return true
  }
  return false
}

/** The panel's own corner is kept where the trim is no more than this: the saw barely holds such a strip. Who types more has edges that he does not trust. mm */
const mostSpared = 6

/** Rectangles that have a bought panel to themselves keep two of its edges: no cut of the panel's length for a strip of the trim. */
export const inOwnCorner = (packing: Packing, { trim, step }: Saw): Packing => {
  if (trim > mostSpared + same) return packing
  return {
    ...packing,
    filled: packing.filled.map((one) => {
      const { kind, places } = one
      if (kind.count !== null || places.some(({ shape }) => !shape.square)) return one
      const [left, low] = [Math.min(...places.map(({ x }) => x)), Math.min(...places.map(({ y }) => y))]
      // nothing lies within the trim below it; what lies on whole steps of the tape stays on them
      const edge = Math.ceil(trim / step - 1e-6) * step
      const moved = (at: number, least: number): number =>
        at < Math.max(least, edge) + same ? 0 : at - Math.floor(least / step + 1e-6) * step
      return {
        ...one,
        places: places.map((place) => ({ ...place, x: moved(place.x, left), y: moved(place.y, low) })),
      }
    }),
  }
}

/** What was laid from the panel's own left and lower edge, moved off them by the trim where there is room for that. */
const trimmed = (places: readonly Place[], kind: PanelKind, { kerf, trim, step }: Saw): readonly Place[] => {
  const onStep = Math.ceil(trim / step - 1e-6) * step
  const moved = (own: readonly Place[], way: 'x' | 'y'): readonly Place[] => {
    const [side, room] = way === 'x' ? (['width', kind.length] as const) : (['height', kind.width] as const)
    const tries = [onStep, trim].map((by) =>
      own.map((place) =>
        place.shape[side] > room - 2 * trim + same ? place : { ...place, [way]: place[way] + by },
      ),
    )
    const fits = (tried: readonly Place[]): boolean =>
      tried.every((place) => place[way] + place.shape[side] <= room + same) && isApart(tried, kerf)
    return tries.find(fits) ?? own
  }
  return moved(moved(places, 'x'), 'y')
}

const isApart = (places: readonly Place[], kerf: number): boolean =>
  places.every((a, i) =>
    places
      .slice(0, i)
      .every(
        (b) =>
          a.x >= b.x + b.shape.width + kerf - same ||
          b.x >= a.x + a.shape.width + kerf - same ||
          a.y >= b.y + b.shape.height + kerf - same ||
          b.y >= a.y + a.shape.height + kerf - same,
      ),
  )
