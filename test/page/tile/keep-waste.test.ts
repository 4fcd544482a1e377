import { expect, it } from 'vitest'
import { affineApply } from '../../../src/geometry/affine.ts'
import { segmentDirection } from '../../../src/geometry/at.ts'
import { pathSegments } from '../../../src/geometry/path.ts'
import { covers } from '../../../src/page/cover/cover.ts'
import { tileMap } from '../../../src/page/tile/tile.ts'
import { hardJob } from '../../hard/jobs.ts'
import { hold } from '../../support/hold.ts'
import { layOut } from '../../support/lay-out.ts'
import type { Pt } from '../../support/pt.ts'
import { opened } from '../../support/strokes.ts'
import { templates, templateText } from '../../support/templates.ts'
import { jobOf } from '../../tape-up/jobs.ts'

it('KEEP and WASTE stand beside one edge, over no corner of the cut line', () => {
  let [words, corners] = [0, 0]
  for (const text of [...templates.map(templateText), ...[801, 804, 807, 808].map((n) => jobOf(n).text)])
    for (const paper of ['letter', 'a4'] as const)
      for (const cover of covers) {
        const set = layOut(text, paper, cover)
        for (const { pattern, tiles } of set?.groups ?? []) {
          const edges = pathSegments(pattern.cut)
          // where the line turns by more than 25°
          const kinks = edges.slice(1).flatMap((edge, i) => {
            const turn = segmentDirection(edge, 0) - segmentDirection(edges[i]!, 1)
            return Math.cos(turn) < Math.cos((25 * Math.PI) / 180) ? [edge.from] : []
          })
          for (const tile of tiles) {
            const page = set!.plan.pages.findIndex((one) => one.tile === `${tile.number}`)
            const here = kinks.map((p) => affineApply(tileMap(tile), p))
            corners += here.length
            for (const word of opened(set!.pages[page]!.draw()).words) {
              if (!/^(KEEP|WASTE)$/.test(word.text)) continue
              words++
              const [a, b, , d] = word.corners as [Pt, Pt, Pt, Pt]
              const [along, up] = [Math.hypot(b.x - a.x, b.y - a.y), Math.hypot(d.x - a.x, d.y - a.y)]
              for (const p of here) {
                const u = ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / along
                const v = ((p.x - a.x) * (d.x - a.x) + (p.y - a.y) * (d.y - a.y)) / up
                // as far off the line as such a word stands
                const isOver = u > 0.6 && u < along - 0.6 && v > -10 && v < up + 10
                hold(!isOver, [pattern.name, paper, cover, tile.number, word.text].join(' '))
              }
            }
          }
        }
      }
  expect(words).toBeGreaterThan(900)
  expect(corners).toBeGreaterThan(1500)
})

/** What page 1 says of the sides of its front edge, and what that is called. */
const frontEdge = (set: ReturnType<typeof layOut>): readonly string[] => {
  const page = set!.plan.pages.findIndex((one) => one.tile === '1')
  const words = opened(set!.pages[page]!.draw()).words.map((word) => word.text)
  return words.filter((word) => /^(KEEP|WASTE|front edge)$/.test(word)).sort()
}

it('which side to saw is said rather than what an edge is called, where there is room for one of them', () => {
  const { text, paper, cover, margins } = hardJob(6092)
  // 24 mm of the front edge, 13 mm of waste beside it
  expect(frontEdge(layOut(text, paper, cover, { margins }))).toEqual(['KEEP', 'WASTE'])
})

it('what an edge is called is left out where it would be read as one with KEEP: "KEEP front edge"', () => {
  const low = `title: Low toe
units: in
ramps:
  - width: 36
    height: { deck: 36 }
    transition: { circle: { surface: 94 }, tangent: { surface: 5 } }
    toe: 4 1/8
    deck: 24
    sides: { thickness: 23/32, count: 2 }
    studs: { section: 1 1/2 x 3 1/2, every: 6 }
    skin: [11/32 plywood, 11/32 plywood, 3/16 hardboard]
    run-out: flat
    deck-board: 5/8 plywood
    coping: { outside: 1 29/32, up: 1/4, out: 1/4 }
    chamfer: { leg: 5 1/4 }
`
  expect(frontEdge(layOut(low, 'a4', 'line'))).toEqual(['KEEP', 'WASTE'])
})
