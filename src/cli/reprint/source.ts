import { readFileSync, statSync } from 'node:fs'
import type { Laying } from '../../job/laying.ts'
import { type LayingWords, readLaying } from '../../job/laying-words.ts'
import { plotJob } from '../../job/plot.ts'
import { isRefusal } from '../../job/refusal.ts'
import type { PageSet } from '../../page/set/draft.ts'
import { codeParts } from '../../page/set/set-code.ts'
import { mostSetBytes } from '../../read/limits.ts'
import { done } from '../done.ts'
import { Failure } from '../failure.ts'
import { readAtMost, reason } from '../files.ts'
import { loadDesign } from '../load-design.ts'
import { setPdf } from '../pdf/write-set.ts'
import { sha256 } from '../platform.ts'
import { paceFor } from '../process/v8-flags.ts'
import { givenProfile, type ProfileGiven } from '../profiles.ts'
import { showBriefly } from '../words/show-checks.ts'

const megabytes = (bytes: number): number => Math.round(bytes / 1024 / 1024)

/** The bytes of a set's PDF, `-` for standard input. Fails with exit 2 where they cannot be read. */
export const readPdfBytes = (file: string): Uint8Array => {
  const cannot = (why: string): Failure => new Failure(2, `cannot read ${file}: ${why}`)
  const tooLarge = (words: string): Failure =>
    cannot(`it has ${words} MB; no set has more than ${megabytes(mostSetBytes)} MB`)
  try {
    if (file === '-') {
      const bytes = readAtMost(file, mostSetBytes + 1)
      if (bytes.length > mostSetBytes) throw tooLarge(`more than ${megabytes(mostSetBytes)}`)
      return bytes
    }
    const stat = statSync(file)
    const { size } = stat
    if (stat.isDirectory()) throw cannot('that is a folder; name the PDF in it')
    if (!stat.isFile()) throw cannot('that is a device or a pipe; give the name of a file')
    if (size > mostSetBytes) throw tooLarge(`${megabytes(size)}`)
    return readFileSync(file)
  } catch (error) {
    throw error instanceof Failure ? error : cannot(reason(error))
  }
}

const codeForm = /^[A-Z0-9]{4}-[A-Z0-9]{4}-[A-Z0-9]{4}$/

/**
 * A set laid out again from its design and the options that it was plotted with, as the bytes of its PDF: the same path as from
 * the PDF itself from there on. Fails where the code does not come out. `ready`: asked once all that is given is read, before the work.
 */
export const plotAgain = async (
  file: string,
  said: string,
  raw: LayingWords & ProfileGiven,
  ready: () => void,
): Promise<{ readonly bytes: Uint8Array; readonly warnings: readonly string[] }> => {
  const wanted = said.trim().toUpperCase()
  if (!codeForm.test(wanted))
    throw new Failure(2, `--set ${said}: a set code reads like BCDF-GHJK-2345; it stands on every page`)
  if (/\.pdf$/i.test(file))
    throw new Failure(2, `--set is for a design file; ${file} is reprinted without it`)
  const { design, text } = loadDesign(file)
  const laying = done(readLaying(raw, givenProfile(raw), design))
  ready()
  const several = design.ramps.length > 1
  const job = plotJob(design, text, laying, sha256, paceFor)
  if (isRefusal(job) && job.refused === 'stop')
    throw new Failure(
      1,
      [
        ...showBriefly(job.checks, several, file),
        `${file} cannot be laid out any more, so set ${wanted} was plotted from another; nothing written`,
      ].join('\n'),
    )
  const { set } = done(job, { file, several, done: 'plot' })
  if (set.code !== wanted) throw new Failure(1, otherSet(file, wanted, set, laying))
  const { bytes, warnings } = await setPdf(set, design.title)
  return { bytes, warnings: [...laying.warnings, ...warnings] }
}

/** Which parts of the code differ, and what each of them depends on. */
const otherSet = (
  file: string,
  wanted: string,
  { code, plan }: PageSet,
  { sheet, overlap, printer, strips, pack }: Laying,
): string => {
  const [theirs, ours] = [codeParts(wanted), codeParts(code)]
  const mm = (length: number): string => `${Number(length.toFixed(2))} mm`
  const { top, right, bottom, left } = sheet.margins
  const depends = [
    [
      'design',
      `it depends on what ${file} says, not on its comments; the file was changed since, or is another one: bring back the one that was plotted`,
    ],
    [
      'paper',
      `it depends on paper, margins, overlap, cover, strips and packing: here ${sheet.paper.name}, margins ${[top, right, bottom, left].map(mm).join(', ')} (top, right, bottom, left), overlap ${mm(overlap)}, cover ${plan.cover}, ${strips ? '--strips' : 'no strips'}, ${pack ? '--pack' : 'not packed'}; give --paper, --margin, --overlap, --cover, --strips and --pack as for plot`,
    ],
    [
      'printer',
      `it depends on the printer's correction and its readings: here ${printer === null ? 'none' : printer}; give --printer as for plot. A set that reprint corrected for another printer comes from its PDF alone`,
    ],
  ] as const
  return [
    `${file} comes out as set ${code}, not as ${wanted}; nothing written`,
    ...depends.flatMap(([part, why]) =>
      ours[part] === theirs[part] ? [] : [`  ${part} differs (${ours[part]}, not ${theirs[part]}): ${why}`],
    ),
  ].join('\n')
}
