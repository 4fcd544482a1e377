import { describe, expect, it } from 'vitest'
import { readPdf } from '../support/read-pdf.ts'
import { traceply } from '../support/traceply.ts'
import { bytesOf, planOf, template, useFolder } from './reprint-run.ts'

const { file, list } = useFolder()

const plot = (name: string, ...args: readonly string[]) =>
  traceply('plot', template(name), '--out', file('set.pdf'), ...args)

/** Windows of the tiles, mm from the edges of the upright page: top, right, bottom, left. */
const marginsPrinted = async (): Promise<readonly number[]> => {
  const { pages, paper } = await planOf(bytesOf(file('set.pdf')))
  const [x0, y0, x1, y1] = pages.find((page: { kind: string }) => page.kind === 'tile').window
  const mm = (points: number): number => (points * 25.4) / 72
  return [paper.height - mm(y1), paper.width - mm(x1), mm(y0), mm(x0)].map(
    (value) => Math.round(value * 1000) / 1000 + 0,
  )
}

const forms = 'write it like 640, 17 3/16 in, 4 ft 7 1/4 in, 1.2 m or 18 mm'
const four = 'give one length, or four with commas between: top, right, bottom, left'
const papers = 'say one of letter, legal, tabloid, a4, a3, a2, a1, a0'

describe('refused with exit 2, its exact words, and nothing written', () => {
  it.each([
    [['--paper', 'b5'], `--paper b5: ${papers}`],
    [['--paper', ''], `--paper : ${papers}`],
    [['--cover', 'half'], '--cover half: say one of whole, line, ribbon'],
    [['--margin', '300 mm'], '--margin 300 mm is outside 0 to 297 mm'],
    [['--margin', '-5'], '--margin -5 mm is outside 0 to 297 mm'],
    [['--margin=-1/4 in'], '--margin -1/4 in is outside 0 to 297 mm'],
    [['--margin', '10,20'], `--margin 10,20: ${four}`],
    [['--margin', '10 20'], `--margin 10 20: ${four}`],
    [['--margin', '10 20 30 40 50'], `--margin 10 20 30 40 50: ${four}`],
    [['--margin', '1 1/2 1 1/2'], `--margin 1 1/2 1 1/2: ${four}`],
    [['--margin', ''], `--margin: a length is missing; ${forms}`],
    [['--margin', '10,20,30,'], `--margin left: a length is missing; ${forms}`],
    [['--margin', '10,-2,10,10'], '--margin right -2 mm is outside 0 to 297 mm'],
    [['--margin', 'ten'], `--margin ten: \`ten\` is not a length; ${forms}`],
    [
      ['--margin', '10 furlongs'],
      '--margin 10 furlongs: unknown unit `furlongs` in `10 furlongs`; use mm, cm, m, in or ft',
    ],
    [
      ['--margin', '1/0 in'],
      '--margin 1/0 in: `1/0 in` has a fraction over zero; the lower number must be 1 or more',
    ],
    [['--overlap', '7.9'], '--overlap 7.9 mm is outside 8 to 60 mm'],
    [['--overlap', '61'], '--overlap 61 mm is outside 8 to 60 mm'],
    [['--overlap', '-12'], '--overlap -12 mm is outside 8 to 60 mm'],
    [['--overlap', '1/2'], '--overlap 1/2 mm is outside 8 to 60 mm; did you mean 1/2 in (13 mm)?'],
    [['--overlap', 'wide'], `--overlap wide: \`wide\` is not a length; ${forms}`],
  ] as const)('%j', async (args, message) => {
    expect(await plot('quarter-mm', ...args)).toEqual({ exit: 2, out: '', err: `${message}\n` })
    expect(list()).toEqual([])
  })

  it('a page smaller than its margins and overlap, each direction told', async () => {
    const words = (size: string, word: string, margin: string, names: string, left: string, most: string) =>
      `a4 is ${size} ${word}: margins of ${margin} and ${margin} (${names}) and an overlap of 12 mm leave ${left} ` +
      `for the drawing, less than 60 mm; margins and overlap together may take at most ${most}, or take larger paper\n`
    const narrow = words('210 mm', 'wide', '80 mm', 'left and right', '38 mm', '150 mm')
    expect(await plot('quarter-mm', '--margin', '80')).toEqual({ exit: 2, out: '', err: narrow })
    const wide = words('210 mm', 'wide', '200 mm', 'left and right', '0 mm', '150 mm')
    const low = words('297 mm', 'high', '200 mm', 'top and bottom', '0 mm', '237 mm')
    expect((await plot('quarter-mm', '--margin', '200')).err).toBe(wide + low)
    // with what it allows, it is plotted: 210 - 69 - 69 - 12 = 60
    expect((await plot('quarter-mm', '--margin', '10,69,10,69')).exit).toBe(0)
    expect((await plot('quarter-mm', '--margin', '10,69.1,10,69', '--force')).exit).toBe(2)
  })

  it('limits in inches work when typed', async () => {
    for (const overlap of ['3/8', '2 5/16'])
      expect((await plot('quarter-in', '--overlap', overlap, '--force')).exit, overlap).toBe(0)
    // 8 1/2 in less 60 mm are 6.138 in
    expect((await plot('quarter-in', '--margin', '4')).err).toMatch(
      /^letter is 8 1\/2 in wide: .* may take at most 6 1\/8 in, or take larger paper\n$/,
    )
    expect(
      (await plot('quarter-in', '--margin', '1/2, 3, 1/2, 2 5/8', '--overlap', '1/2', '--force')).exit,
    ).toBe(0)
  })

  it('several faults are told at once', async () => {
    const { exit, err } = await plot(
      'quarter-in',
      '--paper',
      'b5',
      '--cover',
      'half',
      '--margin',
      '1,2',
      '--overlap',
      '3',
    )
    expect(exit).toBe(2)
    expect(err).toBe(
      `--cover half: say one of whole, line, ribbon\n--paper b5: ${papers}\n--margin 1,2: ${four}\n` +
        '--overlap 3 in is outside 3/8 to 2 5/16 in\n',
    )
    expect(list()).toEqual([])
  })
})

describe('lengths are read like those of the file', () => {
  it.each([
    ['quarter-mm', '15', [15, 15, 15, 15]],
    ['quarter-mm', '1/2 in', [12.7, 12.7, 12.7, 12.7]],
    ['quarter-in', '1/2', [12.7, 12.7, 12.7, 12.7]],
    ['quarter-in', '15 mm', [15, 15, 15, 15]],
    ['quarter-mm', '11,12,13,14', [11, 12, 13, 14]],
    ['quarter-mm', '11 12 13 14', [11, 12, 13, 14]],
    ['quarter-mm', '1/2 in, 15 mm, 1.1 cm, 0.5 in', [12.7, 15, 11, 12.7]],
    ['quarter-mm', '1/2 in 15 mm 1.1 cm 14', [12.7, 15, 11, 14]],
    ['quarter-mm', '0', [0, 0, 0, 0]],
  ] as const)('%s --margin %j', async (name, margin, printed) => {
    if (margin.endsWith(' 14') && margin.includes('in')) {
      // one bare number among units: not guessed
      expect((await plot(name, '--margin', margin)).err).toBe(`--margin ${margin}: ${four}\n`)
      return
    }
    const { exit, err } = await plot(name, '--margin', margin)
    expect(exit, err).toBe(0)
    expect(await marginsPrinted()).toEqual(printed)
  })

  it('without --margin: 10 mm on a4, half an inch on letter', async () => {
    await plot('quarter-mm')
    expect(await marginsPrinted()).toEqual([10, 10, 10, 10])
    await plot('quarter-mm', '--paper', 'LETTER', '--force')
    expect(await marginsPrinted()).toEqual([12.7, 12.7, 12.7, 12.7])
  })

  it.each([
    ['20', 20],
    ['1/2 in', 12.7],
  ] as const)('--overlap %s', async (overlap, mm) => {
    expect((await plot('quarter-mm', '--cover', 'whole', '--overlap', overlap)).exit).toBe(0)
    const plan = await planOf(bytesOf(file('set.pdf')))
    // two neighbours of a row: their windows' middles lie one window less the overlap apart
    const tiles = plan.pages.filter((page: { kind: string }) => page.kind === 'tile')
    const size = (points: number): number => (points * 25.4) / 72
    const middle = ({ toPattern: [a, b, c, d, e, f], window: [x0, y0, x1, y1] }: (typeof tiles)[number]) => {
      const [x, y] = [(x0 + x1) / 2, (y0 + y1) / 2]
      return [a * x + c * y + e, b * x + d * y + f]
    }
    const by = (name: string) => tiles.find((tile: { tile: string }) => tile.tile === name)
    const [one, two] = [middle(by('1')), middle(by('2'))]
    const apart = Math.hypot(two[0] - one[0], two[1] - one[1])
    const [x0, y0, x1, y1] = tiles[0].window
    const [wide, high] = [size(x1 - x0), size(y1 - y0)]
    // along the row the window is one side of the page or the other
    const off = [wide, high].map((side) => Math.abs(side - mm - apart))
    expect(Math.min(...off)).toBeLessThan(0.01)
  })
})

it('the largest paper takes one sheet: 1 tile is said, and page 1 on the map', async () => {
  for (const [name, ...cover] of [['quarter-mm'], ['quarter-in'], ['quarter-mm', '--cover', 'ribbon']]) {
    const { exit, out } = await plot(name!, '--paper', 'a0', '--force', ...cover)
    expect(exit).toBe(0)
    expect(out).toContain(': 1 tile to trace from, ')
    expect(out).toContain('\n4. Lay the page by its snap line; check the distances on the map.\n')
    const read = await readPdf(bytesOf(file('set.pdf')))
    const map = read.pages[0]!.texts.map(({ text }) => text).join(' ')
    expect(map).toMatch(/\. Page 1 on A0, set /)
    expect(map).toMatch(/Cover (line|ribbon); pages: whole \d+, line 1, ribbon 1\. /)
    expect(map).toContain('Not on this page: the screws of ')
    expect(map).toContain('On one page these do not show a small slip: trust the snap line.')
  }
})
