import { describe, expect, it } from 'vitest'
import { saidKeys } from '../../src/design/edit.ts'
import { removeRamp, renameRamp, takenOver } from '../../src/design/edit-ramps.ts'
import { readDesign } from '../../src/design/read.ts'
import { templateText } from '../support/templates.ts'

/** A chain: the second is like the first, the third like the second, the fourth like the first. */
const four = `title: Four
units: mm
ramps:
  - name: one
    width: 1216 # outside
    height: { deck: 640 }
    transition:
      circle: { surface: 1700 }
      tangent: { surface: 25 } # not on the floor
    toe: 40
    deck: 500
    skin:
      - 9 plywood
      - 9 plywood
    studs: { every: 150 }
    coping: { outside: 60.3, up: 8, out: 6 }
    chamfer: { leg: 12 }
  - name: two
    like: one
    height: { frame: 600 }
    coping: none
  - name: three
    like: two
    length: 1900
    coping: { outside: 48.3, notch: { along: 40, down: 20 } }
  - name: four
    like: one
    chamfer: none
    coping: { notch: { along: 48, down: 30 } }
`

const rampsOf = (text: string) => {
  const reading = readDesign(text)
  if ('problems' in reading) throw new Error(reading.problems.map(({ message }) => message).join('\n'))
  return reading.design.ramps.map(({ like, ...ramp }) => ramp)
}

describe('what a ramp takes over', () => {
  const taken = (ramp: number) => {
    const all = takenOver(saidKeys(four), ramp)
    return (path: string) => all.get(`ramps.${ramp}.${path}`)
  }

  it('is what the other says and it does not, as typed there', () => {
    expect(taken(0)('toe')).toBeUndefined()
    expect(taken(1)('toe')).toBe('40')
    expect(taken(1)('transition.tangent.surface')).toBe('25')
    expect(taken(1)('chamfer.leg')).toBe('12')
    expect(taken(1)('name')).toBeUndefined()
  })

  it('goes through a chain', () => {
    expect(taken(2)('studs.every')).toBe('150')
    expect(taken(2)('height.frame')).toBe('600')
  })

  it('is nothing that its own keys exclude', () => {
    expect(taken(1)('height.deck')).toBeUndefined()
    expect(taken(1)('coping.outside')).toBeUndefined()
    expect(taken(2)('height.deck')).toBeUndefined()
    expect(taken(2)('deck')).toBeUndefined()
    expect(taken(2)('coping')).toBeUndefined()
    expect(taken(3)('coping.outside')).toBe('60.3')
    expect(taken(3)('coping.up')).toBeUndefined()
  })
})

describe('a ramp that is removed', () => {
  it('leaves the others as they were', () => {
    const all = rampsOf(four)
    for (const ramp of [0, 1, 2, 3])
      expect(rampsOf(removeRamp(four, ramp))).toEqual(all.filter((_, i) => i !== ramp))
  })

  it('leaves its comments with those that were like it, and a text that is no design alone', () => {
    const two = templateText('pair-mm').replace(/ {4}stores-inside:.*\n.*\n.*clearance.*\n/, '')
    const one = removeRamp(two, 0)
    expect(rampsOf(one)).toEqual(rampsOf(two).slice(1))
    expect(one).toContain("toe: 40 # height of the side's front edge")
    expect(one).not.toContain('like:')
    expect(removeRamp(four, 9)).toBe(four)
    expect(removeRamp('ramps: [', 0)).toBe('ramps: [')
  })
})

it('a ramp that is called otherwise is called so by those that name it, and nothing else changes', () => {
  const pair = templateText('pair-mm')
  expect(renameRamp(pair, 0, 'hall')).toBe(
    pair.replaceAll(/((?:name|like|ramp): )outer/g, (_, key) => `${key}hall`),
  )
  expect(renameRamp(pair, 1, 'low')).toBe(pair.replace('name: inner', 'name: low'))
  const single = templateText('quarter-mm')
  expect(saidKeys(renameRamp(single, 0, 'hall')).get('ramps.0.name')).toBe('hall')
})
