import { expect, it } from 'vitest'
import { weighCells } from '../../../src/page/cover/cell-weights.ts'
import { type Cover, covers } from '../../../src/page/cover/cover.ts'
import { latticePitch } from '../../../src/page/cover/lattice.ts'
import { looseLattices } from '../../../src/page/cover/loose-lattice.ts'
import { notchIn, notchWithRoom } from '../../../src/page/cover/notch-room.ts'
import { pointsIn } from '../../../src/page/cover/shown-points.ts'
import { turnPoints, turnRuns } from '../../../src/page/cover/turned-run.ts'
import type { TileGroup } from '../../../src/page/set/tile-groups.ts'
import { defaultMargins, defaultOverlap, paperOf } from '../../../src/page/sheet/paper.ts'
import { layOut } from '../../support/lay-out.ts'
import type { Pt } from '../../support/pt.ts'
import { templates, templateText } from '../../support/templates.ts'
import { jobOf } from '../../tape-up/jobs.ts'

/** Common practice, no source: a slip at a joint would show in the notch first. mm */
const room = 15

const distance = (p: Pt, [a, b]: readonly [Pt, Pt]): number => {
  const [dx, dy] = [b.x - a.x, b.y - a.y]
  const t = Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy)))
  return Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy)
}

/** Of the notch, point by point, to the nearest joint line of two pages, mm. */
const notchOff = ({ pattern, tiles }: TileGroup): number =>
  Math.min(
    ...tiles.flatMap(({ joints }) =>
      joints.flatMap(({ line }) => pattern.notch.map((p) => distance(p, line))),
    ),
  )

/** Places of upright joint lines, every 3 mm across and up, that take no more pages and show LIP and TOE; how many keep off the notch. */
const allPlaces = ({ pattern, tiles }: TileGroup, paper: 'letter' | 'a4', cover: Cover) => {
  const { width, height } = paperOf(paper)
  const { left, right, top, bottom } = defaultMargins(paper)
  const window = { x0: left, y0: bottom, x1: width - right, y1: height - top }
  const { runs, lattices } = looseLattices(pattern, cover, window, defaultOverlap)
  const named = pattern.points.map(({ at }) => at)
  let [showing, clear] = [0, 0]
  for (const { shape, angle, box } of lattices.filter((one) => one.angle === 0)) {
    const [turned, framed, pitch] = [turnRuns(runs, angle), turnPoints(named, angle), latticePitch(shape)]
    for (let x = 0; x < pitch.x; x += 3)
      for (let y = 0; y < pitch.y; y += 3) {
        const weights = weighCells(turned, box, pitch, { x, y })
        if (weights.pages > tiles.length || pointsIn(framed, weights, shape) < named.length) continue
        showing++
        if (notchIn(notchWithRoom(pattern.notch, angle), weights, shape)) clear++
      }
  }
  return { showing, clear }
}

it('the notch keeps 15 mm off every joint, unless no place of the pages does that takes no more of them', () => {
  const seen: Record<Cover, { all: number; clear: number }> = {
    whole: { all: 0, clear: 0 },
    line: { all: 0, clear: 0 },
    ribbon: { all: 0, clear: 0 },
  }
  const texts = [...templates.map(templateText), ...Array.from({ length: 3 }, (_, i) => jobOf(7 + i).text)]
  for (const text of texts)
    for (const paper of ['letter', 'a4'] as const)
      for (const cover of covers)
        for (const group of layOut(text, paper, cover)?.groups ?? []) {
          if (group.pattern.notch.length === 0) continue
          seen[cover].all++
          if (notchOff(group) >= room - 1e-6) {
            seen[cover].clear++
            continue
          }
          const found = allPlaces(group, paper, cover)
          expect(found.clear, `${group.pattern.name}, ${cover} on ${paper}`).toBe(0)
          expect(found.showing).toBeGreaterThan(0)
        }
  expect(seen.line.clear).toBe(seen.line.all)
  expect(seen.ribbon.clear).toBe(seen.ribbon.all)
  expect(seen.whole.clear, JSON.stringify(seen)).toBeGreaterThan(10)
  expect(seen.whole.clear).toBeLessThan(seen.whole.all)
})
