import { describe, expect, it } from 'vitest'
import { layers } from '../../../src/drawing/drawing.ts'
import { affineInvert } from '../../../src/geometry/affine.ts'
import { convexContains } from '../../../src/geometry/clip.ts'
import { convexOverlap } from '../../../src/geometry/overlap.ts'
import { tileMap } from '../../../src/page/tile/tile.ts'
import { above, below, hold } from '../../support/hold.ts'
import { layOut } from '../../support/lay-out.ts'
import { assertNear } from '../../support/near.ts'
import type { Pt } from '../../support/pt.ts'
import { opened } from '../../support/strokes.ts'
import { templates, templateText } from '../../support/templates.ts'
import { jobOf } from '../../tape-up/jobs.ts'

const covers = ['whole', 'line', 'ribbon'] as const
const papers = ['letter', 'a4'] as const
const texts = [...templates.map(templateText), ...[400, 401, 404].map((n) => jobOf(n).text)]
const height = /^(deck|frame|ridden face) \d/
const [datum, mark] = [layers.indexOf('datum'), layers.indexOf('mark')]

/** Whether a broken line comes nearer to one of some points than so, mm. */
const comesNear = (line: readonly Pt[], some: readonly Pt[], mm: number): boolean =>
  line.slice(1).some((q, i) => {
    const p = line[i]!
    const [dx, dy] = [q.x - p.x, q.y - p.y]
    return some.some(({ x, y }) => {
      const t = Math.max(0, Math.min(1, ((x - p.x) * dx + (y - p.y) * dy) / (dx * dx + dy * dy || 1)))
      return Math.hypot(x - p.x - t * dx, y - p.y - t * dy) < mm
    })
  })

describe('the mark of a height', () => {
  it.each(papers)(
    'stands whole on a page of %s or not at all, its tip on its own level and its figure beside it, off all other words',
    (paper) => {
      let [marks, pages, left, aired] = [0, 0, 0, 0]
      for (const text of texts)
        for (const cover of covers) {
          const set = layOut(text, paper, cover)
          for (const { pattern, tiles } of set?.groups ?? [])
            for (const tile of tiles) {
              const held = pattern.levels.filter(({ at }) => convexContains(tile.cell, at))
              if (held.length === 0) continue
              const index = set!.plan.pages.findIndex((one) => one.tile === `${tile.number}`)
              const { words, lines } = opened(set!.pages[index]!.draw(), affineInvert(tileMap(tile)))
              const where = `${pattern.name} ${paper} ${cover} ${tile.number}`
              const figures = words.filter((word) => height.test(word.text))
              // the triangle alone is a closed line of three sides in that layer
              const triangles = lines.filter(
                ({ kind, order, points }) =>
                  kind === 'stroke' && Math.floor(order / 1e6) === datum && points.length === 4,
              )
              expect(triangles.length, where).toBe(figures.length)
              // an edge of a timber at its base would make an arrow of it
              const edges = lines.filter(
                ({ kind, order, width }) =>
                  kind === 'stroke' && Math.floor(order / 1e6) === mark && width === 0.25,
              )
              for (const { points } of triangles)
                if (!edges.some((edge) => comesNear(edge.points, points.slice(1, 3), 2))) aired++
              for (const figure of figures) {
                const level = held.find((one) => one.figure === figure.text)!
                const [a, b, c, d] = figure.corners as [Pt, Pt, Pt, Pt]
                assertNear(a.y, b.y, 1e-6)
                // the tip of its triangle lies on the level beside the figure, which stands just over or under it
                const tips = triangles.filter(({ points: [tip] }) => Math.abs(tip!.y - level.at.y) < 1e-6)
                const away = Math.min(
                  ...tips.map(({ points: [tip] }) =>
                    Math.min(Math.abs(tip!.x - a.x), Math.abs(tip!.x - b.x)),
                  ),
                )
                below(away, 3, where)
                const over = Math.max(a.y - level.at.y, level.at.y - d.y)
                above(over, -0.8, where)
                below(over, 2.4, where)
                for (const p of [a, b, c, d]) hold(convexContains(tile.cell, p, 1e-6), where)
                for (const other of words)
                  if (other !== figure)
                    below(convexOverlap(figure.corners, other.corners), 0.05, `${where} ${other.text}`)
                marks++
              }
              left += held.length - figures.length
              pages++
            }
        }
      expect(pages).toBeGreaterThan(25)
      expect(marks).toBeGreaterThan(60)
      // some have no other place along their level
      expect(aired).toBeGreaterThan(0.9 * marks)
      // what is left out whole stands on the map
      expect(left).toBeLessThan(marks / 6)
    },
  )
})
