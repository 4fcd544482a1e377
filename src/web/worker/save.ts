import {
  bookletInput,
  bookletJob,
  buyInput,
  buyJob,
  buyRecord,
  cutsCells,
  cutsInput,
  cutsJob,
  cutsPicture,
  cutsRecord,
  cutsText,
  type Design,
  figuresJob,
  figuresRecord,
  listCells,
  listText,
  offsetsCells,
  offsetsInput,
  offsetsJob,
  offsetsRecord,
  offsetsText,
  type PdfInput,
  phoneDots,
  phoneMap,
  pictureDots,
  pictureInput,
  pictureRoom,
  plotJob,
  readSettled,
  setInput,
  sidePicture,
  squareJob,
  withNearMisses,
  writeCsv,
  writePdf,
  writePng,
  writeSvg,
} from '../../index.ts'
import { granted, layingOf, profileOf } from './lay.ts'
import type { Format, Lay, Question, Saved, Thing } from './messages.ts'
import { sha256, type WebPlatform } from './platform.ts'
import { encodePng } from './png.ts'
import { reprint } from './reprint.ts'

export type Progress = (page: number, of: number) => void

/** A document to be written, a picture to be drawn, or a text that is ready. */
type Made =
  | { readonly pdf: PdfInput; readonly warnings?: readonly string[] }
  | { readonly text: string }
  | {
      readonly picture: Parameters<typeof writePng>[0]
      readonly width: number
      readonly height: number
      readonly pixelsPerMm: number
    }

const types: Readonly<Record<Format, string>> = {
  pdf: 'application/pdf',
  png: 'image/png',
  svg: 'image/svg+xml',
  csv: 'text/csv',
  json: 'application/json',
  txt: 'text/plain',
}

/** What a command writes, by the same jobs. Throws the words of a refusal. */
export const save = async (
  question: Extract<Question, { kind: 'save' }>,
  progress: Progress,
  platform: WebPlatform,
): Promise<Saved> => {
  const { thing, format, text, lay, only } = question
  const reading = readSettled(text)
  if ('problems' in reading) throw new Error(reading.problems.map(({ message }) => message).join('\n'))
  const { design } = reading
  const name =
    thing === 'square'
      ? 'square'
      : `${fileName(design.title)}${thing === 'pages' ? (only ? `-${only}` : '') : `-${thing}`}`
  const file = { name: `${name}.${format}`, type: types[format] }
  // some pages of a set are those of a whole one, so that they can be told from it
  if (only !== undefined) {
    const words = only === 'strips' ? { ...lay.words, strips: true } : lay.words
    const whole = setOf(design, text, { ...lay, words })
    const { bytes, warnings } = await writePdf(setInput(whole, design.title), platform)
    const some = await reprint(bytes, [only], null, platform)
    return { ...some, ...file, warnings: [...warningsOf(lay, design, whole), ...warnings, ...some.warnings] }
  }
  const made = makeOf(thing, format, design, text, lay, reading.answers)
  if ('text' in made) return { ...file, bytes: new TextEncoder().encode(made.text), warnings: [] }
  if ('picture' in made) {
    const { picture, ...size } = made
    const glyphOf = platform.glyphs()
    return { ...file, bytes: writePng(picture, size, { glyphOf, encode: encodePng }), warnings: [] }
  }
  const { bytes, warnings } = await writePdf(told(made.pdf, progress), platform)
  return { ...file, bytes, warnings: [...(made.warnings ?? []), ...warnings] }
}

const setOf = (design: Design, text: string, lay: Lay) =>
  granted(plotJob(design, text, layingOf(lay, design), sha256)).set

/** What speaks against the printer's figures, and what small pages leave out. */
const warningsOf = (lay: Lay, design: Design, set: ReturnType<typeof setOf>): readonly string[] => [
  ...layingOf(lay, design).warnings,
  ...set.warnings,
]

const json = (record: unknown): Made => ({ text: `${JSON.stringify(record, null, 2)}\n` })

const makeOf = (
  thing: Thing,
  format: Format,
  design: Design,
  text: string,
  lay: Lay,
  answers: Parameters<typeof figuresJob>[2],
): Made => {
  const { sheet } = layingOf(lay, design)
  const { title, units, paper } = design
  switch (thing) {
    case 'pages': {
      const set = setOf(design, text, lay)
      return { pdf: setInput(set, title), warnings: warningsOf(lay, design, set) }
    }
    case 'map': {
      const map = phoneMap(title, setOf(design, text, lay), units)
      return { picture: map.drawing, ...map, pixelsPerMm: phoneDots / map.width }
    }
    case 'square': {
      const words = { ...lay.words, ...(lay.words.paper === undefined && { paper }), units }
      return { pdf: setInput(granted(squareJob(words, profileOf(lay.profile), sha256)).set, 'Test square') }
    }
    case 'booklet': {
      const job = granted(bookletJob(design, layingOf(lay, design), { only: null, fingerprint: sha256 }))
      return { pdf: bookletInput(design, job, sheet) }
    }
    case 'cuts': {
      const job = granted(cutsJob(design))
      if (format === 'csv') return { text: writeCsv(cutsCells(job.sheets, job.boards, units)) }
      if (format === 'json') return json(cutsRecord(design, job))
      if (format === 'txt') return { text: cutsText(design, job.sheets, job.boards) }
      if (format === 'svg') return { text: writeSvg(cutsPicture(design, job, sheet, sha256)) }
      return { pdf: cutsInput(design, job, sheet, sha256) }
    }
    case 'list': {
      const job = granted(buyJob(design))
      if (format === 'csv') return { text: writeCsv(listCells(job.facts.stock.list)) }
      if (format === 'json') return json(buyRecord(design, job))
      if (format === 'txt') return { text: listText(job.facts) }
      return { pdf: buyInput(design, job, sheet) }
    }
    case 'offsets': {
      const job = granted(offsetsJob(design))
      if (format === 'csv') return { text: writeCsv(offsetsCells(job.offsets, units)) }
      if (format === 'json') return json(offsetsRecord(design, job))
      if (format === 'txt') return { text: offsetsText(title, job.offsets, units) }
      return { pdf: offsetsInput(design, job, sheet) }
    }
    case 'figures':
      return json(figuresRecord(design, withNearMisses(figuresJob(design, [], answers), text, design)))
    case 'picture': {
      const { solved } = figuresJob(design, [], answers)
      const picture = sidePicture(design, solved, pictureRoom(paper))
      if (picture === null) throw new Error('nothing is drawn, since no ramp is solved')
      if (format === 'svg') return { text: writeSvg({ ...picture, title }) }
      if (format === 'png') return { picture: picture.drawing, ...picture, pixelsPerMm: pictureDots }
      return { pdf: pictureInput(picture, title, paper) }
    }
    default:
      return thing satisfies never
  }
}

/** A document that tells with each page how far it is. */
const told = (input: PdfInput, progress: Progress): PdfInput => {
  let done = 0
  const pages = input.pages.map((page) => ({
    ...page,
    draw: () => {
      progress(++done, input.pages.length)
      return page.draw()
    },
  }))
  return { ...input, pages }
}

/** A title as a file's name that every system takes. */
const fileName = (title: string): string =>
  title
    .normalize('NFKD')
    .replaceAll(/[^\w]+/g, '-')
    .replaceAll(/^-+|-+$/g, '')
    .toLowerCase()
    .slice(0, 60) || 'ramp'
