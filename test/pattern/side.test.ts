import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { QuarterDesign } from '../../src/design/design.ts'
import type { Mark } from '../../src/drawing/drawing.ts'
import { boxCorners } from '../../src/geometry/clip.ts'
import { pathLength } from '../../src/geometry/length.ts'
import { pathDistance } from '../../src/geometry/nearest.ts'
import { pathSegments } from '../../src/geometry/path.ts'
import { timberEdges } from '../../src/page/timber/timber-edges.ts'
import { sidePatterns } from '../../src/pattern/patterns.ts'
import { sidePattern } from '../../src/pattern/side.ts'
import { sidesAlike } from '../../src/pattern/side-lines.ts'
import type { SolvedQuarter } from '../../src/ramp/ramp.ts'
import { inch, piped, plain, sawn, sawnSeed, solve, studded, transitionOf, wholeOf } from '../ramp/ramps.ts'
import { assertNear } from '../support/near.ts'

const ramp = (design: QuarterDesign): SolvedQuarter => wholeOf(design)
const pipedRamp: QuarterDesign = { ...plain, coping: piped(), chamfer: 120 }

describe('one pattern for each distinct side', () => {
  const patterns = (...designs: readonly QuarterDesign[]) => sidePatterns(designs.map(ramp), 'mm')

  test('two ramps with the same side share one, which names the parts of both', () => {
    const found = patterns(
      { ...pipedRamp, name: 'outer', sides: { thickness: 18, count: 3 } },
      { ...pipedRamp, name: 'inner', width: 1150 },
    )
    expect(found.map((p) => [p.name, p.serves])).toEqual([
      ['outer/side', ['outer: 2 sides, 1 rib (S1–S3)', 'inner: 2 sides (S4, S5)']],
    ])
  })

  test.each<readonly [string, Partial<QuarterDesign>]>([
    ['a longer deck', { back: { from: 'deck', value: 501 } }],
    ['a higher frame', { height: { layer: 'frame', value: 641 } }],
    ['another radius', { transition: { ...plain.transition, circle: { layer: 'frame', radius: 1725 } } }],
    ['another toe', { toe: 41 }],
    ['a round seat', { coping: piped({ seat: 'round' }) }],
    ['no chamfer', { chamfer: 0 }],
    ['studs elsewhere', { studs: studded({ every: 190 }) }],
    ['timbers elsewhere behind the lip', { studs: studded({ deck: 200 }) }],
    ['a timber for wheels', { wheels: { diameter: 75, height: 100, count: 2 } }],
  ])('%s is a pattern of its own', (_, change) => {
    const found = patterns({ ...pipedRamp, name: 'a' }, { ...pipedRamp, ...change, name: 'b' })
    expect(found.map((p) => p.name)).toEqual(['a/side', 'b/side'])
    expect(found.map((p) => p.serves)).toEqual([['a: 2 sides (S1, S2)'], ['b: 2 sides (S3, S4)']])
  })

  test('ramps of one pattern would each have the same of their own', () => {
    const changes: readonly ((design: QuarterDesign) => Partial<QuarterDesign>)[] = [
      () => ({}),
      ({ width }) => ({ width: width - 50 }),
      ({ sides: { thickness } }) => ({ sides: { thickness, count: 4 } }),
      ({ studs }) => ({ studs: { ...studs, deck: studs.deck / 2 } }),
      ({ coping }) => ({ coping: coping && { ...coping, outside: coping.outside - 1 } }),
      ({ deckBoard }) => ({ deckBoard: deckBoard ? null : { thickness: 9, material: 'plywood' } }),
      ({ skin }) => ({ skin: skin.slice().reverse() }),
    ]
    let shared = 0
    fc.assert(
      fc.property(sawn, (design) => {
        const ramps = changes.flatMap((change, i) => {
          const { whole } = solve({ ...design, ...change(design), name: `ramp ${i}` })
          return whole ? [whole] : []
        })
        for (const same of sidesAlike(ramps)) {
          const own = same.map((each) => JSON.stringify(sidePattern({ ...each, name: '' }, [], 'mm')))
          expect(new Set(own).size).toBe(1)
          shared += same.length - 1
        }
      }),
      { seed: sawnSeed, numRuns: 60 },
    )
    expect(shared).toBeGreaterThan(60)
  })

  test('ribs are counted in words', () => {
    const served = (count: number) => patterns({ ...plain, sides: { thickness: 18, count } })[0]!.serves
    expect(served(2)).toEqual(['ramp: 2 sides (S1, S2)'])
    expect(served(3)).toEqual(['ramp: 2 sides, 1 rib (S1–S3)'])
    expect(served(5)).toEqual(['ramp: 2 sides, 3 ribs (S1–S5)'])
  })

  test('a ramp with a stop has none: it is never whole', () => {
    expect(solve({ ...plain, chamfer: 5000 }).whole).toBeNull()
    expect(solve(plain).whole).not.toBeNull()
  })
})

describe('what a builder checks after taping', () => {
  test('chord and middle rise in closed form, then the panel by its own edges', () => {
    const { radius, toeAngle, lipAngle, run } = transitionOf(pipedRamp)
    const half = (lipAngle - toeAngle) / 2
    const length = run + 500
    expect(sidePattern(ramp(pipedRamp), [], 'mm').distances.map(({ words, of }) => [words, of])).toEqual([
      ['TOE to LIP, straight (on paper only)', 'chord'],
      ['from the middle of that line square to the curve (on paper only)', 'rise'],
      ['bottom edge to top line', 'panel'],
      ['front edge to back edge', 'panel'],
      ['front bottom corner to back top corner', 'panel'],
      ['TOE to back top corner', 'panel'],
    ])
    const expected = [
      2 * radius.frame * Math.sin(half),
      radius.frame * (1 - Math.cos(half)),
      640,
      length,
      Math.hypot(length, 640),
      Math.hypot(length, 600),
    ]
    sidePattern(ramp(pipedRamp), [], 'mm').distances.forEach(({ value, words }, i) => {
      assertNear(value, expected[i]!, 1e-6, words)
    })
  })
})

describe('the lines of a side', () => {
  const solved = ramp(pipedRamp)
  const pattern = sidePattern(solved, [], 'mm')

  test('name and part', () => {
    expect([pattern.name, pattern.ramp, pattern.part]).toEqual(['ramp/side', 'ramp', 'side'])
    expect(pattern.points.map((p) => p.name)).toEqual(['TOE', 'LIP'])
    expect(pattern.points.map((p) => p.at)).toEqual([solved.transition.toe, solved.transition.lip])
  })

  test('curve, notch and toe are traced; the rest is the work of the panel and a ruler', () => {
    const [own, ...sawn] = solved.side.edges
    expect(own!.name).toBe('bottom')
    expect(pattern.edges.map(({ traced }, i) => [sawn[i]!.name, traced])).toEqual([
      ['chamfer', false],
      ['back', false],
      ['top', false],
      ['notch', true],
      ['curve', true],
      ['toe', true],
    ])
    expect(pattern.outline).toBe(solved.side.outline)
    // round from the far end of the panel's own edge to its front
    const line = pathSegments(pattern.cut)
    expect([line[0]!.from, line.at(-1)!.to]).toEqual([
      { x: solved.side.length - 120, y: 0 },
      { x: 0, y: 0 },
    ])
    assertNear(pathLength(pattern.cut), pathLength(solved.side.outline) - (solved.side.length - 120), 1e-9)
  })

  test('the line to trace runs on the cut line in one piece, and leads on to the straight edges beside', () => {
    const traced = solved.side.edges.filter(({ name }) => ['notch', 'curve', 'toe'].includes(name))
    const own = traced.reduce((sum, { path }) => sum + pathLength(path), 0)
    assertNear(pathLength(pattern.line), own + 40 + 40, 1e-6, 'length')
    for (const segment of pathSegments(pattern.line))
      for (const p of [segment.from, segment.to])
        assertNear(pathDistance(pattern.outline, p), 0, 1e-6, 'on the cut line')
  })

  test('the hole for the saw touches floor and wall of a square notch; a round one has none', () => {
    /** full circles wider than the dots of toe and lip */
    const holes = (marks: readonly Mark[]) =>
      marks.flatMap((mark) => {
        if (mark.kind !== 'stroke') return []
        const [half, ...rest] = mark.path.pieces
        const round = half?.kind === 'arc' && rest.length === 1 && mark.path.start.x - half.centre.x > 2
        return round ? [mark.path] : []
      })
    const [hole, ...others] = holes(pattern.marks)
    expect(others).toEqual([])
    const [half] = hole!.pieces
    if (half?.kind !== 'arc') throw new Error('no circle')
    const { centre, outside } = solved.coping!
    const radius = hole!.start.x - half.centre.x
    assertNear(radius, 4, 1e-9, 'an 8 mm drill')
    assertNear(half.centre.x + radius, centre.x + outside / 2, 1e-9, 'touches the wall')
    assertNear(half.centre.y - radius, centre.y - outside / 2, 1e-9, 'touches the floor')
    expect(holes(sidePattern(ramp({ ...plain, coping: piped({ seat: 'round' }) }), [], 'mm').marks)).toEqual(
      [],
    )
  })

  test('the face of a timber within the panel is dashed over its length, that along the cut line is not', () => {
    const solved = ramp(pipedRamp)
    const pattern = sidePattern(solved, [], 'mm')
    const all = boxCorners({ x0: -10, y0: -10, x1: pattern.length + 10, y1: pattern.height + 10 })
    const dashed = timberEdges(pattern, all).flatMap((mark) => (mark.kind === 'stroke' ? [mark.path] : []))
    const seen = { within: 0, along: 0 }
    for (const { x, y, angle, width } of [...solved.studs, ...solved.deckTimbers]) {
      const on = [-0.3, -0.15, 0, 0.15, 0.3].map((share) => ({
        x: x + share * width * Math.cos(angle),
        y: y + share * width * Math.sin(angle),
      }))
      const within = pathDistance(pattern.outline, { x, y }) > 10
      seen[within ? 'within' : 'along']++
      const drawn = on.filter((p) => dashed.some((path) => pathDistance(path, p) < 0.01))
      expect(drawn.length, `${x}, ${y}`).toBe(within ? on.length : 0)
    }
    expect(seen.within).toBeGreaterThan(0)
    expect(seen.along).toBeGreaterThan(5)
  })

  test('one closed outline for each timber: those under the skin first, then those behind the lip', () => {
    const timbers = [...solved.studs, ...solved.deckTimbers]
    expect(solved.deckTimbers.length).toBeGreaterThan(2)
    expect(pattern.markPaths.length).toBe(timbers.length)
    pattern.markPaths.forEach((path, i) => {
      const { width, depth } = timbers[i]!
      assertNear(pathLength(path), 2 * (width + depth), 1e-6, `stud ${i + 1}`)
    })
  })

  test('the facts stand in the units of the design', () => {
    const facts = sidePattern(
      ramp({ ...pipedRamp, height: { layer: 'frame', value: 24.5 * inch } }),
      [],
      'in',
    ).facts
    expect(facts[0]).toMatch(/^heights: frame 24 1\/2, deck /)
    expect(pattern.facts.join('\n')).toContain('notch: its back wall ')
    expect(pattern.facts.at(-1)).toBe('back bottom corner: 45° cut, 120 along both edges')
  })
})
