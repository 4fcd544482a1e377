import { runDesigns } from './run-designs.ts'
import { runHostile } from './run-hostile.ts'

export interface Asked {
  readonly designs: number
  readonly hostile: number
  /** number of the first case of each kind */
  readonly from: number
  /** other Nodes, which must make the same bytes: paths of their programs; and what they are to run */
  readonly nodes: readonly string[]
  readonly marks: string
}

/** Prints each failure, and how many there were. */
export interface Tally {
  readonly say: (text: string) => void
  readonly fail: (what: string, faults: readonly string[]) => void
}

/** Runs all cases, prints each failure and a summary; how many failed. */
export const runAll = async (asked: Asked): Promise<number> => {
  let failed = 0
  const say = (text: string): void => console.log(text)
  const tally: Tally = {
    say,
    fail: (what, faults) => {
      if (faults.length === 0) return
      failed++
      say(`FAILED ${what}: ${faults.slice(0, 3).join('; ')}`)
    },
  }
  // first: what it takes of memory is measured of this process, which holds hundreds of MB after many designs
  if (asked.hostile > 0) await runHostile(asked, tally)
  if (asked.designs > 0) await runDesigns(asked, tally)
  say(failed === 0 ? 'nothing failed' : `${failed} failed`)
  return failed
}
