import {
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { readLength } from '../../src/length.ts'
import { assertNear } from '../support/near.ts'
import { templates, templateText } from '../support/templates.ts'
import { figuresOf, traceply } from '../support/traceply.ts'

let folder = ''
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'traceply-gauge-'))
})
afterEach(() => {
  vi.unstubAllEnvs()
  rmSync(folder, { recursive: true, force: true })
})

const call = async (...args: readonly string[]) => {
  const said = await traceply(...args)
  expect([0, 1, 2]).toContain(said.exit)
  expect(said.err).not.toMatch(/^\s+at /m)
  return said
}
const gauge = (...args: readonly string[]) => call('gauge', ...args, '--profiles', folder)
const sides = ['--across', '148.4mm', '--down', '151.1mm'] as const
const kept = (name: string) => JSON.parse(readFileSync(join(folder, `${name}.json`), 'utf8'))

describe('gauge keeps what was measured', () => {
  it('of the square', async () => {
    const { exit, out, err } = await gauge('study', ...sides, '--diagonals', '212mm', '211.5mm')
    expect(exit).toBe(0)
    expect(err).toBe('')
    const profile = kept('study')
    assertNear(profile.across, 148.4 / 150, 1e-6)
    assertNear(profile.down, 151.1 / 150, 1e-6)
    // law of cosines on the sides
    const lean = (Math.asin((212 ** 2 - 211.5 ** 2) / (4 * 148.4 * 151.1)) * 180) / Math.PI
    assertNear(profile.skewDegrees, lean, 1e-5)
    expect(profile.version).toBe(1)
    expect(out).toContain('across 1.07 % too short, down 0.73 % too long, leans 0.14° to the right')
    expect(out).toContain(`kept in ${join(folder, 'study.json')}`)
    expect(out).toContain('traceply plot DESIGN --printer study')
  })

  it.each([
    ['a ruler', ['237.8mm/240mm'], 237.8 / 240],
    ['inches', ['5 7/8in'], (5.875 * 25.4) / 150],
    ['a ruler in sixteenths against mm', ['9 3/8in/240mm'], (9.375 * 25.4) / 240],
    ['a ruler in inches against inches', ['9 7/16in/9 1/2in'], 9.4375 / 9.5],
    ['cm', ['14.9 cm'], 149 / 150],
    ['several prints and a ruler', ['149mm', '149.5mm', '238.5mm/240mm'], (149 + 149.5 + 238.5) / 540],
  ])('of %s', async (_, readings, across) => {
    const { exit, err } = await gauge('study', ...readings.flatMap((r) => ['--across', r]), '--down', '150mm')
    expect(err).toBe('')
    expect(exit).toBe(0)
    assertNear(kept('study').across, across, 1e-6)
    expect(kept('study').readings).toEqual([...readings.map((r) => `across ${r}`), 'down 150mm'])
  })

  it('of several pairs of diagonals', async () => {
    await gauge('study', ...sides, '--diagonals', '212mm', '211.5mm', '--diagonals', '212mm', '211.75mm')
    const lean = (a: number, b: number) => Math.asin((a * a - b * b) / (4 * 148.4 * 151.1))
    assertNear(
      kept('study').skewDegrees,
      ((lean(212, 211.5) + lean(212, 211.75)) / 2) * (180 / Math.PI),
      1e-5,
    )
  })

  it('with commas or blanks alike', async () => {
    await gauge('study', '--across', '149mm, 149.5mm', '--down', '150mm', '--diagonals', '211.8mm,211.5mm')
    expect(kept('study').readings).toEqual([
      'across 149mm',
      'across 149.5mm',
      'down 150mm',
      'diagonals 211.8mm 211.5mm',
    ])
    await gauge('inches', '--across', '5 7/8in', '--down', '5 29/32in', '--diagonals', '8 11/32in 8 3/8in')
    expect(kept('inches').readings.at(-1)).toBe('diagonals 8 11/32in 8 3/8in')
    await gauge('apart', ...sides, '--diagonals', '8', '11/32in', '8', '3/8in')
    expect(kept('apart').readings.at(-1)).toBe('diagonals 8 11/32in 8 3/8in')
  })

  it('of the combs', async () => {
    await gauge('study', ...sides, '--margins', '3mm, 4mm, 12mm, 1/4in')
    expect(kept('study').margins).toEqual({ top: 3, right: 4, bottom: 12, left: 6.35 })
    await gauge('bare', ...sides)
    expect(kept('bare').margins).toBeNull()
  })

  it('of the combs before, where the same printer and paper are measured again without them', async () => {
    const again = (...more: readonly string[]) => gauge('study', ...sides, ...more, '--force')
    await gauge('study', ...sides, '--margins', '3mm, 4mm, 12mm, 1/4in')
    const margins = { top: 3, right: 4, bottom: 12, left: 6.35 }
    const { out } = await again()
    expect(kept('study').margins).toEqual(margins)
    expect(out).toContain('\nmargins as measured before: 3, 4, 12, 6.35 mm (top, right, bottom, left)\n')
    expect((await again('--margins', '5mm, 5mm, 5mm, 5mm')).out).not.toContain('before')
    expect(kept('study').margins).toEqual({ top: 5, right: 5, bottom: 5, left: 5 })
    const other = await again('--paper', 'a3')
    expect(kept('study').margins).toBeNull()
    expect(other.out).toContain('\nthe margins were measured on a4, not on a3: add --margins\n')
    // nothing is known, or what was is damaged
    expect((await again('--paper', 'a3')).out).not.toContain('margins')
    writeFileSync(join(folder, 'study.json'), '{')
    expect((await again()).exit).toBe(0)
    expect(kept('study').margins).toBeNull()
  })

  it('of the paper that is said', async () => {
    await gauge('study', ...sides, '--paper', 'Letter')
    expect(kept('study').paper).toBe('letter')
  })

  it('of the paper of the design, or A4, where none is said, and says which', async () => {
    const design = ['--for', 'templates/quarter-in.yaml'] as const
    const own = await gauge('own', ...sides, ...design)
    expect(own.out).toContain(
      '\nfor letter, the paper of the design; if it was a4: the same again with --paper a4 --force\n',
    )
    expect(kept('own').paper).toBe('letter')
    expect(own.out).toMatch(/^own on letter: /)
    const bare = await gauge('bare', ...sides)
    expect(bare.out).toContain(
      '\nfor a4, as no paper was said; if it was letter: the same again with --paper letter --force\n',
    )
    expect(kept('bare').paper).toBe('a4')
    const said = await gauge('said', ...sides, ...design, '--paper', 'a4')
    expect(kept('said').paper).toBe('a4')
    expect(said.out).not.toMatch(/^for /m)
    // what is offered works
    expect((await gauge('bare', ...sides, '--paper', 'letter', '--force')).exit).toBe(0)
    expect(kept('bare').paper).toBe('letter')
  })

  it('of a small square, and how well it is known, as it is asked and as it is read again', async () => {
    const small = [
      '--across',
      '49.8mm/50mm',
      '--down',
      '50.2mm/50mm',
      '--diagonals',
      '70.7mm/70.7mm',
      '70.7mm/70.7mm',
    ]
    // ±0.25 mm evenly spread on each of two diagonals of 70.7 mm
    const skew = ((0.25 / Math.sqrt(3)) * Math.SQRT2) / 70.7
    const asked = JSON.parse((await gauge('small', ...small, '--json')).out)
    const shown = JSON.parse((await gauge('--show', 'small', '--json')).out)
    for (const { uncertainty } of [asked, shown]) assertNear(uncertainty.likely.skew, skew, 1e-12)
    assertNear(skew, 0.00289, 5e-6)
  })

  it('says that a lean goes unseen without diagonals', async () => {
    const { out } = await gauge('study', ...sides)
    expect(out).toContain('a leaning print goes unseen: add --diagonals A B')
    expect(out).toMatch(/, its lean not measured\n/)
    const two = (await gauge('two', ...sides, '--diagonals', '212mm', '212mm')).out
    expect(two).not.toContain('unseen')
    expect(two).toMatch(/, upright\n/)
  })

  it('as JSON alone on standard output', async () => {
    const { out, err } = await gauge('study', ...sides, '--json', '--for', 'templates/quarter-mm.yaml')
    expect(err).toBe('')
    const said = JSON.parse(out)
    expect(said).toMatchObject(kept('study'))
    // one reading of ±0.25 mm on 150 mm
    assertNear(said.uncertainty.likely.across, 0.25 / Math.sqrt(3) / 150, 1e-12)
    expect(said.effects).toHaveLength(1)
    expect(JSON.parse((await gauge('--list', '--json')).out)).toEqual(['study'])
    expect(JSON.parse((await gauge('--show', 'study', '--json')).out).name).toBe('study')
    expect(JSON.parse((await gauge('--forget', 'study', '--json')).out)).toEqual({
      forgot: join(folder, 'study.json'),
    })
  })
})

interface Page {
  readonly kind: string
  readonly tile: string
  readonly pattern: string
  readonly toPattern: readonly [number, number, number, number, number, number]
  readonly window: readonly [number, number, number, number]
}

/** Toe and lip of each quarter of a design, from its figures: the lip lies `run` behind the toe, at the frame's height. */
const curvesOf = async (design: string) =>
  JSON.parse((await figuresOf(design, '--json')).out)
    .ramps.filter(({ kind }: { kind: string }) => kind === 'quarter')
    .map(
      ({
        name,
        transition,
        heights,
      }: {
        name: string
        transition: Record<string, number>
        heights: Record<string, number>
      }) => {
        const { run, toeAngle, lipAngle } = transition
        const radius = run! / (Math.sin((lipAngle! * Math.PI) / 180) - Math.sin((toeAngle! * Math.PI) / 180))
        const rise = radius * (Math.cos((toeAngle! * Math.PI) / 180) - Math.cos((lipAngle! * Math.PI) / 180))
        return {
          name,
          points: [
            [0, heights.frame! - rise],
            [run!, heights.frame!],
          ] as const,
        }
      },
    ) as { readonly name: string; readonly points: readonly (readonly [number, number])[] }[]

describe('--for tells what the printer would do to a ramp', () => {
  // quarter-mm: R 1724, c 1700, frame 625 (deck 640 less its board of 15), toe 40
  const [R, c] = [1724, 1700]
  const [a0, a1] = [Math.acos((c - 40) / R), Math.acos((c - 625) / R)]
  const [run, rise] = [R * (Math.sin(a1) - Math.sin(a0)), 585]

  it('in mm, its rows lying along the length of the paper', async () => {
    const { out } = await gauge('study', ...sides, '--for', 'templates/quarter-mm.yaml')
    const words = out.replaceAll(/\s+/g, ' ')
    // its pages are turned: down the paper is along the floor
    const [A, B] = [(151.1 / 150) * R, (148.4 / 150) * R]
    const radius = (t: number) => ((A * Math.cos(t)) ** 2 + (B * Math.sin(t)) ** 2) ** 1.5 / (A * B)
    const show = (mm: number) => mm.toFixed(1).replace(/\.0$/, '')
    expect(words).toContain(
      `(line): seen from the toe the lip comes out ${show((1.6 / 150) * rise)} mm too low and ${show((1.1 / 150) * run)} mm too far back; ` +
        `the side's radius of 1724 mm becomes ${show(radius(a0))} mm at the toe, ${show(radius(a1))} mm at the lip`,
    )
    const said = /corrected: the lip lies within \d\.\d mm as a rule, (\d\.\d) mm if every reading errs/.exec(
      words,
    )!
    // both sides read once, off by 0.25 mm in 150; the lean not known, 0.1°: it moves what is high along the floor. A bound is rounded up
    const most = Math.hypot((0.25 / 150) * run + ((0.1 * Math.PI) / 180) * rise, (0.25 / 150) * rise)
    expect(Number(said[1])).toBeGreaterThanOrEqual(most)
    expect(Number(said[1])).toBeLessThan(most + 0.1)
  })

  it('in inches', async () => {
    const { out } = await gauge('study', ...sides, '--for', 'templates/quarter-in.yaml', '--paper', 'tabloid')
    // quarter-in: frame 24 3/8 in, toe 1 1/2 in; turned pages, so up is across: 1.6/150 of the rise is 0.244 in, a quarter
    expect(out).toContain('(line): seen from the toe the lip comes out 1/4 in too low')
    // one unit in one answer: its mm in 32nds, none of them less
    const words = out.replaceAll(/\s+/g, ' ')
    const [, likely, worst] = /corrected: the lip lies within (\S+) in as a rule, (\S+) in if every/.exec(
      words,
    )!
    const args = ['--for', 'templates/quarter-in.yaml', '--paper', 'tabloid', '--json']
    const { corrected } = JSON.parse((await gauge('other', ...sides, ...args)).out).effects[0]
    for (const [said, mm] of [
      [likely!, corrected.likely],
      [worst!, corrected.worst],
    ] as const) {
      const shown = readLength(said, 'in') as { readonly mm: number }
      expect(shown.mm).toBeGreaterThanOrEqual(mm - 1e-6)
      expect(shown.mm).toBeLessThan(mm + 25.4 / 32 + 1e-6)
    }
  })

  it.each(
    templates.flatMap((name) => (['a4', 'letter', 'a3'] as const).map((paper) => [name, paper] as const)),
  )(
    'as the pages of %s on %s come out when that printer prints them, row by row on its line',
    async (name, paper) => {
      const design = `templates/${name}.yaml`
      const measured = [...sides, '--diagonals', '212mm', '211.5mm', '--paper', paper]
      const { effects } = JSON.parse(
        (await gauge('study', ...measured, '--for', design, '--json', '--force')).out,
      )
      const plotted = await call(
        'plot',
        design,
        '--paper',
        paper,
        '--printer',
        'study',
        '--profiles',
        folder,
        '--out',
        join(folder, 'set.pdf'),
        '--force',
        '--json',
      )
      const plan = JSON.parse(plotted.out)
      const lean = (212 ** 2 - 211.5 ** 2) / (4 * 148.4 * 151.1)
      const [p, q, r] = [148.4 / 150, (151.1 / 150) * lean, (151.1 / 150) * Math.sqrt(1 - lean * lean)]
      expect(effects.length).toBeGreaterThan(0)
      for (const { ramp, cover, uncorrected } of effects) {
        expect(cover).toBe(plan.cover)
        const tiles = plan.pages.filter(
          (page: Page) => page.kind === 'tile' && page.pattern === `${ramp}/side`,
        )
        // without the correction that the pages were written with
        const [ta, tb, tc, td] = tiles[0].toPattern
        const [ca, cb, cc, cd] = plan.correction
        const [a, b, c, d] = [ta * ca + tc * cb, tb * ca + td * cb, ta * cc + tc * cd, tb * cc + td * cd]
        // what is (x, y) on the paper is (X, Y) in the pattern; the printer makes (p·x + q·y, r·y) of it
        const printed = ([X, Y]: readonly [number, number]): [number, number] => {
          const det = a * d - b * c
          const [x, y] = [(d * X - c * Y) / det, (a * Y - b * X) / det]
          const [u, v] = [p * x + q * y, r * y]
          return [a * u + c * v, b * u + d * v]
        }
        const middle = ({ toPattern: [A, B, C, D, E, F], window: [x0, y0, x1, y1] }: Page) => {
          const [x, y] = [(x0 + x1) / 2, (y0 + y1) / 2]
          return [A * x + C * y + E, B * x + D * y + F] as const
        }
        // one after another in a row: the page's own direction along it, across in a portrait layout and up in a landscape one
        const alongRow = ([X, Y]: readonly [number, number]): boolean => {
          const [across, up] = [X * a + Y * b, X * c + Y * d]
          return Math.abs(Math.abs(a) > Math.abs(b) ? up : across) < 1
        }
        const row = tiles.find((tile: Page, i: number) => {
          const [from, to] = [middle(tile), tiles[i + 1] && middle(tiles[i + 1])]
          return to && alongRow([to[0] - from[0], to[1] - from[1]])
        })
        if (!row) continue
        const next = tiles[tiles.indexOf(row) + 1]
        const [from, to] = [middle(row), middle(next)]
        const along = [to[0] - from[0], to[1] - from[1]] as const
        const lies = printed(along)
        const turn = Math.atan2(along[1], along[0]) - Math.atan2(lies[1], lies[0])
        const { points } = (await curvesOf(design)).find(({ name: own }) => own === ramp)!
        const chord = [points[1]![0] - points[0]![0], points[1]![1] - points[0]![1]] as const
        const [X, Y] = printed(chord)
        assertNear(uncorrected.lipBack, X * Math.cos(turn) - Y * Math.sin(turn) - chord[0], 0.005, 'back')
        assertNear(uncorrected.lipUp, X * Math.sin(turn) + Y * Math.cos(turn) - chord[1], 0.005, 'up')
      }
    },
  )

  // margins of the combs: those of the pages are a millimetre more
  it.each([
    ['quarter-mm', 'a4', '24mm, 24mm, 24mm, 24mm'],
    ['quarter-in', 'letter', '12mm, 12mm, 12mm, 12mm'],
    ['quarter-in', 'a4', '3mm, 24mm, 12mm, 5mm'],
  ])('in the cover that plot takes for it: %s on %s with margins of %s', async (name, paper, margins) => {
    const design = `templates/${name}.yaml`
    const combs = ['--margins', margins, '--paper', paper]
    const { out } = await gauge('study', ...sides, ...combs, '--for', design)
    const next = /^next: traceply plot DESIGN (.*)$/m.exec(out)![1]!.split(' ')
    const args = [...next, '--out', join(folder, 'set.pdf'), '--json']
    const plan = JSON.parse((await call('plot', design, ...args)).out)
    expect([plan.paper.name, plan.printer]).toEqual([paper, 'study'])
    expect(out).toContain(`its pages laid as plot lays them here (${plan.cover})`)
  })

  it('of twins each, though they share a pattern', async () => {
    const twins = `${templateText('quarter-mm').replace('  - kind: quarter', '  - name: left\n    kind: quarter')}  - { name: right, like: left }\n`
    writeFileSync(join(folder, 'twins.yaml'), twins)
    const { out } = await gauge('study', ...sides, '--json', '--for', join(folder, 'twins.yaml'))
    const [left, right] = JSON.parse(out).effects
    expect([left.ramp, right.ramp]).toEqual(['left', 'right'])
    expect(right).toEqual({ ...left, ramp: 'right' })
  })

  it('says so where the design cannot be laid out', async () => {
    writeFileSync(join(folder, 'high.yaml'), templateText('quarter-mm').replace('deck: 640', 'deck: 2400'))
    const { out } = await gauge('study', ...sides, '--for', join(folder, 'high.yaml'))
    expect(out).toContain('cannot be laid out, so nothing is told of it')
    expect(out).toMatch(/\nSTOP .*\n/)
    expect(out).not.toMatch(/^(note|watch) /m)
    expect(out).not.toContain('uncorrected')
  })

  it('and keeps nothing where there is no such design, or a bad one', async () => {
    expect((await gauge('study', ...sides, '--for', join(folder, 'nope.yaml'))).exit).toBe(2)
    writeFileSync(join(folder, 'bad.yaml'), 'title: Boathouse\nunits: furlongs\n')
    expect((await gauge('study', ...sides, '--for', join(folder, 'bad.yaml'))).exit).toBe(1)
    expect(existsSync(join(folder, 'study.json'))).toBe(false)
  })
})

describe('gauge refuses', () => {
  it.each([
    [
      'a bare number',
      ['--across', '148.4', '--down', '151.1mm'],
      2,
      /148\.4 has no unit; write 148\.4mm or 148\.4in/,
    ],
    [
      'a comma for a point',
      ['--across', '148,4mm', '--down', '151.1mm'],
      2,
      /148,4mm` has a comma; write `148\.4mm`, with a point/,
    ],
    ['a bare ruler', ['--across', '238.1/240', '--down', '151.1mm'], 2, /no unit|not a length/],
    ['no --across', ['--down', '151.1mm'], 2, /^--across is missing[^\n]*\n$/],
    ['no --down', ['--across', '151.1mm'], 2, /^--down is missing[^\n]*\n$/],
    ['neither', [], 2, /^--across is missing.*\n--down is missing.*\n$/],
    [
      'a digit swapped',
      ['--across', '184.4mm', '--down', '151.1mm'],
      1,
      /two digits swapped\? 148\.4mm would fit/,
    ],
    ['inches for mm', ['--across', '5.9mm', '--down', '151.1mm'], 1, /inches read as mm\? 5\.9in would fit/],
    ['mm for inches', ['--across', '150in', '--down', '151.1mm'], 1, /mm read as inches\? 150mm would fit/],
    ['fit to page', ['--across', '141mm', '--down', '141mm'], 1, /print again at 100 %, never "fit to page"/],
    ['one diagonal', [...sides, '--diagonals', '212mm'], 2, /--diagonals: give both/],
    [
      'diagonals that cannot belong',
      [...sides, '--diagonals', '216mm', '216mm'],
      1,
      /has diagonals of about 211\.8 mm/,
    ],
    [
      'diagonals of a bent square',
      [...sides, '--diagonals', '214mm', '209.5mm'],
      1,
      /more than any printer in order/,
    ],
    [
      'bare margins',
      [...sides, '--margins', '4, 4, 12, 4'],
      2,
      /one length or four, with units, from the combs/,
    ],
    ['three margins', [...sides, '--margins', '4mm, 4mm, 12mm'], 2, /one length or four, with units/],
    ['a wild margin', [...sides, '--margins', '4mm, 4mm, 120mm, 4mm'], 2, /each 0 to 50 mm/],
    ['a paper that is none', [...sides, '--paper', 'b5'], 2, /--paper b5: say one of letter/],
    ['a length that is none', ['--across', 'wide', '--down', '151.1mm'], 2, /--across/],
    ['a negative length', ['--across=-149mm', '--down', '151.1mm'], 1, /measure again/],
    ['a true length of nothing', ['--across', '149mm/0mm', '--down', '151.1mm'], 2, /more than 0/],
  ])('%s, and keeps nothing', async (_, args, exit, words) => {
    const said = await gauge('study', ...args)
    expect(said.err).toMatch(words)
    expect(said.exit).toBe(exit)
    expect(said.out).toBe('')
    expect(readdirSync(folder)).toEqual([])
  })

  it('all that is wrong at once', async () => {
    const { err } = await gauge('study', '--across', '184.4mm', '--down', '141mm')
    expect(err).toMatch(/--across 184\.4mm/)
    expect(err).toMatch(/--down 141mm/)
    expect(err).toMatch(/nothing kept/)
  })

  it.each(['../x', '/etc/x', 'a/b', 'a\\b', '..', '.hidden', 'a b', 'a'.repeat(41), 'Gerät', ''])(
    'the name %s',
    async (name) => {
      for (const args of [
        [name, ...sides],
        ['--show', name],
        ['--forget', name],
      ]) {
        const { exit, err } = await gauge(...args)
        expect(exit).toBe(2)
        expect(err).toMatch(/is no name for a printer|say a name/)
      }
      const { exit } = await call(
        'plot',
        'templates/quarter-mm.yaml',
        '--printer',
        name,
        '--profiles',
        folder,
      )
      expect(exit).toBe(2)
      expect(readdirSync(folder)).toEqual([])
    },
  )

  it('no name at all', async () => {
    const { exit, err } = await gauge(...sides)
    expect(exit).toBe(2)
    expect(err).toContain('say a name for the printer')
  })

  it('an option that there is not', async () => expect((await gauge('study', '--acros', '1mm')).exit).toBe(2))

  it('to replace a profile without --force', async () => {
    await gauge('study', ...sides)
    const again = await gauge('study', '--across', '149mm', '--down', '149mm')
    expect(again.exit).toBe(2)
    expect(again.err).toContain('--force')
    assertNear(kept('study').across, 148.4 / 150, 1e-6)
    expect((await gauge('study', '--across', '149mm', '--down', '149mm', '--force')).exit).toBe(0)
    assertNear(kept('study').across, 149 / 150, 1e-6)
  })
})

describe('the printers that are known', () => {
  it('are listed, shown and forgotten', async () => {
    expect((await gauge('--list')).out).toMatch(/no printers in .* yet; measure one/)
    await gauge('study', ...sides)
    await gauge('attic', ...sides)
    expect((await gauge('--list')).out).toBe('attic\nstudy\n')
    const shown = (await gauge('--show', 'study')).out
    expect(shown).toContain('study on a4: across 1.07 % too short')
    expect(shown).toContain('its margins are not measured')
    await gauge('attic', ...sides, '--margins', '4mm,4.5mm,12mm,4mm', '--force')
    expect((await gauge('--show', 'attic')).out).toContain(
      'its least margins: 4, 4.5, 12, 4 mm (top, right, bottom, left)',
    )
    expect((await gauge('--forget', 'study')).exit).toBe(0)
    expect((await gauge('--list')).out).toBe('attic\n')
  })

  it('are asked for by a near name', async () => {
    await gauge('study', ...sides)
    for (const args of [
      ['--show', 'studdy'],
      ['--forget', 'studdy'],
    ]) {
      const { exit, err } = await gauge(...args)
      expect(exit).toBe(2)
      expect(err).toContain('did you mean `study`?')
    }
    expect((await gauge('--show', 'workshop')).err).toContain('there are: study')
    expect(existsSync(join(folder, 'study.json'))).toBe(true)
  })

  it.each([
    ['cut short', (text: string) => text.slice(0, 60), /it is not JSON any more/],
    [
      'of a newer version',
      (text: string) => text.replace('"version": 1', '"version": 2'),
      /made by a newer traceply/,
    ],
    ['with a wild figure', (text: string) => text.replace('0.989333', '98.9'), /missing or out of its range/],
    [
      'with a bad reading',
      (text: string) => text.replace('148.4mm', '148.4'),
      /its reading `across 148\.4` is none/,
    ],
    [
      'with readings that are no words',
      (text: string) => text.replace('"across 148.4mm"', '{}'),
      /missing or out/,
    ],
    ['empty', () => '', /it is not JSON any more/],
  ])('are refused when their file is %s, but may be forgotten', async (_, harm, words) => {
    await gauge('study', ...sides)
    const file = join(folder, 'study.json')
    writeFileSync(file, harm(readFileSync(file, 'utf8')))
    for (const said of [
      await gauge('--show', 'study'),
      await call('square', '--printer', 'study', '--profiles', folder, '--out', join(folder, 'x.pdf')),
    ]) {
      expect(said.exit).toBe(1)
      expect(said.err).toMatch(words)
      expect(said.err).toContain(file)
    }
    expect(existsSync(join(folder, 'x.pdf'))).toBe(false)
    expect((await gauge('--forget', 'study')).exit).toBe(0)
    expect(existsSync(file)).toBe(false)
  })

  it('go by the name of their file', async () => {
    await gauge('study', ...sides)
    copyFileSync(join(folder, 'study.json'), join(folder, 'attic.json'))
    expect((await gauge('--show', 'attic')).out).toMatch(/^attic on a4/)
  })

  it('live in the user’s configuration folder, or where --profiles says', async () => {
    vi.stubEnv('XDG_CONFIG_HOME', join(folder, 'config'))
    // the convention of Linux; other systems have their own
    if (process.platform !== 'linux') return
    expect((await call('gauge', 'study', ...sides)).exit).toBe(0)
    const file = join(folder, 'config', 'traceply', 'printers', 'study.json')
    expect(JSON.parse(readFileSync(file, 'utf8')).name).toBe('study')
    expect((await call('gauge', '--list')).out).toBe('study\n')
    expect((await call('gauge', '--list', '--profiles', join(folder, 'other'))).out).toMatch(/no printers in/)
    const deep = join(folder, 'a', 'my b')
    expect((await call('gauge', 'deep', ...sides, '--profiles', deep)).out).toContain(
      `--printer deep --profiles "${deep}"\n`,
    )
    expect(readdirSync(deep)).toEqual(['deep.json'])
    // a path that is not absolute is to be ignored (XDG base directory specification)
    vi.stubEnv('XDG_CONFIG_HOME', 'config')
    vi.stubEnv('HOME', join(folder, 'home'))
    expect((await call('gauge', 'study', ...sides)).exit).toBe(0)
    expect(existsSync(join(folder, 'home', '.config', 'traceply', 'printers', 'study.json'))).toBe(true)
  })

  it('cannot live in a file or be a folder', async () => {
    writeFileSync(join(folder, 'file'), '')
    expect((await call('gauge', 'study', ...sides, '--profiles', join(folder, 'file'))).exit).toBe(2)
    mkdirSync(join(folder, 'study.json'))
    expect((await gauge('--show', 'study')).exit).toBe(2)
    expect((await gauge('study', ...sides, '--force')).exit).toBe(2)
    expect((await gauge('--forget', 'study')).exit).toBe(2)
  })
})
