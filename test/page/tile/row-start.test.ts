import { expect, it } from 'vitest'
import { showLength } from '../../../src/length.ts'
import { layOut } from '../../support/lay-out.ts'
import { opened } from '../../support/strokes.ts'
import { templates, templateText } from '../../support/templates.ts'

it('a page that joins none before it tells how far along it lies, as the map does', () => {
  let told = 0
  for (const name of templates)
    for (const cover of ['whole', 'line', 'ribbon'] as const) {
      const text = templateText(name)
      const units = /units: in/.test(text) ? 'in' : 'mm'
      const set = layOut(text, 'letter', cover)!
      const said = (page: number): readonly string[] =>
        opened(set.pages[page]!.draw()).words.map((word) => word.text)
      for (const { tiles } of set.groups)
        for (const tile of tiles) {
          const words = said(set.plan.pages.findIndex((one) => one.tile === `${tile.number}`))
          const found = words.filter((one) => one.startsWith('left arrowhead'))
          const isAlone = tile !== tiles[0] && tile.joints.every(({ over }) => !over)
          if (!isAlone) expect(found, `${name} ${cover} ${tile.number}`).toEqual([])
          else {
            // rows of a cover with more than one lie level or turned alike: along the first page's line
            const [[a, b], [p]] = [tiles[0]!.snap, tile.snap]
            const turn = Math.atan2(b.y - a.y, b.x - a.x)
            const along = (p.x - a.x) * Math.cos(turn) + (p.y - a.y) * Math.sin(turn)
            expect(found, `${name} ${cover} ${tile.number}`).toEqual([
              `left arrowhead ${showLength(along, units)} ${units} beyond page ${tiles[0]!.number}'s`,
            ])
            const map = set.pages.flatMap(({ kind }, i) => (kind === 'map' ? [said(i).join(' ')] : []))
            expect(map.some((one) => one.includes(showLength(along, units)))).toBe(true)
            told++
          }
        }
    }
  expect(told).toBeGreaterThan(3)
})
