import { expect, it } from 'vitest'
import { linked, linkTo } from '../../src/web/state/link.ts'
import { templateText } from '../support/templates.ts'

const address = 'file:///home/me/traceply.html#design=old'
const behind = (link: string): string => link.slice(link.indexOf('#'))

/** Letters that pack to six bits each. */
const noise = (letters: number): string => {
  let seed = 1
  return Array.from({ length: letters }, () => {
    seed = (seed * 48_271) % 2_147_483_647
    return String.fromCharCode(48 + (seed % 64))
  }).join('')
}

it.each([
  ['a usual one', templateText('quarter-mm')],
  ['one of as many letters as a design may have, of three bytes each', '… '.repeat(131_072)],
  ['one that packs to more than a function takes arguments', noise(180_000)],
])('a link carries a whole design: %s', (_, text) => {
  const link = linkTo(text, address)!
  expect(link).toMatch(/^file:\/\/\/home\/me\/traceply\.html#design=[\w-]+$/)
  expect(linked(behind(link)) === text).toBe(true)
})

it('none is made that is longer than what is read', () => {
  expect(linkTo(noise(210_000), address)).toBeNull()
})
