import { describe, expect, test } from 'vitest'
import { pathSegments } from '../../../src/geometry/path.ts'
import { meetingFindings } from '../../../src/ramp/beside/meeting.ts'
import { toeStepFindings } from '../../../src/ramp/beside/toe-step.ts'
import { type Draft, worded } from '../../../src/ramp/check/check.ts'
import { solveStuds } from '../../../src/ramp/frame/studs.ts'
import { draftFlat } from '../../../src/ramp/kinds/flat.ts'
import { draftQuarter } from '../../../src/ramp/kinds/quarter.ts'
import type { Flat } from '../../../src/ramp/ramp.ts'
import { solveSide } from '../../../src/ramp/side/side.ts'
import { solveCoping } from '../../../src/ramp/side/solve-coping.ts'
import type { Transition } from '../../../src/ramp/side/transition.ts'
import { solveSkin } from '../../../src/ramp/skin/skin.ts'
import { assertNear } from '../../support/near.ts'
import { level } from '../flats.ts'
import { circleOf, notch, piped, plain, reveals, stock, transitionOf } from '../ramps.ts'
import { sampleBetween } from './sampled-curve.ts'

/** The same arc as points a quarter of a millimetre apart; the parametric form stands here, not in src. */
const arcOf =
  ({ centre, radius }: Transition) =>
  (a: number) => ({
    x: centre.x + radius.frame * Math.sin(a),
    y: centre.y - radius.frame * Math.cos(a),
  })

const sampled = (transition: Transition): Transition => {
  const { toeAngle, lipAngle } = transition
  const count = Math.ceil(transition.arc / 0.25)
  const curve = sampleBetween(arcOf(transition), toeAngle, lipAngle, { count, before: 20, after: 1600 })
  return { ...transition, curve }
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

describe('what is said of a curve known by its points alone is what is said of the circle', () => {
  const high = { ...plain, toe: 70 }
  const none = { ...high, runOut: { kind: 'none' as const } }
  const flat = { ...high, runOut: { kind: 'flat' as const } }
  const steel = { thickness: 1.5, material: 'steel' as const }
  const surfaces = [0, 40, 40.8, 70, 110]
  /** from below the place where it runs level; nothing that only a circle has is left */
  const blind = (transition: Transition): Transition => {
    const { radius, toeAngle, lipAngle } = transition
    const count = Math.ceil(transition.arc / 0.25)
    const down = (count * toeAngle) / (lipAngle - toeAngle)
    const curve = sampleBetween(arcOf(transition), toeAngle, lipAngle, {
      count,
      before: Math.floor(down),
      after: 1600,
    })
    return {
      ...transition,
      curve,
      face: curve.offset(radius.frame - radius.surface),
      level: { ...transition.level, place: curve.toe - down },
      centre: { x: Number.NaN, y: Number.NaN },
      radius: { frame: Number.NaN, surface: Number.NaN },
    }
  }
  const words = (drafts: readonly Draft[]): readonly string[] =>
    drafts.map((draft) => worded(draft, () => true).message)

  test.each([
    ['open', none],
    ['open, with a low toe', { ...none, toe: 12 }],
    ['closed by a sheet', { ...high, runOut: { kind: 'sheet' as const, sheet: steel } }],
    [
      'a sheet where the face runs high',
      {
        ...high,
        transition: circleOf('surface', 1700, 'surface', 40),
        runOut: { kind: 'sheet' as const, sheet: steel },
      },
    ],
    ['stepped', { ...high, runOut: { kind: 'stepped' as const, back: 30 } }],
  ])('the step at a toe that is %s', (_, design) => {
    const transition = transitionOf(design)
    const closing = { sheet: steel, rolled: false }
    const said = words(toeStepFindings(design, transition, closing, 'mm'))
    expect(said.length).toBe(1)
    expect(words(toeStepFindings(design, blind(transition), closing, 'mm'))).toEqual(said)
  })

  test('flats of any height before it, and none', () => {
    const design = { ...flat, transition: circleOf('surface', 1700, 'surface', 40) }
    const { ramp } = draftQuarter(design, 'mm', stock)
    const { ramp: one } = draftFlat(level, 'mm', stock)
    const flats = surfaces.map((surface): Flat => ({ ...one, heights: { frame: surface - 24, surface } }))
    let count = 0
    for (const beside of [[], ...flats.map((lone) => [lone])]) {
      const said = meetingFindings(ramp, beside, () => true, 'mm')
      expect(
        meetingFindings({ ...ramp, transition: blind(ramp.transition!) }, beside, () => true, 'mm'),
      ).toEqual(said)
      count += said.length
    }
    expect(count).toBeGreaterThan(4)
  })

  test('how it bends: the radius anywhere, and how hard wheels press on it', () => {
    const transition = transitionOf(plain)
    const other = blind(transition)
    for (const share of [0, 0.3, 0.7, 1]) {
      const place = other.curve.toe + (other.curve.lip - other.curve.toe) * share
      assertNear(other.curve.radiusAt(place), transition.radius.frame, 1)
      assertNear(other.face.radiusAt(place), transition.radius.surface, 1)
    }
    assertNear(transition.curve.radiusAt(1), transition.tightest, 1e-9)
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
