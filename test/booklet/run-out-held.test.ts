import { expect, test } from 'vitest'
import { templateText } from '../support/templates.ts'
import { bookletSaid } from './said.ts'

const low = (toe: number, skin: string): string =>
  templateText('quarter-mm')
    .replace(/^( +)toe: .*$/m, `$1toe: ${toe}`)
    .replace(/skin: \[.*\]/, `skin: [${skin}]`)
    .replace(/section: \d+ x \d+/, 'section: 45 x 95')

test('a run-out is held by what lies there, and what is done once its screws bite no more goes by that', () => {
  const usual = templateText('quarter-mm')
  const inserts = 'set threaded inserts in stud 1'
  const bolts = 'where its screws no longer bite, take short bolts, heads sunk, nuts below'
  for (const [text, held, worn] of [
    [usual, 'screw it through the skin into stud 1', [inserts]],
    [low(25, '9 plywood, 9 plywood, 6 hardboard'), 'screw it to the skin alone', [bolts]],
    [low(28, '4 plywood'), 'the skin is too thin for a screw: bolts hold it. Drill 8 holes 5.5 mm wide', []],
  ] as const) {
    expect(bookletSaid(text, ['deck'])).toContain(held)
    const moved = bookletSaid(text, ['moving'])
    for (const words of [inserts, bolts])
      expect(moved.includes(words), words).toBe(worn.some((one) => one === words))
    expect(moved).toMatch(/Take the run-out off first[.;]/)
  }
})
