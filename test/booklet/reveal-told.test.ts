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

test('each lip that the plot has a trial of is tried, lips alike once', () => {
  const [head, ramp] = boarded.split(/^ramps:.*\n/m) as [string, string]
  const named = (name: string, text: string): string => text.replace(/- kind:/, `- name: ${name}\n    kind:`)
  const thin = ramp.replace('outside: 60.3', 'outside: 48.3').replace(/up: 8 /, 'up: 5 ')
  const twins = `${head}ramps:\n${named('one', ramp)}${named('two', ramp)}`
  const said = bookletSaid(`${twins}${named('thin', thin)}`, ['first'])
  expect(said).toContain('saw the lip trial of one and two in any scrap')
  expect(said).toContain(
    'Saw and try the lip trial of thin in the same way, with the pipe (48.3) and any scraps as thick as skin and deck board: the pipe stands 5 above the deck board and 6 out of the ridden face.',
  )
  expect(bookletSaid(twins, ['first']).split('the lip trial')).toHaveLength(2)
})
