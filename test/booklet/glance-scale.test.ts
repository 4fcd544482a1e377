import { expect, test } from 'vitest'
import { bookletJob } from '../../src/job/booklet.ts'
import { usualLaying } from '../../src/job/laying.ts'
import { isRefusal } from '../../src/job/refusal.ts'
import { designOf } from '../support/design-of.ts'
import { opened } from '../support/strokes.ts'

test('views on the first pages of a large ramp stay large enough to be read, for a page more', () => {
  const design =
    designOf(`title: A very large quarter whose title takes two lines on the first page of the booklet, as it is so long
units: mm
ramps:
  - kind: quarter
    width: 3600
    height: { deck: 2400 }
    transition: { circle: { surface: 2600 } }
    toe: 60
    deck: 1200
    sides: { thickness: 21, count: 4 }
    studs: { section: 45 x 95, every: 200 }
    skin: [9 plywood, 9 plywood, 6 hardboard]
    run-out: { sheet: 3 steel }
    deck-board: 18 plywood
    coping: { outside: 60.3, up: 8, out: 8 }
stock: { panels: [{ sheet: 21 plywood, size: 2500 x 3200 }] }
`)
  const job = bookletJob(design, usualLaying('a3'), { only: null, fingerprint: () => '0123456789abcdef' })
  if (isRefusal(job)) throw new Error(JSON.stringify(job))
  const scales = job.pages
    .filter(({ title }) => title.includes('At a glance'))
    .flatMap(({ drawing }) => opened(drawing).words)
    .flatMap(({ text }) => /^1 : (\d+)$/.exec(text)?.[1] ?? [])
    .map(Number)
  expect(scales.length).toBeGreaterThanOrEqual(3)
  expect(Math.max(...scales)).toBeLessThanOrEqual(50)
})

test('of several ramps each drawing from the side carries deck, radius, slope at the lip and pipe, at one scale', () => {
  const one = (name: string, deck: number): string => `
  - name: ${name}
    width: 48
    height: { deck: ${deck} }
    transition: { circle: { surface: 72 } }
    toe: 1 1/2
    deck: 20
    skin: [3/8 plywood]
    deck-board: 3/8 plywood
    coping: { outside: 2 3/8 }`
  for (const decks of [
    [26, 20],
    [24, 28, 30, 32],
  ]) {
    const ramps = decks.map((deck, i) => one('ABCD'[i]!, deck)).join('')
    const job = bookletJob(designOf(`title: Several\nunits: in\nramps:${ramps}\n`), usualLaying('letter'), {
      only: ['glance'],
      fingerprint: () => '0123456789abcdef',
    })
    if (isRefusal(job)) throw new Error(JSON.stringify(job))
    const said = job.pages.flatMap(({ drawing }) => opened(drawing).words).map(({ text }) => text)
    // up to the table, all that is drawn is from the side
    const drawn = said.slice(0, said.indexOf('what'))
    const count = (of: RegExp | string): number =>
      drawn.filter((text) => (typeof of === 'string' ? text === of : of.test(text))).length
    for (const deck of decks) expect(count(`${deck}`), `deck ${deck}`).toBeGreaterThanOrEqual(1)
    expect(count('ridden face R 72')).toBe(decks.length)
    expect(count(/^\d+\.\d°$/)).toBe(decks.length)
    expect(count('pipe 2 3/8')).toBe(decks.length)
    const scales = drawn.filter((text) => text.endsWith('= 1 ft'))
    expect(scales.length).toBe(decks.length)
    expect(new Set(scales).size).toBe(1)
  }
})
