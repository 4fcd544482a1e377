import { expect, test } from 'vitest'
import { framingRows } from '../../src/booklet/framing-rows.ts'
import { assertNear } from '../support/near.ts'
import { templateText } from '../support/templates.ts'
import { bookletSaid, cutsSaid } from './said.ts'
import { withOffsets } from './solved.ts'

const piped = templateText('quarter-mm')
const bare = piped.replace(/ {4}coping:[\s\S]*?(?=\n {4}\w)/, '    coping: none')

test('a ramp without a pipe is told of no pipe to measure, of no notch and of no trial, one with it is', () => {
  const words = [
    'outside of the pipe',
    'lip trial',
    'the lip feels right',
    'just behind the pipe',
    'edge at the pipe',
    'backing behind the pipe',
    'curve and notch',
    'curve, notch',
    'skin or pipe',
    'board and pipe',
  ]
  const [without, withPipe] = [bookletSaid(bare), bookletSaid(piped)]
  for (const said of words) {
    expect(withPipe, said).toContain(said)
    expect(without, said).not.toContain(said)
  }
  expect(without).toContain('behind the toe, at the lip.')
  expect(without).toContain('edge at the lip')
  expect(without).toContain('backing behind the lip')
})

test('figures and cuts name a backing by what it lies behind, and a side without a notch has none to saw', () => {
  const told = (text: string): string => framingRows(withOffsets(text).quarters[0]!, 'mm').flat().join(' ')
  expect(told(piped)).toContain('backing behind the pipe')
  expect(told(bare)).toContain('backing behind the lip')
  expect(told(bare)).not.toContain('behind the pipe')
  expect(cutsSaid(piped)).toMatch(/notch and curve: jigsaw/)
  expect(cutsSaid(bare)).toMatch(/front edge and curve: jigsaw/)
  expect(cutsSaid(bare)).not.toMatch(/notch|pipe/)
})

test('a ramp without a pipe is told of a deck board at its lip where it has one', () => {
  const told = (text: string): string => framingRows(withOffsets(text).quarters[0]!, 'mm').flat().join('\n')
  expect(told(bare)).toContain('none: the deck board ends at the lip, and no notch is cut')
  const boardless = told(bare.replace(/ {4}deck-board: .*/, '    deck-board: none'))
  expect(boardless).toContain('none: no notch is cut')
  expect(boardless).not.toContain('deck board')
})

test('one stud, or one timber, between the corners is told as one', () => {
  const low = `title: Low
units: mm
ramps:
  - width: 800
    height: { deck: 150 }
    transition: { circle: { surface: 900 } }
    toe: 20
    deck: 300
    skin: [ 9 plywood ]
    deck-board: 9 plywood
    coping: none
`
  const said = bookletSaid(low, ['framing'])
  expect(said).toContain('Screw stud 2 on its mark, as the table says: both screws in each end. Tick it')
  expect(said).toMatch(/Screw timber 3 as the table says, both screws in each end, its top level/)
  expect(said).not.toContain('one after the other')
  // of several it is their tops
  expect(bookletSaid(piped, ['framing'])).toMatch(/: .*\d and \d+, their tops level with the side's top/)
  expect(bookletSaid(piped, ['framing'])).not.toMatch(/\d and \d+, its top/)
  expect(bookletSaid(piped, ['framing'])).toContain('on their marks, up the curve, one after the other')
})

test('the open groove at a lip without a pipe is filled by a wedge with sizes, under a pipe there is none', () => {
  const said = bookletSaid(bare, ['deck'])
  const { design, transition } = withOffsets(bare).quarters[0]!
  const thick = design.skin.reduce((sum, { thickness }) => sum + thickness, 0)
  // the skin's ends stand square to the curve: their upper edge lies thick × sin of the slope before the board
  const [, wide, high, angle] = said
    .match(/: ([\d.]+) wide on top, ([\d.]+) high at the board, ([\d.]+)° between/)!
    .map(Number) as [number, number, number, number]
  assertNear(wide, thick * Math.sin(transition.lipAngle), 0.051)
  assertNear((angle * Math.PI) / 180, transition.lipAngle, 0.002)
  // no higher than the board, nor than the skin stands over the lip
  expect(high).toBeLessThanOrEqual(design.deckBoard!.thickness + 0.051)
  expect(high).toBeLessThanOrEqual(thick * Math.cos(transition.lipAngle) + 0.051)
  expect(bookletSaid(piped, ['deck'])).not.toContain('groove stays open')
  // what it is planed from, glued and nailed with is bought before, long enough
  const bought = bookletSaid(bare, ['buying'])
  expect(bought).toContain(
    `strip of hard wood, ${Math.ceil(wide)} × ${Math.ceil(high)} or more, ${design.width} mm long`,
  )
  expect(bought).toMatch(/thin nails, 30 mm hold the strip at the lip/)
  expect(bought).toMatch(/waterproof wood glue for .*the strip at the lip/)
  expect(bookletSaid(piped, ['buying'])).not.toMatch(/hard wood|nails|at the lip/)
})
