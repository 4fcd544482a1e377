import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { pageOf } from '../docs/pages.ts'

interface Sown {
  readonly fault: string
  readonly file: string
  readonly from: string
  readonly tests: readonly string[]
}

it('each fault that is sown finds its place in the source, and the list of them is that of the docs', async () => {
  const beside = new URL('./seeded-faults.mjs', import.meta.url).href
  const { seededFaults } = (await import(beside)) as { readonly seededFaults: readonly Sown[] }
  for (const { fault, file, from } of seededFaults)
    expect([fault, readFileSync(file, 'utf8').split(from).length - 1]).toEqual([fault, 1])
  const rows = [...pageOf('DEVELOPERS.md').prose.matchAll(/^\| ([^|]+) \| \[[^\]]+\]\((test\/[^)]+)\) \|$/gm)]
  const listed = rows.map(([, fault, test]) => [fault, test] as const)
  expect(listed.map(([fault]) => fault)).toEqual(seededFaults.map(({ fault }) => fault))
  for (const [i, { tests }] of seededFaults.entries())
    expect(tests.some((test) => listed[i]![1]!.startsWith(test))).toBe(true)
})
