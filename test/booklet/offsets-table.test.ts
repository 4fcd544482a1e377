import { describe, expect, it } from 'vitest'
import { offsetsCells } from '../../src/booklet/offsets/offsets-cells.ts'
import { offsetRows } from '../../src/booklet/offsets/offsets-rows.ts'
import { offsetsText } from '../../src/booklet/offsets/offsets-text.ts'
import { checkWords } from '../../src/booklet/offsets/offsets-words.ts'
import { figureParts } from '../../src/length/figure-parts.ts'
import { readLength, type Units } from '../../src/length.ts'
import type { Offsets } from '../../src/ramp/offsets.ts'
import { writeCsv } from '../../src/write/csv.ts'
import { assertNear } from '../support/near.ts'
import { templates, templateText } from '../support/templates.ts'
import { withOffsets } from './solved.ts'

/** A shown length back in mm, `+` and `–` a 32nd over and under. */
const readBack = (shown: string, units: Units): number => {
  const sign = shown.endsWith('+') ? 1 : shown.endsWith('–') ? -1 : 0
  const reading = readLength(shown.replace(/[+–]$/, ''), units)
  if (!('mm' in reading)) throw new Error(reading.error)
  return reading.mm + (sign * 25.4) / 32
}

/** Half of the last digit that is shown. */
const half = (units: Units): number => (units === 'in' ? 25.4 / 64 : 0.05) + 1e-9

/** RFC 4180, as a spreadsheet reads it. */
const readCsv = (text: string): readonly (readonly string[])[] => {
  const rows: string[][] = [['']]
  let quoted = false
  for (let i = 0; i < text.length; i++) {
    const c = text[i]!
    const row = rows.at(-1)!
    if (quoted && c === '"' && text[i + 1] === '"') {
      row[row.length - 1] += '"'
      i++
    } else if (c === '"') quoted = !quoted
    else if (!quoted && c === ',') row.push('')
    else if (!quoted && c === '\r' && text[i + 1] === '\n') {
      rows.push([''])
      i++
    } else row[row.length - 1] += c
  }
  if (rows.at(-1)!.join('') !== '') throw new Error('the last line has no end')
  return rows.slice(0, -1)
}

describe.each(templates)('the table of %s', (name) => {
  const { design, all } = withOffsets(templateText(name))
  const { units } = design

  it('names every mark once, with its two distances as they are marked out', () => {
    for (const offsets of all) {
      const rows = offsetRows(offsets, units)
      expect(new Set(rows.map((row) => row.mark)).size).toBe(rows.length)
      const marks = [offsets.toe, ...offsets.stations, offsets.lip, ...offsets.notch]
      marks.forEach((p, i) => {
        assertNear(readBack(rows[i]!.back, units), p.x, half(units), `back of ${rows[i]!.mark}`)
        assertNear(readBack(rows[i]!.up, units), p.y, half(units), `up of ${rows[i]!.mark}`)
      })
      expect(rows.length).toBe(marks.length + (offsets.seat ? 1 : 0))
    }
  })

  it('is read off the text with its columns on one seam, and fits one screen for a ramp', () => {
    const text = offsetsText(design.title, all, units)
    const lines = text.split('\n')
    expect(lines.length).toBeLessThanOrEqual(all.length * 28)
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(100)
    const narrow = offsetsText(design.title, all, units, 60)
    expect(narrow.replace(/\s+/g, ' ')).toBe(text.replace(/\s+/g, ' '))
    for (const line of narrow.split('\n').filter((line) => /^ {2}(?:[A-Z][a-z]| )/.test(line)))
      expect(line.length).toBeLessThanOrEqual(60)
    // one block of rows for each ramp, from TOE on
    const blocks = lines.reduce<string[][]>((found, line) => {
      if (/^ {2}TOE {3}/.test(line)) found.push([])
      if (/^ {2}(TOE|LIP|\d+|[A-D]) {2,}/.test(line)) found.at(-1)!.push(line)
      return found
    }, [])
    expect(blocks.length).toBe(all.length)
    blocks.forEach((block, i) => {
      const rows = offsetRows(all[i]!, units)
      expect(block.length).toBe(rows.length)
      const seams = block.map((line, k) => {
        const row = rows[k]!
        const cells = line.slice(6)
        const at = cells.indexOf(row.up, cells.indexOf(row.back) + row.back.length)
        if (at < 0) throw new Error(`${row.mark}: no ${row.back} and ${row.up} in ${line}`)
        const [backWhole] = figureParts(row.back)
        const [upWhole] = figureParts(row.up)
        return [cells.indexOf(row.back) + backWhole.length, at + upWhole.length].join()
      })
      expect(new Set(seams).size).toBe(1)
    })
  })

  it('is the same in the CSV, to a ten-thousandth', () => {
    const [head, ...rows] = readCsv(writeCsv(offsetsCells(all, units)))
    const inches = units === 'in' ? ['x_in', 'y_in', 'length_in'] : []
    expect(head).toEqual(['ramp', 'kind', 'name', 'x_mm', 'y_mm', 'length_mm', ...inches])
    for (const row of rows) expect(row.length).toBe(head!.length)
    const of = (offsets: Offsets, kind: string) => rows.filter((r) => r[0] === offsets.ramp && r[1] === kind)
    for (const offsets of all) {
      const marks = rows.filter((r) => r[0] === offsets.ramp && /station|guide/.test(r[1]!))
      expect(marks.length).toBe(offsets.stations.length)
      marks.forEach((row, i) => {
        const station = offsets.stations[i]!
        expect(row[1]).toBe(station.cutAway ? 'guide' : 'station')
        assertNear(Number(row[3]), station.x, 5e-5)
        assertNear(Number(row[4]), station.y, 5e-5)
        expect(row[5]).toBe('')
        if (units === 'in') {
          assertNear(Number(row[6]) * 25.4, station.x, 0.002)
          assertNear(Number(row[7]) * 25.4, station.y, 0.002)
        }
      })
      const corners = [
        offsets.toe,
        offsets.lip,
        ...offsets.notch,
        ...(offsets.seat ? [offsets.seat.centre] : []),
      ]
      expect(of(offsets, 'corner').map((r) => [Number(r[3]), Number(r[4])])).toEqual(
        corners.map((p) => [Number(p.x.toFixed(4)), Number(p.y.toFixed(4))]),
      )
      const measure = (what: string): number =>
        Number(of(offsets, 'measure').find((r) => r[2] === what)?.[5] ?? Number.NaN)
      assertNear(measure('toe to lip straight'), offsets.chord, 5e-5)
      assertNear(measure('middle rise'), offsets.rise, 5e-5)
      assertNear(measure('swing arm: screw to pencil'), offsets.swing!.arm, 5e-5)
      assertNear(measure('swing arm: screw in front of the front edge'), offsets.swing!.pivot.inFront, 5e-5)
    }
  })
})

it('a figure parts before its point or its fraction', () => {
  expect(['17 7/16+', '7/16', '13/16–', '12–', '81.3', '1050', '0'].map(figureParts)).toEqual([
    ['17', '7/16+'],
    ['', '7/16'],
    ['', '13/16–'],
    ['12', '–'],
    ['81', '.3'],
    ['1050', ''],
    ['0', ''],
  ])
})

it('a name with a comma, a quote or a formula comes back as text', () => {
  const { all } = withOffsets(templateText('quarter-mm'))
  const named = (ramp: string) => readCsv(writeCsv(offsetsCells([{ ...all[0]!, ramp }], 'mm')))[1]![0]
  expect(named('north, low')).toBe('north, low')
  expect(named('the "big" one')).toBe('the "big" one')
  // a spreadsheet takes what follows an apostrophe for text
  expect(named('=1+1')).toBe("'=1+1")
})

it('the text says what + and – mean only where they stand', () => {
  const text = (name: string): string => {
    const { design, all } = withOffsets(templateText(name))
    return offsetsText(design.title, all, design.units)
  }
  expect(text('quarter-in')).toContain('+ is 1/32 over')
  expect(text('quarter-mm')).not.toContain('1/32')
})

it('a corner that is cut off is said with its leg, as the file has it, in the words and the CSV; a whole one is not', () => {
  const said = /Back bottom corner: 45° cut, (.+?) along both edges\./
  const of = (text: string) => {
    const { design, all } = withOffsets(text)
    const leg = offsetsCells(all, design.units).find((row) => `${row[2]}`.includes('back bottom corner'))
    if (leg) expect(leg[2]).toMatch(/^[ -~]+$/)
    return {
      shown: all.flatMap((one) => said.exec(checkWords(one, design.units).join(' '))?.[1] ?? []),
      leg: leg?.[5],
    }
  }
  for (const [name, leg, mm] of [
    ['quarter-mm', '90', 90],
    ['quarter-in', '3 1/2', 88.9],
  ] as const) {
    const cut = of(templateText(name).replace(/^( +leg: )\S+/m, `$1${leg}`))
    expect(cut.shown).toEqual([leg])
    assertNear(Number(cut.leg), mm, 1e-6)
    const whole = templateText(name).replace(/^ +chamfer: .*\n +leg: .*\n/m, '')
    expect(whole).not.toContain('leg:')
    expect(of(whole)).toEqual({ shown: [], leg: undefined })
  }
})

describe('how far a straight line from mark to mark may miss the curve', () => {
  const said = (text: string, every: number): { readonly shown: string; readonly miss: number } => {
    const { design, all } = withOffsets(text, every)
    const words = checkWords(all[0]!, design.units).join(' ')
    return { shown: /misses the curve by (.+?) at most/.exec(words)![1]!, miss: all[0]!.miss }
  }
  it.each(['quarter-in', 'quarter-mm'] as const)('is never said smaller than it is: %s', (name) => {
    const text = templateText(name)
    const units: Units = name.endsWith('in') ? 'in' : 'mm'
    let up = 0
    for (let every = 60; every <= 260; every += 7.3) {
      const { shown, miss } = said(text, every)
      const bound = readBack(shown, units)
      expect(bound).toBeGreaterThanOrEqual(miss - 1e-6)
      expect(bound).toBeLessThan(miss + 2 * half(units))
      if (bound > miss + half(units)) up++
    }
    // some would have been rounded down
    expect(up).toBeGreaterThan(5)
  })
  it('every 6 in along the floor on a radius of 81 in: 3/32 and some, so 1/8, though 3/32 is nearer', () => {
    const { shown, miss } = said(templateText('quarter-in'), 152.4)
    expect(miss / 25.4).toBeGreaterThan(3 / 32)
    expect(miss / 25.4).toBeLessThan(3.5 / 32)
    expect(shown).toBe('1/8')
  })
})

it('the text keeps a fraction on the line of its inches', () => {
  let broken = 0
  for (let eighths = 0; eighths < 16; eighths++) {
    const radius = `${80 + Math.floor(eighths / 8)}${eighths % 8 === 0 ? '' : ` ${eighths % 8}/8`}`
    const { design, all } = withOffsets(
      templateText('quarter-in').replace('surface: 80', `surface: ${radius}`),
    )
    const text = offsetsText(design.title, all, design.units)
    // the radius of the ridden face, and the skin under it
    assertNear(all[0]!.swing!.arm, (81 + eighths / 8) * 25.4, 1e-6)
    expect(text).not.toMatch(/\d\n +\d+\/\d/)
    broken += text.split('\n').filter((line) => line.startsWith('    ')).length
  }
  // lines that go on below, in each of the texts
  expect(broken).toBeGreaterThanOrEqual(16)
})
