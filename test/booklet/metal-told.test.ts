import { expect, test } from 'vitest'
import { templateText } from '../support/templates.ts'
import { bookletSaid } from './said.ts'

const quarter = templateText('quarter-mm')

test('the step that saws steel says itself that gloves are on and all of it is clamped down', () => {
  const [step] = /Saw the run-out[^.]*\./.exec(bookletSaid(quarter, ['cutting']))!
  expect(step).toContain('metal blade in the jigsaw, gloves on and all of it clamped down')
})

test('a run-out of steel is sawn once: from its panel where steel of the skin comes from it too', () => {
  const skinned = bookletSaid(
    quarter.replace(/^( *)skin: .*$/m, '$1skin: [9 plywood, 9 plywood, 1.5 steel]'),
    ['cutting'],
  )
  const [, number] = /Saw the steel sheets from panel (\d+)/.exec(skinned)!
  expect(skinned.split(new RegExp(`Panel ${number} of`))[1]!.split(/Panel \d+ of/)[0]).toContain(
    'run-out sheet',
  )
  expect(skinned).not.toContain('Saw the run-out')
  expect(bookletSaid(quarter, ['cutting'])).toContain('Saw the run-out with a metal blade')
})

test('a pipe in pieces is told with each of its lengths, and what they make beside them', () => {
  // 2000 of a pipe sold in lengths of 1500: two pieces whose lengths make 2000
  const wide = quarter
    .replace(/^( *)width: \d+.*$/m, '$1width: 2000')
    .replace(/^units: mm.*$/m, '$&\nstock: { pipe: [1500] }')
  const said = bookletSaid(wide, ['cutting'])
  const [, a, b, all] = /2 pieces, (\d+) and (\d+) long \((\d+) in all\)/.exec(said)!
  expect(Number(a) + Number(b)).toBe(2000)
  expect(all).toBe('2000')
})

test('where several ramps have handles or ropes their drilling is looked up ramp by ramp', () => {
  const words = ', ramp by ramp in Storing and moving (page '
  expect(bookletSaid(templateText('quarter-and-flat-mm'))).toContain(`handles or ropes${words}`)
  expect(bookletSaid(quarter)).toContain('handles or ropes (page ')
})
