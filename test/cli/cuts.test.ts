import { readFileSync, writeFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { assertNear } from '../support/near.ts'
import { readPdf } from '../support/read-pdf.ts'
import { templates, templateText } from '../support/templates.ts'
import { traceply } from '../support/traceply.ts'
import { bytesOf, template, useFolder } from './reprint-run.ts'

const { file, list } = useFolder()

const changed = (name: string, more: string): string => {
  const path = file('design.yaml')
  writeFileSync(path, `${templateText(name)}${more}`)
  return path
}

describe('traceply cuts', () => {
  it('says in a line a thickness what comes from which panel, and lays every piece', async () => {
    const { exit, out } = await traceply('cuts', template('quarter-mm'))
    expect(exit).toBe(0)
    expect(out).toMatch(/^18 plywood: both sides from one 1220 × 2440, \d+ to spare$/m)
    // 5 + 1216 + 3 + 1216 = 2440: the far end is the panel's own
    expect(out).toMatch(/^9 plywood: 2 pieces of skin from one 1220 × 2440$/m)
    for (const mark of ['S1', 'S2', 'K1', 'K2', 'K3', 'D1', 'R1'])
      expect(out.match(new RegExp(`^  ${mark} `, 'gm'))).toHaveLength(1)
    expect(out).toMatch(/^ +S1 +left side .*\n +toe (?:left|right).*OUTSIDE FACE UP/m)
    expect(out).toMatch(/^ +S2 +right side .*\n +toe (?:left|right).*OUTSIDE FACE UP/m)
    for (const line of out.split('\n')) expect(line.length, line).toBeLessThanOrEqual(110)
  })

  it('prints JSON alone, whose outlines start where the two numbers of the tape say', async () => {
    for (const name of templates) {
      const { exit, out } = await traceply('cuts', template(name), '--json')
      expect(exit).toBe(0)
      const { panels } = JSON.parse(out)
      expect(panels.length).toBeGreaterThan(2)
      for (const { pieces } of panels)
        for (const { x, y, outline } of pieces) {
          expect(Math.hypot(outline[0][0] - x, outline[0][1] - y)).toBeLessThan(1e-6)
          expect(outline.length).toBeGreaterThanOrEqual(4)
        }
    }
  })

  it('writes drawings, a spreadsheet, JSON and text by the ending of --out', async () => {
    const design = template('pair-mm')
    const { panels, timber } = JSON.parse((await traceply('cuts', design, '--json')).out)
    for (const ending of ['pdf', 'svg', 'csv', 'json', 'txt'])
      expect(await traceply('cuts', design, '--out', file(`cuts.${ending}`))).toMatchObject({
        exit: 0,
        out: `${file(`cuts.${ending}`)}: ${panels.length} panels, ${timber.length} timbers.\n`,
      })
    const pdf = await readPdf(bytesOf(file('cuts.pdf')))
    expect(pdf.labels).toEqual([...panels.map((_: unknown, i: number) => `panel ${i + 1}`), 'timber'])
    for (const page of pdf.pages) {
      expect(page.width).toBeLessThan(page.height)
      expect(page.rotate).toBe(0)
    }
    const words = pdf.pages[0]!.texts.map(({ text }: { text: string }) => text).join(' ')
    for (const word of ['S1', 'S4', 'corner', 'LIP', 'OUTSIDE FACE', 'mirrored'])
      expect(words).toContain(word)
    const pieces = panels.flatMap((panel: { pieces: unknown[] }) => panel.pieces)
    const rows = readFileSync(file('cuts.csv'), 'utf8').trimEnd().split('\r\n')
    const sawn = timber.flatMap((board: { cuts: unknown[] }) => board.cuts)
    expect(rows).toHaveLength(1 + pieces.length + sawn.length)
    expect(readFileSync(file('cuts.svg'), 'utf8')).toMatch(/^<svg [\s\S]*<\/svg>\s*$/)
    expect(JSON.parse(readFileSync(file('cuts.json'), 'utf8')).panels).toEqual(panels)
    expect(list()).toEqual(['cuts.csv', 'cuts.json', 'cuts.pdf', 'cuts.svg', 'cuts.txt'])
  })

  it.each([
    ['quarter-in', 25.4, 1 / 32],
    ['pair-mm', 1, 0.5],
  ] as const)('writes %s into a spreadsheet in lengths that its tape has', async (name, unit, step) => {
    const design = changed(name, '')
    const { panels } = JSON.parse((await traceply('cuts', design, '--json')).out)
    await traceply('cuts', design, '--out', file('tape.csv'))
    const [heads, ...rows] = readFileSync(file('tape.csv'), 'utf8')
      .trimEnd()
      .split('\r\n')
      .map((line) => line.split(/,(?=(?:[^"]*"[^"]*")*[^"]*$)/))
    const at = (row: readonly string[], head: string): number => {
      const cell = row[heads!.indexOf(`${head} ${unit === 1 ? 'mm' : 'in'}`)]!
      // never a fraction without its inches: `3/16` were the 16th of March
      const [, whole, top, bottom] = /^(\d+(?:\.\d+)?)(?: (\d+)\/(\d+))?$/.exec(cell)!
      return Number(whole) + (top ? Number(top) / Number(bottom) : 0)
    }
    const pieces = panels.flatMap(
      ({ size, pieces: own }: { size: readonly [number, number]; pieces: { x: number; y: number }[] }) =>
        own.map(({ x, y }) => [x, y, ...size]),
    )
    expect(pieces.length).toBeGreaterThan(5)
    for (const [i, own] of pieces.entries())
      for (const [k, head] of ['from left', 'from below', 'panel width', 'panel length'].entries()) {
        const told = at(rows[i]!, head)
        expect(Number.isInteger(told / step)).toBe(true)
        assertNear(told * unit, own[k]!, (step * unit) / 2 + 1e-9, `${head} of row ${i}`)
      }
  })

  it('names every part that no panel holds, with the size that it needs, and writes nothing', async () => {
    // skin and deck board are laid in more sheets where panels are small; a side as high as this is no row of pieces
    const panels = (size: string): string =>
      `stock: { panels: [{ sheet: 18 plywood, size: ${size} }, { sheet: 9 plywood, size: 600 x 1200 }] }\n`
    const design = changed('quarter-mm', panels('500 x 600'))
    const { exit, out, err } = await traceply('cuts', design, '--out', file('cuts.pdf'))
    expect([exit, out]).toEqual([1, ''])
    const needs =
      /18 plywood: .*500 × 600.* left side of ramp \(S1\) of (\d+) mm × (\d+) mm and right side of ramp \(S2\) of \1 mm × \2 mm/
    expect(err).toMatch(needs)
    expect(err).toMatch(/nothing written/)
    expect(list()).toEqual(['design.yaml'])
    // the figures say it too, beside what can be had
    const figures = (await traceply('figures', design)).out
    expect(figures).toMatch(/^18 plywood: the panel of your stock \(500 × 600\) is too small for /m)
    expect(figures).toMatch(/^9 plywood: \d+ pieces of skin from /m)
    // what is offered works
    const [, low, long] = needs.exec(err)!
    const larger = changed('quarter-mm', panels(`${low} x ${long}`))
    expect((await traceply('cuts', larger)).exit).toBe(0)
  })

  it('saws two clamped panels as one, a left and a right side in one cut', async () => {
    const design = changed(
      'quarter-mm',
      'stock: { panels: [{ sheet: 18 plywood, size: 1220 x 2440, clamped: 2 }] }\n',
    )
    const { out } = await traceply('cuts', design)
    expect(out).toMatch(/^18 plywood: both sides from 2 of 1220 × 2440/m)
    expect(out).toMatch(
      /S2 \+ S1 +right side \+ left side .*\n.*OUTSIDE FACE UP; S1 under it with its OUTSIDE FACE\s+DOWN;\s+as printed/,
    )
  })

  it('takes what lies in the garage first', async () => {
    const design = changed('quarter-mm', 'stock: { offcuts: [{ sheet: 15 plywood, size: 600 x 1230 }] }\n')
    const { out } = await traceply('cuts', design)
    expect(out).toMatch(/^15 plywood: a deck board from one 600 × 1230 that is there$/m)
  })

  it('refuses an ending that tells no format, a stop, and more than 500 pieces', async () => {
    expect(await traceply('cuts', template('quarter-mm'), '--out', file('cuts.doc'))).toMatchObject({
      exit: 2,
    })
    const overhang = file('overhang.yaml')
    writeFileSync(overhang, templateText('quarter-mm').replace('deck: 640', 'deck: 2400'))
    const stopped = await traceply('cuts', overhang)
    expect([stopped.exit, stopped.out]).toEqual([1, ''])
    const many = file('many.yaml')
    const [head, ramp] = templateText('quarter-mm').split('ramps:')
    const own = ramp!.slice(ramp!.indexOf('\n') + 1).replace('count: 2', 'count: 3')
    const ramps = Array.from({ length: 20 }, (_, i) => own.replace('  - kind', `  - name: r${i}\n    kind`))
    writeFileSync(many, `${head}ramps:\n${ramps.join('')}`)
    const { exit, err } = await traceply('cuts', many)
    expect(exit).toBe(1)
    expect(err).toMatch(/sawn into \d{3} pieces; a layout takes 500 at most/)
  })
})

it('the timber follows the panels: as text, rows, JSON and a page, every piece once', async () => {
  const json = JSON.parse((await traceply('cuts', 'templates/pair-mm.yaml', '--json')).out)
  const marks: readonly string[] = json.timber.flatMap(({ cuts }: { cuts: { mark: string }[] }) =>
    cuts.map(({ mark }) => mark),
  )
  // six and five timbers around, five and five within
  expect([...marks].sort()).toEqual(Array.from({ length: 21 }, (_, i) => `T${i + 1}`).sort())
  const { out } = await traceply('cuts', 'templates/pair-mm.yaml')
  const text = out.replace(/\s+/g, ' ')
  for (const mark of marks) expect(text).toContain(` ${mark} `)
  expect(text).toContain(
    `board 1 of ${json.timber.length}: 38 × 89, 2400 long: T1 1180 (outer, stud 1), T2 1180`,
  )
  // numbered on as on the paper
  expect(text).toContain('(outer, timber 7, under the pipe)')
})
