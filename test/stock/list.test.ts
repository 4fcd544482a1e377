import { describe, expect, test } from 'vitest'
import { listText } from '../../src/booklet/list/list-text.ts'
import type { Design } from '../../src/design/design.ts'
import { curvedOf } from '../../src/design/kind-traits.ts'
import { pathSample } from '../../src/geometry/sample.ts'
import { type BuyJob, buyJob, buyRecord } from '../../src/job/buy.ts'
import { cutsJob } from '../../src/job/cuts.ts'
import { isRefusal } from '../../src/job/refusal.ts'
import { runOutSheet } from '../../src/ramp/beside/run-out-sheet.ts'
import { stripJoints } from '../../src/ramp/beside/run-out-strips.ts'
import { designOf } from '../support/design-of.ts'
import { assertNear } from '../support/near.ts'
import { templates, templateText } from '../support/templates.ts'

const bought = (text: string): { readonly design: Design; readonly job: BuyJob } => {
  const design = designOf(text)
  const job = buyJob(design)
  if (isRefusal(job)) throw new Error(JSON.stringify(job))
  return { design, job }
}
const single = templateText('quarter-mm')
const flatAlone = `title: Flat\nunits: mm\nramps:\n  - kind: flat\n    width: 1216\n    length: 2400\n    height: { surface: 113 }\n    skin: [18 plywood, 6 hardboard]\n`
const prices = (all: string): string => single.replace('units: mm', `units: mm\nprices: { ${all} }`)

describe.each(templates)('the list of %s', (name) => {
  test('has every screw of skin, board, run-out, frame and pipe, and more than is needed', () => {
    const { job, design } = bought(templateText(name))
    const screws = job.facts.stock.list.filter(({ part }) => part === 'screws')
    const needed = screws.reduce((sum, { note }) => sum + Number(/^(\d+) needed/.exec(note)![1]), 0)
    let expected = 0
    for (const ramp of job.solved.ramps) {
      const bays = ramp.design.sides.count - 1
      const rows = [...ramp.skin.flatMap((layer) => layer.rows)]
      expected += rows.reduce((sum, { across }) => sum + across.length, 0)
      // two in either end of each timber; these designs have no blocks
      expected += 4 * bays * ramp.studs.length
      if (ramp.kind === 'quarter') {
        expected += 4 * bays * ramp.deckTimbers.length
        expected += ramp.deckBoard?.screws.count ?? 0
        expected += ramp.pipe?.holes.length ?? 0
        expected += runOutSheet(ramp, design.stock, design.units)?.row?.across.length ?? 0
        expected += stripJoints(ramp, design.units)?.screws?.count ?? 0
      }
    }
    expect(needed).toBe(expected)
    for (const { count, unit, note } of screws)
      expect(count * Number(/\d+/.exec(unit)?.[0] ?? 1)).toBeGreaterThanOrEqual(
        1.1 * Number(/^(\d+) needed/.exec(note)![1]) - 1e-9,
      )
  })

  test('names each panel, board and pipe that is bought, and what is kept of them', () => {
    const { job } = bought(templateText(name))
    const { list, timber, panels } = job.facts.stock
    const sum = (part: string): number =>
      list.filter((line) => line.part === part).reduce((all, { count }) => all + count, 0)
    expect(sum('timber')).toBe(timber.reduce((all, { boards }) => all + boards.length, 0))
    expect(sum('sheets')).toBe(panels!.reduce((all, { count }) => all + count, 0))
    expect(sum('sheets')).toBeGreaterThan(0)
    const piped = job.solved.ramps.some((ramp) => ramp.kind === 'quarter' && ramp.pipe)
    expect(sum('pipe') > 0).toBe(piped)
    for (const part of ['tools', 'protection']) expect(sum(part)).toBeGreaterThan(3)
    const text = listText(job.facts)
    for (const { what } of list) expect(text.replace(/\s+/g, ' ')).toContain(what)
    expect(text.match(/\[ \]/g)).toHaveLength(list.length)
    const narrow = listText(job.facts, 60)
    expect(narrow.replace(/\s+/g, ' ')).toBe(text.replace(/\s+/g, ' '))
    // all but its title
    for (const line of narrow.split('\n').slice(1)) expect(line.length).toBeLessThanOrEqual(60)
  })
})

test('bolts of each length are for the joints that take them, with the plates of those', () => {
  const quarter = (name: string, toe: number, sides: number, stud: string): string => `  - name: ${name}
    kind: quarter
    width: 1216
    height: { deck: 700 }
    transition: { circle: { surface: 2000 }, tangent: { surface: 113 } }
    toe: ${toe}
    deck: 500
    sides: { thickness: ${sides} }
    studs: { section: ${stud} }
    skin: [9 plywood, 9 plywood, 6 hardboard]
    run-out: flat
`
  const { job } = bought(`title: Two quarters
units: mm
ramps:
  - name: low
    kind: flat
    width: 1216
    length: 2440
    height: { surface: 113 }
    skin: [18 plywood, 6 hardboard]
${quarter('first', 89, 18, '38 x 89, every: 150')}${quarter('second', 93, 25, '38 x 140, every: 400')}`)
  const { list, joints } = job.facts.stock
  const lines = list!.filter(({ what }) => what.includes('M8'))
  expect(joints.map(({ quarter: name }) => name)).toEqual(['first', 'second'])
  expect(lines).toHaveLength(2)
  joints.forEach(({ quarter: name, size, bolt, holes }, i) => {
    expect(lines[i]!.what).toContain(`${bolt} mm long`)
    expect(lines[i]!.count).toBe(2 * (holes.quarter.length + holes.flat.length))
    expect(lines[i]!.note).toBe(
      `two plates of offcut, ${size[0]} × ${size[1]}, over the joint of low and ${name}`,
    )
  })
  expect(joints[0]!.size).not.toEqual(joints[1]!.size)
})

describe('cost', () => {
  test('is told by line and whole, in the currency as it was typed', () => {
    const { design, job } = bought(prices('18 plywood: 62 EUR, 38 x 89 x 2400: 5.20 EUR, screws: 9.5 EUR'))
    const record = buyRecord(design, job)
    expect(record.cost!.currency).toBe('EUR')
    const boxes = record.list
      // a few loose ones have no price
      .filter(({ part, unit }) => part === 'screws' && unit !== 'piece')
      .reduce((sum, { count }) => sum + count, 0)
    const boards = record.list.find(({ part }) => part === 'timber')!.count
    assertNear(record.cost!.total, 62 + 5.2 * boards + 9.5 * boxes, 1e-9)
    assertNear(
      record.cost!.total,
      record.list.reduce((sum, { cost }) => sum + (cost ?? 0), 0),
      1e-9,
    )
    expect(listText(job.facts).replace(/\s+/g, ' ')).toContain(
      `5.20 EUR each: ${(5.2 * boards).toFixed(2)} EUR`,
    )
    expect(record.cost!.without).toContain('6 hardboard, 1220 × 2440 mm')
  })

  test('says which prices nothing needs, but not the length that another one beat', () => {
    const { job } = bought(prices('12 plywood: 9, 38 x 89 x 2400: 5, 38 x 89 x 3000: 9'))
    expect(job.facts.stock.cost!.unused).toEqual(['12 plywood'])
  })

  test('is not told where the design has no prices', () => {
    const { design, job } = bought(single)
    expect(buyRecord(design, job).cost).toBeNull()
    expect(listText(job.facts)).not.toContain('Cost')
  })
})

test('tools that the steps need are on the list: a spanner for bolts, a chalk line for pages, a hammer for tacks', () => {
  for (const [text, spanner, chalk] of [
    [single, 'nuts of the handles', true],
    [templateText('quarter-and-flat-in'), 'nuts of the handles and the plates', true],
    // no plate without a flat to meet
    [single.replace(/run-out:[^\n]*\n +sheet: .*/, 'run-out: flat'), 'nuts of the handles', true],
    [flatAlone, null, false],
  ] as const) {
    const tools = bought(text).job.facts.stock.list.filter(({ part }) => part === 'tools')
    expect(tools.find(({ what }) => what === 'spanner')?.note ?? null).toBe(spanner)
    expect(tools.some(({ what }) => what.startsWith('drill') && /9 mm|3\/8 in/.test(what))).toBe(
      (spanner ?? '').includes('plates'),
    )
    expect(tools.some(({ what }) => what === 'chalk line')).toBe(chalk)
    expect(tools.filter(({ what }) => /\bhammer\b/.test(what))).toHaveLength(1)
  }
})

test('wheels are on the list with what each must bear', () => {
  const { job } = bought(
    `${single.replace('leg: 120', 'leg: 180')}    wheels: { diameter: 75, height: 100 }\n`,
  )
  const line = job.facts.stock.list.find(({ what }) => what.startsWith('rigid wheels'))!
  const { most } = job.facts.stock.weight.ramps[0]!
  expect([line.count, line.note]).toEqual([4, `rated for ${Math.ceil(most / 3)} kg each or more`])
})

// common practice, no source: one ramp 96 in wide, frame radius 66, frame height 23 1/4, toe 1 1/2, side 61 1/4 long
test('a ramp of 96 in takes both sides from one panel of 5/8, two sheets of 3/8, one of 1/4, one pipe and eleven timbers of 8 ft', () => {
  const { job, design } = bought(`title: wide
units: in
stock: { timber: [96], pipe: [96] }
ramps:
  - width: 96
    height: { frame: 23 1/4 }
    transition: { circle: { frame: 66 }, tangent: { frame: 0 } }
    toe: 1 1/2
    length: 61 1/4
    sides: { thickness: 5/8 }
    skin: [3/8 plywood, 3/8 plywood, 1/4 hardboard]
    deck-board: 5/8 plywood
    coping: { outside: 2 3/8 }
`)
  const count = (what: string): number =>
    job.facts.stock.list.find((line) => line.what.startsWith(what))?.count ?? 0
  const cuts = cutsJob(design)
  if (isRefusal(cuts)) throw new Error(JSON.stringify(cuts))
  const sided = cuts.sheets
    .flatMap(({ panels }) => panels)
    .filter(({ pieces }) => pieces.some(({ part }) => part.part === 'side'))
  expect(sided).toHaveLength(1)
  const [{ sheet, size, pieces }] = sided as [(typeof sided)[number]]
  expect(pieces.filter(({ part }) => part.part === 'side')).toHaveLength(2)
  assertNear(sheet.thickness, 0.625 * 25.4, 1e-9)
  assertNear(size[0], 48 * 25.4, 1e-9)
  assertNear(size[1], 96 * 25.4, 1e-9)
  expect(count('3/8 plywood')).toBe(2)
  expect(count('1/4 hardboard')).toBe(1)
  expect(count('2 3/8 steel pipe, 96 in')).toBe(1)
  const [ramp] = job.solved.ramps
  // studs of 94 3/4 leave nothing of 96 that takes another: a timber each
  const timbers = ramp!.studs.length + (ramp!.kind === 'quarter' ? ramp!.deckTimbers.length : 0)
  expect(count('1 1/2 × 3 1/2 timber')).toBe(timbers)
  // six studs up the curve; under the pipe, behind it, two under the deck, one in the back bottom corner
  expect(timbers).toBe(11)
})

// common practice, no source: studs trimmed by 3 in store with 1/2 to spare, and the twin's sheets lose 1 3/4
test('a twin whose studs are 3 in shorter than the ramp is wide stores inside with 1/2 in to spare', () => {
  const { design, job } = bought(`title: twins
units: in
ramps:
  - name: big
    width: 96
    height: { frame: 23 1/4 }
    transition: { circle: { frame: 66 }, tangent: { frame: 0 } }
    toe: 1 1/2
    length: 61 1/4
    sides: { thickness: 5/8 }
    skin: [3/8 plywood, 3/8 plywood, 1/4 hardboard]
  - name: small
    like: big
    stores-inside: { ramp: big, clearance: 1/2 }
    height: { frame: 17 }
    length: 50
`)
  const [big, small] = design.ramps
  assertNear((big!.width - small!.width) / 25.4, 1.75, 1e-9)
  assertNear((big!.width - (small!.width - 2 * small!.sides.thickness)) / 25.4, 3, 1e-9)
  // solved: studs, what is to spare between the sides, every layer
  const [outer, inner] = job.solved.ramps as [
    (typeof job.solved.ramps)[number],
    (typeof job.solved.ramps)[number],
  ]
  assertNear(outer.studLength - inner.studLength, 1.75 * 25.4, 1e-9)
  assertNear(outer.studLength - inner.width, 0.5 * 25.4, 1e-9)
  outer.skin.forEach(({ widths }, i) => {
    const across = (all: typeof widths): number => Math.max(...all.map(({ from, length }) => from + length))
    assertNear(across(widths) - across(inner.skin[i]!.widths), 1.75 * 25.4, 1e-6)
  })
  expect(outer.skin).toHaveLength(3)
  // it goes in, so that the two stand on less than one behind the other
  const [storing] = job.facts.stock.storings
  expect(storing!.stored).not.toBeNull()
  expect(storing!.stored![0]).toBeLessThan(outer.length + inner.length)
})

test('paint, filler, sandpaper, tape and glue are for what is built, though all its plywood is there already', () => {
  const at = (size: string): string => {
    const sheets = [6, 9, 15, 18].map((thick) => `{ sheet: ${thick} plywood, size: ${size}, count: 9 }`)
    return `stock: { offcuts: [${sheets.join(', ')}] }`
  }
  const listOf = (size: string) =>
    bought(single.replace('units: mm', `units: mm\n${at(size)}`).replace('6 hardboard', '6 plywood'))
  // half a panel holds half a side
  for (const [size, glued] of [
    ['1220 x 2440', false],
    ['1220 x 1300', true],
  ] as const) {
    const { job } = listOf(size)
    const { list, panels } = job.facts.stock
    if (!glued) expect(panels!.every(({ sheet }) => sheet.material !== 'plywood')).toBe(true)
    const finish = list!.filter(({ part }) => part === 'finish').map(({ what }) => what)
    expect(finish).toEqual([
      // the lowest strip under the run-out is glued, whatever the sides are
      'waterproof wood glue',
      'paint or oil for outside',
      'filler for outside',
      'sandpaper, grit 80 and 120',
      'adhesive tape',
    ])
  }
  // two sides, their skin and deck board, by outlines of chords: a litre for 5 m² of both faces, twice
  const { job } = listOf('1220 x 2440')
  const [ramp] = job.solved.ramps
  if (ramp?.kind !== 'quarter') throw new Error('no quarter')
  const points = pathSample(ramp.side.outline, 1)
  const side = Math.abs(
    points.reduce((sum, a, i) => {
      const b = points[(i + 1) % points.length]!
      return sum + (a.x * b.y - b.x * a.y) / 2
    }, 0),
  )
  const sheets = ramp.skin.reduce(
    (sum, { pieces }) => sum + pieces.reduce((all, { length }) => all + length, 0),
    0,
  )
  const area = 2 * (2 * side + ramp.width * (sheets + ramp.deckBoard!.length))
  const paint = job.facts.stock.list!.find(({ what }) => what.startsWith('paint'))!
  expect(paint.count).toBe(Math.ceil(area / 5e6))
})

test('paint is bought by the litre or the quart, for both faces of the plywood twice', () => {
  for (const [name, unit, litres] of [
    ['quarter-mm', 'litre', 1],
    // a US liquid quart: NIST Handbook 44
    ['quarter-in', 'quart', 0.946352946],
  ] as const) {
    const { list, panels } = bought(templateText(name)).job.facts.stock
    const faces = panels!
      .filter(({ sheet }) => sheet.material === 'plywood')
      .reduce((sum, { count, size: [a, b] }) => sum + (2 * count * a * b) / 1e6, 0)
    const line = list.find(({ what }) => what.startsWith('paint'))!
    expect(line.unit).toBe(unit)
    // 5 m² a litre: common practice, no source
    expect(line.count * litres * 5).toBeGreaterThanOrEqual(faces)
    expect((line.count - 1) * litres * 5).toBeLessThan(faces)
  }
})

test('steel has the sizes that a shop cuts it to: what closes the toe, and what is ridden on', () => {
  const notes = (text: string): readonly string[] =>
    bought(text).job.facts.stock.list.flatMap(({ what, note }) => (/^[\d.]+ steel,/.test(what) ? [note] : []))
  const { design, job } = bought(single)
  const [quarter] = job.solved.ramps
  const runOut = quarter?.kind === 'quarter' ? runOutSheet(quarter, design.stock, design.units) : null
  expect(runOut!.widths).toHaveLength(1)
  expect(notes(single)).toEqual([`or cut to size: ${runOut!.length} × ${runOut!.widths[0]!.length}`])
  // no sheet is longer than 2500
  const wide = single.replace('width: 1216', 'width: 3600').replace('count: 2 ', 'count: 4 ')
  expect(notes(wide)).toEqual([`or cut to size: 2 of ${runOut!.length} × 1800`])
  const twins = `${single.replace('- kind:', '- name: one\n    kind:')}\n  - name: two\n    like: one\n`
  expect(notes(twins)).toEqual([`or cut to size: 2 of ${runOut!.length} × 1216`])
  const ridden = single.replace('6 hardboard', '2 steel')
  expect(ridden).not.toBe(single)
  expect(notes(ridden)).toHaveLength(2)
  // the layer as `cuts` has it
  const layer = cutsJob(designOf(ridden))
  if (isRefusal(layer)) throw new Error(JSON.stringify(layer))
  const [skin] = layer.sheets.flatMap(({ parts }) =>
    parts.filter(({ part, sheet }) => part === 'skin' && sheet.material === 'steel'),
  )
  const { outline } = skin!
  const up = Math.max(...outline.pieces.map(({ to }) => to.y)) - outline.start.y
  expect(notes(ridden)).toContain(`or cut to size: ${Math.round(up)} × 1216`)
  // of one thickness both lie on one panel
  const both = single.replace('6 hardboard', '1.5 steel')
  expect(notes(both)).toHaveLength(1)
  const own = bought(both)
  const [quarterOfBoth] = curvedOf(own.job.solved.ramps)
  const closing = runOutSheet(quarterOfBoth!, own.design.stock, own.design.units)
  expect(notes(both)[0]).toMatch(
    new RegExp(`^or cut to size: \\d+ × 1216 and ${Math.round(closing!.length)} × 1216$`),
  )
})
