import { describe, expect, it } from 'vitest'
import { hold } from '../../support/hold.ts'
import { layOut } from '../../support/lay-out.ts'
import type { Pt } from '../../support/pt.ts'
import { opened } from '../../support/strokes.ts'
import { templates, templateText } from '../../support/templates.ts'
import { jobOf } from '../../tape-up/jobs.ts'

/** Of a point inside a counter-clockwise polygon from its nearest edge, mm; less than 0 outside. */
const inside = (polygon: readonly Pt[], p: Pt): number =>
  Math.min(
    ...polygon.map((a, i) => {
      const b = polygon[(i + 1) % polygon.length]!
      const [dx, dy] = [b.x - a.x, b.y - a.y]
      return (dx * (p.y - a.y) - dy * (p.x - a.x)) / Math.hypot(dx, dy)
    }),
  )

const papers = ['letter', 'a4'] as const
const covers = ['whole', 'line', 'ribbon'] as const
const jobs = [400, 401, 402, 403, 404, 405, 406, 407].map((number) => jobOf(number).text)
/** They need more than one page over the fewest. */
const wider = [886, 1042, 1100].map((number) => jobOf(number).text)
const texts = [...templates.map(templateText), ...jobs, ...wider]

/** A ring of 1.5 mm and 5 mm of air; common practice, no source. */
const room = 6.5

describe('a point that the builder measures from', () => {
  it.each(papers)(
    'lies whole in what one page of %s keeps, with its name on that page',
    (paper) => {
      let looked = 0
      for (const text of texts)
        for (const cover of covers) {
          const set = layOut(text, paper, cover)
          for (const { pattern, tiles } of set?.groups ?? [])
            for (const { name, at } of pattern.points) {
              const holding = tiles.filter(({ cell }) => inside(cell, at) >= room - 1e-6)
              expect(holding.length, `${name} of ${pattern.name} on ${paper}, ${cover}`).toBe(1)
              const [tile] = holding
              const page = set!.plan.pages.findIndex((one) => one.tile === `${tile!.number}`)
              const words = opened(set!.pages[page]!.draw()).words.filter((word) => word.text === name)
              // the builder starts at the toe
              if (name === 'TOE' && !wider.includes(text))
                hold(tile!.first, `${pattern.name} on ${paper}, ${cover}`)
              // or at the foot of the front edge under it
              hold(tile!.first || name !== 'TOE' || inside(tiles[0]!.cell, { x: 0, y: 0 }) > 0)
              expect(words.length, `"${name}" on page ${tile!.number} of ${pattern.name}, ${cover}`).toBe(1)
              looked++
            }
        }
      expect(looked).toBeGreaterThan(60)
    },
    300_000,
  )
})
