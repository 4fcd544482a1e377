import { text } from '../../drawing/drawing.ts'
import type { LabelPlace } from '../../drawing/place-labels.ts'
import type { Point } from '../../geometry/point.ts'
import type { Curve } from '../../ramp/curve/curve.ts'
import { labelPlace } from '../label-place.ts'
import { letters } from '../pens.ts'
import type { ReliefHole } from '../relief-hole.ts'

/** What the pipe takes up is cut away. */
export const wasteLabels = function* ({ x, y }: Point, r: number): Generator<LabelPlace> {
  for (const share of [1, 0.8, 0.65])
    for (const dy of [-0.62, -0.5, -0.72, -0.36])
      for (const dx of [0, -0.15, -0.3])
        yield noted(
          { x: x + dx * r, y: y + dy * r },
          Math.min(letters.word, r / 7) * share,
          'WASTE',
          'middle',
        )
}

/** Behind the wall; no lower than words on the wood begin. */
export const keepLabels = (wall: number, top: number, floor: number): readonly LabelPlace[] =>
  [letters.side, letters.word, 3, letters.small]
    .filter((size) => top - size - 3 >= floor - 5)
    .flatMap((size) =>
      [4, 1.5].map((off) => noted({ x: wall + off, y: top - size - 3 }, size, 'KEEP', 'left')),
    )

/** Along the curve under it, so near that words on the wood, 7 mm off it, keep clear. */
export const curveKeepLabels = function* (curve: Curve, from: number, to: number): Generator<LabelPlace> {
  for (const size of [letters.word, 3, letters.small])
    for (const share of [0.5, 0.4, 0.6, 0.3, 0.7]) {
      const place = from + share * (to - from)
      const { x, y } = curve.point(place)
      const angle = curve.slope(place)
      for (const off of [2.2, 1.4]) {
        const down = off + size
        const at = { x: x + down * Math.sin(angle), y: y - down * Math.cos(angle) }
        yield { text: text('note', at, size, 'KEEP', { face: 'bold', align: 'middle', angle }) }
      }
    }
}

const noted = (at: Point, size: number, said: string, align: 'left' | 'middle'): LabelPlace => ({
  text: text('note', at, size, said, { face: 'bold', align }),
})

/** Inside the pipe, else over it. */
export const pipeLabels = function* ({ x, y }: Point, r: number, said: string): Generator<LabelPlace> {
  for (const size of [letters.small, letters.mark])
    for (const up of [6, 4.6, r / 2])
      for (const dx of [0, 0.2, -0.2])
        yield labelPlace({ x: x + dx * r, y: y + up }, size, said, { align: 'middle' })
  for (const align of ['middle', 'right'] as const)
    yield labelPlace({ x, y: y + r + 1.6 }, letters.mark, said, { align })
}

/** In the wood beside the hole, else under it; no lower than words on the wood begin. */
export const holeLabels = function* ({ corner: { x, y }, words: said }: ReliefHole): Generator<LabelPlace> {
  for (const size of [letters.small, letters.mark]) {
    yield labelPlace({ x: x + 3, y: y + 3 }, size, said)
    yield labelPlace({ x: x + 3, y: y - 1 }, size, said)
    yield labelPlace({ x: x + 1.5, y: y - size - 1.6 }, size, said)
    yield labelPlace({ x: x - 1.5, y: y - size - 1.6 }, size, said, { align: 'right' })
  }
}

/** In the board over the ticks of the cut line; a thin one has its label over it. */
export const boardLabels = function* (
  right: number,
  wall: number,
  deck: number,
  board: number,
  said: string,
): Generator<LabelPlace> {
  for (const size of [letters.small, letters.mark]) {
    if (board >= size + 4.5) {
      yield labelPlace({ x: right - 2, y: deck - size - 1.6 }, size, said, { align: 'right' })
      yield labelPlace({ x: wall + 2, y: deck - size - 1.6 }, size, said)
    }
    yield labelPlace({ x: right - 2, y: deck + 1.4 }, size, said, { align: 'right' })
  }
}
