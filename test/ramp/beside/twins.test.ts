import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { QuarterDesign } from '../../../src/design/design.ts'
import { carried, twinsOf } from '../../../src/ramp/beside/twins.ts'
import { draftQuarter } from '../../../src/ramp/kinds/quarter.ts'
import { solveQuarter } from '../../../src/ramp/kinds/quarter-findings.ts'
import { solveDesign } from '../../../src/ramp/solve.ts'
import { designOf } from '../../support/design-of.ts'
import { remediesOf } from '../check/remedy.ts'
import { anyRamp, stock } from '../ramps.ts'

const text = (first: string, second: string): string => `title: boathouse
units: mm
ramps:
  - name: first
    width: 1216
    height: { frame: 600 }
    transition: { circle: { surface: 1700 }, tangent: { surface: 0 } }
    deck: 500
    skin: [9 plywood, 9 plywood]
    chamfer: { leg: 100 }
    coping: { outside: 60.3, up: 8, out: 6 }
    run-out: flat
    ${first}
  - name: second
    like: first
    ${second}
  - { name: third, like: second }
  - { name: other, kind: flat, width: 1216, length: 1200, height: { surface: 113 }, skin: [9 plywood, 9 plywood] }
`

const quarters = (first: string, second: string): readonly QuarterDesign[] => {
  return designOf(text(first, second)).ramps.filter((ramp) => ramp.kind === 'quarter')
}

test('those that are like a ramp, or like one that is, are its twins', () => {
  const [first, second, third] = quarters('toe: 40', 'toe: 50')
  const all = [first!, second!, third!]
  expect(twinsOf(first!, all).map(({ name }) => name)).toEqual(['second', 'third'])
  expect(twinsOf(second!, all).map(({ name }) => name)).toEqual(['third'])
  expect(twinsOf(third!, all)).toEqual([])
})

test.each([
  ['toe: 40', 'toe: 62'],
  ['toe: 40', 'toe: 40\n    chamfer: { leg: 70 }'],
  ['toe: 40', 'toe: 40\n    chamfer: none\n    width: 1300'],
  ['toe: 40', 'toe: 40\n    coping: none'],
  ['toe: 40\n    studs: { every: 180 }', 'toe: 40\n    studs: { every: 150, deck: 250 }'],
])('what is typed into the one is in the others as the file has it: %s', (first, second) => {
  const was = quarters(first, second)
  const typed = quarters(first.replace('toe: 40', 'toe: 55'), second)
  const at = typed[0]!
  // a key that the second says alike is taken for one that it takes over
  const said = second.includes('toe: 40') ? 55 : was[1]!.toe
  for (const i of [1, 2]) expect(carried(was[0]!, at, was[i]!)).toEqual({ ...typed[i]!, toe: said })
})

test('a tangent that suits the one and stops its twin is not offered', () => {
  const said = (second: string): string => {
    return solveDesign(designOf(text('toe: 40', second)))
      .checks.filter(({ id, ramp }) => id === 'flat-meets' && ramp === 'first')
      .map(({ message }) => message)
      .join()
  }
  expect(said('deck: 600')).toMatch(/; type `tangent: \{ surface: 113 mm \}` with a toe of \d+ mm$/)
  // 113 less the skin of 18 is the lowest toe
  expect(said('toe: 20')).toMatch(/; say what else closes the step/)
})

test('what a message offers stops no twin where nothing stopped it', () => {
  const pairs = fc.sample(fc.tuple(anyRamp, anyRamp, fc.integer({ min: 0, max: 5 })), {
    numRuns: 90,
    seed: 9,
  })
  const seen = { offers: 0, changed: 0 }
  for (const [ramp, other, key] of pairs) {
    const twin: QuarterDesign = {
      ...ramp,
      name: 'twin',
      like: ramp.name,
      ...[
        { height: other.height },
        { back: other.back },
        { chamfer: other.chamfer },
        { coping: other.coping },
        { toe: other.toe },
        { transition: other.transition },
      ][key],
    }
    const stopsOf = (design: QuarterDesign): readonly string[] =>
      draftQuarter(design, 'mm', stock)
        .drafts.filter(({ level }) => level === 'stop')
        .map(({ id }) => id)
    const { findings } = solveQuarter(ramp, 'mm', stock, { stored: [], twins: [twin] })
    const before = stopsOf(twin)
    for (const finding of findings.filter(({ level }) => level === 'stop')) {
      let offers: ReturnType<typeof remediesOf>
      try {
        offers = remediesOf(ramp, finding, 'mm')
      } catch {
        // with two ramps to suit there may be no way
        continue
      }
      for (const { words, design, panel } of offers) {
        if (panel) continue
        seen.offers++
        const now = carried(ramp, design, twin)
        if (now !== twin) seen.changed++
        expect(
          stopsOf(now).filter((id) => !before.includes(id)),
          `${words}: ${finding.message}`,
        ).toEqual([])
      }
    }
  }
  expect(Math.min(seen.offers, seen.changed), JSON.stringify(seen)).toBeGreaterThan(30)
})
