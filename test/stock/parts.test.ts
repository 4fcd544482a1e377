import { describe, expect, test } from 'vitest'
import { pathBounds } from '../../src/geometry/bounds.ts'
import { type Path, pathSegments } from '../../src/geometry/path.ts'
import { solveDesign } from '../../src/ramp/solve.ts'
import { partsOf } from '../../src/stock/parts.ts'
import { designOf } from '../support/design-of.ts'
import { assertNear } from '../support/near.ts'
import { templates, templateText } from '../support/templates.ts'

const partsFrom = (text: string) => {
  const design = designOf(text)
  const solved = solveDesign(design)
  return { ...partsOf(design, solved), solved, design }
}

const ribbed = partsFrom(`title: plain
units: mm
ramps:
  - width: 3000
    height: { frame: 640 }
    transition: { circle: { frame: 1724 } }
    toe: 40
    deck: 500
    sides: { thickness: 18, count: 3 }
    studs: { section: 38 x 89, every: 200 }
    skin: [9 plywood, 9 plywood, 6 hardboard]
    run-out: { sheet: 1.5 steel }
    deck-board: 15 plywood
`)

const size = (path: Path): readonly [number, number] => {
  const { x0, y0, x1, y1 } = pathBounds(path)
  return [x1 - x0, y1 - y0]
}

/** Shoelace over the chords, and the segment between chord and arc. */
const area = (path: Path): number =>
  pathSegments(path).reduce((sum, s) => {
    const flat = (s.from.x * s.to.y - s.to.x * s.from.y) / 2
    return s.kind === 'arc' ? sum + flat + (s.radius ** 2 * (s.sweep - Math.sin(s.sweep))) / 2 : sum + flat
  }, 0)

describe('the parts of a design', () => {
  test('have marks of their own, in every template', () => {
    expect(templates.length).toBeGreaterThan(4)
    for (const name of templates) {
      const { sheets, timbers } = partsFrom(templateText(name))
      const marks = [...sheets, ...timbers].map(({ mark }) => mark)
      expect(marks.length).toBeGreaterThan(8)
      expect(new Set(marks).size).toBe(marks.length)
      for (const mark of marks) expect(mark).toMatch(/^[A-Z]\d{1,3}$/)
    }
  })

  test('are left side, ribs and right side, the left one the mirror of the right', () => {
    const sides = ribbed.sheets.filter(({ part }) => part === 'side' || part === 'rib')
    expect(sides.map(({ mark, words }) => `${mark} ${words}`)).toEqual([
      'S1 left side',
      'S2 rib',
      'S3 right side',
    ])
    const [left, rib, right] = sides.map(({ outline }) => outline)
    expect(rib).toEqual(right)
    assertNear(area(left!), -area(right!), 1e-6)
    // the right side seen from outside has its toe at the left
    const box = pathBounds(left!)
    assertNear(box.x1, 0, 1e-9)
    assertNear(pathBounds(right!).x0, 0, 1e-9)
    expect(sides.map(({ faced }) => faced)).toEqual([true, false, true])
  })

  test('are as many pieces of skin as the layers are laid in, whose widths and gaps make up the ramp', () => {
    const [ramp] = ribbed.solved.ramps
    const skin = ribbed.sheets.filter(({ part }) => part === 'skin')
    expect(skin).toHaveLength(
      ramp!.skin.reduce((n, { pieces, widths }) => n + pieces.length * widths.length, 0),
    )
    for (const [i, layer] of ramp!.skin.entries()) {
      const own = skin.filter(({ words }) => words.startsWith(`layer ${i + 1},`))
      const across = own.filter(({ words }) => words.includes('piece 1') || !words.includes('piece'))
      // 3 mm is left between two sheets
      const wide = across.reduce((sum, { outline }) => sum + size(outline)[0], 0) + 3 * (across.length - 1)
      assertNear(wide, 3000, 1e-6)
      const ups = own.filter(({ words }) => words.endsWith('1 from the left'))
      const long = ups.reduce((sum, { outline }) => sum + size(outline)[1], 0) + 3 * (ups.length - 1)
      assertNear(long, layer.length, 1e-6)
      for (const { grain, sheet } of own) expect(grain).toBe(sheet.material === 'plywood' ? 'x' : null)
    }
  })

  test('are a run-out as long as the note says, in two where no sheet is as long as the ramp is wide', () => {
    const runOut = ribbed.sheets.filter(({ part }) => part === 'run-out')
    expect(runOut.map(({ words }) => words)).toEqual([
      'run-out sheet, 1 from the left',
      'run-out sheet, 2 from the left',
    ])
    const { message } = ribbed.solved.checks.find(({ id }) => id === 'toe-step')!
    const [, long] = /cut its sheet (\d+) mm long/.exec(message)!
    for (const { outline } of runOut) {
      assertNear(size(outline)[0], 1500, 1e-9)
      assertNear(size(outline)[1], Number(long), 1e-9)
    }
  })

  test('are a stud for every bay, and one ripped where the toe is too low', () => {
    const [ramp] = ribbed.solved.ramps
    const studs = ribbed.timbers.filter(({ part }) => part === 'stud')
    expect(studs).toHaveLength(2 * ramp!.studs.length)
    // (3000 − 3 · 18) / 2
    for (const { length, section } of studs) {
      assertNear(length, 1473, 1e-9)
      expect(section).toEqual([38, 89])
    }
    const ripped = ramp!.studs.filter(({ width, depth }) => Math.min(width, depth) < 38)
    expect(studs.filter((part) => part.ripped !== null)).toHaveLength(2 * ripped.length)
  })

  test('are blocks between the studs under each seam without a rib', () => {
    const bare = partsFrom(`title: plain
units: mm
ramps:
  - width: 3000
    height: { frame: 640 }
    transition: { circle: { frame: 1724 } }
    toe: 40
    deck: 500
    skin: [9 plywood]
`)
    const [ramp] = bare.solved.ramps
    const [seam] = ramp!.skin[0]!.acrossSeams
    expect(seam!.rib).toBe(false)
    const blocks = bare.timbers.filter(({ part }) => part === 'block')
    const gaps = ramp!.studs.slice(1).map((next, i) => {
      const last = ramp!.studs[i]!
      return next.at - next.width / 2 - (last.at + last.width / 2)
    })
    expect(blocks).toHaveLength(gaps.filter((gap) => gap >= 40).length * ramp!.skin[0]!.acrossSeams.length)
    assertNear(
      blocks.reduce((sum, { length }) => sum + length, 0),
      gaps.filter((gap) => gap >= 40).reduce((sum, gap) => sum + gap, 0),
      1e-6,
    )
  })
})
