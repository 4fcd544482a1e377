import { expect, test } from 'vitest'
import { pathLength } from '../../src/geometry/length.ts'
import { sidePatterns } from '../../src/pattern/patterns.ts'
import { drawDesign } from '../../src/ramp/solve.ts'
import { designOf } from '../support/design-of.ts'
import { assertNear } from '../support/near.ts'
import { templateText } from '../support/templates.ts'

const text = templateText('quarter-mm').replace('deck: 500 ', 'deck: 2200 ')

const spliced = () => {
  const solved = drawDesign(designOf(text))
  if (solved.stopped) throw new Error('stopped')
  return solved.ramps
}

test('the joint of a spliced side is a line to saw, the plate a dashed one; both pieces and the plate have their names', () => {
  const ramps = spliced()
  const [{ top, foot, plate }] = ramps[0]!.splices as [(typeof ramps)[0]['splices'][number]]
  const [pattern] = sidePatterns(ramps, 'mm')
  expect(pattern!.pieces).toBe(2)
  expect(pattern!.serves).toEqual(['ramp: 2 sides (S1, S2, each of pieces a, b)'])
  const cuts = pattern!.marks.flatMap((mark) =>
    mark.kind === 'stroke' && mark.layer === 'cut' ? [mark.path] : [],
  )
  expect(cuts).toHaveLength(1)
  // upright under the deck: as long as the frame is high
  assertNear(pathLength(cuts[0]!), 625, 1e-6)
  assertNear(Math.hypot(cuts[0]!.start.x - top.x, cuts[0]!.start.y - top.y), 0, 1e-9)
  assertNear(foot.x, top.x, 1e-9)
  const dashed = pattern!.quiet.filter(
    (mark) =>
      mark.kind === 'stroke' &&
      mark.path.closed &&
      Math.abs(pathLength(mark.path) - 2 * (plate.size[0] + plate.size[1])) < 1e-6,
  )
  expect(dashed).toHaveLength(1)
  expect(pattern!.labels.map(({ words }) => words).slice(-3)).toEqual([
    'PIECE a',
    'PIECE b',
    `plate ${plate.size[0]} × ${plate.size[1]}, inside`,
  ])
  expect(pattern!.labels).toHaveLength(pattern!.markPaths.length)
})

test('the screws of the stud on a joint go to both sides of it', () => {
  const ramps = spliced()
  const [{ timber, top }] = ramps[0]!.splices as [(typeof ramps)[0]['splices'][number]]
  const [pattern] = sidePatterns(ramps, 'mm')
  const own = pattern!.screws[timber]!
  // a quarter of 38 off the joint
  assertNear(Math.min(...own.middles.map(({ x }) => x)), top.x - 9.5, 1e-9)
  assertNear(Math.max(...own.middles.map(({ x }) => x)), top.x + 9.5, 1e-9)
})
