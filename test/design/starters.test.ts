import { describe, expect, it } from 'vitest'
import { rowsUnder } from '../../src/design/schema.ts'
import { type StarterMap, writeStarter } from '../../src/design/starter.ts'
import { starterFor, starters } from '../../src/design/starters.ts'
import { solveDesign } from '../../src/ramp/solve.ts'
import { good, problemsOf } from './sample.ts'

const writtenKeys = (map: StarterMap): number =>
  Object.values(map).reduce<number>(
    (sum, value) =>
      sum + 1 + (typeof value === 'string' || Array.isArray(value) ? 0 : writtenKeys(value as StarterMap)),
    0,
  )

describe.each(starters)('$name', (starter) => {
  const text = writeStarter(starter)
  it('reads back without a problem', () => {
    expect(problemsOf(text)).toEqual([])
    expect(good(text)).toMatchObject({ title: starter.title, units: starter.units })
    expect(good(text).ramps).toHaveLength(starter.ramps.length)
  })
  it('has a comment on every key', () => {
    const keys = 3 + starter.ramps.reduce((sum, ramp) => sum + writtenKeys(ramp), 0)
    const lines = text.split('\n').filter((line) => /^[ -]*[a-z-]+:/.test(line))
    expect(lines).toHaveLength(keys)
    for (const line of lines) expect(line).toMatch(/ {2}# .{4,}$/)
  })
  it('explains a key in the words of the table', () => {
    expect(text).toContain(
      `# ${rowsUnder('ramps[quarter]').find((row) => row.path === 'ramps[quarter].kind')!.help}\n`,
    )
  })
})

it('the values of a starter come through', () => {
  const text = writeStarter(starterFor('quarter', 'in'))
  // 47 1/2, 25, 80 and 2 3/8 in
  expect(good(text).ramps[0]).toMatchObject({
    width: 1206.5,
    height: { layer: 'deck', value: 635 },
    transition: { circle: { layer: 'surface', radius: 2032 } },
    coping: { outside: 60.325, seat: 'square' },
  })
})

it('among them are both units, both seats, one without a pipe and one that stores another', () => {
  const designs = starters.map((starter) => good(writeStarter(starter)))
  const ramps = designs.flatMap((design) => design.ramps.filter((ramp) => ramp.kind === 'quarter'))
  expect(new Set(designs.map((design) => design.units))).toEqual(new Set(['mm', 'in']))
  expect(new Set(ramps.map((ramp) => ramp.coping?.seat))).toEqual(new Set(['square', 'round', undefined]))
  // 1216 − 2 × 18 − 12
  expect(ramps.find((ramp) => ramp.storesInside !== null)).toMatchObject({ name: 'inner', width: 1168 })
})

it('one is chosen by kind and units', () => {
  expect(starterFor('quarter', 'mm').name).toBe('quarter-mm')
  expect(starterFor('quarter', 'in').name).toBe('quarter-in')
  expect(starterFor('flat', 'mm').name).toBe('quarter-and-flat-mm')
  expect(starterFor('flat', 'in').name).toBe('quarter-and-flat-in')
})

it('a text that YAML would take for something else is put in quotes', () => {
  const odd = { ...starters[0]!, title: 'Low: the "boathouse" # 1 [pair]' }
  expect(good(writeStarter(odd)).title).toBe(odd.title)
})

it('what one offers as a comment works when its # is taken away', () => {
  let lines = 0
  for (const starter of starters) {
    const typed = writeStarter(starter).replace(
      /^( *)# (prices|space|wheels):/gm,
      (_, indent: string, key: string) => {
        lines++
        return `${indent}${key}:`
      },
    )
    const design = good(typed)
    expect(design.prices && design.space, starter.name).toBeTruthy()
    const cut = starter.ramps.some(({ chamfer }) => chamfer !== undefined)
    expect(design.ramps.some((ramp) => ramp.kind === 'quarter' && ramp.wheels !== null)).toBe(cut)
    expect(solveDesign(design).checks.filter(({ level }) => level === 'stop')).toEqual([])
  }
  expect(lines).toBeGreaterThan(14)
})
