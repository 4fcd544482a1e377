import { describe, expect, test } from 'vitest'
import { paperNames } from '../../src/design/design.ts'
import { readDesign } from '../../src/design/read.ts'
import { writeStarter } from '../../src/design/starter.ts'
import { starters } from '../../src/design/starters.ts'
import { pointsPerMm } from '../../src/geometry/inch.ts'
import { paperOf } from '../../src/page/sheet/paper.ts'
import { type Sheet, sheetWindow } from '../../src/page/sheet/sheet.ts'
import { pipeStrip } from '../../src/pattern/pipe-strip.ts'
import { copingOf, inch, piped, plain } from '../ramp/ramps.ts'
import { assertNear } from '../support/near.ts'

describe('papers', () => {
  // ISO 216, mm
  const iso = { a4: [210, 297], a3: [297, 420], a2: [420, 594], a1: [594, 841], a0: [841, 1189] } as const
  // ASME Y14.1, in: A and B; legal is the common size (from memory)
  const ansi = { letter: [8.5, 11], tabloid: [11, 17], legal: [8.5, 14] } as const

  test.each(Object.entries(iso))('%s is %j mm', (name, [width, height]) => {
    const paper = paperOf(name as keyof typeof iso)
    expect([paper.width, paper.height]).toEqual([width, height])
  })

  test.each(Object.entries(ansi))('%s is %j in', (name, [width, height]) => {
    const paper = paperOf(name as keyof typeof ansi)
    assertNear(paper.width, width * inch, 1e-9)
    assertNear(paper.height, height * inch, 1e-9)
  })

  test('none is missing, each stands upright', () => {
    expect([...paperNames].sort()).toEqual([...Object.keys(iso), ...Object.keys(ansi)].sort())
    for (const name of paperNames) expect(paperOf(name).width).toBeLessThan(paperOf(name).height)
  })

  // ISO 32000-1, 8.3.2.3: a point is 1/72 in
  test.each([
    ['letter', 612, 792],
    ['a4', 595.2756, 841.8898],
    ['legal', 612, 1008],
    ['tabloid', 792, 1224],
  ] as const)('%s is %d × %d points', (name, width, height) => {
    const paper = paperOf(name)
    assertNear(paper.width * pointsPerMm, width, 5e-5)
    assertNear(paper.height * pointsPerMm, height, 5e-5)
  })

  test('the window of a sheet without a correction is the page less its margins', () => {
    const sheet: Sheet = {
      paper: paperOf('a4'),
      margins: { top: 10, right: 11, bottom: 12, left: 13 },
      correction: [1, 0, 0, 1],
    }
    const window = sheetWindow(sheet)
    const expected = { x0: 13, y0: 12, x1: 199, y1: 287 }
    for (const side of ['x0', 'y0', 'x1', 'y1'] as const) assertNear(window[side], expected[side], 1e-9, side)
  })
})

describe('pipes', () => {
  // outside diameters: ASME B36.10M / ASTM A53 (in); EN 10255 / ISO 65 (mm); with the tolerance of each
  const sold = [
    ['NPS 1-1/4', 1.66 * inch, inch / 64],
    ['NPS 1-1/2', 1.9 * inch, inch / 64],
    ['NPS 2', 2.375 * inch, 0.01 * 2.375 * inch],
    ['NPS 2-1/2', 2.875 * inch, 0.01 * 2.875 * inch],
    ['DN 40', 48.3, 0.5],
    ['DN 50', 60.3, 0.6],
    ['DN 65', 76.1, 0.8],
  ] as const

  test.each(sold)('%s: the strip reads every diameter it may come in', (_, outside, tolerance) => {
    for (const units of ['mm', 'in'] as const) {
      const { ticks } = pipeStrip(outside, 1000, units)!
      // wrapped length of a circle through the middle of the paper, 0.1 mm thick
      const reads = (diameter: number): number => Math.PI * (diameter + 0.1)
      expect(ticks[0]!.at).toBeLessThan(reads(outside - tolerance))
      expect(ticks.at(-1)!.at).toBeGreaterThan(reads(outside + tolerance))
    }
  })

  test.each(sold)('%s seated with the same reveals: the notch grows with the pipe', (_, outside) => {
    const { centre, down } = copingOf({ ...plain, coping: piped({ outside }) })
    assertNear(down, outside - 15 - 8, 1e-9, 'pipe less board less `up`')
    assertNear(centre.y, 640 + 15 + 8 - outside / 2, 1e-9, 'middle')
  })
})

describe('timber and pipe of the starters and of the keys left out are such as is sold', () => {
  // dry lumber, PS 20: a 2×4 is 1 1/2 × 3 1/2 in; EN 336 and CLS: 38 × 89, 45 × 95 mm (the mm sizes from memory)
  const timber = [
    [1.5 * inch, 3.5 * inch],
    [38, 89],
    [45, 95],
  ]
  // ASME B36.10M NPS 2; EN 10255 DN 40 and DN 50
  const pipe = [2.375 * inch, 48.3, 60.3]
  const sizes = (text: string) => {
    const reading = readDesign(text)
    if ('problems' in reading) throw new Error(reading.problems.map((p) => p.message).join('\n'))
    return reading.design.ramps.map((ramp) => ({
      section: ramp.studs.section,
      outside: ramp.kind === 'quarter' ? ramp.coping?.outside : undefined,
    }))
  }
  const near = (a: number, b: number): boolean => Math.abs(a - b) < 1e-6

  test.each(starters.map((starter) => [starter.name, writeStarter(starter)]))('%s', (_, text) => {
    const said = text.replace(/^ *section:.*\n/gm, '')
    for (const design of [text, said.replace(/^ *studs:.*\n(?= {6}every)/m, '    studs:\n')])
      for (const { section, outside } of sizes(design)) {
        expect(timber.some((own) => own.every((mm, i) => near(mm, section[i]!)))).toBe(true)
        if (outside !== undefined) expect(pipe.some((mm) => near(mm, outside))).toBe(true)
      }
  })
})
