import { describe, expect, test } from 'vitest'
import { chooseRamps } from '../../src/job/choose/choose.ts'
import { chosenNotes } from '../../src/job/choose/choose-words.ts'
import { readWishes, type WishWords } from '../../src/job/choose/wishes.ts'
import { cutsJob } from '../../src/job/cuts.ts'
import { figuresJob } from '../../src/job/figures.ts'
import { readSettled } from '../../src/job/settle/settle.ts'
import { rampSize } from '../../src/ramp/storing/size.ts'
import { partsOf } from '../../src/stock/parts.ts'
import { sawTimber } from '../../src/stock/timber/boards.ts'
import { assertNear } from '../support/near.ts'
import { randomFrom } from '../support/random.ts'

const words = ['very mellow', 'mellow', 'middle', 'lively', 'quick', 'steep'] as const

/** Least and most radius over height of each word: common practice, no source. */
const ratios: Readonly<Record<string, readonly [number, number]>> = {
  'very mellow': [3, Number.POSITIVE_INFINITY],
  mellow: [2.5, 3],
  middle: [2, 2.5],
  lively: [1.75, 2],
  quick: [1.5, 1.75],
  steep: [1.33, 1.5],
}

/** What somebody may know: each wish in one of three. Lengths mm. */
const wishesOf = (random: () => number) => {
  const some = <T>(value: () => T): T | undefined => (random() < 1 / 3 ? value() : undefined)
  const between = (from: number, to: number): number => Math.round(from + (to - from) * random())
  return {
    height: some(() => between(350, 1000)),
    rider: some(() => (random() < 0.5 ? between(3, 40) : words[between(0, 5)]!)),
    width: some(() => between(600, 2600)),
    panels: some(() => between(1, 3)),
    timbers: some(() => between(4, 12)),
    garage: some(() => [between(1000, 3000), between(2000, 6000)] as const),
    ceiling: some(() => between(900, 2500)),
    door: some(() => [between(700, 2500), between(1200, 2200)] as const),
  }
}

const pair = (sizes: readonly [number, number] | undefined): string | undefined =>
  sizes?.join(' mm x ').concat(' mm')
const mm = (length: number | undefined): string | undefined =>
  length === undefined ? undefined : `${length} mm`

const answered = (count: number, seed: number) => {
  const random = randomFrom(seed)
  let [rows, empty] = [0, 0]
  for (let i = 0; i < count; i++) {
    const known = wishesOf(random)
    const units = random() < 0.5 ? 'mm' : 'in'
    const { height, width, ceiling, garage, door, rider, panels, timbers } = known
    const said = Object.entries({
      units,
      height: mm(height),
      width: mm(width),
      ceiling: mm(ceiling),
      garage: pair(garage),
      door: pair(door),
      rider: rider?.toString(),
      panels: panels?.toString(),
      timbers: timbers?.toString(),
    }).filter(([, value]) => value !== undefined)
    const read = readWishes(Object.fromEntries(said) as WishWords)
    if ('refused' in read) throw new Error(JSON.stringify(read))
    const ramps = chooseRamps(read)
    if (ramps.length === 0) empty++
    expect(ramps.length).toBeLessThanOrEqual(5)
    for (const [k, row] of ramps.entries()) {
      rows++
      expect(row.lip).toBeGreaterThanOrEqual(ramps[k - 1]?.lip ?? 0)
      const why = `${JSON.stringify(known)}\n${row.design}`
      const reading = readSettled(row.design)
      if ('problems' in reading) throw new Error(`${reading.problems[0]!.message}\n${why}`)
      const { design } = reading
      const { solved, pages } = figuresJob(design)
      const [ramp] = solved.ramps
      if (solved.stopped || ramp?.kind !== 'quarter') throw new Error(why)
      expect(
        solved.checks.filter(({ level }) => level !== 'note'),
        why,
      ).toEqual([])
      const { heights, radius, lipAngle } = ramp.transition!
      // in inches what is typed is the nearest 32nd
      if (height !== undefined) assertNear(heights.deck, height, units === 'mm' ? 1e-6 : 0.4)
      assertNear(row.height, heights.deck, 1e-9)
      assertNear(row.radius, radius.surface, 1e-9)
      assertNear((row.lip * Math.PI) / 180, lipAngle, 1e-12)
      const ratio = 1 / (1 - Math.cos(lipAngle))
      expect(ratio, why).toBeGreaterThanOrEqual(ratios[row.word]![0] - 1e-6)
      expect(ratio, why).toBeLessThan(ratios[row.word]![1])
      if (typeof rider === 'string') expect(row.word, why).toBe(rider)
      if (width !== undefined) assertNear(ramp.width, width, units === 'mm' ? 1e-6 : 0.4)
      const job = cutsJob(design)
      if ('refused' in job) throw new Error(why)
      expect(row.panels, why).toBe(job.sheets.reduce((sum, own) => sum + own.panels.length, 0))
      const boards = sawTimber(partsOf(design, solved).timbers, design)!.flatMap((own) => own.boards)
      expect(row.boards, why).toBe(boards.length)
      if (timbers !== undefined) expect(row.boards, why).toBeLessThanOrEqual(timbers)
      const all = job.sheets.flatMap((own) => own.panels)
      const sides = all.filter(({ pieces }) => pieces.some(({ part }) => ['side', 'rib'].includes(part.part)))
      if (panels !== undefined) expect(sides.length, why).toBeLessThanOrEqual(panels)
      expect(row.pages, why).toBe(pages![pages!.takes])
      const { standing, doors } = rampSize(ramp)!
      const [long, wide, high] = standing
      if (garage) {
        expect(Math.max(long, wide), why).toBeLessThanOrEqual(Math.max(...garage) + 0.4)
        expect(Math.min(long, wide), why).toBeLessThanOrEqual(Math.min(...garage) + 0.4)
      }
      if (ceiling !== undefined) expect(high, why).toBeLessThanOrEqual(ceiling)
      if (door)
        expect(
          [doors.flat, doors.edge].some(([w, h]) => w <= door[0] + 1e-6 && h <= door[1] + 1e-6),
          why,
        ).toBe(true)
    }
  }
  return { rows, empty }
}

describe('every ramp that is answered', () => {
  const count = Number(process.env.CHOSEN ?? 6)
  test('solves without stop or warning, keeps what was wished, and counts as the cutting list does', {
    timeout: 600_000 * 6,
  }, () => {
    const { rows, empty } = answered(count, 20)
    // some ask for what cannot be
    expect(rows).toBeGreaterThan(2 * count)
    expect(empty).toBeLessThan(count / 2)
    if (process.env.CHOSEN) console.log({ count, rows, empty })
  })
})

describe('a door and a ceiling', () => {
  const of = (said: WishWords) => {
    const wishes = readWishes({ height: '600', rider: 'mellow', ...said })
    if ('refused' in wishes) throw new Error(JSON.stringify(wishes))
    const ramps = chooseRamps(wishes)
    expect(ramps.length).toBeGreaterThan(0)
    return { design: ramps[0]!.design, notes: chosenNotes(ramps, wishes).join('\n') }
  }
  test('without a garage are told to be left out, with what to write', () => {
    const both = of({ door: '900 x 2000', ceiling: '2200' })
    expect(both.design).toMatch(
      /^# Chosen for this too; .*: space: \{ garage: WIDTH x DEPTH, door: 900 x 2000, ceiling: 2200 \}$/m,
    )
    expect(both.notes).toContain('The designs leave out the door and the ceiling: a file says them only with')
    expect(of({ ceiling: '2200' }).notes).toContain('leave out the ceiling: a file says it only with')
    // what is written is read once the garage has its size
    const [, space] = /: (space: .*)$/m.exec(both.design)!
    const filled = `${space!.replace('WIDTH x DEPTH', '3000 x 6000')}\n`
    const reading = readSettled(both.design.replace(/^paper: /m, `${filled}paper: `))
    if ('problems' in reading) throw new Error(reading.problems[0]!.message)
    expect(reading.design.space).toEqual({ garage: [3000, 6000], door: [900, 2000], ceiling: 2200 })
  })
  test('are written beside a garage, and without either nothing is said', () => {
    const kept = of({ door: '900 x 2000', garage: '3000 x 6000' })
    expect(kept.design).toMatch(/door: 900 x 2000/)
    for (const { design, notes } of [kept, of({})])
      expect([design.includes('Chosen for'), notes.includes('leave out')]).toEqual([false, false])
  })
})

test('a deck above 762 mm (IRC 2018 R312.1.1: 30 in) is told of a guard once, as figures has it', () => {
  const notesAt = (height: string, units: string) => {
    const wishes = readWishes({ height, units })
    if ('refused' in wishes) throw new Error(JSON.stringify(wishes))
    const ramps = chooseRamps(wishes)
    expect(ramps.length).toBeGreaterThan(0)
    return chosenNotes(ramps, wishes).filter((note) => note.includes('guard'))
  }
  expect(notesAt('800', 'mm')).toEqual([
    'With a deck above 762 mm a guard is a common requirement: ask your building office.',
  ])
  expect(notesAt('31', 'in')).toEqual([
    'With a deck above 30 in a guard is a common requirement: ask your building office.',
  ])
  expect(notesAt('762', 'mm')).toEqual([])
})

test('a curve too tight for the usual steel of a run-out is offered with thinner steel', () => {
  const wishes = readWishes({ height: '14', units: 'in' })
  if ('refused' in wishes) throw new Error(JSON.stringify(wishes))
  const ramps = chooseRamps(wishes)
  const steels = ramps.map(({ design }) => Number(/sheet: 1\/(\d+) steel/.exec(design)![1]))
  expect(new Set(steels)).toEqual(new Set([16, 32]))
  ramps.forEach(({ radius }, i) => {
    // faces yield at E t / (2 f): E 210 000 N/mm² (EN 1993-1-1 3.2.6), f 235 N/mm² (S235)
    const yields = (thick: number): number => (210000 * thick) / (2 * 235) + thick
    expect(radius < yields(25.4 / 16)).toBe(steels[i] === 32)
    expect(radius).toBeGreaterThan(yields(25.4 / 32))
  })
})
