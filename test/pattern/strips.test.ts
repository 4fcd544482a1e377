import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readDesign } from '../../src/design/read.ts'
import { showLength } from '../../src/length.ts'
import { designStrips, rampStrips } from '../../src/pattern/ramp-strips.ts'
import type { StripMark, StripRow } from '../../src/pattern/story-strip.ts'
import { level, solveLevel } from '../ramp/flats.ts'
import { job } from '../ramp/framed.ts'
import { piped, plain, sawnSeed, wholeOf } from '../ramp/ramps.ts'
import { assertNear } from '../support/near.ts'
import { templateText } from '../support/templates.ts'
import { wholeDesign } from '../support/whole.ts'

const rings = (row: StripRow | undefined): readonly number[] =>
  row!.marks.filter(({ sign }) => sign === 'ring').map(({ at }) => at)
const called = (row: StripRow | undefined, form: RegExp): readonly StripMark[] =>
  row!.marks.filter(({ label }) => label !== null && form.test(label))

const nearAll = (actual: readonly number[], expected: readonly number[], what: string): void => {
  expect(actual.length, what).toBe(expected.length)
  const sorted = [...expected].sort((a, b) => a - b)
  actual.forEach((at, i) => {
    assertNear(at, sorted[i]!, 1e-6, what)
  })
}

describe('the strips of layers of skin', () => {
  test('carry every stud, seam and row of screws, flat and on the upper face, whatever the ramp', () => {
    let [seams, rows, between] = [0, 0, 0]
    fc.assert(
      fc.property(job, ({ design, panel, units }) => {
        const ramp = wholeOf(design, units, panel)
        const strips = rampStrips(ramp, units)
        for (const [i, layer] of ramp.skin.entries()) {
          const strip = strips.find(({ name }) => name === `ramp/strip-${layer.layer}`)
          if (layer.length === 0) {
            expect(strip).toBeUndefined()
            continue
          }
          const plan = ramp.skin[i]!
          const [flat, bent] = strip!.rows
          expect(strip!.length).toBe(layer.length)
          nearAll(
            rings(flat),
            plan.rows.map(({ at }) => at),
            'rows of screws',
          )
          // each tick says which sheet's edge it is; `figures` names the middle between them
          const edges = [flat.marks.filter(({ aside }) => aside === 'ends'), called(flat, /^seam.*, starts$/)]
          for (const [k, half] of [-0.5, 0.5].entries()) {
            const gap = units === 'mm' ? 3 : 25.4 / 8
            nearAll(
              edges[k]!.map(({ at }) => at),
              plan.seams.map(({ at }) => at + half * gap),
              'edges of sheets',
            )
            for (const { at, figure } of edges[k]!)
              expect(figure).toBe(showLength(at, units, { decimals: 1 }))
          }
          // a stud under a seam is named with it: where its middle lies is between the sheets
          const ticks = flat.marks.filter(({ sign }) => sign === 'tick').map(({ at }) => at)
          const onSeam = plan.seams.flatMap(({ stud, second }) =>
            [stud, second].filter((one) => one !== null),
          )
          nearAll(
            ticks,
            [
              ...layer.marks.filter((_, k) => !onSeam.includes(k)),
              ...plan.seams.flatMap(({ at }) => {
                const gap = units === 'mm' ? 3 : 25.4 / 8
                return [at - gap / 2, at + gap / 2]
              }),
              layer.length,
            ],
            'ticks',
          )
          for (const { stud, second } of plan.seams) {
            if (stud === null) continue
            const words = second === null ? `stud ${stud + 1}` : `studs ${stud + 1} and ${second + 1}`
            expect(called(flat, new RegExp(`^seam on ${words}, starts$`)).length).toBe(1)
          }
          // arcs of one angle are as long as their radii: the middle keeps the flat sheet's length
          const { frame } = ramp.transition.radius
          const { below, sheet } = layer
          const share = (frame - below - sheet.thickness) / (frame - below - sheet.thickness / 2)
          expect(bent!.marks.map(({ sign }) => sign)).toEqual(flat.marks.map(({ sign }) => sign))
          bent!.marks.forEach(({ at }, k) => {
            assertNear(at, flat.marks[k]!.at * share, 1e-6, 'on the upper face')
          })
          seams += plan.seams.length
          rows += plan.rows.length
          between += plan.rows.filter(({ on }) => on === 'between').length
        }
      }),
      { numRuns: 150, seed: sawnSeed, endOnFailure: true },
    )
    expect(seams).toBeGreaterThan(50)
    expect(rows).toBeGreaterThan(500)
    expect(between).toBeGreaterThan(50)
  })

  test('a row of screws has words of its own where no stud or seam stands at it', () => {
    const ramp = wholeOf({ ...plain, fasten: 'between' })
    const [first, , top] = rampStrips(ramp, 'mm')
    expect(called(first!.rows[0], /screws/)).toEqual([])
    // those at its ends have a stud's
    const { length } = ramp.skin[2]!.rows.filter(({ stud }) => stud === null)
    expect(length).toBeGreaterThan(2)
    expect(called(top!.rows[0], /^screws$/).length).toBe(length)
  })

  test('a flat has one edge for its sheets, with each stud at its place', () => {
    const { ramp } = solveLevel(level)
    const [strip] = rampStrips(ramp, 'mm')
    expect(strip!.rows.length).toBe(1)
    const studs = called(strip!.rows[0], /^stud/)
    expect(studs.length).toBeGreaterThan(3)
    for (const { at } of studs)
      assertNear(Math.min(...ramp.studs.map((stud) => Math.abs(stud.at - at))), 0, 1e-9, 'a stud')
  })
})

const skinOfSix = '9 plywood, 9 plywood, 6 hardboard, 3 hardboard, 3 hardboard, 3 hardboard'

describe('the strips of screws across', () => {
  test('carry the rows of two layers each, from the left, with their figures; which row differs by what is told', () => {
    const shown = (at: number): string => showLength(at, 'mm', { decimals: 1 })
    const across = (ramp: Parameters<typeof rampStrips>[0]) =>
      rampStrips(ramp, 'mm').filter(({ kind }) => kind === 'across')
    const alike = wholeOf(plain)
    expect(across(alike).map(({ rows }) => rows.length)).toEqual([2, 1])
    // with more layers the top row's screws step off the pipe's
    const reading = readDesign(templateText('quarter-mm').replace(/skin: .*/, `skin: [${skinOfSix}]`))
    if ('problems' in reading) throw new Error(JSON.stringify(reading.problems))
    let stepped = 0
    for (const ramp of [alike, ...wholeDesign(reading.design).ramps])
      across(ramp)
        .flatMap(({ rows }) => rows)
        .forEach((row, i) => {
          const but = /^the screws of each row(?:, but at stud (\d+): (.*) in place of (.*))?$/.exec(
            row!.words,
          )!
          expect(row!.edge).toBe(`LAYER ${i + 1}`)
          const usual = rings(row).map(shown)
          for (const { stud, across: screws } of ramp.skin[i]!.rows) {
            const [own, is] = [screws.map(shown), stud === Number(but[1]) - 1]
            expect(own.filter((at) => !usual.includes(at)).join(', ')).toBe(is ? but[2] : '')
            expect(usual.filter((at) => !own.includes(at)).join(', ')).toBe(is ? but[3] : '')
            if (is) stepped++
            else nearAll(rings(row), screws, `layer ${i + 1}`)
          }
          for (const { at, sign, label } of row!.marks)
            if (sign === 'ring') assertNear(Number(label), at, 0.05001, 'its figure')
        })
    expect(stepped).toBe(2)
  })

  test('carry the edges of sheets that meet across', () => {
    const ramp = wholeOf({ ...plain, width: 3000, sides: { thickness: 18, count: 3 } })
    const [strip] = rampStrips(ramp, 'mm').filter(({ name }) => name.includes('across'))
    const [seam] = ramp.skin[0]!.acrossSeams
    const ticks = strip!.rows[0].marks.filter(({ sign }) => sign === 'tick').map(({ at }) => at)
    nearAll(ticks, [seam!.at - 1.5, seam!.at + 1.5, 3000], 'sheets')
    nearAll(
      called(strip!.rows[0], /^seam, starts$/).map(({ at }) => at),
      [seam!.at + 1.5],
      'named',
    )
  })
})

describe("the pipe's strip", () => {
  test('carries its holes and joints from the left end, and says which wall has the large hole', () => {
    const ramp = wholeOf({ ...plain, width: 4400, coping: piped() })
    const strip = rampStrips(ramp, 'mm').find(({ name }) => name === 'ramp/strip-pipe')!
    const { holes, joints, length } = ramp.pipe!
    expect(joints.length).toBe(1)
    nearAll(rings(strip.rows[0]), holes, 'holes')
    expect(called(strip.rows[0], /^joint/).map(({ at }) => at)).toEqual([joints[0]!.at])
    expect(strip.length).toBe(length)
    expect(strip.rows[0].words).toBe('drill the near wall 13 mm (1/2 in), the far wall 5 mm (3/16 in)')
    expect(strip.notes).toEqual([
      "near = the wall that faces the drill, where the screw's head passes; far = against the timber",
    ])
  })

  test('there is none without a pipe', () => {
    expect(rampStrips(wholeOf(plain), 'mm').some(({ name }) => name.includes('pipe'))).toBe(false)
  })
})

test('a layer that is stepped back has the zero of both its edges at its own toe end', () => {
  const ramp = wholeOf({ ...plain, runOut: { kind: 'stepped', back: 20 } })
  const { frame } = ramp.transition.radius
  const strip = rampStrips(ramp, 'mm').find(({ name }) => name === 'ramp/strip-2')!
  // layer 2 of 9 on 9: its middle 13.5, its upper face 18 inside the frame
  const [flat, bent] = strip.rows.map((row) => called(row, /^stud 3$/)[0]!.at)
  const angle = ramp.studs[2]!.at / frame
  const start = 20 / (frame - 13.5)
  assertNear(flat!, (angle - start) * (frame - 13.5), 1e-6)
  assertNear(bent!, (angle - start) * (frame - 18), 1e-6)
})

describe('the strips of twins', () => {
  const text = (width: number): string =>
    `${templateText('quarter-mm').replace('  - kind: quarter', '  - name: left\n    kind: quarter')}  - { name: right, like: left, width: ${width} }\n`

  const strips = (width: number) => {
    const reading = readDesign(text(width))
    if ('problems' in reading) throw new Error(JSON.stringify(reading.problems))
    return designStrips(wholeDesign(reading.design).ramps, 'mm').strips
  }

  test('are printed once, for both of them by name', () => {
    const found = strips(1216)
    const alone = found.filter(({ name }) => name.startsWith('left/'))
    expect(found).toEqual(alone)
    expect(new Set(found.map(({ name }) => name)).size).toBe(found.length)
    for (const { ramps } of found) expect(ramps).toBe('left, right')
  })

  test('are printed for each where one is wider', () => {
    const found = strips(1000)
    expect(found.filter(({ name }) => name.startsWith('right/')).length).toBeGreaterThan(2)
  })
})

describe('marks that lie evenly on what is straight', () => {
  const printed = (text: string) => {
    const reading = readDesign(text)
    if ('problems' in reading) throw new Error(JSON.stringify(reading.problems))
    const { ramps } = wholeDesign(reading.design)
    return { ramps, all: ramps.flatMap((ramp) => rampStrips(ramp, 'mm')), ...designStrips(ramps, 'mm') }
  }

  test('have no strip: the tape and its figures are told, from one zero', () => {
    const { ramps, strips, byTape } = printed(templateText('quarter-mm'))
    expect(strips.map(({ what }) => what)).toEqual(['layer 1', 'layer 2', 'layer 3'])
    const [ramp] = ramps
    const across = ramp!.skin.map(({ rows }) => rows[0]!.across)
    expect(byTape.map(({ figures }) => figures.map(Number))).toEqual(
      [...across, ramp!.pipe!.holes].map((row) => row.map((at) => Math.round(at * 10) / 10)),
    )
  })

  test('on a flat are told however its sheets meet: each stud, row of screws and edge of a sheet, in order', () => {
    let [studded, seamed] = [0, 0]
    for (const [length, fasten] of [
      [8000, 'studs'],
      [5000, 'between'],
      [2440, 'studs'],
    ] as const) {
      const { ramps, strips, byTape } = printed(
        templateText('quarter-and-flat-mm').replace(
          'length: 2440',
          `length: ${length}${fasten === 'between' ? '\n    fasten: between' : ''}`,
        ),
      )
      const flat = ramps.find(({ kind }) => kind === 'flat')!
      expect(strips.filter(({ ramps: own }) => own === 'flat')).toEqual([])
      for (const layer of flat.skin) {
        const told = byTape.find(
          ({ what, zero }) => what === `flat, layer ${layer.layer}` && zero === "the sheet's end at stud 1",
        )!
        const show = (at: number): string => `${Math.round(at * 10) / 10}`
        const under = layer.seams.flatMap(({ stud, second }) => [stud, second])
        const studs = flat.studs.flatMap(({ at }, i) => (under.includes(i) ? [] : [at]))
        const onStud = (at: number): boolean => studs.some((stud) => Math.abs(stud - at) < 0.3)
        const every = studs.every((at) => layer.rows.some((row) => Math.abs(row.at - at) < 0.3))
        const marks: (readonly [number, string])[] = [
          ...studs.map((at) => [at, show(at)] as const),
          ...layer.rows.flatMap(({ at }) => (onStud(at) ? [] : [[at, `screws ${show(at)}`] as const])),
          ...layer.seams.flatMap(({ at }) => [
            [at - 1.5, `sheet ends ${show(at - 1.5)}`] as const,
            [at + 1.5, `next starts ${show(at + 1.5)}`] as const,
          ]),
        ]
        const wanted = marks.sort(([a], [b]) => a - b).map(([, words]) => words)
        if (every) expect(told.figures).toEqual(wanted)
        else expect(told.figures.map((one) => one.replace(' with screws', ''))).toEqual(wanted)
        expect(told.words.endsWith(', screws at each')).toBe(every)
        studded += studs.length
        seamed += layer.seams.length
      }
    }
    expect(studded).toBeGreaterThan(60)
    expect(seamed).toBeGreaterThan(6)
  })

  test('leave strips where there would be none, never one along a flat', () => {
    const two = `title: Two
units: mm
ramps:
  - name: q
    kind: quarter
    width: 1216
    height: { deck: 640 }
    transition: { circle: { surface: 1700 } }
    toe: 40
    deck: 500
    skin: []
    run-out: none
    coping: { outside: 60.3, up: 8, out: 6 }
  - name: flat
    kind: flat
    width: 1216
    length: 8000
    height: { surface: 113 }
    skin: [12 plywood, 12 plywood]
`
    const { strips, byTape } = printed(two)
    expect(strips.length).toBeGreaterThan(0)
    expect(strips.filter(({ kind }) => kind === 'layer')).toEqual([])
    expect(byTape.map(({ what }) => what)).toEqual(['flat, layer 1', 'flat, layer 2'])
  })

  test('are those with gaps alike but at the ends, slower: each gap against each', () => {
    const count = { even: 0, uneven: 0 }
    for (const name of ['quarter-mm', 'pair-mm', 'quarter-mm-round', 'quarter-and-flat-mm']) {
      const { all, strips, byTape } = printed(templateText(name))
      for (const strip of all) {
        const bent = strip.rows.length === 2 && strip.rows[0].edge === 'FLAT'
        for (const row of strip.rows) {
          const at = [...new Set(row!.marks.slice(0, -1).map((mark) => mark.at))]
          const gaps = at
            .slice(1)
            .map((one, i) => one - at[i]!)
            .slice(1, -1)
          const sheets = strip.kind === 'layer' && !bent
          const even = sheets || (!bent && gaps.every((a) => gaps.every((b) => Math.abs(a - b) < 0.5)))
          const rows = strips.filter(({ name: own }) => own === strip.name).flatMap((own) => own.rows)
          expect([strip.name, row!.edge, rows.some((own) => own?.edge === row!.edge)]).toEqual([
            strip.name,
            row!.edge,
            !even,
          ])
          count[even ? 'even' : 'uneven']++
        }
      }
      expect(byTape.length + strips.flatMap(({ rows }) => rows).length).toBe(
        all.flatMap(({ rows }) => rows).length,
      )
    }
    expect(Math.min(count.even, count.uneven)).toBeGreaterThan(8)
  })
})
