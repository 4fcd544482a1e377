import { inflateSync } from 'node:zlib'
import fc from 'fast-check'
import { curvedOf } from '../../src/design/kind-traits.ts'
import { isRefusal } from '../../src/job/refusal.ts'
import { reprintInput, reprintJob } from '../../src/job/reprint.ts'
import { defaultMargins, defaultOverlap } from '../../src/page/sheet/paper.ts'
import { drawDesign } from '../../src/ramp/solve.ts'
import { pageContent, readSetPdf } from '../../src/read/set-pdf.ts'
import { copyPdf } from '../../src/write/pdf-copy.ts'
import { messageFault } from '../ramp/check/message-fault.ts'
import { anyRamp, solve } from '../ramp/ramps.ts'
import { designOf } from '../support/design-of.ts'
import { platform } from '../support/platform.ts'
import { randomFrom } from '../support/random.ts'
import { takeBack } from '../tape-up/plot.ts'
import { tapeUp } from '../tape-up/tape-up.ts'
import { hardJob } from './jobs.ts'
import { plottedBy, sha256 } from './plotted.ts'
import { outlineFaults } from './simple-outline.ts'

/** What was seen of one case: nothing wrong, and how much there was of it. */
export interface Seen {
  readonly faults: readonly string[]
  /** the design cannot be made, and says so */
  readonly stopped: boolean
  readonly bytes: number
  readonly pages: number
  /** points of the line to saw that were held against the outline */
  readonly measured: number
  /** tells whether another run made the same */
  readonly mark: string
}

const reading = { inflate: (bytes: Uint8Array) => inflateSync(bytes), fingerprint: sha256 }

/** Every so many designs are laid a second time in the same process; all are in another one, where other Nodes are given. */
const again = 8

/** One design through everything that can be said of any: its pages join, twice the same bytes, reprinted pages are those pages. */
export const checkDesign = async (number: number): Promise<Seen> => {
  const job = hardJob(number)
  const plotted = await plottedBy(job)
  if ('refusal' in plotted) {
    const { refusal } = plotted
    const words = 'checks' in refusal ? refusal.checks.map(({ message }) => message) : [refusal.refused]
    const said = words.join('') !== '' && !/NaN|undefined/.test(words.join())
    return {
      faults: said ? [] : ['refused without words'],
      stopped: true,
      bytes: 0,
      pages: 0,
      measured: 0,
      mark: sha256(JSON.stringify(refusal)),
    }
  }
  const { done, bytes } = plotted
  const back = await takeBack(
    bytes,
    job,
    job.margins ?? defaultMargins(job.paper),
    job.overlap ?? defaultOverlap,
  )
  const taped = tapeUp(back)
  const faults = [
    ...taped.faults,
    ...curvedOf(done.solved.ramps).flatMap(({ side }) => outlineFaults(side.outline)),
    ...(await reprintFaults(bytes, done.set.pages.length, number)),
  ]
  if (number % again === 0) {
    const twice = await plottedBy(job)
    if (!('bytes' in twice && Buffer.from(bytes).equals(twice.bytes)))
      faults.push('a second run gives other bytes')
  }
  return {
    faults,
    stopped: false,
    bytes: bytes.length,
    pages: done.set.pages.length,
    measured: taped.measured,
    mark: sha256(bytes),
  }
}

/** Each page proves which it is, and one of them, printed again, draws what it drew. */
const reprintFaults = async (
  bytes: Uint8Array,
  count: number,
  number: number,
): Promise<readonly string[]> => {
  const set = await readSetPdf(bytes, reading)
  if ('fault' in set) return [`its PDF is ${set.fault.kind}`]
  if (set.pages.length !== count) return ['pages do not prove which they are']
  const pages = set.pages.slice(number % count).slice(0, 1)
  const contents = pages.map((page) => pageContent(page, reading))
  const job = reprintJob(set.plan, pages, contents, null, sha256)
  if (isRefusal(job)) return ['a page is not reprinted']
  const copy = await readSetPdf(await copyPdf(reprintInput(set, job), platform), reading)
  if ('fault' in copy) return [`a reprint is ${copy.fault.kind}`]
  return Buffer.from(pageContent(copy.pages[0]!, reading)).equals(contents[0]!)
    ? []
    : ['a reprinted page draws something else']
}

/** A quarter whose every length carries its unit. */
const twin = (number: number, unit: 'mm' | 'in'): string => {
  const random = randomFrom(number * 31 + 7)
  const between = (low: number, high: number): string => {
    const mm = Math.round((low + (high - low) * random()) * 100) / 100
    return unit === 'mm' ? `${mm} mm` : `${(mm / 25.4).toFixed(12)} in`
  }
  return [
    'title: Boathouse twin',
    'units: mm',
    'ramps:',
    '  - kind: quarter',
    `    width: ${between(900, 2400)}`,
    `    height: { frame: ${between(400, 900)} }`,
    `    transition: { circle: { surface: ${between(1400, 2400)} } }`,
    `    toe: ${between(30, 60)}`,
    `    deck: ${between(200, 600)}`,
    `    skin: [${between(6, 12)} plywood, ${between(3, 9)} hardboard]`,
    `    coping: { outside: ${between(42, 60)}, up: ${between(2, 10)}, out: ${between(1, 8)} }`,
    '',
  ].join('\n')
}

/** Numbers of the two solved twins that lie more than 1e-6 mm apart. */
export const checkTwins = (number: number): readonly string[] => {
  const solved = (['mm', 'in'] as const).map((unit) => {
    return numbersOf(drawDesign(designOf(twin(number, unit))).ramps)
  })
  const [mm, inches] = solved as [readonly number[], readonly number[]]
  if (mm.length !== inches.length) return [`twins have ${mm.length} and ${inches.length} figures`]
  const apart = mm.flatMap((value, i) =>
    Math.abs(value - inches[i]!) > 1e-6 ? [`${value}, ${inches[i]}`] : [],
  )
  return apart.length > 0 ? [`twins differ: ${apart.slice(0, 3).join('; ')}`] : []
}

/** What is wrong with the words of what is said of a ramp, sound or not. */
export const checkMessages = (
  number: number,
): { readonly faults: readonly string[]; readonly seen: number } => {
  const [ramp] = fc.sample(anyRamp, { numRuns: 1, seed: number })
  const { findings } = solve(ramp!, number % 2 === 0 ? 'mm' : 'in')
  const faults = findings.flatMap(({ message }) => {
    const fault = messageFault(message)
    return fault ? [`“${fault}” in: ${message}`] : []
  })
  return { faults, seen: findings.length }
}

const numbersOf = (value: unknown): readonly number[] =>
  typeof value === 'number'
    ? [value]
    : value !== null && typeof value === 'object'
      ? Object.values(value).flatMap(numbersOf)
      : []
