import fc from 'fast-check'
import { expect, test } from 'vitest'
import { job } from '../framed.ts'
import { anyRamp, inch, piped, plain, reveals, said, sawnSeed, solve } from '../ramps.ts'

const nouns = 'stud|sheet|screw|layer|rib|bay|row|piece|hole|seam|timber|tile|page'

/** A quantity of nothing, one of many, or many of one; values of keys stand in parentheses. */
const fault = (message: string): string | null => {
  const text = message.replace(/\d+ \d+\/\d+|\d+\/\d+/g, 'N').replace(/\([^)]* now\)/g, '')
  return (
    new RegExp(
      `(?:lies|stands?|passes|spans|sags|leaves|ends|only|is|for) 0(?:\\.0)? (?:mm|in|of|${nouns})`,
    ).exec(text)?.[0] ??
    new RegExp(`(?<![\\d.,N] ?)\\b[01] (?:${nouns})s\\b`).exec(text)?.[0] ??
    new RegExp(`(?<![\\d.,])\\b(?:[2-9]|\\d\\d+) (?:${nouns})\\b(?![ -])`).exec(text)?.[0] ??
    null
  )
}

test('finds what it looks for', () => {
  expect(fault('only 0 of 2 bays between studs')).toBe('only 0 of')
  expect(fault('in 1 studs there')).toBe('1 studs')
  expect(fault('over 3 stud')).toBe('3 stud')
  expect(fault('the pipe lies 0 in behind')).toBe('lies 0 in')
  expect(fault('2 sheets for layer 1 and 1 sheet for layer 2, a rib 1 1/2 in off')).toBeNull()
})

test('no message speaks of a quantity of nothing, and singular and plural are right', () => {
  let seen = 0
  const look = (message: string): void => {
    seen++
    expect(fault(message), message).toBeNull()
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
