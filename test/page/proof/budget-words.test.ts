import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { gaugeUncertainty, type Readings } from '../../../src/printer/gauge.ts'
import { printerUncertainty } from '../../../src/printer/uncertainty.ts'
import { gaugeTrial, loose, rounding, sidesAlone, trialCases } from '../../support/gauge-trial.ts'
import { layOut } from '../../support/lay-out.ts'
import { assertNear } from '../../support/near.ts'
import { rms } from '../../support/random.ts'
import { simulateJobs } from '../../support/simulate-jobs.ts'
import { templateText } from '../../support/templates.ts'

const words = readFileSync(new URL('../../../docs/accuracy.md', import.meta.url), 'utf8').replace(/\s+/g, ' ')
/** Cells of every table row, by what stands in the first. */
const rows = new Map(
  readFileSync(new URL('../../../docs/accuracy.md', import.meta.url), 'utf8')
    .split('\n')
    .filter((line) => line.startsWith('| '))
    .map((line) =>
      line
        .split('|')
        .slice(1, -1)
        .map((cell) => cell.trim()),
    )
    .map(([first, ...rest]) => [first!, rest]),
)
const figures = (row: string): readonly number[] => {
  const cells = rows.get(row)
  if (!cells) throw new Error(`docs/accuracy.md has no row ${row}`)
  return cells.map((cell) => Number.parseFloat(cell))
}

const of = (nominal: number) => ({ measured: nominal, nominal, text: '' })
const once: Readings = {
  across: [of(150), of(170)],
  down: [of(150), of(220)],
  diagonals: [[of(150 * Math.SQRT2), of(150 * Math.SQRT2)]],
}
const groupWith = (uncertainty: Parameters<typeof simulateJobs>[2]) =>
  layOut(templateText('quarter-mm'), 'a4', 'line', { uncertainty })!.groups[0]!

describe('docs/accuracy.md', () => {
  const [page, joint, pencil] = [
    figures('one page against the next from the same printer'),
    figures('one joint, taped by its scales'),
    figures('pencil along a pricked or cut line'),
  ]
  const tape = 0.25

  it('adds up the parts of one set, and comes to what the program says', () => {
    const { expected, survey, tiles, pattern } = groupWith(gaugeUncertainty(once))
    expect(words).toContain(`cover line: ${tiles.length} pages, 6 joints from the toe to the lip`)
    const [toe, lip] = pattern.points.map(({ at }) => at) as [
      { x: number; y: number },
      { x: number; y: number },
    ]
    const [run, rise] = [lip.x - toe.x, lip.y - toe.y]
    // ±0.25 mm evenly spread on each reading: 0.25/√3, over what is measured
    const one = 0.25 / Math.sqrt(3)
    const likely = { across: (one * Math.SQRT2) / 320, down: (one * Math.SQRT2) / 370, skew: one / 150 }
    const worst = { across: 0.5 / 320, down: 0.5 / 370, skew: 0.5 / (150 * Math.SQRT2) }
    const root = (...v: readonly number[]): number => Math.sqrt(v.reduce((sum, x) => sum + x * x, 0))
    // its pages lie on their sides: a row runs down the page, level on the panel
    expect(words).toContain('its pages lie on their sides')
    assertNear(Math.abs(tiles[0]!.toPage[1]), 1, 1e-12)
    assertNear(tiles[0]!.toWindow[0], 1, 1e-12)
    const printer = [
      root(run * likely.down, rise * likely.across, rise * likely.skew),
      root(run * worst.down + rise * worst.skew, rise * worst.across),
    ] as const
    const pages = [page[0]! * Math.sqrt(6), page[1]! * 6] as const
    const joints = [joint[0]! * Math.sqrt(6), joint[1]! * 6] as const
    const bound = survey.find(({ words }) => words.startsWith('TOE to LIP'))!.tolerance + tape
    const lets = [bound / Math.sqrt(3), bound] as const
    const loose = [root(printer[0], pages[0], joints[0]), printer[1] + pages[1] + joints[1]] as const
    const table: readonly (readonly [string, readonly [number, number]])[] = [
      ['printer', printer],
      ['pages', pages],
      ['joints', joints],
      ['together, distances not checked', loose],
      ['what the distances let pass', lets],
      ['pencil', [pencil[0]!, pencil[1]!]],
      [
        'the line on the wood',
        [root(Math.min(loose[0], lets[0]), pencil[0]!), Math.min(loose[1], lets[1]) + pencil[1]!],
      ],
    ]
    for (const [row, values] of table)
      values.forEach((value, i) => {
        assertNear(figures(row)[i]!, value, 0.0051, row)
      })
    assertNear(figures('the line on the wood')[0]!, expected.lip.likely, 0.0051)
    assertNear(figures('the line on the wood')[1]!, expected.lip.worst, 0.0051)
  })

  it('says how well 2,000 printers are corrected', () => {
    expect(words).toContain('2,000 simulated printers')
    for (const [row, measure, rule] of [
      ['square, rulers, diagonals; a rule read to the nearest 0.25 mm', (r: Readings) => r, rounding],
      ['square and diagonals only, the same rule', sidesAlone, rounding],
      ['square, rulers, diagonals; readings up to 0.25 mm off', (r: Readings) => r, loose],
    ] as const) {
      const { left, before } = gaugeTrial(measure, rule)
      expect(left).toHaveLength(trialCases)
      ;[rms(left), left[Math.floor(0.99 * trialCases)]!, left.at(-1)!].forEach((value, i) => {
        assertNear(figures(row)[i]!, value, 0.0051, row)
      })
      assertNear(before / trialCases, 0.98, 0.005)
    }
    expect(words).toContain('98 of 100 of them were more than 2.5 mm off')
  })

  it('says what the distances do for a printer that nobody measured', () => {
    const unmeasured = printerUncertainty(null)
    const group = groupWith(unmeasured)
    const jobs = simulateJobs(group, 'line', unmeasured, 3000)
    const met = jobs.filter(({ outside }) => outside <= 1)
    assertNear(
      Number(/puts the lip about (\d\.\d) mm off/.exec(words)?.[1]),
      rms(jobs.map(({ off }) => off)),
      0.15,
    )
    assertNear(Number(/it lies about (\d\.\d) mm off/.exec(words)?.[1]), rms(met.map(({ off }) => off)), 0.15)
    expect(met.filter(({ off }) => off > group.expected.lip.worst)).toEqual([])
    assertNear(Number(/only about (\d) jobs in 10/.exec(words)?.[1]), (10 * met.length) / 3000, 0.7)
    const known = gaugeUncertainty(once)
    const better = simulateJobs(groupWith(known), 'line', known, 3000).filter(({ outside }) => outside <= 1)
    assertNear(
      Number(/and (\d) in 10 with a printer that was measured/.exec(words)?.[1]),
      (10 * better.length) / 3000,
      0.7,
    )
  })

  it('adds up the swung timber', () => {
    const parts = [
      'play of the screw in its hole',
      'timber bends or sags as it is swung',
      'pencil held against its end',
      'screw and sheet not at one height',
      'radius set by tape',
      "screw's place along the sheet's edge",
      "screw's height above the sheet's edge",
    ].map(figures)
    const [likely, worst] = figures('all of it')
    assertNear(likely!, Math.sqrt(parts.reduce((sum, [v]) => sum + v! * v!, 0)), 0.051)
    assertNear(
      worst!,
      parts.reduce((sum, [, v]) => sum + v!, 0),
      0.051,
    )
    // two heights h apart over a timber of length R: R − √(R² − h²)
    assertNear(figures('screw and sheet not at one height')[0]!, 1724 - Math.sqrt(1724 ** 2 - 18 ** 2), 0.051)
  })
})
