import { describe, expect, test } from 'vitest'
import type { Design, Price } from '../../src/design/design.ts'
import { drawDesign } from '../../src/ramp/solve.ts'
import { partsOf } from '../../src/stock/parts.ts'
import { sawTimber } from '../../src/stock/timber/boards.ts'
import type { TimberPart } from '../../src/stock/timber-parts.ts'
import { designOf } from '../support/design-of.ts'
import { assertNear } from '../support/near.ts'
import { templates, templateText } from '../support/templates.ts'

const base = designOf(templateText('quarter-mm'))

const piece = (mark: string, length: number, more: Partial<TimberPart> = {}): TimberPart => ({
  mark,
  ramp: 'ramp',
  part: 'stud',
  number: null,
  place: null,
  words: mark,
  section: [38, 89],
  ripped: null,
  length,
  ...more,
})

const design = (timber: readonly number[], more: Partial<Design> = {}): Design => ({
  ...base,
  stock: { ...base.stock, timber },
  ...more,
})

const price = (length: number, amount: number): Price => ({
  what: `38 x 89 x ${length}`,
  of: { kind: 'timber', section: [38, 89], length },
  amount,
})

describe.each(templates)('timber of %s', (name) => {
  test('every piece lies once on a board, its kerf and squared ends kept, and no plan buys less', () => {
    const own = designOf(templateText(name))
    const parts = partsOf(own, drawDesign(own)).timbers
    const plans = sawTimber(parts, own)!
    const ends = own.units === 'mm' ? 5 : (3 * 25.4) / 16
    const marks = plans.flatMap(({ boards }) => boards.flatMap(({ cuts }) => cuts.map(({ mark }) => mark)))
    expect([...marks].sort()).toEqual(parts.map(({ mark }) => mark).sort())
    expect(marks.length).toBeGreaterThan(5)
    for (const { boards, least } of plans) {
      expect(least).toBe(true)
      for (const { length, cuts, left, section } of boards) {
        expect(own.stock.timber).toContain(length)
        const sawn = cuts.reduce((sum, cut) => sum + cut.length, 0)
        expect(sawn + (cuts.length - 1) * own.stock.kerf + 2 * ends).toBeLessThanOrEqual(length + 1e-6)
        assertNear(left, Math.max(0, length - ends - sawn - cuts.length * own.stock.kerf), 1e-6)
        for (const cut of cuts) {
          const part = parts.find(({ mark }) => mark === cut.mark)!
          assertNear(part.length, cut.length, 1e-6)
          expect(part.section).toEqual(section)
        }
      }
    }
  })
})

describe('timber', () => {
  test('is cut from the lengths that waste least, by section', () => {
    // 1480 twice with a kerf and two ends: 2973
    const parts = ['a', 'b', 'c'].map((mark) => piece(mark, 1480))
    const [plan, other] = sawTimber([...parts, piece('d', 900, { section: [45, 95] })], design([2400, 3000]))!
    expect(plan!.boards.map(({ length }) => length)).toEqual([3000, 2400])
    expect(other!.boards.map(({ length, section }) => [length, ...section])).toEqual([[2400, 45, 95]])
  })

  test('is cut from what costs least where every length has its price', () => {
    const parts = ['a', 'b'].map((mark) => piece(mark, 1100))
    const both = { before: '', behind: ' EUR', all: [price(1250, 9), price(2400, 5)] }
    expect(sawTimber(parts, design([1250, 2400]))![0]!.boards).toHaveLength(1)
    const dear = { ...both, all: [price(1250, 2), price(2400, 5)] }
    const lengths = (prices: Design['prices']): readonly number[] =>
      sawTimber(parts, design([1250, 2400], prices ? { prices } : {}))![0]!.boards.map(({ length }) => length)
    expect(lengths(both)).toEqual([2400])
    expect(lengths(dear)).toEqual([1250, 1250])
    // one length without a price: by wood again
    expect(lengths({ ...both, all: [price(1250, 2)] })).toEqual([2400])
  })

  test('tells what is ripped, and nothing where a piece is longer than every board', () => {
    const [plan] = sawTimber([piece('a', 500, { ripped: [20, 89] })], design([2400]))!
    expect(plan!.boards[0]!.cuts[0]!.ripped).toEqual([20, 89])
    expect(sawTimber([piece('a', 2400.1)], design([2400]))).toBeNull()
  })
})

// common practice, no source: one ramp 96 in wide, sides of 5/8, studs between them 94 3/4 long: no two from 8 ft
test('eleven studs of 94 3/4 take eleven timbers of 8 ft', () => {
  const parts = Array.from({ length: 11 }, (_, i) => piece(`T${i}`, 94.75 * 25.4))
  const [plan] = sawTimber(parts, { ...design([96 * 25.4]), units: 'in' })!
  expect(plan!.boards).toHaveLength(11)
})
