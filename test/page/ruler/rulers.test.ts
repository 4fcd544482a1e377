import { expect, it } from 'vitest'
import { affineInvert } from '../../../src/geometry/affine.ts'
import { covers } from '../../../src/page/cover/cover.ts'
import { rulerMarks } from '../../../src/page/ruler/rulers.ts'
import { type Tile, tileMap } from '../../../src/page/tile/tile.ts'
import { hold } from '../../support/hold.ts'
import { layOut } from '../../support/lay-out.ts'
import { assertNear } from '../../support/near.ts'
import type { Pt } from '../../support/pt.ts'
import { opened } from '../../support/strokes.ts'
import { templates, templateText } from '../../support/templates.ts'

type Way = 'along' | 'up'

/** Figures as they are printed: `120`, `17 7/16`. */
const readFigure = (said: string): number =>
  said.split(' ').reduce((sum, part) => {
    const [over, under] = part.split('/')
    return sum + Number(over) / Number(under ?? 1)
  }, 0)

/** A ruler as a builder has it on a page: how far a point of the pattern lies along it from its zero, and how many marks it spans. */
const rulerOf = (tile: Tile, way: Way, toe: Pt, step: number) => {
  const [from, to] = tile.snap
  const long = Math.hypot(to.x - from.x, to.y - from.y)
  const level = Math.abs(to.y - from.y) < 1e-6
  const [dx, dy] = way === 'up' ? [0, 1] : [(to.x - from.x) / long, (to.y - from.y) / long]
  const zero = level ? { x: 0, y: 0 } : toe
  const at = ({ x, y }: Pt): number => (x - zero.x) * dx + (y - zero.y) * dy
  const ends = tile.cell.map(at)
  const [first, last] = [Math.min(...ends) + 8, Math.max(...ends) - 8]
  const marks = Math.floor(last / step) - Math.max(0, Math.ceil(first / step)) + 1
  return { at, marks: way === 'up' && !level ? 0 : marks }
}

/** Of a point to the box of a word, mm. */
const distanceTo = (corners: readonly Pt[], p: Pt): number =>
  Math.min(
    ...corners.map((a, i) => {
      const b = corners[(i + 1) % corners.length]!
      const [dx, dy] = [b.x - a.x, b.y - a.y]
      const t = Math.max(0, Math.min(1, ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy)))
      return Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy)
    }),
  )

it('a ruler shows figures, each so far from the corner or from TOE as its long tick lies', () => {
  const looked = { along: 0, up: 0 }
  const bare: Record<Way, string[]> = { along: [], up: [] }
  const [wanted, shown] = [
    { along: 0, up: 0 },
    { along: 0, up: 0 },
  ]
  let figures = 0
  for (const name of templates)
    for (const paper of ['letter', 'a4'] as const)
      for (const cover of covers) {
        const set = layOut(templateText(name), paper, cover)!
        const unit = /-in\b/.test(name) ? 25.4 : 1
        for (const { pattern, tiles } of set.groups)
          for (const tile of tiles) {
            const page = set.plan.pages.findIndex((one) => one.tile === `${tile.number}`)
            const { words, lines } = opened(set.pages[page]!.draw(), affineInvert(tileMap(tile)))
            const said = words.filter(({ text }) => /^\d+( \d+\/\d+)?$/.test(text))
            const ticks = lines
              .filter(({ grey, width }) => grey === 0.4 && width === 0.15)
              .map(({ points }) => [points[0]!, points.at(-1)!] as const)
              .filter(([p, q]) => Math.hypot(q.x - p.x, q.y - p.y) > 3)
            for (const way of ['along', 'up'] as const) {
              const what = `${name} ${paper} ${cover} ${tile.number} ${way}`
              const { at, marks } = rulerOf(tile, way, pattern.points[0]!.at, unit === 1 ? 50 : 50.8)
              const own = ticks.filter(([p, q]) => Math.abs(at(q) - at(p)) < 0.01)
              for (const [foot, end] of own) {
                const beside = said.filter(({ corners }) => distanceTo(corners, end) < 2)
                hold(beside.length === 1, what)
                assertNear(readFigure(beside[0]!.text) * unit, at(foot), 0.01, what)
                figures++
              }
              wanted[way] += marks
              shown[way] += own.length
              if (marks < 2) continue
              looked[way]++
              if (own.length === 0) bare[way].push(what)
            }
          }
      }
  expect(looked.along).toBeGreaterThan(300)
  expect(looked.up).toBeGreaterThan(200)
  expect(figures).toBeGreaterThan(2000)
  expect(bare).toEqual({ along: [], up: [] })
  // where words, a timber's edge or the cut line lie on all sides of a mark
  expect(shown.along / wanted.along).toBeGreaterThan(0.95)
  // and beside the snap line
  expect(shown.up / wanted.up).toBeGreaterThan(0.8)
})

it('no more than a quarter of the dots of a figure is left out where a printer has black alone', () => {
  const free = { isFigured: () => true, isOffTimber: () => true, isFree: () => true }
  const { pattern, tiles } = layOut(templateText('quarter-mm'), 'a4', 'line')!.groups[0]!
  const figures = rulerMarks(tiles[0]!, pattern.points[0]!.at, 'mm', free)
    .flatMap(({ marks }) => marks)
    .flatMap((mark) => (mark.kind === 'text' ? [mark.grey ?? 0] : []))
  expect(figures.length).toBeGreaterThan(3)
  expect(Math.max(...figures)).toBeLessThanOrEqual(0.25)
})
