import type { Design, PaperName } from '../../src/design/design.ts'
import type { Cover } from '../../src/page/cover/cover.ts'
import type { PageSet } from '../../src/page/set/draft.ts'
import {
  defaultMargins,
  defaultOverlap,
  type Margins,
  type Paper,
  paperOf,
} from '../../src/page/sheet/paper.ts'
import type { Correction } from '../../src/printer/correction.ts'
import type { Check } from '../../src/ramp/check/check.ts'
import { writePdf } from '../../src/write/pdf.ts'
import { solvedText } from '../support/covered.ts'
import { layOut, layOutAnew } from '../support/lay-out.ts'
import { platform } from '../support/platform.ts'
import { type PdfRead, readPdf } from '../support/read-pdf.ts'
import { templates, templateText } from '../support/templates.ts'

/** One job: what the builder says on the command line. */
export interface Job {
  readonly text: string
  readonly paper: PaperName
  readonly cover: Cover
  readonly margins?: Margins
  readonly overlap?: number
  readonly correction?: Correction
  readonly strips?: boolean
  readonly pack?: boolean
}

export interface Laid {
  readonly design: Design
  readonly set: PageSet
  readonly paper: Paper
  readonly margins: Margins
  readonly overlap: number
}

/** A set as it came back from its bytes, and what was asked for. Nothing here comes from the layout's memory. */
export interface Plotted {
  readonly job: Job
  readonly margins: Margins
  readonly overlap: number
  readonly read: PdfRead
  // biome-ignore lint/suspicious/noExplicitAny: as a script would find it in the file
  readonly plan: any
}

const kept = new Set(templates.map(templateText))

/** Its pages laid out and not yet drawn; of a template as all that look at it lay it. */
export const layJob = (job: Job): Laid | { readonly stops: readonly Check[] } => {
  const { text, paper, cover, ...options } = job
  const { design, solved } = solvedText(text)
  const set = (kept.has(text) ? layOut : layOutAnew)(text, paper, cover, options)
  if (!set) return { stops: solved.checks.filter((check) => check.level === 'stop') }
  return {
    design,
    set,
    paper: paperOf(paper),
    margins: job.margins ?? defaultMargins(paper),
    overlap: job.overlap ?? defaultOverlap,
  }
}

/** The way of the `plot` command, without a disk; or the checks that stopped it. */
export const plotJob = async (job: Job): Promise<Plotted | { readonly stops: readonly Check[] }> => {
  const laid = layJob(job)
  return 'stops' in laid ? laid : plotLaid(job, laid)
}

/** What was laid, written and read back from its bytes. */
export const plotLaid = async (job: Job, laid: Laid): Promise<Plotted> => {
  const { design, set, paper, margins, overlap } = laid
  const { bytes } = await writePdf(
    {
      title: design.title,
      subject: `Full-size templates, set ${set.code}`,
      pages: set.pages.map((page) => ({ ...page, width: paper.width, height: paper.height })),
      attachments: [
        {
          name: 'plan.json',
          type: 'application/json',
          description: 'plan',
          bytes: new TextEncoder().encode(JSON.stringify(set.plan)),
        },
      ],
    },
    platform,
  )
  return takeBack(bytes, job, margins, overlap)
}

/** A set out of the bytes of its PDF. */
export const takeBack = async (
  bytes: Uint8Array,
  job: Job,
  margins: Margins,
  overlap: number,
): Promise<Plotted> => {
  const read = await readPdf(bytes)
  const file = read.attachments.find(({ name }) => name === 'plan.json')
  if (!file) throw new Error('no plan.json is attached')
  return { job, margins, overlap, read, plan: JSON.parse(new TextDecoder().decode(file.bytes)) }
}
