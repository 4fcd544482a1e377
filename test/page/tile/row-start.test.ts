import { expect, it } from 'vitest'
import { convexContains } from '../../../src/geometry/clip.ts'
import { showLength } from '../../../src/length.ts'
import { startWords } from '../../../src/page/tile/row-start.ts'
import { hold } from '../../support/hold.ts'
import { layOut, layOutAnew } from '../../support/lay-out.ts'
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
            hold(map.some((one) => one.includes(showLength(along, units))))
            told++
          }
        }
    }
  expect(told).toBeGreaterThan(3)
})

it('one that begins before the first page is said to, on its page and on the map alike', () => {
  const text = templateText('quarter-mm')
    .replace('deck: 640', 'deck: 1000')
    .replace('surface: 1700', 'surface: 2300')
  const margins = { top: 40, right: 40, bottom: 40, left: 40 }
  const set = layOutAnew(text, 'a4', 'ribbon', { overlap: 60, margins })!
  const said = set.pages.map((page) =>
    opened(page.draw())
      .words.map((word) => word.text)
      .join(' '),
  )
  const [own] = said.flatMap((words) => /left arrowhead (\d+ mm before page 1's)/.exec(words)?.[1] ?? [])
  expect(own).toBeDefined()
  expect(said[0]).toContain(`its left arrowhead ${own}.`)
  expect(said.join(' ')).not.toMatch(/arrowhead [-–]/)
})

it('one that begins square to the start of the first page is said to, above or below', () => {
  const [first] = layOut(templateText('quarter-mm'), 'a4', 'ribbon')!.groups[0]!.tiles
  const [from, to] = first!.snap
  const long = Math.hypot(to.x - from.x, to.y - from.y)
  const [ux, uy] = [(to.x - from.x) / long, (to.y - from.y) / long]
  const moved = (along: number, up: number): string => {
    const at = ({ x, y }: typeof from) => ({ x: x + along * ux - up * uy, y: y + along * uy + up * ux })
    return startWords({ ...first!, snap: [at(from), at(to)] }, first!, 'mm')
  }
  expect(moved(0.3, 200)).toBe("square above page 1's")
  expect(moved(-0.3, -200)).toBe("square below page 1's")
  expect(moved(40, 200)).toBe("40 mm beyond page 1's")
  expect(moved(-40, 200)).toBe("40 mm before page 1's")
})

it('a page says where screws of its timbers are missing from all pages, as the map does', () => {
  let missing = 0
  for (const name of templates)
    for (const cover of ['whole', 'line', 'ribbon'] as const) {
      const set = layOut(templateText(name), 'letter', cover)!
      for (const { tiles, pattern } of set.groups)
        for (const tile of tiles) {
          const page = set.plan.pages.findIndex((one) => one.tile === `${tile.number}`)
          const words = opened(set.pages[page]!.draw()).words.map((word) => word.text)
          const lacking = pattern.screws
            .filter(({ middles }) =>
              middles.some((p) => !tiles.some(({ window }) => convexContains(window, p, -2.15))),
            )
            .map(({ called, timber }) => `${called} ${timber}`)
          const said = words.filter((one) => one.startsWith('not all screws of'))
          const found = said.flatMap((one) => [...one.matchAll(/(stud|timber)s? ([\d, toand]+)/g)])
          for (const [, noun, numbers] of found)
            for (const number of numbers!.match(/\d+/g)!)
              expect(lacking, `${name} ${cover} ${tile.number}`).toContain(`${noun} ${number}`)
          if (lacking.length === 0) expect(said, `${name} ${cover} ${tile.number}`).toEqual([])
          if (said.length > 0) missing++
        }
    }
  expect(missing).toBeGreaterThan(3)
})
