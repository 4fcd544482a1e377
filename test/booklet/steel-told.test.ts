import { describe, expect, test } from 'vitest'
import { buyJob } from '../../src/job/buy.ts'
import { isRefusal } from '../../src/job/refusal.ts'
import { designOf } from '../support/design-of.ts'
import { bookletSaid } from './said.ts'

const steelTop = `title: Steel top
units: mm
ramps:
  - width: 1216
    height: { deck: 500 }
    transition: { circle: { surface: 1700 } }
    toe: 40
    deck: 500
    skin: [9 plywood, 9 plywood, 1.5 steel]
    deck-board: 15 plywood
    coping: none
`
const wooden = steelTop.replace('1.5 steel', '6 plywood')

const listed = (text: string): readonly string[] => {
  const buy = buyJob(designOf(text))
  if (isRefusal(buy)) throw new Error(JSON.stringify(buy))
  return buy.facts.stock.list.map(({ what, note }) => `${what}: ${note}`)
}

describe('a layer of steel', () => {
  test('has holes for its screws, sunk, and gloves before them', () => {
    const said = bookletSaid(steelTop, ['skin'])
    expect(said).toContain('Punch the steel at each cross of the drawing and drill it 5 mm wide.')
    expect(said.indexOf('Steel edges cut: gloves on')).toBeLessThan(said.indexOf('Punch the steel'))
    expect(bookletSaid(wooden, ['skin'])).not.toMatch(/the steel|Steel edges/)
  })

  test('is drilled on into what it lies on, and sunk, only once it lies there', () => {
    const one = steelTop.replace('9 plywood, 9 plywood, 1.5 steel', '1.5 steel')
    for (const [text, on] of [
      [steelTop, 'layer below'],
      [one, 'stud'],
    ] as const) {
      const said = bookletSaid(text, ['skin'])
      const steel = said.slice(said.indexOf('Punch the steel'))
      const bored = steel.indexOf(
        `at each hole drill 3 mm, sink the hole with the countersink until a head lies level, on into the ${on} where`,
      )
      expect(bored).toBeGreaterThan(steel.search(/Lay its toe end (flush|back)/))
      expect(steel.indexOf('Lay its toe end')).toBeGreaterThan(0)
      expect(steel).not.toContain('At each cross of the drawing drill')
    }
  })

  test('tells a layer of wood over one of steel how it is drilled itself', () => {
    const under = steelTop.replace('9 plywood, 9 plywood, 1.5 steel', '1.5 steel, 9 plywood')
    const said = bookletSaid(under, ['skin'])
    expect(said.indexOf('At each cross of the drawing drill 3 mm')).toBeGreaterThan(
      said.indexOf('Layer 2, the top sheet'),
    )
  })

  test('of the deck board has its holes before it is laid, of the run-out too, and is sunk once it lies', () => {
    const said = bookletSaid(steelTop.replace('15 plywood', '3 steel\n    run-out: { sheet: 1.5 steel }'), [
      'deck',
    ])
    const order = [
      'Punch the steel at each cross of the drawing and drill it 5 mm wide.',
      'Lay it with its back edge flush',
      'on into the timber where the sheet is thinner',
      'holes 5 mm wide',
      'Lay it over the skin',
      'on into the skin where the sheet is thinner',
    ].map((words) => said.indexOf(words))
    expect(order.every((at, i) => at > (order[i - 1] ?? -1))).toBe(true)
    expect(said).not.toContain('First drill')
  })

  test('is sawn apart from the wood, with a metal blade', () => {
    const said = bookletSaid(steelTop, ['cutting'])
    const [, wood] = /Saw the sheets of skin and deck from panels ([\d, and]+)/.exec(said)!
    const [, steel] = /Saw the steel sheets from panel (\d+)/.exec(said)!
    expect(wood!.match(/\d+/g)).not.toContain(steel)
    expect(said).toContain('with a metal blade in the jigsaw, gloves on')
    expect(bookletSaid(wooden, ['cutting'])).not.toContain('metal blade')
  })

  test('has its tools on the list and its burrs filed each year', () => {
    const list = listed(steelTop)
    expect(list).toContain('metal bit 5 mm, centre punch: holes of the skin')
    expect(list).toContain('metal blade for the jigsaw: skin sheet; or let the shop shear it')
    expect(listed(wooden).join(' ')).not.toMatch(/metal b/)
    expect(bookletSaid(steelTop, ['care'])).toContain('file burrs off the steel')
    expect(bookletSaid(wooden, ['care'])).not.toContain('burrs')
  })
})

test('paint is for hidden edges of wood alone', () => {
  const sealed = (text: string): string => /Seal now[^.]*\./.exec(bookletSaid(text, ['cutting']))![0]
  expect(sealed(wooden)).toContain('both ends of each layer of skin and the front edge of the deck board')
  const both = sealed(steelTop.replace('15 plywood', '3 steel'))
  expect(both).toContain('both ends of each wooden layer of skin')
  expect(both).not.toContain('deck board')
  expect(sealed(steelTop.replace('9 plywood, 9 plywood, 1.5 steel', '1.5 steel'))).not.toContain('skin')
})

test('one of the run-out besides is named with it', () => {
  const both = steelTop.replace('deck-board:', 'run-out: { sheet: 1.5 steel }\n    deck-board:')
  expect(listed(both)).toContain('metal bit 5 mm, centre punch: holes of the skin and the run-out')
  expect(listed(both)).toContain(
    'metal blade for the jigsaw: skin and run-out sheet; or let the shop shear it',
  )
})

describe('finishing', () => {
  const steel = steelTop.replace('15 plywood', '3 steel')
  const pair = (first: string, second: string): string => {
    const [head, ramp] = first.split(/(?= {2}- width)/)
    const own = (text: string, name: string): string => text.replace('- width', `- name: ${name}\n    width`)
    return `${head}${own(ramp!, 'one')}${own(second.split(/(?= {2}- width)/)[1]!, 'other')}`
  }

  test('takes no router, sander or sinking to sheet steel: its edges and corners are filed', () => {
    const said = bookletSaid(steel, ['finishing'])
    const [round] = /Round every .*? Leave alone/.exec(said)!
    expect(round).toMatch(/^Round every wooden edge /)
    expect(round).not.toMatch(/deck board|skin/)
    expect(said).toContain('File the corners of the steel deck board round by 15 mm.')
    expect(said).toContain('Sheet steel gets a file alone, no router, plane or sander')
    expect(said).toContain('in wood just below the face; in steel it lies level with it.')
    expect(said).toContain('Sand the wood with grit 80')
  })

  test('rounds the board and the skin of wood, alone or beside those of steel', () => {
    expect(bookletSaid(wooden, ['finishing'])).toContain(
      'the free edges of the deck board, the side edges of the skin. Round the corners of the deck board by 15 mm. Leave',
    )
    expect(bookletSaid(wooden, ['finishing'])).not.toMatch(/steel|wooden/)
    expect(bookletSaid(steelTop, ['finishing'])).toMatch(
      /the free edges of the deck board\. Round the corners/,
    )
    expect(bookletSaid(pair(wooden, steel), ['finishing'])).toContain(
      'the free edges of the wooden deck board, the side edges of the skin where its top sheet is wood. Round the corners of the wooden deck board by 15 mm. Leave',
    )
  })
})
