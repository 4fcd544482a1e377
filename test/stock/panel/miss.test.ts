import { describe, expect, test } from 'vitest'
import { missesOf, missWords } from '../../../src/stock/panel/miss.ts'
import { layPanels } from '../../../src/stock/panel/panels.ts'
import { partsOf } from '../../../src/stock/parts.ts'
import { designOf } from '../../support/design-of.ts'
import { wholeDesign } from '../../support/whole.ts'

const ramp = (units: 'mm' | 'in', keys: Readonly<Record<string, string>>) => {
  const text = `title: plain\nunits: ${units}\nramps:\n  - ${Object.entries(keys)
    .map(([key, value]) => `${key}: ${value}`)
    .join('\n    ')}\n`
  const design = designOf(text)
  const solved = wholeDesign(design)
  const sheets = layPanels(design, partsOf(design, solved).sheets)
  const sides = sheets.find(({ parts }) => parts.some(({ part }) => part === 'side'))!
  return { misses: missesOf(design, solved, sides), panels: sides.panels.length }
}

const tall = {
  width: '1216',
  height: '{ deck: 1180 }',
  transition: '{ circle: { surface: 2400 } }',
  toe: '40',
  deck: '600',
  skin: '[9 plywood]',
  'run-out': '{ sheet: 1.5 steel }',
}

describe('both sides that miss one panel', () => {
  test.each([
    ['mm', tall],
    [
      'in',
      {
        width: '48',
        height: '{ deck: 46 }',
        transition: '{ circle: { surface: 94 } }',
        toe: '1 1/2',
        deck: '24',
        skin: '[3/8 plywood]',
        'run-out': '{ sheet: 1/16 steel }',
      },
    ],
  ] as const)(
    'come out of one with every height, radius or deck that is offered, not with the next: %s',
    (units, keys) => {
      const { misses, panels } = ramp(units, keys)
      expect(panels).toBe(2)
      expect(misses).toHaveLength(1)
      const [{ by, ways }] = misses as [(typeof misses)[number]]
      expect(by).toBeGreaterThan(1)
      expect(ways.length).toBeGreaterThanOrEqual(2)
      for (const way of ways) {
        const typed = way.startsWith('circle')
          ? { transition: `{ ${way} }` }
          : Object.fromEntries([way.split(/: (.*)/)])
        expect(ramp(units, { ...keys, ...typed }).panels, way).toBe(1)
        if (units === 'in') continue
        const next = JSON.parse(JSON.stringify(typed).replace(/\d+/, (n) => String(Number(n) + 1)))
        expect(ramp(units, { ...keys, ...next }).panels, `1 mm more than ${way}`).toBe(2)
      }
    },
  )

  test('are nothing to say where they lie on one, or where two are clamped', () => {
    expect(ramp('mm', { ...tall, height: '{ deck: 640 }' }).misses).toEqual([])
  })

  test('by less than a millimetre say so, never by 0', () => {
    const design = { units: 'mm' } as Parameters<typeof missWords>[2]
    const words = (by: number): string => missWords({ ramp: 'outer', by, ways: [] }, false, design)
    expect(words(0.2)).toBe('both sides miss one panel by less than 1')
    expect(words(34)).toBe('both sides miss one panel by 34')
  })
})
