import { expect, test } from 'vitest'
import { templateText } from '../support/templates.ts'
import { bookletSaid } from './said.ts'

const quarter = templateText('quarter-mm')

test('the step that saws steel says itself that gloves are on and all of it is clamped down', () => {
  const [step] = /Saw the run-out[^.]*\./.exec(bookletSaid(quarter, ['cutting']))!
  expect(step).toContain('metal blade in the jigsaw, gloves on and all of it clamped down')
})
