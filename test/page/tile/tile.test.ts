import { expect, it } from 'vitest'
import { stroke } from '../../../src/drawing/drawing.ts'
import { affineApply, affineInvert, affineRotate } from '../../../src/geometry/affine.ts'
import { boxCorners } from '../../../src/geometry/clip.ts'
import { circle } from '../../../src/geometry/path.ts'
import { clipMarks } from '../../../src/page/tile/clip-marks.ts'
import { rowLetters, type Tile } from '../../../src/page/tile/tile.ts'

it('row letters go on after Z as in a ledger: every row its own', () => {
  const alphabet = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ']
  // one letter, then all pairs, then all triples, in order
  const expected = [
    ...alphabet,
    ...alphabet.flatMap((a) => alphabet.map((b) => a + b)),
    ...alphabet.flatMap((a) => alphabet.flatMap((b) => alphabet.map((c) => a + b + c))),
  ]
  expect(Array.from({ length: 2000 }, (_, i) => rowLetters(i))).toEqual(expected.slice(0, 2000))
})

it('a ring stands on a page that has all of it, however its rows are turned', () => {
  const [width, height, radius] = [100, 60, 4]
  let whole = 0
  for (const angle of [0, 0.3, Math.PI / 4]) {
    const toWindow = affineRotate(angle)
    const window = boxCorners({ x0: 0, y0: 0, x1: width, y1: height }).map((p) =>
      affineApply(affineInvert(toWindow), p),
    )
    const tile: Pick<Tile, 'window' | 'cell' | 'toWindow' | 'width' | 'height'> = {
      window,
      cell: window,
      toWindow,
      width,
      height,
    }
    for (let x = -6.5; x < width + 7; x += 1)
      for (let y = -6.5; y < height + 7; y += 1) {
        const ring = stroke('mark', circle(affineApply(affineInvert(toWindow), { x, y }), radius), {
          width: 0.25,
        })
        const near = Math.min(x, y, width - x, height - y)
        expect(clipMarks([ring], tile as Tile).length, `${angle}: ${x}, ${y}`).toBe(near >= radius ? 1 : 0)
        if (near >= radius) whole++
      }
  }
  expect(whole).toBe(3 * 92 * 52)
})
