import { unzlibSync } from 'fflate'
import {
  copyPdf,
  isRefusal,
  mostInflated,
  type Profile,
  pageContent,
  pickPages,
  type ReadPlatform,
  readSetPdf,
  reprintInput,
  reprintJob,
  type SetPdf,
} from '../../index.ts'
import { laidAs } from './laid-as.ts'
import { granted } from './lay.ts'
import type { Answer, Saved } from './messages.ts'
import { sha256, type WebPlatform } from './platform.ts'

/** RFC 1950: the sum at the end of a zlib stream, which fflate does not look at. */
const adler32 = (bytes: Uint8Array): number => {
  let [a, b] = [1, 0]
  for (const byte of bytes) {
    a = (a + byte) % 65_521
    b = (b + a) % 65_521
  }
  return b * 65_536 + a
}
const lastWord = (bytes: Uint8Array): number =>
  new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength).getUint32(bytes.length - 4)

const reading: ReadPlatform = {
  inflate: (bytes) => {
    const out = unzlibSync(bytes, { out: new Uint8Array(mostInflated) })
    // fflate stops at the end of the room that it has
    if (out.length >= mostInflated) throw new RangeError('a stream too long')
    if (adler32(out) !== lastWord(bytes)) throw new RangeError('a stream that was altered')
    return out.slice()
  },
  fingerprint: sha256,
}

const faults: Readonly<Record<string, string>> = {
  empty: 'that file is empty',
  'not-pdf': 'that file is no PDF and no design',
  torn: 'that PDF is torn or damaged: save or download it again',
  'no-plan':
    'that PDF holds no plan of ours, so its pages cannot be told; take the set as it was saved first',
  'saved-anew': 'that PDF was saved anew by another program; take the set as it was saved first',
  edited: 'the plan in that PDF was edited; take the set as it was saved first',
  locked: 'that PDF is locked; unlock it, or take the set as it was saved first',
  unproven: 'the pages of that PDF do not say which they are; take the set as it was saved first',
  unbounded: 'that PDF holds more than any set',
  newer: 'that PDF was made by a newer traceply',
}

const squareAnew =
  'a test square is not corrected here, as what it says to type would be wrong: save a new one with "save the test square" under printer'

const setOf = async (bytes: Uint8Array): Promise<SetPdf> => {
  const set = await readSetPdf(bytes, reading)
  if ('fault' in set) throw new Error(faults[set.fault.kind] ?? 'that PDF cannot be read')
  return set
}

/** What a set says of itself: its plan, and the design that it was plotted from. */
export const openSet = async (bytes: Uint8Array): Promise<Answer> => {
  const { plan, pages } = await setOf(bytes)
  const { design } = plan as unknown as { readonly design?: unknown }
  return {
    kind: 'open-set',
    plan,
    here: pages.map(({ planned }) => planned.page),
    ...(typeof design === 'string' ? laidAs(plan, design) : { design: '', words: {} }),
  }
}

/** Some pages of a set once more, as they were, or corrected for a printer. */
export const reprint = async (
  bytes: Uint8Array,
  wanted: readonly string[],
  profile: Profile | null,
  platform: WebPlatform,
): Promise<Omit<Saved, 'name'>> => {
  const set = await setOf(bytes)
  const here = set.pages.map(({ planned }) => planned.page)
  const { numbers, unknown, absent } = pickPages(
    set.plan,
    here,
    wanted,
    new Map(set.pages.map(({ planned, label }) => [planned.page, label])),
  )
  if (unknown.length > 0 || absent.length > 0)
    throw new Error(
      `there is no page ${[...unknown.map(({ said }) => said), ...absent].join(', ')} in that set`,
    )
  const pages = set.pages.filter(({ planned }) => numbers.includes(planned.page))
  const found = reprintJob(
    set.plan,
    pages,
    pages.map((page) => pageContent(page, reading)),
    profile,
    sha256,
  )
  // a command has no place here
  if (isRefusal(found) && pages.some(({ planned }) => planned.kind === 'square')) throw new Error(squareAnew)
  const job = granted(found)
  const written = await copyPdf(reprintInput(set, job), platform)
  return {
    type: 'application/pdf',
    bytes: written,
    warnings: job.warnings,
  }
}
