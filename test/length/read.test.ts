import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readLength } from '../../src/length/read.ts'
import { showLength } from '../../src/length/show.ts'
import { assertNear } from '../support/near.ts'

const mm = (text: string, units: 'mm' | 'in' = 'in') => {
  const reading = readLength(text, units)
  if ('error' in reading) throw new Error(reading.error)
  return reading.mm
}
const error = (text: string, units: 'mm' | 'in' = 'in') => {
  const reading = readLength(text, units)
  return 'error' in reading ? reading.error : `read as ${reading.mm} mm`
}

describe('a length', () => {
  // by hand, from 1 in = 25.4 mm exactly (international inch, 1959)
  it.each([
    ['17 3/16', 436.5625],
    ['17-3/16 in', 436.5625],
    ['17 3/16"', 436.5625],
    ['17 3/16 inches', 436.5625],
    ['17³⁄16', undefined],
    ['4 ft 7 1/4 in', 1403.35],
    ['4\'7 1/4"', 1403.35],
    ['4\' 7 1/4"', 1403.35],
    ['4’-7¼”', 1403.35],
    ["4' 7 1/4", 1403.35],
    ["4'7 1/4''", 1403.35],
    ['5 ft', 1524],
    ['0.5', 12.7],
    ['.5', 12.7],
    ['3/4', 19.05],
    ['1 / 2', 12.7],
    ['19/16', 30.1625],
    ['1.2 m', 1200],
    ['120 cm', 1200],
    ['18 mm', 18],
    ['18mm', 18],
    ['60.3 MM', 60.3],
    ['-3/8', -9.525],
    ['−3/8', -9.525],
    ['- 1 1/2 in.', -38.1],
    ['  7  ', 177.8],
  ])('`%s` in a file of inches', (text, expected) => {
    if (expected === undefined) expect(error(text)).toContain('is not a length')
    else expect(mm(text)).toBe(expected)
  })

  it('is read in mm where the file says so', () => {
    expect(mm('640', 'mm')).toBe(640)
    expect(mm('60.3', 'mm')).toBe(60.3)
    expect(mm('1/2', 'mm')).toBe(0.5)
    expect(mm('17 3/16 in', 'mm')).toBe(436.5625)
    expect(mm("4'", 'mm')).toBe(1219.2)
    // after feet, inches go without saying
    expect(mm('4 ft 6', 'mm')).toBe(1371.6)
  })

  it('never comes out as minus zero', () => {
    expect(Object.is(mm('-0'), 0)).toBe(true)
  })

  it('tells whether the unit was written', () => {
    expect(readLength('12', 'mm')).toEqual({ mm: 12, unit: null })
    expect(readLength('12 cm', 'mm')).toEqual({ mm: 120, unit: 'cm' })
    expect(readLength('1 ft 2', 'mm')).toEqual({ mm: 355.6, unit: 'in' })
  })

  it('is the double nearest to the fraction', () => {
    fc.assert(
      fc.property(fc.nat(500), fc.nat(63), fc.constantFrom(2, 4, 8, 16, 32, 64), (whole, top, bottom) => {
        fc.pre(top < bottom)
        // exact in whole numbers: tenths of a mm over the denominator, one rounding
        const exact = Number(BigInt(whole * bottom + top) * 254n) / (bottom * 10)
        expect(mm(`${whole} ${top}/${bottom}`)).toBe(exact)
        expect(mm(`-${whole}-${top}/${bottom} in`)).toBe(0 - exact)
      }),
    )
  })
})

describe('a length that cannot be read says why', () => {
  const forms = 'write it like 640, 17 3/16 in, 4 ft 7 1/4 in, 1.2 m or 18 mm'
  it.each([
    ['3/0', '`3/0` has a fraction over zero; the lower number must be 1 or more'],
    ['17 3/0 in', '`17 3/0 in` has a fraction over zero; the lower number must be 1 or more'],
    ['12 mn', 'unknown unit `mn` in `12 mn`; did you mean `mm`?'],
    ['12 inchs', 'unknown unit `inchs` in `12 inchs`; did you mean `inch`?'],
    ['2 cubits', 'unknown unit `cubits` in `2 cubits`; use mm, cm, m, in or ft'],
    ['1,5', '`1,5` has a comma; write `1.5`, with a point'],
    ['1,200', '`1,200` has a comma; write `1200` or `1.2`, as you mean it'],
    ['-12,000 mm', '`-12,000 mm` has a comma; write `-12000 mm` or `-12 mm`, as you mean it'],
    ['0,125', '`0,125` has a comma; write `0.125`, with a point'],
    ['1,2000', '`1,2000` has a comma; write `1.2000`, with a point'],
    ['1.200,5', '`1.200,5` has a comma; write `1200.5`, with a point'],
    ['1,200.5 mm', '`1,200.5 mm` has a comma; write `1200.5 mm`, with a point'],
    ["1'200,5", "`1'200,5` has a comma; write `1200.5`, with a point"],
    ['4\'7,5"', '`4\'7,5"` has a comma; write `4\'7.5"`, with a point'],
    ['1,200,000', '`1,200,000` has a comma; write `1200000`, without it'],
    ["1'000", "`1'000` has the mark of feet; write `1000`, or feet as in 4 ft 7 1/4 in"],
    ['1’200.5 mm', '`1’200.5 mm` has the mark of feet; write `1200.5 mm`, or feet as in 4 ft 7 1/4 in'],
    ["2'14", "`2'14` has 12 in or more after its feet; write it like 4 ft 7 1/4 in"],
    ['4 ft 90 in', '`4 ft 90 in` has 12 in or more after its feet; write it like 4 ft 7 1/4 in'],
    ['4 ft 12 in', '`4 ft 12 in` has 12 in or more after its feet; write it like 4 ft 7 1/4 in'],
    ['17 19/16', '`17 19/16` has the fraction 19/16 after a whole number; it must be less than 1'],
    ['wide', `\`wide\` is not a length; ${forms}`],
    ['1.5 1/2', '`1.5 1/2` is not one length: only feet and inches go together, as in 4 ft 7 1/4 in'],
    ['5 in 2 mm', '`5 in 2 mm` is not one length: only feet and inches go together, as in 4 ft 7 1/4 in'],
    ['1.2.3', '`1.2.3` is not one length: only feet and inches go together, as in 4 ft 7 1/4 in'],
    ['--5', `\`--5\` is not a length; ${forms}`],
    ['5-', `\`5-\` is not a length; ${forms}`],
    ['1e3', 'unknown unit `e` in `1e3`; use mm, cm, m, in or ft'],
    ['', `a length is missing; ${forms}`],
    ['3 \u001b[31m', `\`3 ?[31m\` is not a length; ${forms}`],
    ['9'.repeat(70), `\`${'9'.repeat(39)}…\` is too long for a length; ${forms}`],
    ['NaN', `\`NaN\` is not a length; ${forms}`],
  ])('%s', (text, message) => {
    expect(error(text)).toBe(message)
  })

  it.each([
    ['1,5', 1.5],
    ['1.200,5', 1200.5],
    ['1,200.5 mm', 1200.5],
    ["1'200,5", 1200.5],
    ['1,200,000', 1_200_000],
    ["1'000", 1000],
    ['-1’200.5 mm', -1200.5],
  ])('what is offered for %s can be read', (text, meant) => {
    const reading = readLength(text, 'mm')
    expect('meant' in reading && mm(reading.meant!, 'mm')).toBe(meant)
  })

  it.each([
    ["4'11", 59],
    ["0'7", 7],
    ['4 ft 11 15/16 in', 59.9375],
    ["4' 0", 48],
  ])('%s is feet and inches', (text, inches) => {
    assertNear(mm(text), inches * 25.4, 1e-9)
  })

  it('whatever is typed, it answers', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...'0123456789 ./-\'"inftmx,½') }), (text) => {
        const reading = readLength(text, 'mm')
        if ('error' in reading) expect(reading.error).not.toBe('')
        else expect(Number.isFinite(reading.mm)).toBe(true)
      }),
    )
  })
})

describe('a 32nd more or less, as figures show it', () => {
  // 1/32 in is 0.79375 mm (1 in = 25.4 mm exactly, international yard and pound agreement 1959)
  it.each([
    ['7/8+', 'in', 22.225 + 0.79375],
    ['44–', 'in', 1117.6 - 0.79375],
    ['17 3/16+', 'in', 436.5625 + 0.79375],
    ['1 1/2- in', 'mm', 38.1 - 0.79375],
    ['4 ft 7 1/4+ in', 'mm', 1403.35 + 0.79375],
    ['-1/4+', 'in', -6.35 - 0.79375],
    ['5/8+"', 'mm', 15.875 + 0.79375],
  ] as const)('%s in %s', (text, units, mm) => {
    const read = readLength(text, units)
    if ('error' in read) throw new Error(read.error)
    assertNear(read.mm, mm, 1e-9)
  })

  it('every length shown in inches reads back to what it stands for', () => {
    for (let n = 0; n <= 64 * 3; n++) {
      const mm = (n * 25.4) / 32
      const read = readLength(showLength(mm, 'in'), 'in')
      if ('error' in read) throw new Error(`${showLength(mm, 'in')}: ${read.error}`)
      assertNear(read.mm, mm, 1e-9, showLength(mm, 'in'))
    }
  })

  it.each([['18 mm+'], ['18+ mm'], ['17-'], ['+'], ['1/2++']])('%s is none', (text) => {
    expect(readLength(text, 'mm')).toHaveProperty('error')
  })
})
