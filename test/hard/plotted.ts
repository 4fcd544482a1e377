import { createHash } from 'node:crypto'
import { usualLaying } from '../../src/job/laying.ts'
import { type PlotJob, plotJob } from '../../src/job/plot.ts'
import { isRefusal, type Refusal } from '../../src/job/refusal.ts'
import { setInput } from '../../src/job/set-input.ts'
import { writePdf } from '../../src/write/pdf.ts'
import { designOf } from '../support/design-of.ts'
import { platform } from '../support/platform.ts'
import type { Job } from '../tape-up/plot.ts'
import { hardJob } from './jobs.ts'

export const sha256 = (data: string | Uint8Array): string => createHash('sha256').update(data).digest('hex')

/** A set by the way of the `plot` command, without a disk. */
export const plottedBy = async (
  job: Job,
): Promise<{ readonly done: PlotJob; readonly bytes: Uint8Array } | { readonly refusal: Refusal }> => {
  const design = designOf(job.text)
  const usual = usualLaying(job.paper)
  const done = plotJob(
    design,
    job.text,
    {
      ...usual,
      sheet: { ...usual.sheet, ...(job.margins && { margins: job.margins }) },
      overlap: job.overlap ?? usual.overlap,
      cover: job.cover,
      strips: job.strips ?? false,
      pack: job.pack ?? false,
    },
    sha256,
  )
  if (isRefusal(done)) return { refusal: done }
  return { done, bytes: (await writePdf(setInput(done.set, design.title), platform)).bytes }
}

/** What tells whether two Nodes make the same of a number: of the bytes, or of the words that refuse them. */
export const markOf = async (number: number): Promise<string> => {
  const plotted = await plottedBy(hardJob(number))
  return sha256('bytes' in plotted ? plotted.bytes : JSON.stringify(plotted.refusal))
}
