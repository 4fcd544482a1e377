import fs from 'node:fs'
import { syncBuiltinESMExports } from 'node:module'
import { join } from 'node:path'
import { traceply } from '../support/traceply.ts'

/** Everything of Node's that reads or writes a disk for us. */
const steps = [
  'openSync',
  'readSync',
  'closeSync',
  'statSync',
  'realpathSync',
  'readdirSync',
  'mkdirSync',
  'writeFileSync',
  'linkSync',
  'renameSync',
  'rmSync',
] as const
type Step = (typeof steps)[number]

/** Lets the nth call of one step fail while something runs; whether there was an nth call. */
const failing = async (step: Step, nth: number, code: string, run: () => Promise<void>): Promise<boolean> => {
  const sound = fs[step] as (...args: unknown[]) => unknown
  let calls = 0
  const spoilt = (...args: unknown[]): unknown => {
    if (++calls === nth) throw Object.assign(new Error(`${code}: as told`), { code })
    return sound(...args)
  }
  Object.assign(fs, { [step]: spoilt })
  syncBuiltinESMExports()
  try {
    await run()
  } finally {
    Object.assign(fs, { [step]: sound })
    syncBuiltinESMExports()
  }
  return calls >= nth
}

interface Work {
  readonly args: readonly string[]
  /** the file that it writes; below a folder that it makes, if need be */
  readonly out: string
}

/** Commands that write, into a folder of their own. */
const works = (folder: string, set: string): readonly Work[] => {
  const out = join(folder, 'out.pdf')
  return [
    { args: ['new', 'quarter', '--out', join(folder, 'ramp.yaml')], out: join(folder, 'ramp.yaml') },
    { args: ['reprint', set, '1', '--out', out], out },
    { args: ['reprint', set, '1', '--out', out, '--force'], out },
    {
      args: ['gauge', 'shed', '--across', '149mm', '--down', '150mm', '--profiles', join(folder, 'a/b')],
      out: join(folder, 'a/b/shed.json'),
    },
  ]
}

/**
 * Each command with each call of the disk failing in turn: exit 2 in words and nothing left of it, what was there before as it
 * was; or exit 0 and the whole file, where the call was not needed.
 */
export const diskFaults = async (
  folder: string,
  set: string,
  codes: readonly string[],
): Promise<{ readonly count: number; readonly faults: readonly string[] }> => {
  const faults: string[] = []
  let count = 0
  for (const { args, out } of works(folder, set)) {
    const replaced = args.includes('--force')
    const clear = (): void => {
      fs.rmSync(folder, { recursive: true, force: true })
      fs.mkdirSync(folder)
      if (replaced) fs.writeFileSync(out, 'before')
    }
    clear()
    await traceply(...args)
    const [whole, left] = [fs.readFileSync(out), list(folder)]
    for (const step of steps)
      for (const code of codes)
        for (let nth = 1, called = true; called; nth++) {
          clear()
          const before = list(folder)
          let said = { exit: -1, out: '', err: '' }
          called = await failing(step, nth, code, async () => {
            said = await traceply(...args)
          })
          if (!called) break
          count++
          const what = `${args[0]}, ${code} at ${step} ${nth}`
          const after = list(folder)
          if (said.exit !== 0 && said.exit !== 2) faults.push(`${what}: exit ${said.exit}`)
          if (said.exit !== 0 && !/\n$/.test(said.err)) faults.push(`${what}: no words`)
          if (said.exit === 0 && !(fs.existsSync(out) && fs.readFileSync(out).equals(whole)))
            faults.push(`${what}: exit 0, and the file is not whole`)
          if (said.exit === 2 && replaced && fs.readFileSync(out, 'utf8') !== 'before')
            faults.push(`${what}: what was there is gone`)
          // what cannot be removed is removed by the next run
          const own = after.filter((name) => step !== 'rmSync' || !name.endsWith('.traceply-part'))
          if (String(own) !== String(said.exit === 0 ? left : before)) faults.push(`${what}: leaves ${own}`)
        }
  }
  return { count, faults }
}

const list = (folder: string): readonly string[] =>
  (fs.readdirSync(folder, { recursive: true }) as string[]).sort()
