import { expect, test } from 'vitest'
import { templateText } from '../support/templates.ts'
import { bookletSaid } from './said.ts'

const boarded = templateText('quarter-mm')
const low = boarded.replace(/^ {6}up: 8 .*$/m, '      up: -3')
const bare = boarded.replace(/^ {4}deck-board: .*$/m, '')

test('what the lip trial is felt for is what the pipe is checked for once it lies: over the board, or the side without one', () => {
  for (const [text, stands, scraps] of [
    [boarded, '8 above the deck board', 'skin and deck board'],
    [low, '3 below the deck board', 'skin and deck board'],
    [bare, "8 above the side's top", 'skin'],
  ] as const) {
    const said = bookletSaid(text)
    expect(said).toContain(`any scraps as thick as ${scraps}. Run`)
    expect(said.split(`the pipe stands ${stands} and 6 out of the ridden face.`)).toHaveLength(2)
    expect(said).toContain(`The pipe stands ${stands}, 6 out of the ridden face.`)
  }
})
