import { doubleArea } from '../../geometry/polygon/outer-polygon.ts'
import { same } from '../../ramp/check/offer.ts'
import type { Known } from './known.ts'
import { type Attempt, areaOf, type PanelKind, type Place, pack, type Saw } from './pack.ts'
import { pairFit } from './pair.ts'
import { drawnSize, type Piece, waysOf } from './piece.ts'

/** What is found coarsely and is wider than the panel by more does not come to fit it, mm. */
const hopeless = 60
/** What sums of sizes may be off by, mm. */
const slack = 10 * same

/** Which two pieces go on one panel of the largest size, and how, where only turned askew they do. */
export const pairing = (pieces: readonly Piece[], kinds: readonly PanelKind[], saw: Saw, known: Known) => {
  const { kerf, trim } = saw
  const ways = waysOf(pieces, kerf, known.ways)
  // couples lie on panels that are bought: an offcut may be larger, and of another shape
  const bought = kinds.filter(({ count }) => count === null)
  const largest = (bought.length > 0 ? bought : kinds).reduce((most, kind) =>
    areaOf(kind) > areaOf(most) ? kind : most,
  )
  const askew = (a: number, b: number): readonly Place[] | null => {
    const [first, second] = [pieces[a]!, pieces[b]!]
    if (first.blank.square || second.blank.square) return null
    const room = { length: largest.length - 2 * trim, width: largest.width - 2 * trim }
    const overs = [first, second].some(({ faced, mustFace }) => faced && mustFace) ? [false] : [false, true]
    const name = [first.alike, second.alike, ...overs, kerf, room.length, room.width].join()
    const before = known.fits.get(name)
    const fit =
      before === undefined
        ? pairFit(first.blank, second.blank, kerf, room.length, overs, room.width, hopeless)
        : before
    known.fits.set(name, fit)
    if (!fit || fit.width > room.width + same) return null
    return fit.laid.map((laid, i) => ({
      ...laid,
      x: laid.x + trim,
      y: laid.y + trim,
      piece: i === 0 ? a : b,
    }))
  }
  const plain = (a: number, b: number): boolean =>
    (['rips', 'ends'] as const).some((rule) => {
      const kinds = [{ ...largest, count: 1 }]
      const attempt: Attempt = { order: [a, b], rule, faces: 'any', kinds, openings: [] }
      return pack(ways, saw, attempt).lost.length === 0
    })
  const inRow = (a: number, b: number, size: number): boolean =>
    a + b + kerf <= size - (Math.max(a, b) <= size - 2 * trim + same ? 2 * trim : 0) + slack
  /** more than the panel has, or two rectangles that lie in no row one way or the other */
  const tooLarge = (a: number, b: number): boolean =>
    ways[a]!.area + ways[b]!.area > areaOf(largest) + slack ||
    ([a, b].every((i) => pieces[i]!.blank.square) &&
      !ways[a]!.up().some((first) =>
        ways[b]!.up().some(
          (second) =>
            inRow(first.width, second.width, largest.length) ||
            inRow(first.height, second.height, largest.width),
        ),
      ))
  // of one outline and its mirror both hands may lie either way up: what holds for one couple holds for the other
  const fits = (a: number, b: number): boolean => {
    if (tooLarge(a, b)) return false
    const name = [
      ...[a, b].map((i) => handless(pieces[i]!)),
      kerf,
      trim,
      largest.length,
      largest.width,
    ].join()
    const found = known.couples.get(name)
    if (found !== undefined) return found
    const fit = plain(a, b) || askew(a, b) !== null
    known.couples.set(name, fit)
    return fit
  }
  return {
    together: fits,
    /** couples that go together only so, each piece in one of them */
    tilted: (order: readonly number[]): readonly (readonly Place[])[] => {
      const left = [...order]
      const couples: (readonly Place[])[] = []
      while (left.length > 1) {
        const first = left.shift()!
        const at = left.findIndex((other) => fits(first, other) && !plain(first, other))
        const places = at < 0 ? null : askew(first, left[at]!)
        if (!places) continue
        couples.push(places)
        left.splice(at, 1)
      }
      return couples
    },
  }
}

/** Size, area and grain: the same for an outline and its mirror image. */
const handless = (piece: Piece): string => {
  const { blank, grain, faced, mustFace } = piece
  const { width, height } = drawnSize(piece)
  const sizes = [width, height, doubleArea(blank.fine)].map((size) => size.toFixed(2))
  return `${sizes.join(' ')} ${blank.square} ${grain} ${faced && mustFace}`
}
