import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { PNG } from 'pngjs'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { withOffsets } from '../booklet/solved.ts'
import { readPdf } from '../support/read-pdf.ts'
import { templates, templateText } from '../support/templates.ts'
import { traceply } from '../support/traceply.ts'

let folder: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'traceply-'))
})
afterEach(() => {
  rmSync(folder, { recursive: true })
})

const file = (name: string): string => join(folder, name)
const template = (name: string): string => `templates/${name}.yaml`

/** Past vertical: it cannot be sawn. */
const overhang = (): string => {
  const path = file('overhang.yaml')
  writeFileSync(path, templateText('quarter-mm').replace(/deck: 640/, 'deck: 2400'))
  return path
}

describe('traceply offsets', () => {
  it('prints the table of every ramp', async () => {
    const { exit, out } = await traceply('offsets', template('pair-mm'))
    expect(exit).toBe(0)
    expect(out).toMatch(/^Low pair for the boathouse: /)
    expect(out.match(/^ {2}TOE {3}/gm)).toHaveLength(2)
    // the frame's circle: centre 1700 up, √(1724² − 1660²) = 465.386 in front; x 600: 1700 − √(1724² − 1065.386²) = 344.6
    expect(out).toMatch(/^ {2}4 {4,}600 {3,}344\.6$/m)
  })

  it('prints JSON alone, in mm, the same in every unit of the design', async () => {
    const { exit, out } = await traceply('offsets', template('quarter-in'), '--json')
    const read = JSON.parse(out)
    const { all } = withOffsets(templateText('quarter-in'))
    expect(exit).toBe(0)
    expect(read.units).toBe('in')
    expect(read.ramps[0].stations).toEqual(
      all[0]!.stations.map(({ x, y, by, cutAway }) => ({ x, y, by, cutAway })),
    )
    expect(read.ramps[0].toe).toEqual([0, all[0]!.toe.y])
    expect(read.ramps[0].swing.arm).toBeCloseTo(81 * 25.4, 9)
  })

  it('sets the marks as far apart as --every says, in the units of the design or its own', async () => {
    for (const every of ['200', '20 cm', '200 mm']) {
      const { out } = await traceply('offsets', template('quarter-mm'), '--every', every, '--json')
      const along = JSON.parse(out).ramps[0].stations.filter((s: { by: string }) => s.by === 'along')
      expect(along.map((s: { x: number }) => s.x)).toEqual([200, 400, 600])
    }
  })

  it('writes text, CSV and PDF by the ending of --out, whatever its case', async () => {
    for (const [name, start] of [
      ['a.txt', 'Low ramp for the boathouse: '],
      ['a.CSV', 'ramp,kind,name,x_mm'],
      ['a.pdf', '%PDF'],
    ] as const) {
      const { exit, out } = await traceply('offsets', template('quarter-mm'), '--out', file(name))
      expect(exit).toBe(0)
      expect(out).toBe(`${file(name)}: offsets of ramp.\n`)
      expect(readFileSync(file(name), 'latin1').startsWith(start)).toBe(true)
    }
    expect(readdirSync(folder).sort()).toEqual(['a.CSV', 'a.pdf', 'a.txt'])
  })

  it("prints the PDF on the design's paper or on --paper, a page for each ramp, the same bytes every time", async () => {
    await traceply('offsets', template('pair-mm'), '--out', file('a.pdf'))
    await traceply('offsets', template('pair-mm'), '--out', file('b.pdf'))
    await traceply('offsets', template('pair-mm'), '--paper', 'letter', '--out', file('c.pdf'))
    const [a, b, c] = ['a', 'b', 'c'].map((name) => new Uint8Array(readFileSync(file(`${name}.pdf`))))
    expect(a).toEqual(b)
    const read = await readPdf(a!)
    expect(read.pages.map((page) => [page.label, Math.round(page.width)])).toEqual([
      ['outer', 595],
      ['inner', 595],
    ])
    expect((await readPdf(c!)).pages.map((page) => Math.round(page.width))).toEqual([612, 612])
  })

  it('says which formats there are when the ending tells none', async () => {
    for (const name of ['a.xls', 'a', 'a.pdf.']) {
      const { exit, err } = await traceply('offsets', template('quarter-mm'), '--out', file(name))
      expect(exit).toBe(2)
      for (const ending of ['.pdf', '.csv', '.txt']) expect(err).toContain(ending)
    }
    expect(readdirSync(folder)).toEqual([])
  })

  it.each([
    [['--every', '0'], '0 mm is outside 20 to 600 mm'],
    [['--every', '6'], 'did you mean 6 cm (60 mm)?'],
    [['--every', 'wide'], '`wide` is not a length'],
    [['--every', '-150'], 'is outside'],
    [['--paper', 'a9'], '--paper a9: say one of'],
    [['--nonsense'], "unknown option '--nonsense'"],
  ])('refuses %j with exit 2', async (args, message) => {
    const { exit, out, err } = await traceply('offsets', template('quarter-mm'), ...args)
    expect(exit).toBe(2)
    expect(out).toBe('')
    expect(err).toContain(message)
  })

  it('writes nothing where a check says stop', async () => {
    const design = overhang()
    for (const args of [[], ['--json'], ['--out', file('a.pdf')], ['--out', file('a.csv')]]) {
      const { exit, out, err } = await traceply('offsets', design, ...args)
      expect(exit).toBe(1)
      expect(out).toBe('')
      expect(err).toContain('[overhang]')
    }
    expect(readdirSync(folder)).toEqual(['overhang.yaml'])
  })

  it('keeps a file that exists, unless it is forced', async () => {
    writeFileSync(file('a.csv'), 'mine')
    const kept = await traceply('offsets', template('quarter-mm'), '--out', file('a.csv'))
    expect(kept.exit).toBe(2)
    expect(kept.err).toContain('--force')
    expect(readFileSync(file('a.csv'), 'utf8')).toBe('mine')
    expect((await traceply('offsets', template('quarter-mm'), '--out', file('a.csv'), '--force')).exit).toBe(
      0,
    )
    expect(readFileSync(file('a.csv'), 'utf8')).toMatch(/^ramp,/)
  })

  it('says so when there is no such design or folder', async () => {
    expect((await traceply('offsets', file('none.yaml'))).exit).toBe(2)
    expect((await traceply('offsets', template('quarter-mm'), '--out', file('no/a.csv'))).exit).toBe(2)
  })
})

describe('traceply plot --map', () => {
  const plotMap = (name: string, out: string, ...more: readonly string[]) =>
    traceply('plot', template(name), '--out', file(`${out}.pdf`), '--map', file(`${out}.png`), ...more)

  /** The way that is taken unless told. */
  const pictures = new Map<string, Buffer>()

  it.each(templates)(
    '%s: draws a picture 1080 wide that a decoder of its own reads, the same bytes twice, and leaves the PDF as it is without it',
    async (name) => {
      expect((await plotMap(name, 'a')).exit).toBe(0)
      const a = readFileSync(file('a.png'))
      pictures.set(name, a)
      // a picture takes longer than its set: that of one ramp is drawn again, in either unit, and its set without it
      if (name === 'quarter-mm' || name === 'quarter-in') {
        expect((await plotMap(name, 'b')).exit).toBe(0)
        expect(Buffer.compare(a, readFileSync(file('b.png')))).toBe(0)
        await traceply('plot', template(name), '--out', file('c.pdf'))
        expect(Buffer.compare(readFileSync(file('a.pdf')), readFileSync(file('c.pdf')))).toBe(0)
      }
      const { width, height, data } = PNG.sync.read(a)
      expect(width).toBe(1080)
      expect(height).toBeGreaterThan(1080)
      let ink = 0
      for (let i = 0; i < data.length; i += 4) {
        // grey, and opaque
        if (data[i] !== data[i + 1] || data[i] !== data[i + 2] || data[i + 3] !== 255)
          throw new Error('coloured')
        ink += (255 - data[i]!) / 255
      }
      // words and lines cover some of a page, white most of it; the margin stays white
      expect(ink / (width * height)).toBeGreaterThan(0.03)
      expect(ink / (width * height)).toBeLessThan(0.2)
      for (let x = 0; x < width; x++) expect(data[4 * x]).toBe(255)
    },
  )

  it('shows the set that it was written with, whichever way it is covered', async () => {
    // a low ramp takes its line
    const line = pictures.get('quarter-mm')
    const drawn = line ? [line.toString('latin1')] : []
    for (const cover of ['whole', 'ribbon', ...(line ? [] : ['line'])]) {
      expect((await plotMap('quarter-mm', cover, '--cover', cover)).exit).toBe(0)
      drawn.push(readFileSync(file(`${cover}.png`)).toString('latin1'))
    }
    expect(new Set(drawn).size).toBe(3)
  })

  it('writes neither file where the map cannot be kept, is no .png, or a check says stop', async () => {
    writeFileSync(file('map.png'), 'mine')
    const cases: readonly (readonly [string, string, number, string])[] = [
      [template('quarter-mm'), 'map.png', 2, '--force'],
      [template('quarter-mm'), 'map.jpg', 2, '.png'],
      [template('quarter-mm'), 'no/map.png', 2, 'there is no folder'],
      [overhang(), 'other.png', 1, '[overhang]'],
    ]
    for (const [design, map, exit, message] of cases) {
      const result = await traceply('plot', design, '--out', file('a.pdf'), '--map', file(map))
      expect(result.exit).toBe(exit)
      expect(result.err).toContain(message)
      expect(existsSync(file('a.pdf'))).toBe(false)
    }
    expect(readFileSync(file('map.png'), 'utf8')).toBe('mine')
    expect(readdirSync(folder).sort()).toEqual(['map.png', 'overhang.yaml'])
  })
})
