import { describe, expect, test } from 'vitest'
import { editDesign } from '../../src/design/edit.ts'
import { writeStarter } from '../../src/design/starter.ts'
import { starterFor } from '../../src/design/starters.ts'
import { cutsJob } from '../../src/job/cuts.ts'
import { figuresJob } from '../../src/job/figures.ts'
import { withNearMisses } from '../../src/job/near/near-misses.ts'
import { readSettled } from '../../src/job/settle/settle.ts'
import { showLength } from '../../src/length.ts'

const quarter = writeStarter(starterFor('quarter', 'mm'))
const settledOf = (text: string) => {
  const reading = readSettled(text)
  if ('problems' in reading) throw new Error(reading.problems[0]!.message)
  return reading
}
const designOf = (text: string) => settledOf(text).design
const missesOf = (text: string): readonly string[] => {
  const { design, answers } = settledOf(text)
  return withNearMisses(figuresJob(design, [], answers), text, design)
    .solved.checks.filter(({ id }) => id === 'near-miss')
    .map(({ message }) => message)
}
const countsOf = (text: string) => figuresJob(designOf(text)).pages!
const pagesOf = (text: string): number => {
  const pages = countsOf(text)
  return pages[pages.takes]
}
const panelsOf = (text: string): number => {
  const job = cutsJob(designOf(text))
  if ('refused' in job) throw new Error(job.refused)
  return job.sheets.reduce((sum, { panels }) => sum + panels.length, 0)
}
const boardsOf = (text: string): number =>
  figuresJob(designOf(text)).stock!.timber.reduce((sum, { boards }) => sum + boards.length, 0)

describe('a near miss', () => {
  test('is told with the widest ramp whose skin comes out of one panel less', () => {
    // two pieces and a cut of 3 between the panel's own ends: (2440 − 3) / 2 = 1218.5
    const wide = editDesign(quarter, 'ramps.0.width', '1220 mm')
    expect(missesOf(wide)).toEqual(['`width: 1218 mm` in place of 1220 mm saves 1 panel of 9 plywood'])
    expect(panelsOf(editDesign(wide, 'ramps.0.width', '1218 mm'))).toBe(panelsOf(wide) - 1)
    expect(panelsOf(editDesign(wide, 'ramps.0.width', '1219 mm'))).toBe(panelsOf(wide))
    expect(missesOf(quarter)).toEqual([])
  })

  test('is told with the trim that costs it where a panel that is there is used first', () => {
    // its ends are no factory's: (2440 − 2 · 5 − 3) / 2 = 1213.5
    const there = editDesign(quarter, 'stock.offcuts', '[{ sheet: 9 plywood, size: 1220 x 2440 }]')
    expect(missesOf(there)).toEqual([
      '`width: 1213 mm` in place of 1216 mm saves 1 panel of 9 plywood; ' +
        'panels that need no trimming (`stock: { trim: 0 }`) save 1 panel of 9 plywood',
    ])
    expect(panelsOf(editDesign(there, 'ramps.0.width', '1213 mm'))).toBe(panelsOf(there) - 1)
    expect(panelsOf(editDesign(there, 'ramps.0.width', '1214 mm'))).toBe(panelsOf(there))
    expect(panelsOf(editDesign(there, 'stock.trim', '0'))).toBe(panelsOf(there) - 1)
  })

  test('is told of sides that are a little too long for a panel, and so are made of pieces', () => {
    const flat = writeStarter(starterFor('flat', 'mm'))
    const long = editDesign(flat, 'ramps.0.length', '2441')
    const jointsOf = (text: string): number =>
      figuresJob(designOf(text)).solved.ramps.reduce((sum, { splices }) => sum + splices.length, 0)
    expect(jointsOf(long)).toBe(1)
    const told = missesOf(long).find((words) => words.includes('joints of sides'))!
    const [, typed] = /^`length: (\d+ mm)` in place of 2441 mm saves .*2 joints of sides/.exec(told)!
    // a piece as long as the panel keeps the panel's own ends
    expect(typed).toBe('2440 mm')
    expect(jointsOf(editDesign(long, 'ramps.0.length', typed!))).toBe(0)
    // and of a quarter by its deck: as much less as the side is longer than 2440
    const deck = editDesign(quarter, 'ramps.0.deck', '1570')
    const over = figuresJob(designOf(deck)).solved.ramps[0]!.length! - 2440
    expect(over).toBeGreaterThan(0)
    const shorter = missesOf(deck).find((words) => words.includes('joints of sides'))!
    const [, less] = /`deck: (\d+) mm` in place of 1570 mm saves/.exec(shorter)!
    expect(Number(less)).toBe(Math.floor(1570 - over))
    expect(jointsOf(deck)).toBe(1)
    expect(jointsOf(editDesign(deck, 'ramps.0.deck', less!))).toBe(0)
  })

  test('is told of studs', () => {
    // two studs from 2400 squared at both ends: (2400 − 10 + 3) / 2 − 3 = 1193.5; the sides are 18 each
    const wide = editDesign(editDesign(quarter, 'stock.timber', '[2400]'), 'ramps.0.width', '1240')
    const [told] = missesOf(wide)
    expect(told).toMatch(/^`width: 1229 mm` in place of 1240 mm saves \d+ timbers/)
    expect(boardsOf(editDesign(wide, 'ramps.0.width', '1229 mm'))).toBeLessThan(boardsOf(wide))
    expect(boardsOf(editDesign(wide, 'ramps.0.width', '1230 mm'))).toBe(boardsOf(wide))
  })

  test('is told of timber of the ramp that it is of, where ramps take two sections', () => {
    const two = [
      ['stock.timber', '[2400]'],
      ['ramps.0.name', 'outer'],
      ['ramps.0.width', '1240'],
      ['ramps.0.studs.section', '38 x 63'],
    ].reduce(
      (text, [key, value]) => editDesign(text, key!, value!),
      `${quarter}
  - kind: flat
    name: floor
    width: 1150
    length: 800
    height: { surface: 120 }
    studs: { section: 38 x 89 }
    skin: []
`,
    )
    const bought = (text: string) =>
      figuresJob(designOf(text)).stock!.timber.map(({ section: [, deep], boards }) => [deep, boards.length])
    const less = editDesign(two, 'ramps.0.width', '1229 mm')
    const [[, before], [, others]] = bought(two) as [[number, number], [number, number]]
    expect(bought(less)).toEqual([
      [63, expect.any(Number)],
      [89, others],
    ])
    const saved = before - bought(less)[0]![1]!
    expect(saved).toBeGreaterThan(1)
    expect(missesOf(two).join()).toContain(
      `\`width: 1229 mm\` in place of 1240 mm saves ${saved} timbers of 38 × 63`,
    )
  })

  test('is not told where all fits', () => {
    const fits = editDesign(quarter, 'ramps.0.width', '1150')
    expect(missesOf(fits).filter((words) => words.includes('width') || words.includes('trim'))).toEqual([])
  })

  test('is told of height, radius and toe where each of them saves pages, and a step nearer does not', () => {
    const inches = writeStarter(starterFor('quarter', 'in'))
    const [told] = missesOf(inches)
    for (const [key, now, way] of [
      ['height.deck', 25, -1],
      ['transition.circle.surface', 80, -1],
      ['toe', 1.5, 1],
    ] as const) {
      const [, typed] = new RegExp(`\\\`${key}: ([\\d /]+) in\\\` in place of`).exec(told!)!
      const saved = editDesign(inches, `ramps.0.${key}`, typed!)
      const [before, after] = [countsOf(inches), countsOf(saved)]
      expect([before.takes, after.takes]).toEqual(['line', 'ribbon'])
      // the ribbon was to be had before, so that it is taken now saves nothing
      const gain = before.ribbon - after.ribbon
      expect(gain).toBe(1)
      expect(told).toContain(
        `\`${key}: ${typed} in\` in place of ${showLength(now * 25.4, 'in')} in saves 1 page of`,
      )
      const [whole, top, bottom] = typed!.split(/[ /]/).map(Number)
      const mm = whole! + (top ? top / bottom! : 0)
      expect(Math.sign(mm - now)).toBe(way)
      expect(pagesOf(editDesign(inches, `ramps.0.${key}`, `${mm - way / 16} in`))).toBe(pagesOf(inches))
    }
  })

  test('is told of a flat, and a step nearer saves nothing', () => {
    const flat = writeStarter(starterFor('flat', 'mm'))
    const sized = (width: string, length: string): string =>
      editDesign(editDesign(flat, 'ramps.0.width', width), 'ramps.0.length', length)
    for (const [design, key, typed] of [
      // a sheet as wide as the panel is one piece
      [sized('1225', '2440'), 'width', '1220 mm'],
      // a timber is saved long before the skin is as short as the panel is wide
      [sized('1216', '1260'), 'length', '1256 mm'],
    ] as const) {
      expect(missesOf(design).join()).toContain(`\`${key}: ${typed}\` in place of`)
      const bought = (text: string): number => panelsOf(text) + boardsOf(text)
      const one = Number.parseInt(typed, 10)
      expect(bought(editDesign(design, `ramps.0.${key}`, `${one}`))).toBeLessThan(bought(design))
      expect(bought(editDesign(design, `ramps.0.${key}`, `${one + 1}`))).toBe(bought(design))
    }
  })

  test('is told of the value behind several that save nothing', () => {
    // a stud of two to a length, then a panel as it is, come nearer than half a panel: (2440 − 3) / 2 = 1218.5
    const wide = editDesign(quarter, 'ramps.0.width', '1260')
    expect(missesOf(wide).join()).toContain('`width: 1218 mm` in place of 1260 mm saves 1 panel of 9 plywood')
    expect(panelsOf(editDesign(wide, 'ramps.0.width', '1218'))).toBe(panelsOf(wide) - 1)
  })

  test('is told of a file that leaves a figure to the program, which is found anew', () => {
    const open = `${editDesign(editDesign(editDesign(quarter, 'ramps.0.width', '1220'), 'ramps.0.deck', 'solve'), 'ramps.0.chamfer', 'none')}\n    limits: { length: 1380 }\n`
    const [told] = missesOf(open)
    expect(told).toContain('`width: 1218 mm` in place of 1220 mm saves 1 panel of 9 plywood')
    // its own figure is not typed
    expect(told).not.toContain('`deck:')
    expect(panelsOf(editDesign(open, 'ramps.0.width', '1218'))).toBe(panelsOf(open) - 1)
  })
})
