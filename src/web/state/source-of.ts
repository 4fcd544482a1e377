import type { Lay, Question } from '../worker/messages.ts'

export type SaveQuestion = Extract<Question, { kind: 'save' }>

/** Of how pages are laid, what a file hangs on: all of it, what a sheet of paper is alone, or nothing. */
const layFor = ({ thing, format, only, lay: { words, profile } }: SaveQuestion): Partial<Lay> => {
  const { cover: _, strips: __, pack: ___, overlap: ____, ...sheet } = words
  switch (thing) {
    case 'pages':
    case 'map':
    case 'booklet':
      // strips alone are saved whether the set has them or not
      return { words: only === 'strips' ? { ...words, strips: true } : words, profile }
    case 'square':
      return { words: sheet, profile }
    case 'cuts':
    case 'list':
    case 'offsets':
      return format === 'pdf' || format === 'svg' ? { words: sheet, profile } : {}
    case 'picture':
    case 'figures':
      return {}
    default:
      return thing satisfies never
  }
}

/** What a file is made of, in one text: as long as it is the same, so is the file. `said`: what the design says. */
export const sourceOf = (question: SaveQuestion, said: ReadonlyMap<string, string>): string => {
  const { thing, format, only, text } = question
  const { words = {}, profile = null } = layFor(question)
  const laid = Object.entries(words)
    .filter(([, value]) => value !== false)
    .sort(([one], [other]) => (one < other ? -1 : 1))
  // the square is the same for each ramp
  const of = thing === 'square' ? [said.get('paper'), said.get('units')] : text
  return JSON.stringify([thing, format, only, of, laid, profile])
}
