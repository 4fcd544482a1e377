import { readLaying } from '../../job/laying-words.ts'
import { plotJob } from '../../job/plot.ts'
import { withAnswers } from '../../job/settle/answer-words.ts'
import { command, type Given } from '../command.ts'
import { done } from '../done.ts'
import { Failure } from '../failure.ts'
import { loadDesign, nameOf } from '../load-design.ts'
import { forceOption, layingOptions, planOption, profilesOption } from '../options.ts'
import { pdfOut } from '../pdf/pdf-out.ts'
import { writeSet } from '../pdf/write-set.ts'
import { sha256 } from '../platform.ts'
import { paceFor } from '../process/v8-flags.ts'
import { givenProfile } from '../profiles.ts'
import type { Shell } from '../shell.ts'
import { flatWords } from '../words/flat-words.ts'
import { plotReport } from '../words/plot-report.ts'
import { tellBriefly } from '../words/show-checks.ts'

const rows = [
  ...layingOptions,
  { name: 'printer', takes: 'name', help: 'correct for this printer, measured with `gauge`' },
  profilesOption,
  {
    name: 'out',
    takes: 'file',
    help: 'where to write the PDF, `-` for standard output; else beside you, named after the design',
  },
  { name: 'map', takes: 'file', help: 'also write the map as a PNG, to have on the phone' },
  forceOption,
  planOption,
] as const

export const plotCommand = command({
  name: 'plot',
  help: 'write the full-size pages as a PDF',
  args: [{ name: 'design', help: 'design file' }],
  options: rows,
  run: ([file], given, shell) => plot(file, given, shell),
})

/** The whole set as a PDF. Writes nothing where a check says stop. */
const plot = async (file: string, raw: Given<typeof rows>, shell: Shell): Promise<number> => {
  const { design, text, answers } = loadDesign(file)
  const laying = done(readLaying(raw, givenProfile(raw), design))
  const out = pdfOut(raw.out ?? `${nameOf(file)}.pdf`, raw, shell, file)
  // loaded here, so that what draws no image starts without it
  const image = raw.map === undefined ? null : await import('../pictures/map-image.ts')
  image?.checkMapFile(raw.map!, raw.force ?? false, file)
  const several = design.ramps.length > 1
  const job = done(plotJob(design, text, laying, sha256, paceFor), { file, several, done: 'plot' })
  const { solved, covering, set } = job
  const lost = await writeSet(set, design.title, out, shell.progress)
  await image
    ?.writeMap(design.title, set, design.units, raw.map!, raw.force ?? false)
    .catch((error: unknown) => {
      throw error instanceof Failure
        ? new Failure(error.exit, `${error.message}; the pages are written: ${out.name}`)
        : error
    })
  if (raw.json) shell.out(`${JSON.stringify(set.plan, null, 2)}\n`)
  else
    out.say(
      plotReport({
        out: out.name,
        units: design.units,
        set,
        laying,
        why: covering.why,
        flats: flatWords(solved, 'pattern'),
      }),
    )
  const { checks } = withAnswers(solved, answers, design.units)
  tellBriefly(shell, { checks, several, file, lost: [...laying.warnings, ...set.warnings, ...lost] })
  return 0
}
