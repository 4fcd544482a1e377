import { describe, expect, test } from 'vitest'
import { pathSegments } from '../../../src/geometry/path.ts'
import { solveStuds } from '../../../src/ramp/frame/studs.ts'
import { solveSide } from '../../../src/ramp/side/side.ts'
import { solveCoping } from '../../../src/ramp/side/solve-coping.ts'
import type { Transition } from '../../../src/ramp/side/transition.ts'
import { solveSkin } from '../../../src/ramp/skin/skin.ts'
import { assertNear } from '../../support/near.ts'
import { notch, piped, plain, reveals, transitionOf } from '../ramps.ts'
import { sampleBetween } from './sampled-curve.ts'

/** The same arc as points a quarter of a millimetre apart; the parametric form stands here, not in src. */
const sampled = (transition: Transition): Transition => {
  const { radius, toeAngle, lipAngle, centre } = transition
  const at = (a: number) => ({
    x: centre.x + radius.frame * Math.sin(a),
    y: centre.y - radius.frame * Math.cos(a),
  })
  const count = Math.ceil(transition.arc / 0.25)
  return { ...transition, curve: sampleBetween(at, toeAngle, lipAngle, { count, before: 20, after: 1600 }) }
}

/** mm: what chords a quarter of a millimetre long, and normals that follow from them, may cost all together */
const tolerance = 0.001

const solveAll = (design: typeof plain, transition: Transition) => {
  const deck = design.back.value
  const pipe = solveCoping(design, transition, deck, 'mm')
  const length = transition.run + deck
  const side = solveSide(transition, pipe.coping, length, design.chamfer)
  const framing = solveStuds(design, transition, pipe.coping, { curveEnd: side.curveEnd, length }, 'mm')
  const skin = solveSkin(design, transition.curve, pipe.coping, framing.studs)
  return { pipe, side, framing, skin }
}

const ids = (findings: readonly { readonly id: string }[]): readonly string[] => findings.map((f) => f.id)

describe('a curve known by its points alone gives the same ramp as the circle', () => {
  test.each([
    ['no pipe', null],
    ['a square seat', piped()],
    ['a round seat', piped({ seat: 'round' })],
    ['a square notch given', piped({ by: notch(48, 33) })],
    ['a round notch given', piped({ seat: 'round', by: notch(45, 36) })],
    ['a pipe behind the face', piped({ by: reveals(-4, -7) })],
  ])('%s', (_, coping) => {
    const design = { ...plain, coping, chamfer: 120 }
    const transition = transitionOf(design)
    const circle = solveAll(design, transition)
    const other = sampled(transition)
    const points = solveAll(design, other)

    expect(ids(points.pipe.findings)).toEqual(ids(circle.pipe.findings))
    expect(points.pipe.coping === null).toBe(coping === null)
    if (circle.pipe.coping && points.pipe.coping) {
      for (const key of ['up', 'out', 'along', 'down'] as const)
        assertNear(points.pipe.coping[key], circle.pipe.coping[key], tolerance, key)
      assertNear(points.pipe.coping.centre.x, circle.pipe.coping.centre.x, tolerance, 'centre x')
      assertNear(points.pipe.coping.centre.y, circle.pipe.coping.centre.y, tolerance, 'centre y')
    }

    expect(points.side.edges.map((e) => e.name)).toEqual(circle.side.edges.map((e) => e.name))
    points.side.edges.forEach((edge, i) => {
      const own = circle.side.edges[i]!
      assertNear(edge.path.start.x, own.path.start.x, tolerance, `${edge.name} starts, x`)
      assertNear(edge.path.start.y, own.path.start.y, tolerance, `${edge.name} starts, y`)
    })
    const cut = points.side.edges.find((e) => e.name === 'curve')!
    for (const { to } of pathSegments(cut.path))
      assertNear(
        Math.hypot(to.x - transition.centre.x, to.y - transition.centre.y),
        transition.radius.frame,
        tolerance,
        'cut curve',
      )

    expect(ids(points.framing.findings)).toEqual(ids(circle.framing.findings))
    expect(points.framing.studs.length).toBe(circle.framing.studs.length)
    points.framing.studs.forEach((stud, i) => {
      const own = circle.framing.studs[i]!
      expect([stud.lies, stud.role]).toEqual([own.lies, own.role])
      for (const key of ['at', 'x', 'y', 'depth'] as const)
        assertNear(stud[key], own[key], tolerance, `stud ${i} ${key}`)
      // a slope error of 1e-5 moves the foot of a stud by less than 0.001 mm
      assertNear(stud.angle, own.angle, 1e-5, `stud ${i} angle (radians)`)
    })

    expect(points.skin.length).toBe(3)
    points.skin.forEach((layer, i) => {
      const own = circle.skin[i]!
      // a square end that glances past the pipe moves more along the curve than the sampling errs across it
      assertNear(layer.length, own.length, 10 * tolerance, `layer ${i} length`)
      const [p, q] = [other.curve.point(layer.end), transition.curve.point(own.end)]
      assertNear(Math.hypot(p.x - q.x, p.y - q.y), 0, 10 * tolerance, `layer ${i} end`)
      expect(layer.marks.length).toBe(own.marks.length)
      layer.marks.forEach((mark, k) => {
        assertNear(mark, own.marks[k]!, tolerance, `layer ${i} mark ${k}`)
      })
    })
  })
})

describe('the shared parts do not take the curve for a circle', () => {
  // a quarter of an ellipse, lip at 60 degrees of its parameter; nothing about it is a circle
  const [a, b, low, high] = [1900, 1300, 0.12, Math.PI / 3]
  const at = (t: number) => ({
    x: a * (Math.sin(t) - Math.sin(low)),
    y: 40 + b * (Math.cos(low) - Math.cos(t)),
  })
  const curve = sampleBetween(at, low, high, { count: 6000, before: 300, after: 1500 })
  const lip = at(high)
  const slope = Math.atan2(b * Math.sin(high), a * Math.cos(high))
  const ellipse: Transition = {
    ...transitionOf(plain),
    curve,
    // values that only a circle has are poisoned
    centre: { x: Number.NaN, y: Number.NaN },
    radius: { frame: Number.NaN, surface: Number.NaN },
    arc: Number.NaN,
    toe: at(low),
    lip,
    run: lip.x,
    lipAngle: slope,
    heights: { frame: lip.y, deck: lip.y + 15, surface: lip.y + 24 * Math.cos(slope) },
  }
  /** distance from the ridden face: the nearest of many points moved 24 mm along the ellipse's own normals */
  const fromFace = (p: { readonly x: number; readonly y: number }): number => {
    let best = Number.POSITIVE_INFINITY
    for (let i = -4000; i <= 80_000; i++) {
      const t = low + ((high - low) * i) / 60_000
      const [dx, dy] = [a * Math.cos(t), b * Math.sin(t)]
      const size = Math.hypot(dx, dy)
      const q = at(t)
      best = Math.min(best, Math.hypot(q.x - (24 * dy) / size - p.x, q.y + (24 * dx) / size - p.y))
    }
    return best
  }

  test.each(['square', 'round'] as const)('a %s seat on an ellipse stands out as it was asked to', (seat) => {
    const design = { ...plain, coping: piped({ seat }) }
    const { pipe, side, skin } = solveAll(design, ellipse)
    const { centre, out, up } = pipe.coping!
    assertNear(out, 6, tolerance, 'out')
    assertNear(up, 8, 1e-9, 'up')
    assertNear(60.3 / 2 - fromFace(centre), 6, tolerance, 'out, by sampling')
    assertNear(centre.y + 60.3 / 2 - (lip.y + 15), 8, 1e-9, 'up, by hand')
    const mouth = curve.point(side.curveEnd)
    assertNear(
      (mouth.x / a + Math.sin(low)) ** 2 + ((mouth.y - 40) / b - Math.cos(low)) ** 2,
      1,
      1e-7,
      'mouth',
    )
    assertNear(
      seat === 'square' ? mouth.y : Math.hypot(mouth.x - centre.x, mouth.y - centre.y),
      seat === 'square' ? centre.y - 60.3 / 2 : 60.3 / 2,
      tolerance,
      'mouth at the seat',
    )
    expect(skin[0]!.length).toBeGreaterThan(skin[2]!.length)
  })
})
