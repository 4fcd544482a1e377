import { cutsText } from '../../src/booklet/cuts/cuts-text.ts'
import type { Drawing } from '../../src/drawing/drawing.ts'
import { bookletJob } from '../../src/job/booklet.ts'
import { cutsJob } from '../../src/job/cuts.ts'
import { usualLaying } from '../../src/job/laying.ts'
import { isRefusal } from '../../src/job/refusal.ts'
import { designOf } from '../support/design-of.ts'

/** Without a deck board; tips over backward, has a thin skin, ends in a step. */
export const doubtful = `title: Short landing
units: mm
ramps:
  - name: short
    width: 1000
    height: { frame: 350 }
    transition: { circle: { frame: 1300 }, tangent: { frame: 0 } }
    toe: 12
    deck: 100
    sides: { thickness: 15 }
    studs: { section: 45 x 45, every: 180 }
    skin: [ 6.5 plywood, 6.5 plywood ]
    coping: { outside: 33.7, up: 4, out: 4 }
`

/** No panel holds a side of it whole. */
export const longQuarter = `title: Long quarter
units: mm
ramps:
  - kind: quarter
    width: 1216
    height: { deck: 900 }
    transition: { circle: { surface: 2100 } }
    toe: 40
    deck: 1200
    skin: [9 plywood, 9 plywood]
    coping: none
`

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

/** A flat alone, its sheets screwed on studs, or as what is said more has it. */
export const flatAlone = (length: number, more = ''): string => `title: A flat alone
units: mm
ramps:
  - name: flat
    kind: flat
    width: 1800
    length: ${length}
    height: { surface: 140 }
    sides: { thickness: 18, count: 3 }
    studs: { section: 45 x 95, every: 250 }
    skin: [12 plywood, 6 hardboard]
${more}`
