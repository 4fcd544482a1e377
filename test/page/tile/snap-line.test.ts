import { describe, expect, it } from 'vitest'
import type { PaperName } from '../../../src/design/design.ts'
import { pathOf } from '../../../src/geometry/path.ts'
import { pathSample } from '../../../src/geometry/sample.ts'
import type { Pattern } from '../../../src/pattern/pattern.ts'
import { above, atLeast, atMost, below } from '../../support/hold.ts'
import { layOut } from '../../support/lay-out.ts'
import { templates, templateText } from '../../support/templates.ts'

/** Whether some of what is sawn, or the bottom edge, runs along a level line within 10 mm, no steeper to it than 20°. */
const isBeside = ({ cut, length }: Pattern, y: number): boolean =>
  [cut, pathOf({ x: 0, y: 0 }, { x: length, y: 0 })].some((path) =>
    pathSample(path, 2).some((q, i, all) => {
      const p = all[i - 1]
      if (!p) return false
      const [along, up] = [Math.abs(q.x - p.x), Math.abs(q.y - p.y)]
      return up < Math.tan((20 * Math.PI) / 180) * along && Math.abs((p.y + q.y) / 2 - y) < 11
    }),
  )

const papers: readonly PaperName[] = ['letter', 'a4', 'tabloid', 'a3']

describe('the snap line of a level row', () => {
  it.each(templates)(
    'lies a round height above the bottom edge, and on the panel where the middle of the row does, %s',
    (name) => {
      const text = templateText(name)
      const step = /units: in/.test(text) ? 12.7 : 10
      let looked = 0
      let moved = 0
      for (const paper of papers)
        for (const cover of ['whole', 'line'] as const)
          for (const { tiles, pattern } of layOut(text, paper, cover)!.groups)
            for (const { snap, row, window, height: tall } of tiles) {
              const where = `${paper} ${cover} row ${row}`
              const height = snap[0].y
              below(Math.abs(height / step - Math.round(height / step)) * step, 1e-6, where)
              const middle = (window[0]!.y + window[2]!.y) / 2
              // farther off only where lines to be sawn, or the bottom edge, would run along it, or it would lie on a screw
              const round8 = [-9, -8, -7, -6, -5, -4, -3, -2, -1, 0, 1, 2, 3, 4, 5, 6, 7, 8, 9]
                .map((n) => (Math.round(middle / step) + n) * step)
                .filter((y) => Math.abs(y - middle) <= 0.08 * tall && y >= 5 && y <= pattern.height - 5)
              const free = round8.some((y) => !isBeside(pattern, y))
              const middles = pattern.screws.flatMap((screw) => screw.middles)
              // or where the line to saw crosses a joint of the row
              const met = tiles
                .filter((tile) => tile.row === row)
                .flatMap(({ joints }) => joints.filter(({ edge }) => edge === 'left'))
                .flatMap(({ line: [{ x }] }) =>
                  pathSample(pattern.cut, 2).filter((p, i, all) => i > 0 && p.x < x !== all[i - 1]!.x < x),
                )
              const screwed = round8
                .filter((y) => !isBeside(pattern, y))
                .every(
                  (y) =>
                    middles.some((p) => Math.abs(p.y - y) < 3.6) || met.some((p) => Math.abs(p.y - y) < 11),
                )
              below(
                Math.abs(height - middle),
                Math.max(step / 2, (free ? (screwed ? 0.24 : 0.08) : 0.42) * tall) + 1e-6,
                where,
              )
              if (!free) moved++
              // 8 % of a row's height aside the snap line still keeps off the scales
              const round = [-2, -1, 0, 1, 2].map((n) => (Math.round(middle / step) + n) * step)
              if (
                round.some(
                  (y) => y >= 5 && y <= pattern.height - 5 && Math.abs(y - middle) <= 0.08 * tall - 1e-6,
                )
              ) {
                atLeast(height, 5, where)
                atMost(height, pattern.height - 5, where)
              }
              looked++
            }
      expect(looked).toBeGreaterThan(30)
      expect(moved).toBeLessThan(looked / 2)
    },
  )

  it.each(templates)('keeps off the marks that its joints are read by, %s', (name) => {
    let looked = 0
    for (const paper of papers)
      for (const cover of ['whole', 'line'] as const)
        for (const { tiles } of layOut(templateText(name), paper, cover)!.groups)
          for (const { snap, joints } of tiles)
            for (const joint of joints.filter(({ edge }) => edge === 'left')) {
              const away = (p: { readonly y: number }): number => Math.abs(p.y - snap[0].y)
              above(Math.min(...joint.crosses.map(away)), 10)
              // half a scale is 9 ticks of 2.0 mm
              above(Math.min(...joint.verniers.map(away)), 18)
              above(away(joint.pair), 6)
              looked++
            }
    expect(looked).toBeGreaterThan(10)
  })

  it('keeps off the joints with the rows below and above, however wide the pages lie over each other', () => {
    const kicker = `title: Kicker
units: mm
ramps:
  - kind: quarter
    width: 600
    height: { frame: 200 }
    transition: { circle: { frame: 900 } }
    toe: 20
    deck: 100
    sides: { thickness: 12 }
    studs: { section: 38 x 38, every: 120 }
    skin: [6 plywood]
`
    const margins = { top: 30, right: 40, bottom: 50, left: 20 }
    let [looked, nearest] = [0, Number.POSITIVE_INFINITY]
    for (const overlap of [12, 30, 45, 60])
      for (const cover of ['whole', 'line', 'ribbon'] as const)
        for (const { tiles } of layOut(kicker, 'a4', cover, { margins, overlap })!.groups)
          for (const { snap, joints } of tiles)
            for (const { edge, line } of joints.filter(
              (joint) => joint.edge !== 'left' && joint.edge !== 'right',
            )) {
              const [a, b] = line
              const long = Math.hypot(b.x - a.x, b.y - a.y)
              // the snap line runs along the joint: either end lies as far off
              const off = ((b.x - a.x) * (snap[0].y - a.y) - (b.y - a.y) * (snap[0].x - a.x)) / long
              nearest = Math.min(nearest, Math.abs(off))
              atLeast(Math.abs(off), 8 - 1e-6, `${overlap} ${cover} ${edge}`)
              looked++
            }
    expect(looked).toBeGreaterThan(20)
    // and no farther than it must
    expect(nearest).toBeLessThan(20)
  })
})
