import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { kinds } from '../../src/design/design.ts'
import { curvedOf, isCurved, straightOf } from '../../src/design/kind-traits.ts'
import { starterFor } from '../../src/design/starters.ts'

const sources = readdirSync('src', { recursive: true, encoding: 'utf8' }).filter((file) =>
  /\.tsx?$/.test(file),
)

/** `ramp.kind === 'quarter'`: a new kind would go by unseen. A run-out has a kind too. */
const byName = new RegExp(`(?<!runOut\\??)\\??\\.kind\\s*[!=]==\\s*'(${kinds.join('|')})'`)

describe('kinds of ramp', () => {
  test('stand on one of two sides: curved, or sawn straight', () => {
    const all = kinds.map((kind) => ({ kind }) as { kind: 'quarter' } | { kind: 'flat' })
    expect([...curvedOf(all), ...straightOf(all)].map(({ kind }) => kind)).toHaveLength(kinds.length)
    expect(all.map(isCurved)).toEqual([true, false])
  })

  test('have a starter each, in mm and in inches', () => {
    for (const kind of kinds)
      for (const units of ['mm', 'in'] as const)
        expect(starterFor(kind, units)?.ramps.some((ramp) => ramp.kind === kind)).toBe(true)
  })

  test('are asked for by their side or in a switch that the compiler completes, nowhere by name', () => {
    expect(byName.test("ramp.kind === 'flat'")).toBe(true)
    expect(sources.length).toBeGreaterThan(300)
    const found = sources.filter((file) => byName.test(readFileSync(join('src', file), 'utf8')))
    expect(found).toEqual([])
  })
})
