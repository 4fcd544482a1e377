import { expect, it } from 'vitest'
import { faultWords, formWords } from '../../src/web/words/form-words.ts'

it('options are fields in a form, wherever a sentence names them', () => {
  expect(faultWords(['--overlap 5 mm: too little', 'no strips (without --strips), or --cover line'])).toBe(
    'overlap 5 mm: too little\nno strips (without strips), or cover line',
  )
  expect(formWords('--height "600 mm"')).toBe('height "600 mm"')
})

it('dashes that were typed stay', () => {
  expect(formWords('--margin "--5" or "a--b": give one length')).toBe(
    'margin "--5" or "a--b": give one length',
  )
})
