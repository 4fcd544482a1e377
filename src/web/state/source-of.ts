import { editDesign, type LayingWords } from '../../index.ts'
import { type Format, type formatsOf, layOf, type Question, type Thing } from '../worker/messages.ts'

export type SaveQuestion = Extract<Question, { kind: 'save' }>

/** What can change without a figure of the ramp. */
type On = keyof LayingWords | 'profile'

const sheet = ['paper', 'margin', 'profile'] as const satisfies readonly On[]
const taped = [...sheet, 'cover', 'overlap'] as const
const whole = [...taped, 'strips', 'pack'] as const

/** What each file hangs on beside the figures of the design. */
export const hangsOn: {
  readonly [T in Thing]: Readonly<Record<(typeof formatsOf)[T][number], readonly On[]>>
} = {
  pages: { pdf: whole },
  map: { png: whole },
  square: { pdf: sheet },
  booklet: { pdf: taped },
  cuts: { pdf: sheet, svg: sheet, csv: [], json: [], txt: [] },
  list: { pdf: sheet, csv: [], json: [], txt: [] },
  offsets: { pdf: sheet, csv: [], json: [], txt: [] },
  picture: { pdf: ['paper'], svg: ['paper'], png: ['paper'] },
  figures: { json: ['paper'] },
}

const onOf = (thing: Thing, format: Format): readonly On[] => {
  const own: Partial<Record<Format, readonly On[]>> = hangsOn[thing]
  return own[format] ?? whole
}

/** What a file is made of, in one text: as long as it is the same, so is the file. `said`: what the design says. */
export const sourceOf = (question: SaveQuestion, said: ReadonlyMap<string, string>): string => {
  const { thing, format, only, text } = question
  const lay = layOf(question)
  const on = onOf(thing, format)
  const laid = Object.entries(lay.words)
    .filter(([key, value]) => value !== false && on.some((one) => one === key))
    .sort(([one], [other]) => (one < other ? -1 : 1))
  const design = on.includes('paper') ? text : editDesign(text, 'paper', null)
  // the square is the same for each ramp
  const of = thing === 'square' ? [said.get('paper'), said.get('units')] : design
  return JSON.stringify([thing, format, only, of, laid, on.includes('profile') ? lay.profile : null])
}
