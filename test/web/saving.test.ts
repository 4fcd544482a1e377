import { describe, expect, it } from 'vitest'
import type { SaveQuestion } from '../../src/web/state/source-of.ts'
import { afterSaving, savingWords, stillSaid } from '../../src/web/state/use-saving.ts'

const question: SaveQuestion = {
  kind: 'save',
  thing: 'pages',
  format: 'pdf',
  text: 'title: barn\n',
  lay: { words: {}, profile: null },
}
const corrected = { words: {}, profile: '{"name":"hall"}' }

describe('what to do with a file that was saved', () => {
  it('full-size pages are printed at 100 %, whichever button saved them; nothing is said of others', () => {
    const full = /^: print it at 100 %, never "fit to page"/
    expect(afterSaving(question)).toMatch(full)
    expect(afterSaving({ ...question, thing: 'square' })).toMatch(full)
    for (const only of ['trial', 'strips', '3'])
      expect(afterSaving({ ...question, only })).toBe(': print it at 100 %, never "fit to page"')
    expect(afterSaving({ ...question, thing: 'cuts' })).toBe('')
    expect(afterSaving({ ...question, thing: 'map', format: 'png' })).toBe('')
  })

  it('what is read on a corrected square is no measurement of the printer: it is not typed', () => {
    expect(afterSaving(question)).toMatch(
      /the leaf behind the map.*type what you read under printer and save/,
    )
    for (const thing of ['pages', 'square'] as const) {
      const words = afterSaving({ ...question, thing, lay: corrected })
      expect(words).not.toContain('type what you read')
      expect(words).toContain('save the test square under printer, and measure the printer anew by that one')
    }
    expect(afterSaving({ ...question, thing: 'square', lay: corrected, uncorrected: true })).toMatch(
      /; if it is off, type what you read under printer$/,
    )
  })
})

describe('what was said of a design', () => {
  const viewOf = (text: string) => ({ text, said: new Map(), problems: [], read: null, good: null })
  const { text, lay } = question
  const other = 'title: shed\n'
  const saidOf = (file: string | null) =>
    ({ kind: 'idle', words: 'said', file, of: { design: text } }) as const

  it('its file is from before the last change once the design is another, however its pages are laid', () => {
    const saved = saidOf('barn.yaml')
    expect(savingWords(saved, viewOf(text), corrected)).toBe('said')
    expect(savingWords(saved, viewOf(other), lay)).toBe(
      'barn.yaml is from before the last change: save it again.',
    )
    expect(stillSaid(saved, other)).toBe(saved)
  })

  it('of a link in the address nothing is told once it has gone, not with undo either', () => {
    const linked = saidOf(null)
    expect(savingWords(linked, viewOf(text), lay)).toBe('said')
    expect(savingWords(linked, viewOf(other), lay)).toBeNull()
    expect(stillSaid(linked, text)).toBe(linked)
    expect(savingWords(stillSaid(linked, other), viewOf(text), lay)).toBeNull()
  })
})
