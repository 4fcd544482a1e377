import { expect, test } from 'vitest'
import { templateText } from '../support/templates.ts'
import { bookletSaid } from './said.ts'

test('how many wheels there are is told apart from where they are', () => {
  const rolling = templateText('quarter-mm').replace('# wheels:', 'wheels:')
  expect(bookletSaid(rolling, ['moving'])).toMatch(
    /Wheels: 4 wheels, at \d+, \d+, \d+ and \d+ from the left, \d+ off the floor/,
  )
})
