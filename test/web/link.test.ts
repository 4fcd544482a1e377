import { expect, it } from 'vitest'
import { isTorn, linked, linkTo } from '../../src/web/state/link.ts'
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

const starter = templateText('quarter-mm')
const whole = behind(linkTo(starter, address)!)

it.each([
  ['a full stop', `${whole}.`],
  ['a bracket', `${whole})`],
  ['a line under it', `${whole}_`],
  ['a parameter', `${whole}&fbclid=abc`],
  ['a sign written otherwise', whole.replace('=', '%3D')],
  ['blanks', `${whole.slice(0, 200)}%20 ${whole.slice(200)}%0A`],
])('what a mail or a sentence puts behind a link, or blanks into it, does no harm: %s', (_, hash) => {
  expect(linked(hash)).toBe(starter)
  expect(isTorn(hash)).toBe(false)
})

it('a link that lacks letters is torn, wherever it breaks off; none at all is not', () => {
  for (let length = '#design='.length; length < whole.length; length++) {
    const hash = whole.slice(0, length)
    expect(isTorn(hash), hash).toBe(true)
  }
  for (const hash of ['', '#', '#part-paper']) expect(isTorn(hash)).toBe(false)
})
