import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { templateText } from '../support/templates.ts'
import { traceply } from '../support/traceply.ts'

const folder = mkdtempSync(join(tmpdir(), 'traceply-buy-'))
const priced = join(folder, 'priced.yaml')
beforeAll(() => {
  writeFileSync(priced, templateText('quarter-mm').replace('units: mm', 'units: mm\nprices: { pipe: £31 }'))
})
afterAll(() => rmSync(folder, { recursive: true }))

test('the list is text, a spreadsheet, JSON and a PDF', async () => {
  const text = await traceply('buy', priced)
  expect(text.exit).toBe(0)
  expect(text.out).toContain(
    '[ ] 1 length      60.3 steel pipe, 3000 mm long (measure its outside), £31.00 each: £31.00',
  )
  const json = JSON.parse((await traceply('buy', priced, '--json')).out)
  expect(json.cost.total).toBe(31)
  for (const ending of ['csv', 'json', 'txt', 'pdf']) {
    const out = join(folder, `list.${ending}`)
    expect((await traceply('buy', priced, '--out', out)).exit).toBe(0)
    expect(existsSync(out)).toBe(true)
  }
  const rows = readFileSync(join(folder, 'list.csv'), 'utf8').trim().split(/\r?\n/)
  expect(rows.join('')).toMatch(/^[ -~]+$/)
  expect(rows).toHaveLength(json.list.length + 1)
  expect(rows.find((row) => row.includes('steel pipe'))).toMatch(/,31\.00,31\.00$/)
  expect(readFileSync(join(folder, 'list.pdf')).subarray(0, 5).toString()).toBe('%PDF-')
  const again = await traceply('buy', priced, '--out', join(folder, 'list.pdf'))
  expect([again.exit, again.err.includes('--force')]).toEqual([2, true])
})

test('what is bought by measure has its price by that, all else by the piece', async () => {
  const measured = join(folder, 'measured.yaml')
  const prices = 'units: mm\nprices: { paint: 20 EUR, rubber: 3 EUR, glue: 6 EUR, 18 plywood: 62 EUR }'
  writeFileSync(measured, templateText('quarter-mm').replace('units: mm', prices))
  const { out } = await traceply('buy', measured)
  const said = out.replace(/\s+/g, ' ')
  expect(said).toMatch(/4 litres paint .*?20\.00 EUR a litre: 80\.00 EUR/)
  expect(said).toMatch(/rubber strip.*?3\.00 EUR a m: /)
  expect(said).toContain('62.00 EUR each')
})

test('an ending that tells no format, a paper that there is not, and a design with a stop are refused', async () => {
  const odd = await traceply('buy', priced, '--out', join(folder, 'list.doc'), '--paper', 'a9')
  expect(odd.exit).toBe(2)
  expect(odd.err).toContain('tells no format')
  expect(odd.err).toContain('a9')
  const short = join(folder, 'short.yaml')
  writeFileSync(short, templateText('quarter-mm').replace('units: mm', 'units: mm\nstock: { timber: [760] }'))
  const stopped = await traceply('buy', short, '--out', join(folder, 'short.pdf'))
  expect(stopped.exit).toBe(1)
  expect(stopped.err).toMatch(
    /a stud is 1180 mm long, and the longest timber of your stock 760 mm:\s+buy timber of 1180 mm or more/,
  )
  expect(existsSync(join(folder, 'short.pdf'))).toBe(false)
})
