import { expect, test } from 'vitest'
import { handleView } from '../../src/booklet/views/acts/act-views.ts'
import { curvedOf } from '../../src/design/kind-traits.ts'
import { pathSegments } from '../../src/geometry/path.ts'
import type { Point } from '../../src/geometry/point.ts'
import { solveDesign } from '../../src/ramp/solve.ts'
import { balancePoint } from '../../src/stock/balance.ts'
import { handlePlace } from '../../src/stock/handle.ts'
import type { Moving } from '../../src/stock/moving.ts'
import { designOf } from '../support/design-of.ts'
import { templateText } from '../support/templates.ts'

const ratio = 0.06

/** The drawing of a handle on a template's side with so long a deck. */
const drawnOf = (deck: number) => {
  const solved = solveDesign(designOf(templateText('quarter-mm').replace('deck: 500', `deck: ${deck}`)))
  if (solved.stopped) throw new Error('a design that stops')
  const [ramp] = curvedOf(solved.ramps)
  const moving = { handle: handlePlace(ramp!, balancePoint(ramp!)), grip: 'handle' } as Moving
  const { parts } = handleView(ramp!, 'mm', ratio, moving)
  const strokes = parts.flatMap(({ marks }) => marks.filter((mark) => mark.kind === 'stroke'))
  return { ramp: ramp!, place: moving.handle!, parts, strokes }
}

const isNear = (a: Point, b: Point): boolean => Math.hypot(a.x - b.x * ratio, a.y - b.y * ratio) < 1e-6

test('the drawing of a handle shows the joint of its side, and dashed the plate that its bolts pass', () => {
  const { ramp, place, strokes, parts } = drawnOf(1560)
  expect(place.plated).toBe(true)
  const [{ top, foot, plate }, ...others] = ramp.splices as [(typeof ramp.splices)[number]]
  expect(others).toEqual([])
  const through = (points: readonly Point[]) =>
    strokes.filter(({ path }) => {
      const corners = pathSegments(path).flatMap(({ from, to }) => [from, to])
      return points.every((p) => corners.some((corner) => isNear(corner, p)))
    })
  const [joint, dashed] = [through([top, foot]), through(plate.corners)]
  expect([joint.length, dashed.length]).toEqual([1, 1])
  expect(joint[0]!.pen.dash).toBeUndefined()
  const timber = parts.find(({ name }) => name === 'timbers')!.marks[0]!
  expect(dashed[0]!.pen).toEqual(timber.kind === 'stroke' && timber.pen)
})

test('the drawing of a handle has the edge of a whole side alone', () => {
  const { ramp, parts } = drawnOf(500)
  expect(ramp.splices).toEqual([])
  expect(parts.find(({ name }) => name === 'side')!.marks).toHaveLength(1)
})
