import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Asked, Tally } from './all.ts'
import { crafted } from './crafted.ts'
import { diskFaults } from './disk.ts'
import { hostileArgs, hostileCase, saidFaults, type Victims, victimsIn } from './hostile.ts'

const diskCodes = ['ENOSPC', 'EIO', 'EROFS', 'EACCES', 'EDQUOT']

/** One in so many is run as a builder would run it: a process of its own. */
const alone = 100
const news = 1000

export const runHostile = async ({ hostile, from }: Asked, tally: Tally): Promise<void> => {
  const { say, fail } = tally
  const folder = mkdtempSync(join(tmpdir(), 'traceply-hard-'))
  try {
    const victims = await victimsIn(folder)
    const kinds = new Map<string, number>()
    let slowest = { ms: 0, number: from }
    let largest = { peak: 0, number: from }
    for (let number = from; number < from + hostile; number++) {
      const { kind, faults, ms, peak } = await hostileCase(number, victims)
      kinds.set(kind, (kinds.get(kind) ?? 0) + 1)
      fail(`hostile ${number}`, faults)
      if (ms > slowest.ms) slowest = { ms, number }
      if ((peak ?? 0) > largest.peak) largest = { peak: peak ?? 0, number }
      if ((number - from) % news === news - 1) say(`… ${number - from + 1} hostile inputs`)
    }
    say(
      `${hostile} hostile inputs (${[...kinds].map(([kind, count]) => `${kind} ${count}`).join(', ')}); slowest ${Math.round(slowest.ms)} ms of CPU (${slowest.number}), memory of the one process that ran them at most ${Math.round(largest.peak)} MB (${largest.number})`,
    )
    const { count, faults } = await diskFaults(join(folder, 'disk'), join(folder, 'set.pdf'), diskCodes)
    say(`${count} calls of the disk failed one by one`)
    for (const fault of faults) fail('disk', [fault])
    await runAlone({ hostile, from }, victims, tally)
  } finally {
    rmSync(folder, { recursive: true })
  }
}

/** Some of them, and every crafted PDF at its full size, in processes of their own. */
const runAlone = async (
  { hostile, from }: Pick<Asked, 'hostile' | 'from'>,
  victims: Victims,
  { say, fail }: Tally,
): Promise<void> => {
  let [count, slowest, largest] = [0, { ms: 0, what: '' }, { peak: 0, what: '' }]
  const one = (what: string, args: readonly string[]): void => {
    const { faults, ms, peak } = processOf(args, victims.folder)
    count++
    fail(what, faults)
    if (ms > slowest.ms) slowest = { ms, what }
    if (peak > largest.peak) largest = { peak, what }
  }
  for (let number = from; number < from + hostile; number += alone)
    one(`hostile ${number} alone`, (await hostileArgs(number, victims)).args)
  const bad = join(victims.folder, 'bad.pdf')
  for (const { name, craft, pages } of crafted(true)) {
    writeFileSync(bad, await craft(victims.pdf))
    one(name, ['reprint', bad, ...(pages ?? ['1']), '--out', join(victims.folder, 'out.pdf'), '--force'])
  }
  say(
    `${count} of them and of crafted PDFs in processes of their own: slowest ${Math.round(slowest.ms)} ms of CPU (${slowest.what}), largest ${Math.round(largest.peak)} MB (${largest.what})`,
  )
}

/** Put before the program: tells at its end what it took. */
const meter = (file: string): string =>
  `process.on('exit', () => { const { user, system } = process.cpuUsage(); require('node:fs').writeFileSync(${JSON.stringify(file)}, JSON.stringify({ ms: (user + system) / 1000, peak: process.resourceUsage().maxRSS / 1024 })) })`

const processOf = (args: readonly string[], folder: string) => {
  const [hook, took] = [join(folder, 'meter.cjs'), join(folder, 'took.json')]
  writeFileSync(hook, meter(took))
  rmSync(took, { force: true })
  const program = join(process.cwd(), 'dist', 'traceply.cjs')
  const ran = spawnSync(process.execPath, ['--require', hook, program, ...args.map(withoutNull)], {
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'pipe'],
    timeout: 60_000,
  })
  const faults = [...saidFaults({ exit: ran.status ?? -1, out: ran.stdout, err: ran.stderr })]
  try {
    const { ms, peak } = JSON.parse(readFileSync(took, 'utf8')) as { ms: number; peak: number }
    if (ms > 2000) faults.push(`takes ${Math.round(ms)} ms`)
    if (peak > 300) faults.push(`takes ${Math.round(peak)} MB`)
    return { faults, ms, peak }
  } catch {
    return { faults: [...faults, 'it did not come to its end'], ms: 0, peak: 0 }
  }
}

/** No system gives a program such an argument. */
const withoutNull = (arg: string): string => arg.replaceAll('\0', '0')
