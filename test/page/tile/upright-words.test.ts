import { expect, it } from 'vitest'
import { affineApply, affineInvert } from '../../../src/geometry/affine.ts'
import { polygonOf } from '../../../src/geometry/path.ts'
import type { Point } from '../../../src/geometry/point.ts'
import { occupancyOf } from '../../../src/page/room/occupancy.ts'
import { spliceNotes } from '../../../src/page/tile/splice-notes.ts'
import { woodNote } from '../../../src/page/timber/label-marks.ts'
import { layOut } from '../../support/lay-out.ts'
import { assertNear } from '../../support/near.ts'
import { templates, templateText } from '../../support/templates.ts'

const { pattern, tiles } = layOut(templateText(templates[0]!), 'a4', 'whole')!.groups[0]!
const tile = tiles[0]!
const back = affineInvert(tile.toWindow)
const { x0, x1, y0, y1 } = tile.kept
/** A place of what the page shows, in the pattern. */
const at = (u: number, v: number): Point =>
  affineApply(back, { x: x0 + u * (x1 - x0), y: y0 + v * (y1 - y0) })
const room = () => occupancyOf(tile.width, tile.height, 1)

it('words at an upright joint read from the right, whichever end of it comes first', () => {
  for (const ends of [
    [at(0.5, 0.9), at(0.5, 0.1)],
    [at(0.5, 0.1), at(0.5, 0.9)],
  ] as const) {
    const words = spliceNotes({ ...pattern, joints: [ends] }, tile, room())
    expect(words.length).toBe(1)
    assertNear(words[0]!.angle, Math.PI / 2, 1e-9)
  }
})

it('words on an upright timber read from the right, wherever its outline begins', () => {
  const corners = [at(0.4, 0.1), at(0.6, 0.1), at(0.6, 0.9), at(0.4, 0.9)] as const
  const note = { words: 'a stud with a long name that stands', shorter: 'a stud with a long name' }
  for (let turn = 0; turn < 4; turn++) {
    const [a, ...others] = [...corners.slice(turn), ...corners.slice(0, turn)]
    const words = woodNote(note, polygonOf(a!, ...others), tile, room(), 0)
    expect(words.length).toBe(1)
    assertNear(words[0]!.angle, Math.PI / 2, 1e-9)
  }
})
