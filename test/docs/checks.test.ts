import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { pageOf, root } from './pages.ts'

const folder = `${root}src`

/** `id level` of every call of stop, warn and note. */
const inSource = new Set(
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .flatMap((name) => [
      ...readFileSync(`${folder}/${name}`, 'utf8').matchAll(/\b(stop|warn|note)\(\s*'([a-z]+(?:-[a-z]+)*)'/g),
    ])
    .map(([, level, id]) => `${id} ${level}`),
)

const rows = [
  ...pageOf('docs/geometry.md').prose.matchAll(/^\| `([a-z-]+)` \| ([a-z, ]+) \|([^|]*)\|([^|]*)\|$/gm),
]
const inDocs = new Set(rows.flatMap(([, id, levels]) => levels!.split(', ').map((level) => `${id} ${level}`)))

describe('the table of checks in docs/geometry.md', () => {
  it('has every check at each of its levels', () => {
    expect([...inSource].filter((entry) => !inDocs.has(entry))).toEqual([])
    expect(inSource.size).toBeGreaterThan(20)
  })

  it('invents none', () => {
    expect([...inDocs].filter((entry) => !inSource.has(entry))).toEqual([])
  })

  it('has every check that the booklet repeats', () => {
    const sections = `${folder}/booklet/book/sections`
    const asked = readdirSync(sections, { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.ts'))
      .flatMap((name) => [
        ...readFileSync(`${sections}/${name}`, 'utf8').matchAll(
          /\b(?:checksOf\(book, ramp|namedChecks\(book), ([^\]]*(?:\[\] : \[[^\]]*)?)\]/g,
        ),
      ])
      .flatMap(([, list]) => [...list!.matchAll(/'([a-z-]+)'/g)].map(([, id]) => id))
    expect(asked.length).toBeGreaterThan(14)
    const known = new Set(rows.map(([, id]) => id))
    expect(asked.filter((id) => !known.has(id))).toEqual([])
  })

  it('has one row for a check, which says when it speaks and what to do', () => {
    const ids = rows.map(([, id]) => id)
    expect(new Set(ids).size).toBe(ids.length)
    for (const [, id, , when, remedy] of rows) {
      expect(when!.trim().length, id).toBeGreaterThan(10)
      expect(remedy!.trim().length, id).toBeGreaterThan(5)
    }
  })
})
