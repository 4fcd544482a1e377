import { expect, it } from 'vitest'
import { affineApply } from '../../../src/geometry/affine.ts'
import { tileMap } from '../../../src/page/tile/tile.ts'
import { layOut } from '../../support/lay-out.ts'
import { opened } from '../../support/strokes.ts'
import { templates, templateText } from '../../support/templates.ts'

it('a page whose drawing is read wide says how to hold it, in words that run along its long side; an upright one does not', () => {
  const seen = { wide: 0, upright: 0 }
  for (const name of templates)
    for (const cover of ['whole', 'line', 'ribbon'] as const) {
      const set = layOut(templateText(name), name.endsWith('mm') ? 'a4' : 'letter', cover)!
      for (const { tiles } of set.groups)
        for (const tile of tiles) {
          const index = set.plan.pages.findIndex((one) => one.tile === `${tile.number}`)
          const said = opened(set.pages[index]!.draw()).words.filter(({ text }) =>
            text.startsWith('hold the page wide'),
          )
          const where = `${name} ${cover} ${tile.number}`
          // the page is upright: a window's right runs up or down on a wide one
          const [a, b] = tile.window.map((p) => affineApply(tileMap(tile), p))
          const wide = Math.abs(b!.y - a!.y) > Math.abs(b!.x - a!.x)
          expect(said.length, where).toBe(wide ? 1 : 0)
          for (const { corners } of said) {
            const [p, q] = corners as [(typeof corners)[0], (typeof corners)[0]]
            expect(Math.abs(q.y - p.y), where).toBeGreaterThan(Math.abs(q.x - p.x))
          }
          if (wide) seen.wide++
          else seen.upright++
        }
    }
  expect(seen.wide).toBeGreaterThan(40)
  expect(seen.upright).toBeGreaterThan(10)
})
