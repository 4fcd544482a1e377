import { createHash } from 'node:crypto'
import { inflateSync } from 'node:zlib'
import { readDesign } from '../../src/design/read.ts'
import { usualLaying } from '../../src/job/laying.ts'
import { plotJob } from '../../src/job/plot.ts'
import { isRefusal } from '../../src/job/refusal.ts'
import { reprintInput, reprintJob } from '../../src/job/reprint.ts'
import { setInput } from '../../src/job/set-input.ts'
import { solveDesign } from '../../src/ramp/solve.ts'
import { pageContent, readSetPdf } from '../../src/read/set-pdf.ts'
import { writePdf } from '../../src/write/pdf.ts'
import { copyPdf } from '../../src/write/pdf-copy.ts'
import { platform } from '../support/platform.ts'
import { randomFrom } from '../support/random.ts'
import { jobOf } from '../tape-up/jobs.ts'
import { plotJob as plottedBack } from '../tape-up/plot.ts'
import { tapeUp } from '../tape-up/tape-up.ts'

/** What was seen of one case: nothing wrong, and how much there was of it. */
export interface Seen {
  readonly faults: readonly string[]
  /** the design cannot be made, and says so */
  readonly stopped: boolean
  readonly bytes: number
}

const sha256 = (text: string): string => createHash('sha256').update(text).digest('hex')
const reading = { inflate: (bytes: Uint8Array) => inflateSync(bytes), fingerprint: sha256 }

/** One design through everything that can be said of any: its pages join, twice the same bytes, reprinted pages are those pages. */
export const checkDesign = async (number: number): Promise<Seen> => {
  const job = jobOf(number)
  const plotted = await plottedBack(job)
  if ('stops' in plotted) return { faults: [], stopped: true, bytes: 0 }
  const faults = [...tapeUp(plotted).faults]
  const read = readDesign(job.text)
  if ('problems' in read) return { faults: ['a design of ours is not read'], stopped: false, bytes: 0 }
  const laid = () => plotJob(read.design, job.text, { ...usualLaying(job.paper), cover: job.cover }, sha256)
  const [first, second] = [laid(), laid()]
  if (isRefusal(first) || isRefusal(second))
    return { faults: ['what was plotted is refused'], stopped: false, bytes: 0 }
  const [one, two] = [
    await writePdf(setInput(first.set, read.design.title), platform),
    await writePdf(setInput(second.set, read.design.title), platform),
  ]
  if (!Buffer.from(one.bytes).equals(two.bytes)) faults.push('a second run gives other bytes')
  const back = await readSetPdf(one.bytes, reading)
  if ('fault' in back)
    return { faults: [...faults, `its PDF is ${back.fault.kind}`], stopped: false, bytes: 0 }
  if (back.pages.length !== first.set.pages.length) faults.push('pages do not prove which they are')
  const pages = back.pages.slice(number % back.pages.length).slice(0, 1)
  const contents = pages.map((page) => pageContent(page, reading))
  const again = reprintJob(back.plan, pages, contents, null, sha256)
  if (isRefusal(again)) faults.push('a page is not reprinted')
  else {
    const copy = await readSetPdf(await copyPdf(reprintInput(back, again), platform), reading)
    if ('fault' in copy) faults.push(`a reprint is ${copy.fault.kind}`)
    else if (!Buffer.from(pageContent(copy.pages[0]!, reading)).equals(contents[0]!))
      faults.push('a reprinted page draws something else')
  }
  return { faults, stopped: false, bytes: one.bytes.length }
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
    const read = readDesign(twin(number, unit))
    if ('problems' in read) throw new Error(read.problems.map(({ message }) => message).join('\n'))
    return numbersOf(solveDesign(read.design).ramps)
  })
  const [mm, inches] = solved as [readonly number[], readonly number[]]
  if (mm.length !== inches.length) return [`twins have ${mm.length} and ${inches.length} figures`]
  const apart = mm.flatMap((value, i) =>
    Math.abs(value - inches[i]!) > 1e-6 ? [`${value}, ${inches[i]}`] : [],
  )
  return apart.length > 0 ? [`twins differ: ${apart.slice(0, 3).join('; ')}`] : []
}

const numbersOf = (value: unknown): readonly number[] =>
  typeof value === 'number'
    ? [value]
    : value !== null && typeof value === 'object'
      ? Object.values(value).flatMap(numbersOf)
      : []
