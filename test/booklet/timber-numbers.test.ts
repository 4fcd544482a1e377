import { expect, test } from 'vitest'
import { timbersOf } from '../../src/booklet/views/plan-view.ts'
import { stageView } from '../../src/booklet/views/stage-view.ts'
import { studView } from '../../src/booklet/views/stud-view.ts'
import type { View } from '../../src/booklet/views/view.ts'
import { isCurved } from '../../src/design/kind-traits.ts'

import { type Box, pointsBounds } from '../../src/geometry/bounds.ts'
import { type Point, pointBetween, pointDistance } from '../../src/geometry/point.ts'
import { timberCorners } from '../../src/ramp/frame/timber.ts'
import type { SolvedRamp } from '../../src/ramp/ramp.ts'
import { drawDesign } from '../../src/ramp/solve.ts'
import { designOf } from '../support/design-of.ts'
import { below, hold } from '../support/hold.ts'
import { opened } from '../support/strokes.ts'
import { templates, templateText } from '../support/templates.ts'
import { jobOf } from '../tape-up/jobs.ts'

const texts = [...templates.map(templateText), ...Array.from({ length: 30 }, (_, i) => jobOf(i).text)]

const ramps = texts.flatMap((text) => {
  const design = designOf(text)
  const solved = drawDesign(design)
  return solved.stopped
    ? []
    : (solved.ramps as readonly SolvedRamp[]).map((ramp) => ({ ramp, units: design.units }))
})

/** Points of a timber's outline and of what lies in it, close together, paper mm: a slow way to its nearest one. */
const dotsOf = (corners: readonly Point[], ratio: number): readonly Point[] => {
  const [a, b, c, d] = corners.map(({ x, y }) => ({ x: x * ratio, y: y * ratio })) as [
    Point,
    Point,
    Point,
    Point,
  ]
  const ts = Array.from({ length: 13 }, (_, i) => i / 12)
  return ts.flatMap((t) => ts.map((s) => pointBetween(pointBetween(a, b, t), pointBetween(d, c, t), s)))
}
const away = (dots: readonly Point[], p: Point): number =>
  Math.min(...dots.map((dot) => pointDistance(dot, p)))

/** Numbers that have a line to their timber; throws where one stands at another timber, or is missing. */
const linedOf = (
  { parts }: View,
  ramp: SolvedRamp,
  ratio: number,
  now: readonly number[],
  seen: readonly number[],
): number => {
  const { words, lines } = opened(parts.find(({ name }) => name === 'numbers')!.marks)
  expect(
    words.map(({ text }) => Number(text)).sort((a, b) => a - b),
    `${ramp.name} ${ramp.length} at 1 : ${1 / ratio}`,
  ).toEqual(now.map((i) => i + 1).sort((a, b) => a - b))
  const dots = new Map(seen.map((i) => [i, dotsOf(timberCorners(timbersOf(ramp)[i]!), ratio)]))
  const nearest = (p: Point): number =>
    seen.reduce((best, i) => (away(dots.get(i)!, p) < away(dots.get(best)!, p) ? i : best), seen[0]!)
  const boxes = words.map(({ text, corners }) => ({ timber: Number(text) - 1, box: pointsBounds(corners) }))
  const off = ({ x0, x1, y0, y1 }: Box, { x, y }: Point): number =>
    Math.hypot(Math.max(0, x0 - x, x - x1), Math.max(0, y0 - y, y - y1))
  const lined = new Set(
    lines.map(({ points: [from, to] }) => {
      const own = boxes.reduce((best, one) => (off(one.box, to!) < off(best.box, to!) ? one : best))
      below(off(own.box, to!), 0.5)
      hold(nearest(from!) === own.timber, `a line from ${nearest(from!) + 1} to ${own.timber + 1}`)
      return own.timber
    }),
  )
  for (const { timber, box } of boxes)
    if (!lined.has(timber)) {
      const at = { x: (box.x0 + box.x1) / 2, y: box.y1 - 1.25 }
      hold(nearest(at) === timber, `${timber + 1} at ${nearest(at) + 1} of ${ramp.name}`)
    }
  return lined.size
}

test('each number of a timber stands nearer to its own than to any other, or has a line to it, at the scales they are drawn at', () => {
  let [looked, lined] = [0, 0]
  for (const { ramp, units } of ramps) {
    const all = timbersOf(ramp).map((_, i) => i)
    const studs = ramp.studs.map((_, i) => i)
    const later = studs.slice(1)
    // as steps are drawn, mm on paper
    const high = isCurved(ramp) ? ramp.transition.heights.frame : ramp.heights.frame
    const small = Math.min(46 / ramp.length, 27 / high)
    for (const ratio of [small, small * 0.88, small * 0.88 ** 2]) {
      const corners = all.filter((i) => !later.includes(i))
      lined += linedOf(stageView(ramp, units, ratio, later, corners), ramp, ratio, later, all)
      looked += later.length
    }
    // as a page has room for it
    const full = Math.min(130 / ramp.length, 75 / high)
    lined += linedOf(studView(ramp, units, full), ramp, full, all, all)
    looked += all.length
  }
  expect(looked).toBeGreaterThan(900)
  expect(lined).toBeGreaterThan(50)
})
