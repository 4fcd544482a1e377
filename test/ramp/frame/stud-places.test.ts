import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { QuarterDesign } from '../../../src/design/design.ts'
import { pathDistance } from '../../../src/geometry/nearest.ts'
import type { Point } from '../../../src/geometry/point.ts'
import { pathSample } from '../../../src/geometry/sample.ts'
import { worded } from '../../../src/ramp/check/check.ts'
import type { Transition } from '../../../src/ramp/side/transition.ts'
import { ringOf, ringRows } from '../../support/ring.ts'
import { anyRamp, circleOf, inch, plain, solve, studded } from '../ramps.ts'

/** Deep studs on low toes, where places are few. */
const deep = fc
  .record({
    ramp: anyRamp,
    section: fc.constantFrom([38, 89], [38, 140], [38, 184], [45, 235], [60, 60]),
    toe: fc.double({ min: 0, max: 90, noNaN: true }),
    every: fc.double({ min: 60, max: 320, noNaN: true }),
    radius: fc.double({ min: 500, max: 2600, noNaN: true }),
    height: fc.double({ min: 250, max: 700, noNaN: true }),
  })
  .map(
    ({ ramp, section, toe, every, radius, height }): QuarterDesign => ({
      ...plain,
      coping: ramp.coping && { ...plain.coping, ...ramp.coping },
      skin: ramp.skin,
      height: { layer: 'frame', value: height },
      transition: circleOf('frame', radius, 'surface', 0),
      toe,
      studs: studded({ section: section as [number, number], every }),
    }),
  )

/** Corners and points between them of a timber on the curve, from a circle of our own. */
const outlineOf = (
  at: number,
  lies: 'edge' | 'flat',
  design: QuarterDesign,
  { centre, radius, toeAngle }: Transition,
): readonly Point[] => {
  const [thin, wide] = [Math.min(...design.studs.section), Math.max(...design.studs.section)]
  const [width, depth] = lies === 'edge' ? [thin, wide] : [wide, thin]
  const angle = toeAngle + at / radius.frame
  const corner = (along: number, into: number): Point => ({
    x: centre.x + (radius.frame + into) * Math.sin(angle) + along * Math.cos(angle),
    y: centre.y - (radius.frame + into) * Math.cos(angle) + along * Math.sin(angle),
  })
  const all = [
    corner(width / 2, 0),
    corner(-width / 2, 0),
    corner(-width / 2, depth),
    corner(width / 2, depth),
  ]
  return all.flatMap((p, i) => {
    const q = all[(i + 1) % 4]!
    return Array.from({ length: 8 }, (_, k) => ({
      x: p.x + ((q.x - p.x) * k) / 8,
      y: p.y + ((q.y - p.y) * k) / 8,
    }))
  })
}

const stationsLost = (message: string): readonly number[] =>
  /takes the studs? ([\d., and]+) mm up the curve/
    .exec(message)![1]!
    .split(/, | and /)
    .map(Number)

test('a stop says no more and no less than a search of every place by polygons: edge and flat, millimetre by millimetre', () => {
  const [none, some] = [{ stops: 0 }, { moved: 0 }]
  fc.assert(
    fc.property(deep, (design) => {
      const { ramp, drafts } = solve(design)
      const others = drafts.filter(({ id, level }) => level === 'stop' && id !== 'stud-outside')
      if (others.length > 0 || !ramp.side) return
      const { every, section } = design.studs
      const [thin, wide] = [Math.min(...section), Math.max(...section)]
      // which studs are meant, without the ways out of it
      const findings = drafts
        .filter(({ id }) => id === 'stud-outside')
        .map((draft) => worded(draft, () => false))
      const stop = findings.find(({ level }) => level === 'stop')
      const lost = stop ? stationsLost(stop.message) : []
      some.moved += findings.some(({ message }) => message.includes('moved along')) ? 1 : 0
      const holds = ringRows(ringOf(pathSample(ramp.side.outline, 0.5).map(({ x, y }) => [x, y])))
      const end = ramp.transition!.curve.lengthTo(ramp.side.curveEnd)
      const inside = (at: number, lies: 'edge' | 'flat'): boolean =>
        at + (lies === 'edge' ? thin : wide) / 2 <= end - 1e-3 &&
        ramp.studs.every(
          (other) => Math.abs(other.at - at) >= (other.width + (lies === 'edge' ? thin : wide)) / 2 + 1e-3,
        ) &&
        outlineOf(at, lies, design, ramp.transition!).every(
          (p) =>
            (holds(p.x, p.y) || pathDistance(ramp.side!.outline, p) < 1e-4) &&
            (!ramp.coping ||
              Math.hypot(p.x - ramp.coping.centre.x, p.y - ramp.coping.centre.y) >
                ramp.coping.outside / 2 - 1e-3),
        )
      for (const shown of lost) {
        none.stops++
        // the message is rounded to a tenth; its station is exact
        const at = Math.round(shown / every) * every
        for (let by = -Math.floor(every / 2); by <= every / 2; by++)
          for (const lies of ['edge', 'flat'] as const)
            if (at + by > 0 && inside(at + by, lies))
              throw new Error(`${lies} at ${at + by}: ${stop!.message}`)
      }
      // and the reverse: each station without a stop has a stud of its own, or lies on the first or the last
      for (let at = every; at <= end - thin / 2; at += every) {
        if (lost.some((one) => Math.abs(one - at) < 0.06)) continue
        expect(
          ramp.studs.some((stud) => Math.abs(stud.at - at) <= every / 2 + (wide + thin) / 2 + 1e-6),
        ).toBe(true)
      }
    }),
    { numRuns: 120, seed: 31, endOnFailure: true },
  )
  expect(none.stops).toBeGreaterThan(5)
  expect(some.moved).toBeGreaterThan(10)
})

test('deep studs 8 in apart: the first lies flat a little further up instead of stopping the ramp', () => {
  const design: QuarterDesign = {
    ...plain,
    height: { layer: 'deck', value: 24 * inch },
    transition: circleOf('surface', 84 * inch),
    toe: 1.5 * inch,
    skin: [3 / 8, 3 / 8, 1 / 4].map((t) => ({ thickness: t * inch, material: 'plywood' as const })),
    studs: studded({ section: [1.5 * inch, 5.5 * inch], every: 8 * inch }),
  }
  const { findings } = solve(design, 'in')
  expect(findings.filter(({ level }) => level === 'stop')).toEqual([])
  expect(findings.map(({ message }) => message).join('\n')).toMatch(
    /moved along the curve .*: 8 in to 8 1\/4\+? in \(flat\)/,
  )
})
