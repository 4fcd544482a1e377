import {
  bookletInput,
  bookletJob,
  buyInput,
  buyJob,
  cutsInput,
  cutsJob,
  type Design,
  offsetsInput,
  offsetsJob,
  type PdfInput,
  type PdfPlatform,
  type PlotJob,
  plotJob,
  printerEffects,
  type ReadLaying,
  setInput,
  squareJob,
  svgLayers,
  writePdf,
} from '../../index.ts'
import { designOf, granted, layingOf, profileOf } from './lay.ts'
import type { Answer, Lay, Question, Saved } from './messages.ts'
import { sha256 } from './platform.ts'
import { openSet, reprint } from './reprint.ts'

type Progress = (page: number, of: number) => void

/** Throws with the words for the builder where it cannot be done. */
export const answer = async (
  question: Question,
  progress: Progress,
  platform: PdfPlatform,
): Promise<Answer> => {
  const saved = (input: PdfInput, name: string) => savedBy(platform, input, name, progress)
  switch (question.kind) {
    case 'plan': {
      const { covering, set } = plot(question.text, question.lay)
      const { counts, cover, why } = covering
      return { kind: 'plan', counts, cover, why, plan: set.plan }
    }
    case 'page': {
      const { set } = plot(question.text, question.lay)
      const { width, height } = set.plan.paper
      const page = set.pages[question.page - 1]
      if (page === undefined) throw new Error(`there is no page ${question.page}`)
      return { kind: 'page', svg: svgLayers(page.draw(), height, { decimals: 2 }), width, height }
    }
    case 'set': {
      const design = designOf(question.text)
      const { set } = plot(question.text, question.lay)
      const file = await saved(setInput(set, design.title), fileName(design.title))
      return { kind: 'file', file: { ...file, warnings: [...set.warnings, ...file.warnings] } }
    }
    case 'square': {
      const profile = profileOf(question.lay.profile)
      const set = granted(squareJob({ ...question.lay.words, units: question.units }, profile, sha256)).set
      return { kind: 'file', file: await saved(setInput(set, 'Test square'), 'square') }
    }
    case 'offsets':
    case 'cuts':
    case 'booklet':
    case 'list': {
      const design = designOf(question.text)
      const input = paperOf(question.kind, design, layingOf(question.lay, design))
      const file = await saved(input, `${fileName(design.title)}-${question.kind}`)
      return { kind: 'file', file }
    }
    case 'open-set':
      return openSet(question.bytes)
    case 'reprint':
      return {
        kind: 'file',
        file: await reprint(question.bytes, question.pages, profileOf(question.profile)),
      }
    case 'effect': {
      const { effects } = granted(printerEffects(designOf(question.text), profileOf(question.profile)!))
      return {
        kind: 'effect',
        lines: effects.map(
          ({ ramp, uncorrected: { lipUp, lipBack }, corrected }) =>
            `${ramp}: uncorrected, the lip comes out ${Math.abs(lipUp).toFixed(1)} mm too ${lipUp < 0 ? 'low' : 'high'} and ${Math.abs(lipBack).toFixed(1)} mm too far ${lipBack < 0 ? 'forward' : 'back'}; corrected, within ${corrected.likely.toFixed(1)} mm as a rule`,
        ),
      }
    }
    default:
      return question satisfies never
  }
}

/** The papers for the bench, the saw and the shop. */
const paperOf = (
  kind: 'offsets' | 'cuts' | 'booklet' | 'list',
  design: Design,
  laying: ReadLaying,
): PdfInput => {
  const { sheet } = laying
  switch (kind) {
    case 'offsets':
      return offsetsInput(design, granted(offsetsJob(design)), sheet)
    case 'cuts':
      return cutsInput(design, granted(cutsJob(design)), sheet)
    case 'booklet':
      return bookletInput(
        design,
        granted(bookletJob(design, laying, { only: null, fingerprint: sha256 })),
        sheet,
      )
    case 'list':
      return buyInput(design, granted(buyJob(design)), sheet)
    default:
      return kind satisfies never
  }
}

const plot = (text: string, lay: Lay): PlotJob => {
  const design = designOf(text)
  return granted(plotJob(design, text, layingOf(lay, design), sha256))
}

/** A document as a file; how far it is is told with each page. */
const savedBy = async (
  platform: PdfPlatform,
  input: PdfInput,
  name: string,
  progress: Progress,
): Promise<Saved> => {
  let done = 0
  const pages = input.pages.map((page) => ({
    ...page,
    draw: () => {
      progress(++done, input.pages.length)
      return page.draw()
    },
  }))
  const { bytes, warnings } = await writePdf({ ...input, pages }, platform)
  return { name: `${name}.pdf`, type: 'application/pdf', bytes, warnings }
}

/** A title as a file's name that every system takes. */
const fileName = (title: string): string =>
  title
    .normalize('NFKD')
    .replaceAll(/[^\w]+/g, '-')
    .replaceAll(/^-+|-+$/g, '')
    .toLowerCase()
    .slice(0, 60) || 'ramp'
