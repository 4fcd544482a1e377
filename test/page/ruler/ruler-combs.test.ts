import { expect, it } from 'vitest'
import { stroke } from '../../../src/drawing/drawing.ts'
import type { Affine } from '../../../src/geometry/affine.ts'
import { affineApply } from '../../../src/geometry/affine.ts'
import { pathOf } from '../../../src/geometry/path.ts'
import { rulerCombs } from '../../../src/page/ruler/ruler-combs.ts'
import { noTick, plainTick, type RulerTick } from '../../../src/page/ruler/rulers.ts'
import { pens } from '../../../src/pattern/pens.ts'
import { opened } from '../../support/strokes.ts'

const along = (at: number): Affine => [1, 0, 0, 1, at, 50]
const upright = (at: number): Affine => [0, 1, 1, 0, 12, at]

const plain = (frame: Affine): RulerTick => ({
  frame,
  marks: [
    stroke(
      'note',
      pathOf(affineApply(frame, { x: 0, y: 0 }), affineApply(frame, { x: 0, y: plainTick })),
      pens.ruler,
    ),
  ],
})
const long = (at: number): RulerTick => ({
  marks: [stroke('note', pathOf({ x: at, y: 50 }, { x: at, y: 54 }), pens.ruler)],
})

// common practice, no source: ticks every 10 mm, a figure at each fifth; every half inch, a figure at each fourth
it.each([
  ['mm', 10, 5, 4],
  ['in', 12.7, 4, 3],
] as const)(
  'in %s ticks lie where they lay, those between two figures as one',
  (units, step, every, count) => {
    const row = (n: number, frame: (at: number) => Affine): readonly RulerTick[] =>
      Array.from({ length: n }, (_, i) =>
        i % every === 0 ? long(30 + i * step) : plain(frame(30 + i * step)),
      )
    const cases: readonly (readonly [string, readonly RulerTick[], number])[] = [
      ['two whole stretches', row(2 * every + 1, along), 2],
      ['up the page', row(2 * every + 1, upright), 2],
      ['a stretch that ends early', row(every - 1, along), 0],
      ['one tick has no room', row(2 * every + 1, along).map((tick, i) => (i === 2 ? noTick : tick)), 1],
      [
        'the end of one ruler and the start of the other',
        [...row(every, along).slice(2), ...row(every, upright).slice(1, 3)],
        0,
      ],
      ['none', [], 0],
    ]
    for (const [name, ticks, combs] of cases) {
      const found = rulerCombs(ticks, units)
      const shared = found.filter((mark) => mark.kind === 'group' && mark.shared === 'note')
      expect(shared, name).toHaveLength(combs)
      expect(found, name).toHaveLength(ticks.flatMap(({ marks }) => marks).length - combs * (count - 1))
      const [lines, others] = [opened(found).lines, opened(ticks.flatMap(({ marks }) => marks)).lines]
      expect(lines, name).toHaveLength(others.length)
      lines.forEach(({ points, width, grey }, i) => {
        expect([width, grey], name).toEqual([others[i]!.width, others[i]!.grey])
        points.forEach(({ x, y }, k) => {
          const p = others[i]!.points[k]!
          expect(Math.hypot(x - p.x, y - p.y), `${name}, mm`).toBeLessThan(1e-9)
        })
      })
    }
  },
)
