import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { checkDesign, checkTwins } from './designs.ts'
import { diskFaults } from './disk.ts'
import { hostileCase, victimsIn } from './hostile.ts'

it('whatever call of the disk fails, a file is written whole or not at all, and nothing else is left', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'traceply-hard-'))
  try {
    await victimsIn(folder)
    const { count, faults } = await diskFaults(join(folder, 'disk'), join(folder, 'set.pdf'), ['ENOSPC'])
    expect(faults).toEqual([])
    expect(count).toBeGreaterThan(40)
  } finally {
    rmSync(folder, { recursive: true })
  }
})

/** A fixed small part of `npm run hard`. */
it('some designs hold what holds for every one', async () => {
  let made = 0
  // titles without a blank and pipes of 110 mm once left the page of the trial: 145 and 151
  for (const number of [145, 151, 5000, 5002]) {
    const { faults, stopped, bytes } = await checkDesign(number)
    expect({ number, faults }).toEqual({ number, faults: [] })
    if (!stopped) made += bytes
  }
  expect(made).toBeGreaterThan(50_000)
})

it('metric and inch twins agree to 1e-6 mm', () => {
  for (let number = 0; number < 15; number++)
    expect({ number, faults: checkTwins(number) }).toEqual({ number, faults: [] })
})

it('some hostile inputs end in words, with an exit that scripts know', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'traceply-hard-'))
  try {
    const victims = await victimsIn(folder)
    const kinds = new Set<string>()
    for (let number = 0; number < 120; number++) {
      const { kind, faults } = await hostileCase(number, victims)
      kinds.add(kind)
      // what it takes is measured by `npm run hard`: this process holds what other tests have left
      const wrong = faults.filter((fault) => !fault.startsWith('takes '))
      expect({ number, wrong }).toEqual({ number, wrong: [] })
    }
    expect(kinds.size).toBe(6)
  } finally {
    rmSync(folder, { recursive: true })
  }
})
