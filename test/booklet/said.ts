import { cutsText } from '../../src/booklet/cuts/cuts-text.ts'
import type { Design } from '../../src/design/design.ts'
import { readDesign } from '../../src/design/read.ts'
import type { Drawing } from '../../src/drawing/drawing.ts'
import { bookletJob } from '../../src/job/booklet.ts'
import { cutsJob } from '../../src/job/cuts.ts'
import { usualLaying } from '../../src/job/laying.ts'
import { isRefusal } from '../../src/job/refusal.ts'

/** A design from its text; throws where it has problems. */
export const designOf = (text: string): Design => {
  const reading = readDesign(text)
  if ('problems' in reading) throw new Error(reading.problems.map(({ message }) => message).join('\n'))
  return reading.design
}

const textsOf = (drawing: Drawing): readonly string[] =>
  drawing.flatMap((mark) =>
    mark.kind === 'group' ? textsOf(mark.marks) : mark.kind === 'text' ? [mark.text] : [],
  )

/** All words of the booklet, or of those sections, in one line. */
export const bookletSaid = (text: string, only: readonly string[] | null = null): string => {
  const job = bookletJob(designOf(text), usualLaying('a4'), { only, fingerprint: () => '0123456789abcdef' })
  if (isRefusal(job)) throw new Error(JSON.stringify(job))
  return job.pages.flatMap(({ drawing }) => textsOf(drawing)).join(' ')
}

/** What `cuts` says, in one line. */
export const cutsSaid = (text: string): string => {
  const design = designOf(text)
  const job = cutsJob(design)
  if (isRefusal(job)) throw new Error(JSON.stringify(job))
  return cutsText(design, job.sheets, job.boards).replace(/\s+/g, ' ')
}
