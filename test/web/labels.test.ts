import { expect, it } from 'vitest'
import { rampPath, schema } from '../../src/index.ts'
import { labelOf, pathOfKey } from '../../src/web/words/labels.ts'
import { listShown, listTyped } from '../../src/web/words/list.ts'
import { madeOf } from '../../src/web/words/page-name.ts'
import { sliderValues, sliderWords } from '../../src/web/words/slider-values.ts'
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

it.each([
  ['ramps[0].height.deck', 'deck height'],
  ['ramps[0].skin[0]', 'skin layers'],
  ['stock.timber[1]', 'timber lengths'],
  ['ramps[0]', 'ramp 1'],
  ['stock.offcuts[1].size', 'stock offcuts 2 size'],
])('what is wrong at %s is found under %s', (path, label) => {
  expect(labelOf(pathOfKey(path))).toBe(label)
})

it.each([
  ['2400, 3000', '[2400, 3000]'],
  ['2400,3000', '[2400,3000]'],
  ['3600', '[3600]'],
  ['[2400, 3000]', '[2400, 3000]'],
  ['timber: [2400, 3000]', '[2400, 3000]'],
  ['none', '[]'],
])('a list is read as one types it: %s', (typed, inFile) => {
  expect(listTyped(typed, 'timber')).toBe(inFile)
})

it('a list is shown as it may be typed, and half typed stays as it is', () => {
  for (const typed of ['2', '2400,', '2400, ', '2400, 3000', 'none', '2400]'])
    expect(listShown(listTyped(typed, 'timber'))).toBe(typed)
  expect(listShown('[ 2400, 3000 ]')).toBe('2400, 3000')
})

it.each([
  // 25.4 mm in an inch
  ['in the middle', 640, 'mm', [640, 150, 3000], 'deck height 640 mm'],
  ['in inches', 24.25 * 25.4, 'in', [24.25, 5.906, 118.11], 'deck height 24 1/4 in'],
  ['typed beyond its ends', 3200.5, 'mm', [3200.5, 150, 3200.5], 'deck height 3200.5 mm'],
] as const)(
  'a handle of the drawing tells where it stands between its ends: %s',
  (_, mm, units, figures, words) => {
    const [now, least, most] = figures
    expect(sliderValues(mm, { least: 150, most: 3000 }, units)).toEqual({ now, least, most })
    expect(sliderWords('deck height', mm, units)).toBe(words)
  },
)
