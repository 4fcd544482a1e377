import { spawn } from 'node:child_process'
import { createInterface } from 'node:readline'
import type { Asked, Tally } from './all.ts'
import { checkDesign, checkMessages, checkTwins } from './designs.ts'
import { checkRemedies } from './remedies.ts'

/** How often a long run tells where it is. */
const news = 200

/** All designs of the run, here and beside it on other Nodes. */
export const runDesigns = async (
  { designs, from, nodes, marks }: Asked,
  { say, fail }: Tally,
): Promise<void> => {
  // one after another: a run takes two cores, however many Nodes there are
  const others: Marks[] = []
  for (const node of nodes)
    others.push(marksOn(node, [marks, `${from}`, `${designs}`], others.at(-1)?.ended ?? Promise.resolve()))
  let [stopped, pages, measured, read] = [0, 0, 0, 0]
  let slowest = { ms: 0, number: from }
  let largest = { bytes: 0, number: from }
  const made = new Map<number, string>()
  for (let number = from; number < from + designs; number++) {
    const start = process.cpuUsage()
    try {
      const seen = await checkDesign(number)
      fail(`design ${number}`, seen.faults)
      if (seen.stopped) stopped++
      pages += seen.pages
      measured += seen.measured
      made.set(number, seen.mark)
      if (seen.bytes > largest.bytes) largest = { bytes: seen.bytes, number }
    } catch (error) {
      fail(`design ${number}`, [String((error as Error).stack).slice(0, 300)])
    }
    const ms = cpuSince(start)
    if (ms > slowest.ms) slowest = { ms, number }
    const also = (what: string, check: () => readonly string[]): void => {
      try {
        fail(`${what} ${number}`, check())
      } catch (error) {
        // a case that throws is told and does not end the run
        fail(`${what} ${number}`, [`${error}`.slice(0, 300)])
      }
    }
    also('twins', () => checkTwins(number))
    also('remedies', () => checkRemedies(number))
    also('messages', () => {
      const messages = checkMessages(number)
      read += messages.seen
      return messages.faults
    })
    if ((number - from) % news === news - 1)
      say(
        `… ${number - from + 1} designs${others.map(({ seen }) => `, ${seen.size} on another Node`).join('')}`,
      )
  }
  say(
    [
      `${designs} designs, ${stopped} of them cannot be made, and say so`,
      `${pages} pages, ${measured} points of the line to saw held against the outline`,
      `${designs} pairs of twins, ${2 * designs} ramps whose remedies are typed back, ${read} messages read`,
      `slowest ${Math.round(slowest.ms)} ms of CPU (${slowest.number})`,
      `largest PDF ${Math.round(largest.bytes / 1024)} kB (${largest.number})`,
    ].join('; '),
  )
  for (const { seen, ended } of others) {
    const version = await ended
    const apart = [...seen].filter(([number, mark]) => made.get(number) !== mark).map(([number]) => number)
    say(`Node ${version}: ${seen.size} of them again, ${apart.length} with other bytes`)
    fail(`Node ${version}`, seen.size < designs ? [`only ${seen.size} of ${designs} came back`] : [])
    for (const number of apart) fail(`design ${number} on Node ${version}`, ['it has other bytes'])
  }
}

export const cpuSince = (start: NodeJS.CpuUsage): number => {
  const { user, system } = process.cpuUsage(start)
  return (user + system) / 1000
}

interface Marks {
  readonly seen: ReadonlyMap<number, string>
  /** the version of its Node */
  readonly ended: Promise<string>
}

/** The marks that another Node makes once `ready`, as they come in. */
const marksOn = (program: string, args: readonly string[], ready: Promise<unknown>): Marks => {
  const seen = new Map<number, string>()
  const run = (): Promise<string> =>
    new Promise((done) => {
      const { stdout } = spawn(program, args, { stdio: ['ignore', 'pipe', 'inherit'] })
      const lines = createInterface({ input: stdout })
      let version = program
      lines.on('line', (line) => {
        const [number, mark] = line.split(' ') as [string, string]
        if (number === 'node') version = mark
        else seen.set(Number(number), mark)
      })
      lines.on('close', () => done(version))
    })
  return { seen, ended: ready.then(run) }
}
