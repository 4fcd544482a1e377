import { expect, it } from 'vitest'
import { rampPath, schema } from '../../src/index.ts'
import { labelOf } from '../../src/web/fields/labels.ts'

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
