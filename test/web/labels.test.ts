import { expect, it } from 'vitest'
import { rampPath, schema } from '../../src/index.ts'
import { labelOf } from '../../src/web/fields/labels.ts'
import { madeOf } from '../../src/web/page-name.ts'
import { layOut } from '../support/lay-out.ts'
import { templateText } from '../support/templates.ts'

it('no two fields of a ramp, or of the file, are called alike, and each says its own key or a word of it', () => {
  for (const base of [rampPath('quarter'), rampPath('flat'), '']) {
    const rows = schema.filter(
      ({ path, value }) =>
        value.kind !== 'map' &&
        !/\[\]/.test(path) &&
        (base === '' ? path !== '' && !path.startsWith('ramps') : path.startsWith(`${base}.`)),
    )
    const labels = rows.map(({ path }) =>
      labelOf(base === '' ? path : `ramps.0.${path.slice(base.length + 1)}`),
    )
    expect(labels.length).toBeGreaterThan(8)
    expect(new Set(labels).size).toBe(labels.length)
    expect(labels.filter((label) => /\.|^$/.test(label))).toEqual([])
  }
})

it('what the pages of a set are is said with their counts, which add up to all of them', () => {
  for (const [name, several] of [
    ['quarter-mm', false],
    ['pair-mm', true],
  ] as const)
    for (const strips of [false, true]) {
      const { plan } = layOut(templateText(name), 'a4', 'line', { strips })!
      const words = madeOf(plan)
      expect(words).toContain('map')
      expect(words).toContain('test square')
      expect(words.includes('to tape for outer')).toBe(several)
      expect(words.includes('to tape for inner')).toBe(several)
      expect(words.includes('strips')).toBe(strips)
      const counts = words.split(' + ').map((part) => Number(/^\d+/.exec(part)?.[0] ?? 1))
      expect(counts.reduce((sum, count) => sum + count, 0)).toBe(plan.pages.length)
    }
})
