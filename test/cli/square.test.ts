import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { squarePage } from '../../src/page/pages/square-page.ts'
import { assertNear } from '../support/near.ts'
import { type PdfPageRead, type PdfRead, pathPoints, readPdf } from '../support/read-pdf.ts'
import { traceply } from '../support/traceply.ts'

let folder = ''
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'traceply-square-'))
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

/** The file that a command wrote, its plan and its words. */
const made = async (command: 'square' | 'plot', ...args: readonly string[]) => {
  const file = join(folder, `${command}-${args.length}-${args.join('').length}.pdf`)
  const design = command === 'plot' ? ['templates/quarter-mm.yaml'] : []
  const said = await traceply(command, ...design, ...args, '--profiles', folder, '--out', file, '--force')
  if (said.exit !== 0) throw new Error(said.err)
  const pdf = await readPdf(new Uint8Array(readFileSync(file)))
  const plan = JSON.parse(new TextDecoder().decode(pdf.attachments[0]!.bytes))
  return { ...said, pdf, plan }
}
const mm = (points: number): number => (points * 25.4) / 72

interface Line {
  readonly x0: number
  readonly y0: number
  readonly x1: number
  readonly y1: number
  readonly layer: string
}
/** Straights in one piece, mm of the page. */
const linesOf = (page: PdfPageRead): readonly Line[] =>
  page.strokes.flatMap(({ path, layer }) => {
    const [a, b, ...more] = path
    return a?.kind === 'move' && b?.kind === 'line' && more.length === 0
      ? [{ x0: mm(a.to.x), y0: mm(a.to.y), x1: mm(b.to.x), y1: mm(b.to.y), layer }]
      : []
  })
const wordsOf = (page: PdfPageRead): string => page.texts.map(({ text }) => text).join(' ')
/** Corners of every closed four-sided stroke. */
const quadsOf = (page: PdfPageRead) =>
  page.strokes
    .flatMap(({ path }) => pathPoints(path, 1))
    .map((run) => run.map((p) => ({ x: mm(p.x), y: mm(p.y) })))
    .filter((run) => run.length === 5)

const gauged = (name: string, ...more: readonly string[]) =>
  traceply(
    ...['gauge', name, '--profiles', folder, '--across', '148.4mm', '--down', '151.1mm'],
    ...['--diagonals', '212mm', '211.5mm', ...more],
  )

describe('the square page', () => {
  it.each([
    ['a4', 210, 297, 10],
    ['letter', 215.9, 279.4, 12.7],
  ] as const)(
    'on %s has a square of 150 mm, its diagonals, two long rulers, blanks to write in and nothing that means nothing',
    async (paper, width, height, margin) => {
      const { pdf } = await made('square', '--paper', paper)
      expect(pdf.pages).toHaveLength(1)
      const page = pdf.pages[0]!
      assertNear(mm(page.width), width, 0.001)
      assertNear(mm(page.height), height, 0.001)
      const square = quadsOf(page).find((run) => Math.abs(run[1]!.x - run[0]!.x) > 100)!
      const [xs, ys] = [square.map((p) => p.x), square.map((p) => p.y)]
      const [left, bottom] = [Math.min(...xs), Math.min(...ys)]
      assertNear(Math.max(...xs) - left, 150, 0.001, 'across')
      assertNear(Math.max(...ys) - bottom, 150, 0.001, 'down')

      const lines = linesOf(page)
      const has = (x0: number, y0: number, x1: number, y1: number): boolean =>
        lines.some((l) => [l.x0 - x0, l.y0 - y0, l.x1 - x1, l.y1 - y1].every((off) => Math.abs(off) < 0.001))
      expect(has(left, bottom, left + 150, bottom + 150)).toBe(true)
      expect(has(left, bottom + 150, left + 150, bottom)).toBe(true)

      // nothing is filled; a blank of 28 mm stands at each side and diagonal
      expect(page.fills).toEqual([])
      const long = (l: Line): number => Math.hypot(l.x1 - l.x0, l.y1 - l.y0)
      const blanks = lines.filter(
        (l) => Math.abs(long(l) - 28) < 0.001 && l.x0 > left && l.x1 < left + 150 && l.y0 > bottom,
      )
      expect(blanks).toHaveLength(4)

      // rulers run as long as a step of theirs and some words allow, with a cross at both ends
      const step = paper === 'a4' ? 10 : 12.7
      for (const down of [false, true]) {
        const along = lines.filter((l) => Math.abs(down ? l.x1 - l.x0 : l.y1 - l.y0) < 0.001)
        const size = (l: Line): number => (down ? l.y1 - l.y0 : l.x1 - l.x0)
        const ruler = along.reduce((best, l) => (size(l) > size(best) ? l : best))
        assertNear(size(ruler) / step, Math.round(size(ruler) / step), 1e-4, 'whole steps')
        const free = (down ? height : width) - 2 * margin
        expect(size(ruler)).toBeGreaterThan(free - (down ? 80 : 30))
        for (const [x, y] of [
          [ruler.x0, ruler.y0],
          [ruler.x1, ruler.y1],
        ] as const) {
          const middle = lines.filter((l) => Math.hypot((l.x0 + l.x1) / 2 - x, (l.y0 + l.y1) / 2 - y) < 0.001)
          // the zeros of both rulers share their cross
          expect(middle.length, 'arms of the cross').toBeGreaterThanOrEqual(2)
        }
      }
    },
  )

  it.each(['a4', 'letter'])('on %s has combs whose ticks tell how far each edge is', async (paper) => {
    const { pdf } = await made('square', '--paper', paper)
    const page = pdf.pages[0]!
    const [width, height] = [mm(page.width), mm(page.height)]
    const short = linesOf(page).filter((l) => Math.hypot(l.x1 - l.x0, l.y1 - l.y0) < 3)
    for (const edge of ['left', 'right', 'top', 'bottom'] as const) {
      const upright = edge === 'left' || edge === 'right'
      const depth = (l: Line): number =>
        ({ left: l.x0, right: width - l.x0, bottom: l.y0, top: height - l.y0 })[edge]
      const own = short.filter((l) => Math.abs(upright ? l.x1 - l.x0 : l.y1 - l.y0) < 0.001)
      for (let n = 1; n <= 16; n++) {
        const tick = own.filter((l) => Math.abs(depth(l) - n) < 0.001)
        expect(tick.length, `${edge}, tick ${n}`).toBeGreaterThan(0)
      }
      for (const figure of ['5', '10', '15']) {
        const text = page.texts.filter((t) => t.text === figure)
        expect(text.length, figure).toBeGreaterThanOrEqual(4)
      }
    }
  })

  it('has a square of five whole inches for an inch rule, for those who build in inches alone', async () => {
    const inches = (await made('square', '--paper', 'letter')).pdf.pages[0]!
    const square = quadsOf(inches).find((run) => Math.abs(run[1]!.x - run[0]!.x) > 100)!
    const [x, y] = [Math.min(...square.map((p) => p.x)), Math.min(...square.map((p) => p.y))]
    const corner = inches.strokes
      .flatMap(({ path }) => pathPoints(path, 1))
      .map((run) => run.map((p) => [(mm(p.x) - x) / 25.4, (mm(p.y) - y) / 25.4] as const))
      .find((run) => run.length === 3 && Math.hypot(run[1]![0] - 5, run[1]![1] - 5) < 0.001)!
    for (const [i, [u, v]] of (
      [
        [5, 0],
        [5, 5],
        [0, 5],
      ] as const
    ).entries()) {
      assertNear(corner[i]![0] * 25.4, u * 25.4, 0.001)
      assertNear(corner[i]![1] * 25.4, v * 25.4, 0.001)
    }
    expect(inches.texts.map(({ text }) => text)).toContain('for an inch rule: 5 in')
    const metric = (await made('square', '--paper', 'a4')).pdf.pages[0]!
    expect(metric.texts.map(({ text }) => text)).not.toContain('for an inch rule: 5 in')
  })

  it('holds the gauge command with blanks, and in inches the size of the square in both', async () => {
    const { pdf } = await made('square', '--paper', 'letter')
    const words = wordsOf(pdf.pages[0]!)
    expect(words).toContain('traceply gauge NAME --paper letter --across ____mm --down ____mm')
    expect(words).toContain('--diagonals ____mm ____mm')
    expect(words).toContain('--margins')
    const said = /--margins "([^"]*)"/.exec(words)![1]!
    expect(words).toContain('for --margins: top, right, bottom, left.')
    const figures = ['4', '5', '12.5', '6']
    const margins = said.replaceAll(/_+/g, () => figures.shift()!)
    expect(figures).toEqual([])
    await gauged('filled', '--margins', margins)
    expect(JSON.parse(readFileSync(join(folder, 'filled.json'), 'utf8')).margins).toEqual({
      top: 4,
      right: 5,
      bottom: 12.5,
      left: 6,
    })
    // 150 mm = 5.9055 in, to the next 32nd 5 29/32: a strong 5 7/8
    expect(words).toContain('ACROSS 150 mm (5 7/8+ in)')
    expect(wordsOf((await made('square', '--paper', 'a4')).pdf.pages[0]!)).toContain('ACROSS 150 mm')
  })

  it('tells what the long rulers read when they are true, in a form that gauge takes, and what the combs are', async () => {
    for (const [paper, across, down] of [
      ['letter', '165.1', '190.5'],
      ['a4', '170', '220'],
    ] as const) {
      const { pdf } = await made('square', '--paper', paper)
      const page = pdf.pages[0]!
      const words = wordsOf(page)
      expect(words).toContain(`type it behind these, --across ____mm/${across}mm or --down ____mm/${down}mm.`)
      // the rulers themselves
      const lengths = linesOf(page).map((l) => [l.x1 - l.x0, l.y1 - l.y0] as const)
      for (const [i, length] of [Number(across), Number(down)].entries())
        expect(lengths.filter((l) => Math.abs(l[i]! - length) < 0.001 && l[1 - i] === 0)).toHaveLength(1)
      const short = (mm: string): string => `${(Number(mm) * 0.995).toFixed(1)}mm/${mm}mm`
      const filled = [
        '--across=149.3mm',
        `--across=${short(across)}`,
        '--down=149.3mm',
        `--down=${short(down)}`,
      ]
      const { exit, err } = await traceply('gauge', 'ruled', ...filled, '--profiles', folder, '--force')
      expect([exit, err]).toEqual([0, ''])
      expect(words).toContain('the first tick that is printed whole is that margin in mm, for --margins')
    }
    // a set's own square has no combs, a corrected one asks for no ruler
    const set = wordsOf((await made('plot')).pdf.pages[1]!)
    expect(set).toContain('type it behind these, --across ____mm/170mm')
    expect(set).not.toContain('comb')
    await gauged('study')
    expect(wordsOf((await made('square', '--printer', 'study')).pdf.pages[0]!)).not.toMatch(/ruler|comb/)
  })

  it('corrected says what to type for one without correction, under a name of its own and with nothing to fill in', async () => {
    await gauged('study')
    const words = wordsOf((await made('square', '--paper', 'a4', '--printer', 'study')).pdf.pages[0]!)
    const [line] = /traceply square .*?\.pdf/.exec(words)!
    expect(words).not.toContain('NAME')
    const [, command, ...args] = line.split(' ')
    const out = args.pop()!
    expect(out).not.toBe('square.pdf')
    expect((await traceply(command!, ...args, join(folder, out))).exit).toBe(0)
  })

  it('keeps its words clear of the square, however small the page', () => {
    const facts = {
      title: null,
      set: 'AAAA-BBBB-CCCC',
      command: `traceply ${'x'.repeat(170)}`,
      printer: null,
      combs: true,
    }
    let tried = 0
    for (const units of ['mm', 'in'] as const)
      for (let width = 90; width <= 280; width += 9)
        for (let height = width * 1.25; height < 1.6 * width; height += 13) {
          const { draw, corner, side } = squarePage(
            { x0: 10, y0: 10, x1: 10 + width, y1: 10 + height },
            { ...facts, units },
          )
          // as wide as the page has room beside the rulers, in the least case
          if (side === 50 && height < 134) continue
          const paragraphs = draw().flatMap((mark) =>
            mark.kind === 'text' && mark.at.x === 10 ? [mark.at.y] : [],
          )
          expect(paragraphs.length).toBeGreaterThan(5)
          expect(Math.min(...paragraphs), `${units} ${width} × ${height}`).toBeGreaterThan(corner.y + side)
          tried++
        }
    expect(tried).toBeGreaterThan(50)
  })

  it('is smaller where the margins leave no room, and says so in the command', async () => {
    const { pdf } = await made('square', '--paper', 'a4', '--margin', '32')
    const square = quadsOf(pdf.pages[0]!).find((run) => Math.abs(run[1]!.x - run[0]!.x) > 40)!
    assertNear(Math.abs(square[1]!.x - square[0]!.x), 100, 0.001)
    expect(wordsOf(pdf.pages[0]!)).toContain('--across ____mm/100mm')
  })

  it.each([
    [['--paper', 'b5'], /--paper b5: say one of/],
    [['--units', 'ft'], /--units ft: say mm or in/],
    [['--margin', 'wide'], /--margin wide/],
    [['--printer', 'nobody'], /there is no printer called `nobody`/],
  ])('is refused with %j', async (args, words) => {
    const out = join(folder, 'x.pdf')
    const { exit, err } = await traceply('square', ...args, '--profiles', folder, '--out', out)
    expect(exit).toBe(2)
    expect(err).toMatch(words)
    expect(existsSync(out)).toBe(false)
  })

  it('never replaces a file without --force', async () => {
    const out = join(folder, 'square.pdf')
    writeFileSync(out, 'mine')
    const { exit, err } = await traceply('square', '--out', out)
    expect(exit).toBe(2)
    expect(err).toContain('--force')
    expect(readFileSync(out, 'utf8')).toBe('mine')
  })
})

describe('with --printer', () => {
  /** The correction that undoes the readings: M·C is a true square, whatever the way to C. */
  const truth = (plan: { correction: readonly number[] }): readonly number[] => {
    const [a, b, c, d] = plan.correction as [number, number, number, number]
    const sin = (212 ** 2 - 211.5 ** 2) / (4 * 148.4 * 151.1)
    const [across, up] = [148.4 / 150, 151.1 / 150]
    const [C, D] = [up * sin, up * Math.sqrt(1 - sin * sin)]
    return [across * a + C * b, D * b, across * c + C * d, D * d]
  }
  const isTrue = (plan: { correction: readonly number[] }): void =>
    truth(plan).forEach((v, i) => {
      // profiles keep six decimals
      assertNear(v, [1, 0, 0, 1][i]!, 2e-6)
    })

  it('the square is written with the inverse, says so, and needs no combs', async () => {
    await gauged('study')
    const { pdf, plan, out, err } = await made('square', '--paper', 'a4', '--printer', 'study')
    expect(err).toBe('')
    expect(out).toContain('corrected for study')
    expect(plan.printer).toBe('study')
    isTrue(plan)
    expect(wordsOf(pdf.pages[0]!)).toContain('Printed with the correction of study')
    const [a, b, c, d] = plan.correction
    const square = quadsOf(pdf.pages[0]!).find((run) => Math.abs(run[1]!.x - run[0]!.x) > 100)!
    const side = (i: number): readonly [number, number] => [
      Math.abs(square[i + 1]!.x - square[i]!.x),
      Math.abs(square[i + 1]!.y - square[i]!.y),
    ]
    assertNear(Math.max(side(0)[0], side(1)[0]), 150 * a, 0.001)
    assertNear(Math.max(side(0)[1], side(1)[1]), 150 * d, 0.001)
    expect(b).toBe(0)
    assertNear(Math.min(side(0)[0], side(1)[0]), Math.abs(150 * c), 0.001)
  })

  it('the square comes on the paper that the printer was measured on, unless another is named', async () => {
    await gauged('study', '--paper', 'letter')
    const { plan, err } = await made('square', '--printer', 'study')
    expect(err).toBe('')
    expect(plan.paper.name).toBe('letter')
    const other = await made('square', '--printer', 'study', '--paper', 'a4')
    expect(other.plan.paper.name).toBe('a4')
    expect(other.err).toMatch(/study was measured on letter, this is a4/)
  })

  const pagesOf = (pdf: PdfRead, plan: { pages: readonly { kind: string; page: number }[] }, kind: string) =>
    plan.pages.filter((page) => page.kind === kind).map((page) => pdf.pages[page.page - 1]!)

  it('a set carries the correction, in the third part of its code alone', async () => {
    await gauged('study')
    const plain = await made('plot', '--paper', 'a4', '--cover', 'line')
    const corrected = await made('plot', '--paper', 'a4', '--cover', 'line', '--printer', 'study')
    isTrue(corrected.plan)
    expect(plain.plan.printer).toBeNull()
    expect(corrected.plan.printer).toBe('study')
    const [before, after] = [plain.plan.set.split('-'), corrected.plan.set.split('-')]
    expect(after.slice(0, 2)).toEqual(before.slice(0, 2))
    expect(after[2]).not.toBe(before[2])
    const tiles = pagesOf(corrected.pdf, corrected.plan, 'tile')
    expect(tiles.length).toBeGreaterThan(3)
    for (const page of tiles) expect(wordsOf(page)).toContain('corrected for study')
    for (const page of pagesOf(plain.pdf, plain.plan, 'tile'))
      expect(wordsOf(page)).not.toContain('corrected for')
    expect(wordsOf(pagesOf(corrected.pdf, corrected.plan, 'square')[0]!)).toContain('correction of study')
    // a printer that is known is expected to do better than one that is not
    expect(corrected.plan.expected[0].lip.likely).toBeLessThanOrEqual(plain.plan.expected[0].lip.likely)
  })

  it('plot says which margins it took where they are those of the printer, and not the usual ones', async () => {
    await gauged('study', '--margins', '3.5mm, 4mm, 14.2mm, 6mm')
    const { out, plan } = await made('plot', '--paper', 'a4', '--printer', 'study')
    expect(out).toContain(
      '\nMargins as gauged for study and 1 mm more: 5, 5, 16, 7 mm (top, right, bottom, left).\n',
    )
    const [tile] = plan.pages.filter(({ kind }: { kind: string }) => kind === 'tile')
    const [x0, y0, x1, y1] = tile.window.map(mm)
    // on the ideal page; the correction draws it together
    for (const [at, margin] of [
      [x0, 7],
      [y0, 16],
      [210 - x1, 5],
      [297 - y1, 5],
    ] as const)
      assertNear(at, margin, 1)
    const own = await made('plot', '--paper', 'a4', '--printer', 'study', '--margin', '20')
    expect(own.out).not.toContain('Margins')
    // the usual 10 mm, and none measured
    await gauged('usual', '--margins', '9mm, 9mm, 8.5mm, 9mm')
    expect((await made('plot', '--paper', 'a4', '--printer', 'usual')).out).not.toContain('Margins')
    await gauged('bare')
    expect((await made('plot', '--paper', 'a4', '--printer', 'bare')).out).not.toContain('Margins')
  })

  it('nothing falls into the margins that were measured', async () => {
    await gauged('study', '--margins', '3.5mm, 4mm, 14.2mm, 6mm')
    const { pdf, plan, err } = await made('plot', '--paper', 'a4', '--cover', 'whole', '--printer', 'study')
    expect(err).not.toMatch(/margin/)
    const least = { left: 6, right: 210 - 4, bottom: 14.2, top: 297 - 3.5 }
    for (const page of plan.pages)
      for (const { window } of page.places) {
        const [x0, y0, x1, y1] = window.map(mm)
        expect(x0).toBeGreaterThanOrEqual(least.left)
        expect(y0).toBeGreaterThanOrEqual(least.bottom)
        expect(x1).toBeLessThanOrEqual(least.right)
        expect(y1).toBeLessThanOrEqual(least.top)
      }
    for (const page of pdf.pages)
      for (const { x, y } of page.texts) {
        expect(mm(x)).toBeGreaterThanOrEqual(least.left)
        expect(mm(x)).toBeLessThanOrEqual(least.right)
        expect(mm(y)).toBeGreaterThanOrEqual(least.bottom)
        expect(mm(y)).toBeLessThanOrEqual(least.top)
      }
  })

  it('another paper than was measured warns, and a margin that the printer does not reach', async () => {
    await gauged('study', '--paper', 'a4', '--margins', '4mm, 4mm, 14mm, 4mm')
    const other = await made('plot', '--paper', 'letter', '--cover', 'line', '--printer', 'study')
    expect(other.err).toMatch(/watch .*study was measured on a4, this is letter; measure it again/)
    const narrow = await made('square', '--paper', 'a4', '--printer', 'study', '--margin', '5')
    expect(narrow.err).toMatch(/watch .*bottom margin of 5 mm is less than printer study prints \(14 mm\)/)
    expect(narrow.err).not.toMatch(/top margin/)
  })

  it('--json stands alone on standard output, and warnings on standard error', async () => {
    await gauged('study')
    const said = await traceply(
      ...[
        'plot',
        'templates/quarter-mm.yaml',
        '--paper',
        'letter',
        '--printer',
        'study',
        '--profiles',
        folder,
      ],
      ...['--out', join(folder, 'set.pdf'), '--json'],
    )
    expect(said.exit).toBe(0)
    expect(JSON.parse(said.out).printer).toBe('study')
    expect(said.err).toMatch(/was measured on a4/)
  })
})
