import { writeFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readDesign } from '../../src/design/read.ts'
import { assertNear } from '../support/near.ts'
import { traceply } from '../support/traceply.ts'
import { useFolder } from './reprint-run.ts'

const { file } = useFolder()

const design = (transition: string): string =>
  `title: Matched\nunits: mm\nramps:\n  - width: 1216\n    height: { frame: 500 }\n    ${transition}\n    toe: 40\n    deck: 500\n    skin: [9 plywood]\n`

describe('traceply fit', () => {
  it('finds the circle of nine points, and its transition can be typed', async () => {
    const angles = Array.from({ length: 9 }, (_, i) => ((6 + 6 * i) * Math.PI) / 180)
    writeFileSync(
      file('points.csv'),
      `x,y\n${angles.map((a) => `${1500 * Math.sin(a)},${20 + 1500 * (1 - Math.cos(a))}`).join('\n')}\n`,
    )
    const { exit, out, err } = await traceply('fit', file('points.csv'), '--json')
    expect([exit, err]).toEqual([0, ''])
    const found = JSON.parse(out)
    assertNear(found.radius, 1500, 1e-6)
    assertNear(found.centre[0], 0, 1e-6)
    assertNear(found.centre[1], 1520, 1e-6)
    expect(found.interval[0]).toBeLessThanOrEqual(found.radius)
    expect(found.interval[1]).toBeGreaterThanOrEqual(found.radius)
    expect(found.residuals).toHaveLength(9)
    expect(found.suspect).toEqual([])
    const text = await traceply('fit', file('points.csv'))
    expect(text.out).toContain(found.transition)
    const reading = readDesign(design(found.transition))
    expect('design' in reading && reading.design.ramps[0]).toMatchObject({
      transition: { circle: { layer: 'surface', radius: 1500 }, tangent: { layer: 'surface', height: 20 } },
    })
  })

  it.each([
    // s² / 8h + h / 2
    [['--chord', '200', '--rise', '60'], 'a radius of 300 to 20000 mm, not 113 mm'],
    [['--chord', '3000', '--rise', '30'], 'a radius of 300 to 20000 mm, not 37515 mm'],
    [['--units', 'in', '--chord', '8', '--rise', '2'], 'a radius of 11 13/16 to 787 3/8 in, not 5 in'],
  ])('writes no line that the design file refuses: %j', async (lengths, words) => {
    const { exit, out } = await traceply('fit', ...lengths)
    expect(exit).toBe(0)
    expect(out.replaceAll(/\s+/g, ' ')).toContain(
      `watch the design file takes ${words}: it has no line for this curve`,
    )
    expect(out).not.toContain('For the design file')
    expect(JSON.parse((await traceply('fit', ...lengths, '--json')).out).transition).toBe(null)
  })

  it('writes no line with a tangent that the design file refuses, and one at its least', async () => {
    const lines = async (level: number): Promise<string> => {
      const points = [10, 20, 30].map((degrees) => {
        const a = (degrees * Math.PI) / 180
        return `${1500 * Math.sin(a)},${level + 1500 * (1 - Math.cos(a))}`
      })
      writeFileSync(file('low.csv'), `${points.join('\n')}\n`)
      return (await traceply('fit', file('low.csv'))).out.replaceAll(/\s+/g, ' ')
    }
    expect(await lines(-100)).toContain('tangent: { surface: -100 }')
    const low = await lines(-201)
    expect(low).toContain('the design file takes a tangent of -100 to 500 mm, not -201 mm')
    expect(low).not.toContain('For the design file')
  })

  it('tells the circle of the others where a point does not belong to them, and offers no other', async () => {
    const angles = Array.from({ length: 9 }, (_, i) => ((6 + 5.5 * i) * Math.PI) / 180)
    // the fifth lies 20 mm out
    const points = angles.map((a, i) => {
      const r = i === 4 ? 1720 : 1700
      return [r * Math.sin(a), 1700 - r * Math.cos(a)]
    })
    writeFileSync(file('out.csv'), `${points.map((p) => p.join(',')).join('\n')}\n`)
    const found = JSON.parse((await traceply('fit', file('out.csv'), '--json')).out)
    expect(found.suspect).toEqual([5])
    assertNear(found.mended.radius, 1700, 1e-6)
    assertNear(found.mended.centre[1], 1700, 1e-6)
    expect(Math.abs(found.radius - 1700)).toBeGreaterThan(20)
    const { out } = await traceply('fit', file('out.csv'))
    expect(out).toMatch(
      /Without point 5:\nradius {3}1700; between .*\ncentre {3}-?0 along, 1700 up\n\nFor the design file:/,
    )
    expect(out.match(/transition: .*/g)).toEqual([
      'transition: { circle: { surface: 1700 }, tangent: { surface: 0 } }',
    ])
    expect(out).not.toContain('runs level')
  })

  it.each([1, 4, 9])(
    'tells how far each point lies off the circle of the others where point %i is 20 mm out',
    async (at) => {
      const angles = Array.from({ length: 9 }, (_, i) => ((6 + 5.5 * i) * Math.PI) / 180)
      const points = angles.map((a, i) => {
        const r = i + 1 === at ? 1720 : 1700
        return [r * Math.sin(a), 1700 - r * Math.cos(a)]
      })
      writeFileSync(file('far.csv'), `${points.map((p) => p.join(',')).join('\n')}\n`)
      const found = JSON.parse((await traceply('fit', file('far.csv'), '--json')).out)
      expect(found.residuals).toHaveLength(9)
      for (const [i, residual] of found.residuals.entries()) assertNear(residual, i + 1 === at ? 20 : 0, 1e-6)
      const { out } = await traceply('fit', file('far.csv'))
      expect(out).toContain('off the circle below\n')
      expect(out.match(/20 outside {2}<- look at this one/g)).toHaveLength(1)
      expect(out).toContain(`watch point ${at} lies 20 mm off the circle of the others: measure it again`)
    },
  )

  it.each([
    [1, 32],
    [5, 6],
    [9, 6],
  ])('keeps the tangent of the others where the height of point %i is typed tenfold', async (at, start) => {
    const angles = Array.from({ length: 9 }, (_, i) => ((start + 5.5 * i) * Math.PI) / 180)
    const points = angles.map((a, i) => [
      1700 * Math.sin(a),
      1700 * (1 - Math.cos(a)) * (i + 1 === at ? 10 : 1),
    ])
    writeFileSync(file('tenfold.csv'), `${points.map((p) => p.join(',')).join('\n')}\n`)
    const { out } = await traceply('fit', file('tenfold.csv'))
    expect(out).toContain('transition: { circle: { surface: 1700 }, tangent: { surface: 0 } }')
    expect(out).not.toContain('bulge')
    // from the true centre to the wrong point
    const [x, y] = points[at - 1]!
    const { residuals } = JSON.parse((await traceply('fit', file('tenfold.csv'), '--json')).out)
    assertNear(residuals[at - 1], Math.hypot(x!, y! - 1700) - 1700, 1e-6)
  })

  it('tells no distance from a circle of the others where they lie on a line', async () => {
    writeFileSync(file('flat.csv'), '0,0\n100,0\n200,0\n300,0\n400,80\n')
    const { out } = await traceply('fit', file('flat.csv'))
    expect(out).toContain('watch point 5 does not belong to the others: measure it again')
    expect(out).toContain('off the circle\n')
  })

  it('tells the circle with two heights exchanged where that fits', async () => {
    const angles = Array.from({ length: 9 }, (_, i) => ((6 + 5.5 * i) * Math.PI) / 180)
    const heights = angles.map((a) => 1700 * (1 - Math.cos(a)))
    const mixed = [0, 1, 2, 4, 3, 5, 6, 7, 8].map((k) => heights[k])
    writeFileSync(
      file('mixed.csv'),
      `${angles.map((a, i) => `${1700 * Math.sin(a)},${mixed[i]}`).join('\n')}\n`,
    )
    const { out } = await traceply('fit', file('mixed.csv'))
    const { residuals } = JSON.parse((await traceply('fit', file('mixed.csv'), '--json')).out)
    for (const [i, angle] of angles.entries()) {
      const away = Math.hypot(1700 * Math.sin(angle), 1700 - mixed[i]!) - 1700
      assertNear(residuals[i], away, 1e-6)
    }
    expect(out).toContain('With the heights of points 4 and 5 exchanged:\nradius   1700')
    expect(out).toContain('transition: { circle: { surface: 1700 }, tangent: { surface: 0 } }')
  })

  it('segments of circles, Machinery’s Handbook 31st ed., p. 79', async () => {
    const { out } = await traceply('fit', '--chord', '16', '--rise', '6', '--units', 'in', '--json')
    assertNear(JSON.parse(out).radius / 25.4, 25 / 3, 1e-9)
    const level = await traceply('fit', '--run', '1302.28', '--height', '607.26', '--json')
    // R sin 50° and R (1 - cos 50°) of R = 1700
    assertNear(JSON.parse(level.out).radius, 1700, 0.02)
  })

  it('tells all that is wrong with the command line at once, and what is wrong with the points', async () => {
    const both = await traceply('fit', '--chord', '10', '--units', 'cm', '--layer', 'top')
    expect(both.exit).toBe(2)
    for (const word of ['--units cm: say mm or in', '--layer top', '--chord and --rise go together'])
      expect(both.err).toContain(word)
    expect((await traceply('fit')).exit).toBe(2)
    expect((await traceply('fit', '--chord', '10', '--rise', '9')).err).toContain('are the two exchanged?')
    writeFileSync(file('line.txt'), '0 0\n100 100\n200 200\n')
    expect(await traceply('fit', file('line.txt'))).toMatchObject({ exit: 1, out: '' })
    writeFileSync(file('bad.txt'), '0 0\n100 x1\n')
    const bad = await traceply('fit', file('bad.txt'))
    expect(bad.exit).toBe(1)
    expect(bad.err).toMatch(/bad\.txt:2:5 `x1` is not a length; /)
  })
})
