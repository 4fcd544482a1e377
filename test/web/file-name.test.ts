import { expect, it } from 'vitest'
import { fileName, reprintName } from '../../src/web/words/file-name.ts'

it.each([
  ['Low ramp for the boathouse', 'low-ramp-for-the-boathouse'],
  ['Schanze – Café', 'schanze-cafe'],
  ['Rampe für Zoë', 'rampe-fur-zoe'],
  ['Große Øst', 'grosse-ost'],
  ['рампа', 'ramp'],
  // 60 letters at most, cut between words
  [`${'ten letters '.repeat(4)}twelveletter tail`, `${'ten-letters-'.repeat(4)}twelveletter`],
  [`${'ten letters '.repeat(4)}twelveletters tail`, `${'ten-letters-'.repeat(3)}ten-letters`],
  ['x'.repeat(61), 'x'.repeat(60)],
  ['', 'ramp'],
])('a title as a file: %s', (title, name) => {
  expect(fileName(title)).toBe(name)
})

it.each([
  ['set.pdf', ['3'], 'set-3.pdf'],
  ['my.first set.pdf', ['trial'], 'my.first set-trial.pdf'],
  ['set', ['A3', 'strips'], 'set-A3-strips.pdf'],
  ['set.pdf', ['a/3'], 'set-a3.pdf'],
] as const)('pages of %s once more: %s', (set, pages, name) => {
  expect(reprintName(set, pages)).toBe(name)
})
