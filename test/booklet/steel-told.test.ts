import { describe, expect, test } from 'vitest'
import { buyJob } from '../../src/job/buy.ts'
import { isRefusal } from '../../src/job/refusal.ts'
import { bookletSaid, designOf } from './said.ts'

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
    expect(said).toContain('Punch the steel at each cross of the drawing and drill it 5 mm wide. Sink each')
    expect(said.indexOf('Steel edges cut: gloves on')).toBeLessThan(said.indexOf('Punch the steel'))
    expect(bookletSaid(wooden, ['skin'])).not.toMatch(/the steel|Steel edges/)
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

test('one of the run-out besides is named with it', () => {
  const both = steelTop.replace('deck-board:', 'run-out: { sheet: 1.5 steel }\n    deck-board:')
  expect(listed(both)).toContain('metal bit 5 mm, centre punch: holes of the skin and the run-out')
  expect(listed(both)).toContain(
    'metal blade for the jigsaw: skin and run-out sheet; or let the shop shear it',
  )
})
