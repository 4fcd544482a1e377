import { describe, expect, it } from 'vitest'
import { gaugePrinter, gaugeUncertainty, type Readings } from '../../src/printer/gauge.ts'
import { readingFault } from '../../src/printer/plausible-reading.ts'
import { readProfile, writeProfile } from '../../src/printer/profile.ts'
import { partReadings, type Reading, readReading } from '../../src/printer/reading.ts'
import { assertNear } from '../support/near.ts'

const read = (text: string, nominal = 150): Reading => {
  const reading = readReading(text, nominal)
  if ('error' in reading) throw new Error(reading.error)
  return reading
}
const readings = (said: {
  across?: readonly string[]
  down?: readonly string[]
  diagonals?: readonly (readonly [string, string])[]
}): Readings => ({
  across: (said.across ?? ['150mm']).map((text) => read(text)),
  down: (said.down ?? ['150mm']).map((text) => read(text)),
  diagonals: (said.diagonals ?? []).map(([a, b]) => [read(a, 150 * Math.SQRT2), read(b, 150 * Math.SQRT2)]),
})
const gauged = (said: Parameters<typeof readings>[0]) => {
  const found = gaugePrinter(readings(said))
  if ('faults' in found) throw new Error(found.faults.join('\n'))
  return found.distortion
}
const faultsOf = (said: Parameters<typeof readings>[0]): string => {
  const found = gaugePrinter(readings(said))
  return 'faults' in found ? found.faults.join('\n') : ''
}

describe('a reading', () => {
  it.each([
    ['148.4mm', 148.4, 150],
    ['14.84 cm', 148.4, 150],
    ['238.1mm/240mm', 238.1, 240],
    ['9 7/16in/240mm', 239.7125, 240],
    ['9 7/16 in / 9 1/2 in', 239.7125, 241.3],
    ['5 29/32in', 150.01875, 150],
    ['5 7/8"/150mm', 149.225, 150],
  ] as const)('%s is %f mm of %f', (text, measured, nominal) => {
    // by hand: 9 7/16 in = 9.4375 · 25.4, 5 29/32 in = 5.90625 · 25.4
    assertNear(read(text).measured, measured, 1e-9)
    assertNear(read(text).nominal, nominal, 1e-9)
  })

  it.each(['148.4', '238.1/240', '148.4mm/150', '5 7/8', '', 'mm', '148mm/0mm', '148mm/150mm/151mm'])(
    '%s is refused',
    (text) => expect(readReading(text, 150)).toHaveProperty('error'),
  )

  it('without a unit says how to write it', () => {
    expect(readReading('148.4', 150)).toEqual({ error: expect.stringContaining('148.4mm or 148.4in') })
  })
})

describe('several readings typed as one', () => {
  it.each([
    ['148.4mm', ['148.4mm']],
    ['5 29/32in', ['5 29/32in']],
    ['5 29/32 in 5 7/8 in', ['5 29/32 in', '5 7/8 in']],
    ['8 11/32" 8 3/8"', ['8 11/32"', '8 3/8"']],
    ['8 11/32″ 8 3/8 inches. 5in', ['8 11/32″', '8 3/8 inches.', '5in']],
    ['211.8mm,211.5mm', ['211.8mm', '211.5mm']],
    ['211.8 mm , 211.5 mm', ['211.8 mm', '211.5 mm']],
    ['211.8mm; 211.5mm', ['211.8mm', '211.5mm']],
    ['149mm 238.1mm/240mm 9 7/16 in / 9 1/2 in', ['149mm', '238.1mm/240mm', '9 7/16 in / 9 1/2 in']],
    ['1 ft 3 1/2 in 1 ft 3 in', ['1 ft 3 1/2 in', '1 ft 3 in']],
    ['149 150', ['149', '150']],
    ['149, 150', ['149', '150']],
    ['148,4mm', ['148,4mm']],
    ['148,4mm 150,5mm', ['148,4mm', '150,5mm']],
    [' 149mm, ', ['149mm']],
    ['', ['']],
  ] as const)('%j is %j', (text, parts) => expect(partReadings(text)).toEqual(parts))

  it('a comma for a point is told as such', () => {
    expect(readReading('148,4mm', 150)).toMatchObject({ error: expect.stringContaining('with a point') })
  })
})

describe('what the readings say', () => {
  it('is the sum of what was measured over the sum of what it should be', () => {
    const { across, down, skew } = gauged({ across: ['148.5mm', '237.5mm/240mm'], down: ['151.5mm'] })
    assertNear(across, (148.5 + 237.5) / 390, 1e-12)
    assertNear(down, 1.01, 1e-12)
    expect(skew).toBe(0)
  })

  it('takes the lean from the diagonals by the law of cosines', () => {
    // sides 150, rising 213, falling r² + f² = 4·150²: cos of the corner = (2·150² − f²)/(2·150²)
    const falling = Math.sqrt(4 * 150 ** 2 - 213 ** 2)
    const corner = Math.acos((2 * 150 ** 2 - falling ** 2) / (2 * 150 ** 2))
    const { skew } = gauged({ diagonals: [['213mm', `${falling.toFixed(9)}mm`]] })
    assertNear(skew, Math.PI / 2 - corner, 1e-9)
    expect(skew).toBeGreaterThan(0)
  })

  it('is better known from several prints and from long rulers', () => {
    const one = gaugeUncertainty(readings({ diagonals: [['212mm', '212mm']] }))
    const four = gaugeUncertainty(
      readings({
        across: ['150mm', '150mm', '150mm', '150mm'],
        diagonals: Array.from({ length: 4 }, () => ['212mm', '212mm'] as const),
      }),
    )
    assertNear(four.likely.across, one.likely.across / 2, 1e-12)
    assertNear(four.likely.skew, one.likely.skew / 2, 1e-12)
    // an error that every reading shares is not averaged away
    assertNear(four.worst.across, one.worst.across, 1e-12)
    assertNear(four.worst.skew, one.worst.skew, 1e-12)
    // evenly spread over ±0.25 mm: 0.25/√3 on 150 mm
    assertNear(one.likely.across, 0.25 / Math.sqrt(3) / 150, 1e-12)
    assertNear(one.worst.across, 0.25 / 150, 1e-12)
    // two diagonals off the other way round: 2·0.25 over the diagonal
    assertNear(one.worst.skew, 0.5 / (150 * Math.SQRT2), 1e-12)
  })

  it('is known as well as its own diagonals are long', () => {
    const small = gaugeUncertainty(readings({ diagonals: [['70.7mm/70.7mm', '70.7mm/70.7mm']] }))
    assertNear(small.likely.skew, ((0.25 / Math.sqrt(3)) * Math.SQRT2) / 70.7, 1e-12)
    assertNear(small.worst.skew, 0.5 / 70.7, 1e-12)
    // the mean of two leans, one known three times as well
    const mixed = gaugeUncertainty(
      readings({
        diagonals: [
          ['70mm/70mm', '70mm/70mm'],
          ['210mm/210mm', '210mm/210mm'],
        ],
      }),
    )
    const one = (0.25 / Math.sqrt(3)) * Math.SQRT2
    assertNear(mixed.likely.skew, Math.sqrt((one / 70) ** 2 + (one / 210) ** 2) / 2, 1e-12)
    assertNear(mixed.worst.skew, (0.5 / 70 + 0.5 / 210) / 2, 1e-12)
  })
})

describe('readings that cannot be are refused with the reason', () => {
  it.each([
    ['a digit swapped', { across: ['184.4mm'] }, /two digits swapped\? 148\.4mm would fit/],
    ['a digit swapped in inches', { down: ['9.54in'] }, /measure again/],
    ['a point too far left', { across: ['15.0mm'] }, /the point in the wrong place\? 150mm would fit/],
    ['a point too far right', { across: ['1495.mm'] }, /the point in the wrong place\? 149\.5mm would fit/],
    ['inches for mm', { across: ['5.9mm'] }, /inches read as mm\? 5\.9in would fit/],
    ['mm for inches', { across: ['149in'] }, /mm read as inches\? 149mm would fit/],
    ['fit to page', { across: ['141mm'] }, /at 100 %, never "fit to page"/],
    ['half the square', { down: ['75mm'] }, /measure again, from mark to mark/],
    ['diagonals of another square', { diagonals: [['216mm', '216mm']] as const }, /measure them again/],
    ['a lean beyond all printers', { diagonals: [['214.5mm', '209.7mm']] as const }, /leans 1\.\d\d°/],
  ])('%s', (_, said, words) => expect(faultsOf(said)).toMatch(words))

  it('readings that are short alike are of a scaled print: no digit was swapped', () => {
    // 145 / 150 = 0.967 = 205 / 212.1
    const alike = { across: ['145mm'], down: ['145mm'], diagonals: [['205mm', '205mm']] as const }
    const faults = faultsOf(alike).split('\n')
    expect(faults).toHaveLength(4)
    for (const fault of faults) expect(fault).toMatch(/; print again at 100 %, never "fit to page"/)
    // one of them alone may be a slip
    expect(faultsOf({ across: ['145mm'] })).toContain('two digits swapped? 154mm would fit')
    expect(faultsOf({ across: ['184.4mm'], down: ['184.4mm'] })).toContain('148.4mm would fit')
    expect(faultsOf({ across: ['5.9mm'], down: ['5.9mm'] })).toContain('5.9in would fit')
  })

  it('what is offered is a number that can be typed, and fits', () => {
    let offered = 0
    for (const right of ['150', '149.5', '150.25', '148', '151.0'])
      for (let i = 0; i + 1 < right.length; i++) {
        const wrong = right.slice(0, i) + right[i + 1] + right[i] + right.slice(i + 2)
        const fault = readingFault('--across', read(`${wrong}mm`))
        const [, text] = /\? (\S+) would fit$/.exec(fault ?? '') ?? []
        if (text === undefined) continue
        offered++
        expect(text).toMatch(/^\d+(\.\d+)?(mm|in)$/)
        expect(readingFault('--across', read(text))).toBeNull()
      }
    expect(offered).toBeGreaterThan(8)
    const bare = readReading('150.', 150)
    expect('error' in bare && bare.error).toBe(
      '150. has no unit; write 150mm or 150in, so that it cannot be mistaken',
    )
  })

  it('all at once', () => {
    const found = gaugePrinter({ across: [], down: [read('141mm')], diagonals: [] })
    if (!('faults' in found)) throw new Error('taken')
    expect(found.faults).toHaveLength(2)
    expect(found.faults.join()).toMatch(/--across is missing/)
  })
})

describe('a profile', () => {
  const profile = {
    version: 1,
    name: 'study-laser',
    paper: 'a4',
    across: 0.9893,
    down: 1.0073,
    skewDegrees: -0.1,
    margins: { top: 4, right: 4, bottom: 12, left: 4 },
    readings: readings({
      across: ['148.4mm', '9 3/8 in / 240 mm'],
      down: ['151.1mm'],
      diagonals: [
        ['211.9mm', '211.5mm'],
        ['70.7mm/70.7mm', '2 25/32 in / 70.7 mm'],
        ['8 11/32in', '8 5/16in'],
      ],
    }),
  } as const

  it('is read as it was written', () => expect(readProfile(writeProfile(profile))).toEqual(profile))

  it('holds its readings as lines of words', () => {
    expect(JSON.parse(writeProfile(profile)).readings).toEqual([
      'across 148.4mm',
      'across 9 3/8 in / 240 mm',
      'down 151.1mm',
      'diagonals 211.9mm 211.5mm',
      'diagonals 70.7mm/70.7mm 2 25/32 in / 70.7 mm',
      'diagonals 8 11/32in 8 5/16in',
    ])
  })

  it.each([
    ['across', 'it begins with none of across, down, diagonals'],
    ['along 148.4mm', 'it begins with none of across, down, diagonals'],
    ['across 148.4', '148.4 has no unit; write 148.4mm or 148.4in, so that it cannot be mistaken'],
    ['down wide', expect.any(String)],
    ['diagonals 211.9mm', 'give both diagonals, each with its unit'],
    ['diagonals 211.9mm 211.5', 'give both diagonals, each with its unit'],
    ['diagonals 211.9mm 211.5mm 211mm', 'give both diagonals, each with its unit'],
  ])('with the line "%s" among its readings says so', (line, why) => {
    const text = writeProfile(profile).replace('down 151.1mm', line)
    const said = readProfile(text)
    expect(said).toHaveProperty('error')
    const { error } = said as { readonly error: string }
    expect(error).toContain(`its reading \`${line}\` is none: `)
    if (typeof why === 'string') expect(error).toContain(why)
    expect(error).toMatch(/measure the printer again with `traceply gauge`$/)
  })

  it.each([
    ['cut short', (text: string) => text.slice(0, -20), /not JSON/],
    ['newer', (text: string) => text.replace('"version": 1', '"version": 2'), /version 2, made by a newer/],
    ['a wild figure', (text: string) => text.replace('0.9893', '9.893'), /out of its range/],
    ['a figure in words', (text: string) => text.replace('0.9893', '"0.9893"'), /out of its range/],
    ['another thing', () => '[1, 2]', /missing or out of its range/],
    ['null', () => 'null', /missing or out of its range/],
    [
      'readings that are no words',
      (text: string) => text.replace('"across 148.4mm"', '7'),
      /missing or out of its range/,
    ],
    // how well a printer is known follows from its readings: without one each way that came out as NaN mm
    ['no reading down', (text: string) => text.replace('"down 151.1mm",', ''), /across or down is missing/],
    [
      'margins of a wild size',
      (text: string) => text.replace('"bottom": 12', '"bottom": -400'),
      /missing or out of its range/,
    ],
    [
      'margins that lack one',
      (text: string) => text.replace('"bottom": 12,', ''),
      /missing or out of its range/,
    ],
    ['another paper', (text: string) => text.replace('"a4"', '"b7"'), /missing or out of its range/],
  ])('%s is refused', (_, harm, words) => {
    expect(readProfile(harm(writeProfile(profile)))).toEqual({ error: expect.stringMatching(words) })
  })
})
