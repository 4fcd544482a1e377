import { describe, expect, it } from 'vitest'
import { plotJob, readDesign, readLaying } from '../../src/index.ts'
import { isRefusal } from '../../src/job/refusal.ts'
import { assertEqual } from '../support/equal.ts'
import { fingerprint } from '../support/lay-out.ts'
import { templateText } from '../support/templates.ts'

const text = templateText('quarter-mm')
const reading = readDesign(text)
if ('problems' in reading) throw new Error('a template')
const { design } = reading

const setOf = (words: Parameters<typeof readLaying>[0], stripsBehind = false) => {
  const laying = readLaying({ cover: 'line', ...words }, null, design)
  if (isRefusal(laying)) throw new Error('a usual laying')
  const job = plotJob(design, text, laying, fingerprint, undefined, stripsBehind)
  if (isRefusal(job)) throw new Error('a template')
  return job.set
}

describe('story strips behind a set that has none', () => {
  const [plain, behind, striped] = [setOf({}), setOf({}, true), setOf({ strips: true })]

  it('bear its code, and leave all of its pages as they are', () => {
    expect(behind.code).toBe(plain.code)
    expect(behind.code).not.toBe(striped.code)
    expect(behind.plan.pages.slice(0, plain.pages.length)).toEqual(plain.plan.pages)
    for (const i of [0, plain.pages.length - 1])
      assertEqual(behind.pages[i]!.draw(), plain.pages[i]!.draw(), plain.pages[i]!.label)
  })

  it('are those of the set that has them', () => {
    const strips = (set: typeof plain) => set.plan.pages.filter(({ kind }) => kind === 'strip')
    expect(strips(behind).length).toBeGreaterThan(0)
    expect(strips(behind)).toEqual(strips(striped))
    const last = (set: typeof plain) => JSON.stringify(set.pages.at(-1)!.draw())
    expect(last(behind)).toBe(last(striped).replaceAll(striped.code, plain.code))
  })

  it('are no more than it has already', () => {
    expect(setOf({ strips: true }, true).plan).toEqual(striped.plan)
  })
})
