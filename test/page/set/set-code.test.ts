import { createHash } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { type Fingerprint, setCode } from '../../../src/page/set/set-code.ts'

const sha256: Fingerprint = (text) => createHash('sha256').update(text).digest('hex')
const parts = {
  design: { title: 'Boathouse', toe: 40 },
  paper: ['a4', 10, 12, 'whole'],
  printer: [1, 0, 0, 1],
}
const code = (changed: Partial<typeof parts> = {}): readonly string[] =>
  setCode({ ...parts, ...changed }, sha256).split('-')

describe('a set code', () => {
  it('has three parts of four letters that cannot be taken for one another', () => {
    for (let i = 0; i < 200; i++)
      expect(setCode({ ...parts, design: i }, sha256)).toMatch(
        /^[BCDFGHJKMNPQRSTVWXYZ2-9]{4}-[BCDFGHJKMNPQRSTVWXYZ2-9]{4}-[BCDFGHJKMNPQRSTVWXYZ2-9]{4}$/,
      )
  })

  it.each([
    ['design', 0, { design: { title: 'Boathouse', toe: 41 } }],
    ['paper', 1, { paper: ['a4', 10, 12, 'line'] }],
    ['printer', 2, { printer: [1, 0, 0, 1.0001] }],
  ] as const)('changes with the %s in its own part alone', (_, at, changed) => {
    const [before, after] = [code(), code(changed as Partial<typeof parts>)]
    const differ = [0, 1, 2].filter((i) => before[i] !== after[i])
    expect(differ).toEqual([at])
  })

  it('is the same for the same parts', () => expect(code({ ...parts })).toEqual(code()))

  it('tells designs apart: 2,000 of them share hardly a code', () => {
    // 28⁴ codes: about 3 pairs of 2,000 fall together by chance
    const codes = Array.from({ length: 2000 }, (_, i) => code({ design: { title: 'Boathouse', toe: i } })[0])
    expect(new Set(codes).size).toBeGreaterThan(1985)
  })

  it('uses every letter of its alphabet in every place', () => {
    for (const place of [0, 1, 2, 3]) {
      const used = new Set(
        Array.from({ length: 2000 }, (_, i) => code({ design: { title: 'Boathouse', toe: i } })[0]![place]),
      )
      expect(used.size).toBe(28)
    }
  })
})
