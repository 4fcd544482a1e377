import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import type { Stock, Units } from '../../../src/design/design.ts'
import { inch } from '../../../src/geometry/inch.ts'
import { readLength } from '../../../src/length.ts'
import { nothingKnown } from '../../../src/stock/panel/known.ts'
import { pairing } from '../../../src/stock/panel/pairing.ts'
import { blankOf } from '../../../src/stock/panel/place/shape.ts'
import { circleOf, plain, solve } from '../../ramp/ramps.ts'

const building = readFileSync(new URL('../../../docs/building.md', import.meta.url), 'utf8')

const mm = (text: string, units: Units): number => {
  const read = readLength(text, units)
  if ('error' in read) throw new Error(read.error)
  return read.mm
}

/** What the table speaks of. */
const panels: Readonly<
  Record<
    Units,
    {
      readonly size: Stock['panel']
      readonly deck: number
      readonly toe: number
      readonly kerf: number
      readonly trim: number
      readonly step: number
    }
  >
> = {
  in: {
    size: [48 * inch, 96 * inch],
    deck: 24 * inch,
    toe: 1.5 * inch,
    kerf: inch / 8,
    trim: (3 / 16) * inch,
    step: inch / 16,
  },
  mm: { size: [1220, 2440], deck: 600, toe: 40, kerf: 3, trim: 5, step: 1 },
}

const fits = (height: number, radius: number, units: Units): boolean => {
  const { size, deck, toe, kerf, trim, step } = panels[units]
  const { ramp } = solve({
    ...plain,
    height: { layer: 'frame', value: height },
    transition: circleOf('frame', radius, 'frame', 0),
    toe,
    back: { from: 'deck', value: deck },
    deckBoard: null,
    skin: [],
    runOut: { kind: 'none' },
  })
  if (!ramp.side) return false
  const piece = { blank: blankOf(ramp.side.outline), alike: '', grain: null, faced: true, mustFace: false }
  const both = [piece, piece]
  const kinds = [{ width: size[0], length: size[1], count: 1 }]
  return pairing(both, kinds, { kerf, trim, step }, nothingKnown()).together(0, 1)
}

describe('the tallest pair from one panel', () => {
  const rows = [...building.matchAll(/^\| (48 × 96 in|1220 × 2440 mm) \| (.+) \| (.+) \|$/gm)]

  test('stands in the docs for three radii of both sizes', () => {
    expect(rows.map(([, size]) => size)).toEqual([
      ...Array.from({ length: 3 }, () => '48 × 96 in'),
      ...Array.from({ length: 3 }, () => '1220 × 2440 mm'),
    ])
  })

  test.each(rows.map(([, size, radius, height]) => [size!, radius!, height!] as const))(
    '%s, radius %s: %s fits, and the next step does not',
    (size, radius, height) => {
      const units = size.endsWith('in') ? 'in' : 'mm'
      const [r, h] = [mm(radius, units), mm(height, units)]
      expect(fits(h, r, units)).toBe(true)
      expect(fits(h + panels[units].step, r, units)).toBe(false)
    },
  )
})
