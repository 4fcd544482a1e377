import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { readDesign } from '../../src/design/read.ts'
import { chooseCover } from '../../src/page/cover/choose-cover.ts'
import { coverCounts, designCovers } from '../../src/page/cover/pattern-covers.ts'
import { layOutSet } from '../../src/page/set/set.ts'
import { defaultMargins, defaultOverlap, paperOf } from '../../src/page/sheet/paper.ts'
import { noCorrection } from '../../src/printer/correction.ts'
import { printerUncertainty } from '../../src/printer/uncertainty.ts'
import { solveDesign } from '../../src/ramp/solve.ts'
import { createByteSink } from '../../src/write/byte-sink.ts'
import { writePageContent } from '../../src/write/pdf-content.ts'
import { createFonts } from '../../src/write/pdf-fonts.ts'
import { createForms } from '../../src/write/pdf-forms.ts'

/**
 * What each step of a plot takes in a process that has done it before, ms of the processor: medians of the last runs. V8's own threads,
 * which count, compile for some hundred runs before. Argument: a design file.
 */
const [runs, counted] = [400, 40]
const text = readFileSync(process.argv[2]!, 'utf8')
const times: Record<string, number[]> = {}
const timed = <T>(step: string, work: () => T): T => {
  const start = process.cpuUsage()
  const done = work()
  times[step] ??= []
  const { user, system } = process.cpuUsage(start)
  times[step].push((user + system) / 1000)
  return done
}
let pages = 0
for (let run = 0; run < runs; run++) {
  const reading = timed('read', () => readDesign(text))
  if ('problems' in reading) throw new Error(JSON.stringify(reading.problems))
  const { design } = reading
  const solved = timed('solve', () => solveDesign(design))
  if (solved.stopped) throw new Error('a check says stop')
  const sheet = {
    paper: paperOf(design.paper),
    margins: defaultMargins(design.paper),
    correction: noCorrection,
  }
  const covered = timed('covers', () => designCovers(design, solved, { sheet, overlap: defaultOverlap }))
  const set = timed('layout', () =>
    layOutSet(
      design,
      solved,
      {
        sheet,
        overlap: defaultOverlap,
        cover: chooseCover(coverCounts(covered)).cover,
        text,
        printer: null,
        uncertainty: printerUncertainty(null),
        fingerprint: (words) => createHash('sha256').update(words).digest('hex'),
      },
      covered,
    ),
  )
  pages = set.pages.length
  const fonts = createFonts({ deflate: (bytes) => bytes, digest: (bytes) => bytes })
  const forms = createForms((bytes) => bytes)
  const sink = createByteSink()
  timed('a page', () => {
    for (const [i, page] of set.pages.entries()) writePageContent(sink, page.draw(), i + 1, { fonts, forms })
    sink.take()
  })
}
const median = (list: readonly number[]): number => list.slice(-counted).sort((a, b) => a - b)[counted / 2]!
const found = Object.fromEntries(Object.entries(times).map(([step, list]) => [step, median(list)]))
console.log(JSON.stringify({ pages, ...found, 'a page': found['a page']! / pages }))
