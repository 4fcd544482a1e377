import Flatten from '@flatten-js/core'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Design, FlatDesign } from '../../../src/design/design.ts'
import { pathCentroid } from '../../../src/geometry/centroid.ts'
import { type Path, pathSegments } from '../../../src/geometry/path.ts'
import { outerPolygon } from '../../../src/geometry/polygon/outer-polygon.ts'
import { draftFlat } from '../../../src/ramp/kinds/flat.ts'
import { draftQuarter } from '../../../src/ramp/kinds/quarter.ts'
import { sidePieces, splicing } from '../../../src/ramp/splice/splice.ts'
import { layPanels } from '../../../src/stock/panel/panels.ts'
import { partsOf } from '../../../src/stock/parts.ts'
import { above, atMost, below, hold } from '../../support/hold.ts'
import { assertNear } from '../../support/near.ts'
import { job, polygon } from '../framed.ts'
import { circleOf, plain, solve, stock } from '../ramps.ts'

/** Of a path with its arcs, by another library. */
const flattenOf = (path: Path): Flatten.Polygon =>
  new Flatten.Polygon(outerPolygon(path, 0.02).map(({ x, y }) => [x, y] as [number, number]))

const area = (path: Path): number => Math.abs(pathCentroid(path).area)

describe('a side that no panel holds whole', () => {
  test('of 80 ramps: its pieces are the side, each comes out of a panel; joint and plate keep off all else', () => {
    let [spliced, whole, refused, joints] = [0, 0, 0, 0]
    fc.assert(
      fc.property(job, ({ design, panel, units }) => {
        const { ramp, drafts } = solve(design, units, panel)
        if (!ramp.side) return
        const { side, splices } = ramp
        const [short, long] = panel
        const fits = ({ length, height }: { length: number; height: number }): boolean =>
          Math.min(length, height) <= short + 1e-6 && Math.max(length, height) <= long + 1e-6
        const said = drafts.filter(({ id }) => id === 'splice').map(({ level }) => level)
        expect(said).toEqual(fits(side) ? [] : splices.length > 0 ? ['note'] : ['warn'])
        if (fits(side)) whole++
        else if (splices.length === 0) refused++
        if (splices.length === 0) return
        spliced++
        const pieces = sidePieces(side.outline, splices)
        expect(pieces).toHaveLength(splices.length + 1)
        // together they are as large as the side, and no two of them lie on each other
        assertNear(
          pieces.reduce((sum, piece) => sum + area(piece), 0) / 1000,
          area(side.outline) / 1000,
          1e-6,
        )
        const faces = pieces.map(flattenOf)
        for (const [i, face] of faces.entries()) {
          const { xmin, ymin, xmax, ymax } = face.box
          hold(fits({ length: xmax - xmin, height: ymax - ymin }))
          const next = faces[i + 1]
          if (next) {
            const both = Flatten.BooleanOperations.intersect(face, next)
            below(Math.abs(both.area()), 1)
          }
        }
        // an arc of the curve stays one
        const arcs = (path: Path): number =>
          pathSegments(path).reduce(
            (sum, s) => sum + (s.kind === 'arc' ? Math.abs(s.sweep) * s.radius : 0),
            0,
          )
        assertNear(
          pieces.reduce((sum, piece) => sum + arcs(piece), 0),
          arcs(side.outline),
          1e-6,
        )
        const timbers = [...ramp.studs, ...ramp.deckTimbers]
        const own = flattenOf(side.outline)
        const notch = side.edges.find(({ name }) => name === 'notch')
        for (const { timber, top, foot, plate } of splices) {
          joints++
          const on = timbers[timber]!
          // straight down the timber's middle: square to its face, from the middle of that
          assertNear(Math.hypot(top.x - on.x, top.y - on.y), 0, 1e-6)
          assertNear((foot.x - top.x) * Math.cos(on.angle) + (foot.y - top.y) * Math.sin(on.angle), 0, 1e-6)
          assertNear(foot.y, 0, 1e-9)
          const joint = new Flatten.Segment(
            new Flatten.Point(top.x, top.y),
            new Flatten.Point(foot.x, foot.y),
          )
          const away = (p: { x: number; y: number }): number =>
            joint.distanceTo(new Flatten.Point(p.x, p.y))[0]
          const shy = notch
            ? pathSegments(notch.path).flatMap(({ from, to }) => [from, to])
            : [ramp.transition!.lip]
          for (const p of shy) above(away(p), splicing[units].away - 0.1)
          const face = new Flatten.Polygon(plate.corners.map(({ x, y }) => [x, y] as [number, number]))
          assertNear(Math.abs(face.area()), plate.size[0] * plate.size[1], 1e-3)
          hold(own.contains(face))
          timbers.forEach((other, i) => {
            if (i !== timber) above(face.distanceTo(polygon(other))[0], splicing[units].gap - 1e-3)
            if (i !== timber) hold(Flatten.BooleanOperations.intersect(face, polygon(other)).isEmpty())
          })
          // it covers most of the joint, as far to one side as to the other
          above(plate.size[1], 0.6 * joint.length - 1e-6)
          // its grain across the joint, a panel's along its long side
          atMost(plate.size[1], short + 1e-6)
          atMost(plate.size[0], long + 1e-6)
          const [a, b] = plate.corners
          assertNear((a!.x + b!.x) / 2 - top.x, splicing[units].edge * Math.sin(on.angle), 1e-6)
        }
      }),
      { numRuns: 80 },
    )
    expect(spliced).toBeGreaterThan(8)
    expect(joints).toBeGreaterThan(spliced)
    expect(whole).toBeGreaterThan(20)
    expect(refused).toBeLessThan(spliced)
  })

  const long = { ...plain, back: { from: 'length' as const, value: 3000 } }

  test('is sawn in pieces with plates, and the timbers on the joint are shorter by them', () => {
    const { ramp } = solve(long, 'mm', [1220, 2440])
    const design = { title: '', units: 'mm', stock, ramps: [long] } as unknown as Parameters<
      typeof partsOf
    >[0]
    const { sheets, timbers } = partsOf(design, { stopped: true, ramps: [ramp], checks: [] })
    const sides = sheets.filter(({ part }) => part === 'side')
    expect(sides.map(({ mark }) => mark)).toEqual(['S1a', 'S1b', 'S2a', 'S2b'])
    expect(sides.map(({ piece }) => [piece!.of, piece!.toe, piece!.lip])).toEqual([
      ['S1', true, true],
      ['S1', false, false],
      ['S2', true, true],
      ['S2', false, false],
    ])
    expect(sheets.filter(({ part }) => part === 'plate').map(({ mark }) => mark)).toEqual(['P1', 'P2'])
    const [splice] = ramp.splices
    expect(ramp.splices).toHaveLength(1)
    // 1216 less two sides of 18; on the joint less two plates of 18 besides
    const lengths = [...ramp.studs, ...ramp.deckTimbers].map((_, i) => timbers[i]!.length)
    for (const [i, length] of lengths.entries()) assertNear(length, i === splice!.timber ? 1144 : 1180, 1e-9)
    // both hands are mirror images
    assertNear(area(sides[0]!.outline), area(sides[2]!.outline), 1e-6)
  })

  test('higher than a panel is wide has plates that a panel gives, with the grain across the joint', () => {
    const high = {
      ...plain,
      height: { layer: 'frame', value: 1300 },
      transition: circleOf('surface', 2200),
      back: { from: 'deck', value: 900 },
    } as const
    for (const trim of [0, 5, 40]) {
      const reading = {
        title: '',
        units: 'mm',
        stock: { ...stock, trim },
        ramps: [high],
      } as unknown as Design
      const { ramp } = solve(high, 'mm', [1220, 2440])
      expect(ramp.splices.length).toBeGreaterThan(0)
      const { sheets } = partsOf(reading, { stopped: true, ramps: [ramp], checks: [] })
      const laid = layPanels(
        reading,
        sheets.filter(({ part }) => part === 'plate' || part === 'side'),
      )
      expect(laid.flatMap(({ lost }) => lost)).toEqual([])
    }
  })

  test('stays whole where another ramp is stored inside, and that is said', () => {
    const { ramp, drafts } = draftQuarter(long, 'mm', stock, ['inner'])
    expect(ramp.splices).toEqual([])
    const said = drafts.find(({ id }) => id === 'splice')
    expect(said?.level).toBe('warn')
    expect(said?.message).toContain('inner is stored inside')
  })

  test('of a flat: the joint lies on a stud, the plate between its neighbours', () => {
    const flat: FlatDesign = {
      kind: 'flat',
      like: null,
      name: 'flat',
      width: 1216,
      sides: plain.sides,
      skin: [{ thickness: 18, material: 'plywood' }],
      fasten: 'studs',
      length: 4000,
      height: { layer: 'frame', value: 89 },
      studs: { section: [38, 89], every: 300 },
    }
    const { ramp } = draftFlat(flat, 'mm', stock)
    expect(ramp.splices).toHaveLength(1)
    const [{ timber, foot, plate }] = ramp.splices as [(typeof ramp.splices)[number]]
    assertNear(foot.x, ramp.studs[timber]!.x, 1e-9)
    // two pieces of 2440 reach 1560 and more
    expect(foot.x).toBeGreaterThan(1560 - 1e-6)
    expect(foot.x).toBeLessThan(2440 + 1e-6)
    // 89 less 5 above and below, in steps of 5
    assertNear(plate.size[1], 75, 1e-9)
    const next = ramp.studs[timber + 1]!.x - foot.x - 19
    expect(plate.size[0] / 2).toBeLessThan(next - 3 + 1e-6)
  })
})
