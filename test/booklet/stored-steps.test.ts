import { expect, test } from 'vitest'
import { templateText } from '../support/templates.ts'
import { bookletSaid } from './said.ts'

const nested = (name: string, outer: string, deck: number, more = ''): string => `
  - name: ${name}
    like: ${outer}
    stores-inside: { ramp: ${outer}, clearance: 12 }
    height: { deck: ${deck} }
    deck: ${deck - 80}${more}`

const pair = templateText('pair-mm').trimEnd()
const three = `${pair}${nested('tiny', 'inner', 320)}\n`

/** From one step's words to the next step's number. */
const stepOf = (said: string, start: string): string => {
  const from = said.indexOf(start)
  expect(from).toBeGreaterThan(0)
  return said.slice(from).split(/ \d+ (?=[A-Z])/)[0]!
}

test('a timber comes out before the ramp around it covers its screws', () => {
  const said = bookletSaid(three, ['moving'])
  const [inner, tiny] = [stepOf(said, 'Put inner into outer'), stepOf(said, 'Put tiny into inner')]
  expect(said.indexOf(inner)).toBeLessThan(said.indexOf(tiny))
  expect(inner).toMatch(
    /take out timber \d+ of inner, .*: tiny goes in there, and outer covers its screws; take out timber \d+ of outer,[^.]*\. Push inner in from the back/,
  )
  expect(inner).toContain('Screw the timbers in again once inner and tiny are out')
  expect(tiny).not.toMatch(/take out|Screw the timber/)
  expect(tiny).toContain('; push it in from the back')
})

test('the outermost is told first, in whatever order the design has them', () => {
  const [head, outer, inner] = pair.split(/\n {2}(?=- name: )/)
  const tiny = nested('tiny', 'inner', 320).trim().replace('like: inner', 'like: outer')
  const said = bookletSaid(`${[head, outer, tiny, inner].join('\n  ')}\n`, ['moving'])
  expect(said.indexOf('Put inner into')).toBeLessThan(said.indexOf('Put tiny into'))
})

test('two in the same one: its timber comes out once, and goes in again after both', () => {
  const said = bookletSaid(`${pair}${nested('second', 'outer', 460)}\n`, ['moving', 'framing', 'finishing'])
  const [inner, second] = [stepOf(said, 'Put inner into outer'), stepOf(said, 'Put second into outer')]
  expect(inner).toMatch(/take out timber \d+ of outer/)
  expect(inner).toContain('once inner and second are out')
  expect(second).not.toMatch(/take out|Screw the timber/)
  expect(said).toContain('(it is taken out while inner and second are kept inside: heads left bare)')
})

test('heads that stay bare are told before any is filled or painted', () => {
  expect(bookletSaid(pair, ['finishing'])).toMatch(
    /neither fill nor paint over the screws in timber \d+ of outer/,
  )
  expect(bookletSaid(templateText('quarter-mm'), ['finishing'])).toMatch(/a finger would find\./)
})

test('what is lifted into one that stands in another goes over the low timbers of both', () => {
  const roomy = pair
    .replace('deck: 640', 'deck: 1000')
    .replace('deck: 500 ', 'deck: 1330 ')
    .replace('deck: 460', 'deck: 700')
    .replace('deck: 380', 'deck: 640')
  const said = bookletSaid(`${roomy}${nested('tiny', 'inner', 320)}\n`, ['moving'])
  expect(stepOf(said, 'Put tiny into inner')).toMatch(
    /lift it over timber \d+ of outer, on the floor at its back, then over timber \d+ of inner,/,
  )
})
