import {
  type Answer,
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
  type ReadLaying,
  setInput,
  sidePicture,
  squareJob,
  withNearMisses,
  writeCsv,
  type writePng,
  writeSvg,
} from '../../index.ts'
import { granted, layingOf, profileOf } from './lay.ts'
import type { Format, formatsOf, Lay, Thing } from './messages.ts'
import { sha256 } from './platform.ts'

/** What something is made of. */
export interface Source {
  readonly text: string
  readonly lay: Lay
  readonly design: Design
  readonly answers: readonly Answer[]
}

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

type Makers<T extends Thing> = Readonly<Record<(typeof formatsOf)[T][number], () => Made>>

/** `stripsBehind`: with story strips, under the code that it has without where it has none. */
export const setOf = ({ design, text, lay }: Source, stripsBehind = false) =>
  granted(plotJob(design, text, layingOf(lay, design), sha256, undefined, stripsBehind)).set

/** What speaks against the printer's figures, and what small pages leave out. */
export const warningsOf = ({ lay, design }: Source, set: ReturnType<typeof setOf>): readonly string[] => [
  ...layingOf(lay, design).warnings,
  ...set.warnings,
]

/** Of what is not taped: how far pages lie over each other is nothing to it. */
const sheetOf = ({ lay: { words, profile }, design }: Source): ReadLaying['sheet'] =>
  layingOf({ words: untaped(words), profile }, design).sheet

const untaped = ({ overlap: _, ...words }: Lay['words']): Lay['words'] => words

const json = (record: unknown): Made => ({ text: `${JSON.stringify(record, null, 2)}\n` })

const makers: { readonly [T in Thing]: (of: Source) => Makers<T> } = {
  pages: (of) => ({
    pdf: () => {
      const set = setOf(of)
      return { pdf: setInput(set, of.design.title), warnings: warningsOf(of, set) }
    },
  }),
  map: (of) => ({
    png: () => {
      const map = phoneMap(of.design.title, setOf(of), of.design.units)
      return { picture: map.drawing, ...map, pixelsPerMm: phoneDots / map.width }
    },
  }),
  square: ({ design: { paper, units }, lay }) => ({
    pdf: () => {
      const said = untaped(lay.words)
      const words = { ...said, ...(said.paper === undefined && { paper }), units }
      const { set, laying } = granted(squareJob(words, profileOf(lay.profile), sha256))
      return { pdf: setInput(set, 'Test square'), warnings: laying.warnings }
    },
  }),
  booklet: ({ design, lay }) => ({
    pdf: () => {
      const laying = layingOf(lay, design)
      const job = granted(bookletJob(design, laying, { only: null, fingerprint: sha256 }))
      return { pdf: bookletInput(design, job, laying.sheet), warnings: laying.warnings }
    },
  }),
  cuts: (of) => {
    const { design } = of
    const job = granted(cutsJob(design))
    return {
      pdf: () => ({ pdf: cutsInput(design, job, sheetOf(of), sha256) }),
      svg: () => ({ text: writeSvg(cutsPicture(design, job, sheetOf(of), sha256)) }),
      csv: () => ({ text: writeCsv(cutsCells(job.sheets, job.boards, design.units)) }),
      json: () => json(cutsRecord(design, job)),
      txt: () => ({ text: cutsText(design, job.sheets, job.boards) }),
    }
  },
  list: (of) => {
    const { design } = of
    const job = granted(buyJob(design))
    return {
      pdf: () => ({ pdf: buyInput(design, job, sheetOf(of)) }),
      csv: () => ({ text: writeCsv(listCells(job.facts.stock.list)) }),
      json: () => json(buyRecord(design, job)),
      txt: () => ({ text: listText(job.facts) }),
    }
  },
  offsets: (of) => {
    const { design } = of
    const { title, units } = design
    const job = granted(offsetsJob(design))
    return {
      pdf: () => ({ pdf: offsetsInput(design, job, sheetOf(of)) }),
      csv: () => ({ text: writeCsv(offsetsCells(job.offsets, units)) }),
      json: () => json(offsetsRecord(design, job)),
      txt: () => ({ text: offsetsText(title, job.offsets, units) }),
    }
  },
  figures: ({ design, text, answers }) => ({
    json: () => json(figuresRecord(design, withNearMisses(figuresJob(design, [], answers), text, design))),
  }),
  picture: ({ design, answers }) => {
    const { title, paper } = design
    const { solved } = figuresJob(design, [], answers)
    const picture = sidePicture(design, solved, pictureRoom(paper))
    if (picture === null) throw new Error('nothing is drawn, since no ramp is solved')
    return {
      pdf: () => ({ pdf: pictureInput(picture, title, paper) }),
      svg: () => ({ text: writeSvg({ ...picture, title }) }),
      png: () => ({ picture: picture.drawing, ...picture, pixelsPerMm: pictureDots }),
    }
  },
}

/** Throws the words of a refusal. */
export const makeOf = (thing: Thing, format: Format, of: Source): Made => {
  const own: Partial<Record<Format, () => Made>> = makers[thing](of)
  const make = own[format]
  if (make === undefined) throw new Error(`no ${thing} are saved as ${format}`)
  return make()
}
