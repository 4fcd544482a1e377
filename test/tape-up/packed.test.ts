import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { Drawing } from '../../src/drawing/drawing.ts'
import { assertEqual } from '../support/equal.ts'
import { templates } from '../support/templates.ts'
import { checkBlocks, type PlannedPage } from './check-blocks.ts'
import { type Job, type Laid, layJob, type Plotted, plotJob, plotLaid } from './plot.ts'
import { tapeUp } from './tape-up.ts'

const template = (name: string): string =>
  readFileSync(new URL(`../../templates/${name}.yaml`, import.meta.url), 'utf8')

const plotted = async (job: Job): Promise<Plotted> => {
  const found = await plotJob(job)
  if ('stops' in found) throw new Error(JSON.stringify(found.stops))
  return found
}

const laidOf = (job: Job): Laid => {
  const laid = layJob(job)
  if ('stops' in laid) throw new Error(JSON.stringify(laid.stops))
  return laid
}

/** Sets in which packing saved a page, and those that it left as they are. */
const sets = { gained: 0, alike: 0 }

const pagesOf = ({ plan }: Plotted): readonly PlannedPage[] => plan.pages
const patternsOf = (pages: readonly PlannedPage[]): ReadonlySet<string> =>
  new Set(pages.flatMap(({ places }) => places.map(({ pattern }) => pattern)))
const wordsOf = (texts: readonly string[], code: string): ReadonlySet<string> =>
  new Set(texts.join(' ').replaceAll(code, '').split(/\s+/))
const textsOf = (drawing: Drawing): readonly string[] =>
  drawing.flatMap((mark) =>
    mark.kind === 'group' ? textsOf(mark.marks) : mark.kind === 'text' ? [mark.text] : [],
  )
const small = (pages: readonly PlannedPage[]) =>
  pages.filter(({ kind }) => ['trial', 'strip', 'parts'].includes(kind))

/** One set twice but for its code: every page at its place, the small ones mark by mark, since packing lays no tile. */
const alike = (one: Laid, other: Laid, pages: readonly PlannedPage[]): boolean => {
  const drawn = ({ set }: Laid, page: number): string =>
    JSON.stringify(set.pages[page - 1]!.draw()).replaceAll(set.code, 'code')
  assertEqual(one.set.plan.pages, other.set.plan.pages)
  return pages.every(({ page }) => drawn(one, page) === drawn(other, page))
}

const corrections = [undefined, [1.01, 0.002, -0.003, 0.99], [0.9975, -0.004, -0.006, 1.0012]] as const

const jobs = templates.flatMap((name, k) =>
  (['letter', 'a4', 'a3', 'tabloid', 'a1'] as const).flatMap((paper, i) =>
    [false, true].map((strips) => ({ name, paper, strips, correction: corrections[(i + k) % 3] })),
  ),
)

describe.each(jobs)(
  '$name on $paper, strips $strips, $correction, packed',
  ({ name, paper, strips, correction }) => {
    it('takes no more pages, keeps every part and word, and no two blocks come near', async () => {
      const job = {
        text: template(name),
        paper,
        cover: 'line',
        strips,
        ...(correction && { correction }),
      } as const
      // the plain set as it is laid out: others read it back from its bytes
      const plain = laidOf(job)
      const plainPages: readonly PlannedPage[] = plain.set.plan.pages
      const packedJob = { ...job, pack: true }
      const laid = laidOf(packedJob)
      // where packing saves nothing it may be the plain one
      const saves = laid.set.pages.length < plainPages.length
      if (!saves && alike(laid, plain, small(plainPages))) {
        sets.alike++
        return
      }
      if (saves) sets.gained++
      const packed = await plotLaid(packedJob, laid)
      const packedPages = pagesOf(packed)
      expect(packedPages.length).toBeLessThanOrEqual(plainPages.length)
      const found = tapeUp(packed)
      const faults = [...found.faults]
      const count = checkBlocks(packed, (what) => faults.push(what))
      expect(faults).toEqual([])
      const trials = [...patternsOf(plainPages)].filter((name) => name.endsWith('/lip'))
      expect(found.trials).toBe(trials.length)

      if (saves) expect(count.pages).toBeGreaterThan(0)
      const there = patternsOf(packedPages)
      for (const pattern of patternsOf(plainPages)) expect(there).toContain(pattern)
      const before = wordsOf(
        small(plainPages).flatMap(({ page }) => textsOf(plain.set.pages[page - 1]!.draw())),
        plain.set.code,
      )
      const after = wordsOf(
        small(packedPages).flatMap(({ page }) => packed.read.pages[page - 1]!.texts.map(({ text }) => text)),
        packed.plan.set,
      )
      // pieces may be counted otherwise, and a joint may lie elsewhere, with a mark on each piece, or where a figure beside a mark finds no room
      expect(small(plainPages).length === 0 || before.size > 20).toBe(true)
      for (const word of before)
        if (!/^\d+(\.\d+)?[.,]?$|^set$|^·$|^lay$|^(no|mark|keeps|length)\.?$/.test(word))
          if (!after.has(word)) throw new Error(`${word} is lost`)
    })
  },
)

it('packing saves pages of many sets, and leaves others as they are', () => {
  expect(sets.gained).toBeGreaterThan(15)
  expect(sets.alike).toBeGreaterThan(15)
})

it('two trials and one strip for their common pipe lie on one page of A3, everything on one of A1', async () => {
  const job = { text: template('pair-mm'), cover: 'line', pack: true } as const
  const trials = (set: Plotted) => pagesOf(set).filter(({ kind }) => kind === 'trial' || kind === 'parts')
  const [a3] = trials(await plotted({ ...job, paper: 'a3' }))
  expect(a3!.kind).toBe('trial')
  expect(a3!.places.map(({ pattern }) => pattern)).toEqual(['outer/lip', 'inner/lip', 'outer/pipe'])
  const large = await plotted({ ...job, paper: 'a1', strips: true })
  expect(trials(large).map(({ kind }) => kind)).toEqual(['parts'])
  expect(pagesOf(large).some(({ kind }) => kind === 'strip')).toBe(false)
})

it('the piece of scrap is as large as on a page of its own', async () => {
  const job = { text: template('quarter-in'), paper: 'a4', cover: 'line', strips: true } as const
  const cuts = (set: Plotted) => {
    const { page } = pagesOf(set).find(({ places }) => places.some(({ pattern }) => pattern === 'ramp/lip'))!
    const xs = set.read.pages[page - 1]!.strokes.flatMap(({ layer, path }) =>
      layer === 'cut' ? path.flatMap((s) => (s.kind === 'close' ? [] : [s.to])) : [],
    )
    const spread = (of: readonly number[]): number => Math.max(...of) - Math.min(...of)
    return [spread(xs.map(({ x }) => x)), spread(xs.map(({ y }) => y))].sort((a, b) => a - b)
  }
  const [plain, packed] = [await plotted(job), await plotted({ ...job, pack: true })]
  expect(pagesOf(packed).length).toBeLessThan(pagesOf(plain).length)
  cuts(packed).forEach((size, i) => {
    expect(Math.abs(size - cuts(plain)[i]!)).toBeLessThan(1e-3)
  })
})

it('packing changes the second part of the set code alone', async () => {
  const job = { text: template('pair-mm'), paper: 'a3', cover: 'line' } as const
  const [a, b, c] = [
    await plotted(job),
    await plotted({ ...job, pack: true }),
    await plotted({ ...job, pack: true, strips: true }),
  ].map(({ plan }) => plan.set.split('-') as string[])
  expect([0, 1, 2].filter((i) => a![i] !== b![i])).toEqual([1])
  expect([0, 1, 2].filter((i) => b![i] !== c![i])).toEqual([1])
})
