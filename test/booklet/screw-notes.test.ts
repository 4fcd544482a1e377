import { expect, test } from 'vitest'
import { templateText } from '../support/templates.ts'
import { bookletSaid } from './said.ts'

test("notes on the skin's screws stand once, under the skin", () => {
  const between = templateText('quarter-mm').replace(/^ {4}deck-board: .*$/m, '$&\n    fasten: between')
  const note = /only the skin, [\d.]+ mm thick, lies between studs; screws longer than/g
  const all = bookletSaid(between).match(note) ?? []
  expect(all.length).toBeGreaterThan(0)
  expect(bookletSaid(between, ['skin']).match(note)).toEqual(all)
  expect(bookletSaid(between, ['deck']).match(note)).toBeNull()
})

test("notes on the deck board's screws stand once, under the deck", () => {
  // no room for timbers 140 deep on edge: those under the board lie flat, 19 deep
  const low = `title: Low
units: mm
ramps:
  - width: 1000
    height: { frame: 130 }
    transition: { circle: { frame: 1700 } }
    toe: 30
    deck: 700
    studs: { section: 19 x 140, every: 400 }
    skin: [ 9 plywood ]
    deck-board: 15 plywood
    coping: none
`
  const note = /Deck board: a screw of \d+ mm comes through at the timber/g
  expect(bookletSaid(low).match(note)).toHaveLength(1)
  expect(bookletSaid(low, ['deck']).match(note)).toHaveLength(1)
  expect(bookletSaid(low, ['skin']).match(note)).toBeNull()
})
