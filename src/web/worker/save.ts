import { holdsKind, type PdfInput, setInput, writePdf, writePng } from '../../index.ts'
import { fileName } from '../words/file-name.ts'
import { settledOf } from './lay.ts'
import { makeOf, setOf, warningsOf } from './make.ts'
import { type Format, layOf, type Question, type Saved } from './messages.ts'
import type { WebPlatform } from './platform.ts'
import { encodePng } from './png.ts'
import { reprint } from './reprint.ts'

export type Progress = (page: number, of: number) => void

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
  const { thing, format, text, only } = question
  const lay = layOf(question)
  const of = { text, lay, ...settledOf(text) }
  const { design } = of
  const name =
    thing === 'square'
      ? 'square'
      : `${fileName(design.title)}${thing === 'pages' ? (only ? `-${only}` : '') : `-${thing}`}`
  const file = { name: `${name}.${format}`, type: types[format] }
  // some pages of a set are those of a whole one, so that they can be told from it
  if (only !== undefined) {
    const whole = setOf(of, only === 'strips')
    if (only === 'trial' && !whole.plan.pages.some((page) => holdsKind(page, only)))
      throw new Error(whole.warnings.join('. ') || 'there is no lip trial, as there is no pipe')
    const { bytes, warnings } = await writePdf(setInput(whole, design.title), platform)
    const some = await reprint(bytes, [only], null, platform)
    return { ...some, ...file, warnings: [...warningsOf(of, whole), ...warnings, ...some.warnings] }
  }
  const made = makeOf(thing, format, of)
  if ('text' in made) return { ...file, bytes: new TextEncoder().encode(made.text), warnings: [] }
  if ('picture' in made) {
    const { picture, ...size } = made
    const glyphOf = platform.glyphs()
    return { ...file, bytes: writePng(picture, size, { glyphOf, encode: encodePng }), warnings: [] }
  }
  const { bytes, warnings } = await writePdf(told(made.pdf, progress), platform)
  return { ...file, bytes, warnings: [...(made.warnings ?? []), ...warnings] }
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
