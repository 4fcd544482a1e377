import {
  chooseCover,
  coverCounts,
  defaultMargins,
  defaultOverlap,
  designCovers,
  layOutSet,
  layOutSquare,
  noCorrection,
  type PaperName,
  paperOf,
  printerUncertainty,
  readSettled,
  type Sheet,
  setInput,
  solveDesign,
  writePdf,
} from '../../index.ts'
import type { Answer, Question } from './messages.ts'
import { platform, sha256 } from './platform.ts'

const sheetOf = (paper: PaperName): Sheet => ({
  paper: paperOf(paper),
  margins: defaultMargins(paper),
  correction: noCorrection,
})

/** Throws with the words for the builder where it cannot be done. */
export const answer = async (
  question: Question,
  progress: (page: number, of: number) => void,
): Promise<Answer> => {
  switch (question.kind) {
    case 'counts': {
      const { counts } = covered(question.text)
      return { kind: 'counts', counts, chosen: chooseCover(counts).cover }
    }
    case 'set': {
      const { design, solved, sheet, covers, counts } = covered(question.text)
      const cover = question.cover ?? chooseCover(counts).cover
      const set = layOutSet(
        design,
        solved,
        {
          sheet,
          overlap: defaultOverlap,
          cover,
          printer: null,
          text: question.text,
          fingerprint: sha256,
          uncertainty: printerUncertainty(null),
        },
        covers,
      )
      let done = 0
      const input = setInput(set, design.title)
      const pages = input.pages.map((page) => ({
        ...page,
        draw: () => {
          progress(++done, input.pages.length)
          return page.draw()
        },
      }))
      const { bytes, warnings } = await writePdf({ ...input, pages }, platform)
      return {
        kind: 'file',
        file: {
          name: `${fileName(design.title)}.pdf`,
          type: 'application/pdf',
          bytes,
          warnings: [...set.warnings, ...warnings],
        },
      }
    }
    case 'square': {
      const paper = question.paper as PaperName
      const set = layOutSquare(question.units, sheetOf(paper), null, sha256)
      const { bytes, warnings } = await writePdf(setInput(set, 'Test square'), platform)
      return { kind: 'file', file: { name: 'square.pdf', type: 'application/pdf', bytes, warnings } }
    }
    default:
      return question satisfies never
  }
}

const covered = (text: string) => {
  const reading = readSettled(text)
  if ('problems' in reading) throw new Error(reading.problems.map(({ message }) => message).join('\n'))
  const { design } = reading
  const solved = solveDesign(design)
  if (solved.stopped) {
    const stops = solved.checks.filter(({ level }) => level === 'stop')
    throw new Error(stops.map(({ message }) => message).join('\n'))
  }
  const sheet = sheetOf(design.paper)
  const covers = designCovers(design, solved, { sheet, overlap: defaultOverlap })
  return { design, solved, sheet, covers, counts: coverCounts(covers) }
}

/** A title as a file's name that every system takes. */
export const fileName = (title: string): string =>
  title
    .normalize('NFKD')
    .replaceAll(/[^\w]+/g, '-')
    .replaceAll(/^-+|-+$/g, '')
    .toLowerCase()
    .slice(0, 60) || 'ramp'
