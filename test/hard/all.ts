import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { checkDesign, checkTwins } from './designs.ts'
import { hostileCase, victimsIn } from './hostile.ts'
import { checkRemedies } from './remedies.ts'

interface Asked {
  readonly designs: number
  readonly hostile: number
  /** number of the first case of each kind */
  readonly from: number
}

/** Runs all cases, prints each failure and a summary; how many failed. */
export const runAll = async ({ designs, hostile, from }: Asked): Promise<number> => {
  let failed = 0
  const say = (text: string): void => console.log(text)
  const fail = (what: string, faults: readonly string[]): void => {
    if (faults.length === 0) return
    failed++
    say(`FAILED ${what}: ${faults.slice(0, 3).join('; ')}`)
  }
  const tally = { stopped: 0, slowest: 0, slowestAt: 0, largest: 0 }
  for (let number = from; number < from + designs; number++) {
    const start = performance.now()
    try {
      const { faults, stopped, bytes } = await checkDesign(number)
      fail(`design ${number}`, faults)
      if (stopped) tally.stopped++
      tally.largest = Math.max(tally.largest, bytes)
    } catch (error) {
      fail(`design ${number}`, [String((error as Error).stack).slice(0, 300)])
    }
    const took = performance.now() - start
    if (took > tally.slowest) Object.assign(tally, { slowest: took, slowestAt: number })
    fail(`twins ${number}`, checkTwins(number))
    fail(`remedies ${number}`, checkRemedies(number))
  }
  say(
    `${designs} designs (${tally.stopped} cannot be made, and say so), ${designs} pairs of twins, ${2 * designs} ramps whose remedies are typed back; slowest ${Math.round(tally.slowest)} ms (${tally.slowestAt}), largest PDF ${Math.round(tally.largest / 1024)} kB`,
  )
  const folder = mkdtempSync(join(tmpdir(), 'traceply-hard-'))
  try {
    const victims = await victimsIn(folder)
    const kinds = new Map<string, number>()
    let [slowest, slowestAt] = [0, 0]
    for (let number = from; number < from + hostile; number++) {
      const { kind, faults, ms } = await hostileCase(number, victims)
      kinds.set(kind, (kinds.get(kind) ?? 0) + 1)
      fail(`hostile ${number}`, faults)
      if (ms > slowest) [slowest, slowestAt] = [ms, number]
    }
    say(
      `${hostile} hostile inputs (${[...kinds].map(([kind, count]) => `${kind} ${count}`).join(', ')}); slowest ${Math.round(slowest)} ms (${slowestAt}), memory at most ${Math.round(process.resourceUsage().maxRSS / 1024)} MB`,
    )
  } finally {
    rmSync(folder, { recursive: true })
  }
  say(failed === 0 ? 'nothing failed' : `${failed} failed`)
  return failed
}
