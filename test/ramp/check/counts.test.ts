import fc from 'fast-check'
import { expect, test } from 'vitest'
import { job } from '../framed.ts'
import { anyRamp, inch, piped, plain, reveals, said, sawnSeed, solve } from '../ramps.ts'
import { messageFault } from './message-fault.ts'

test('finds what it looks for', () => {
  expect(messageFault('only 0 of 2 bays between studs')).toBe('0 of')
  expect(messageFault('in 1 studs there')).toBe('1 studs')
  expect(messageFault('over 3 stud')).toBe('3 stud')
  expect(messageFault('the pipe lies 0 in behind')).toBe('0 in')
  expect(messageFault('2 sheets for layer 1 and 1 sheet for layer 2, a rib 1 1/2 in off')).toBeNull()
})

test('no message speaks of a quantity of nothing, and singular and plural are right', () => {
  let seen = 0
  const look = (message: string): void => {
    seen++
    expect(messageFault(message), message).toBeNull()
  }
  fc.sample(anyRamp, { numRuns: 60, seed: 77 }).forEach((ramp, i) => {
    for (const { message } of solve(ramp, i % 2 === 0 ? 'mm' : 'in').findings) look(message)
  })
  for (const { design, panel, units } of fc.sample(job, { numRuns: 40, seed: sawnSeed }))
    for (const { message } of solve(design, units, panel).findings) look(message)
  expect(seen).toBeGreaterThan(400)
})

test('a pipe a hair behind the face is not said to lie 0 behind it', () => {
  const at = { ...plain, coping: piped({}, reveals(8, -0.002 * inch)) }
  expect(said(at, 'pipe-behind-face', 'in').join()).toContain('lies under 1/32 in behind')
})
