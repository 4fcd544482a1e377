import { describe, expect, it } from 'vitest'
import { saidKeys } from '../../src/design/edit.ts'
import { changeKind, removeRamp, renameRamp, takenOver } from '../../src/design/edit-ramps.ts'
import { readDesign, readOpenDesign } from '../../src/design/read.ts'
import { drawDesign } from '../../src/ramp/solve.ts'
import { designOf } from '../support/design-of.ts'
import { templates, templateText } from '../support/templates.ts'

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
  return designOf(text).ramps.map(({ like, ...ramp }) => ramp)
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

  it('is not what a figure is found by that it says itself', () => {
    const found = four
      .replace('deck: 640', 'deck: solve')
      .replace('    toe: 40', '    lip: 51°\n    limits: { length: 1500 }\n    toe: 40')
    const all = takenOver(saidKeys(found), 1)
    for (const key of ['lip', 'limits.length', 'height.deck']) expect(all.has(`ramps.1.${key}`)).toBe(false)
    // the open figure of one that is like the first without a figure of its own
    expect(takenOver(saidKeys(found), 3).get('ramps.3.limits.length')).toBe('1500')
    const left = removeRamp(found, 0)
    expect(left.match(/lip:/g)).toHaveLength(1)
    expect(saidKeys(left).has('ramps.0.limits.length')).toBe(false)
    expect(saidKeys(left).get('ramps.2.limits.length')).toBe('1500')
    expect(readOpenDesign(left)).not.toHaveProperty('problems')
  })

  it('is what a figure is found by where another is left open in its place, and not where its width follows from a ramp', () => {
    const found = four
      .replace('width: 1216', 'width: solve')
      .replace('    toe: 40', '    limits: { panels: 3 }\n    toe: 40')
      .replace('height: { frame: 600 }', 'width: 1216\n    height: { frame: solve }')
      .replace('length: 1900', 'stores-inside: { ramp: two, clearance: 12 }\n    height: { frame: 600 }')
    const limitsOf = (ramp: number) => takenOver(saidKeys(found), ramp).get(`ramps.${ramp}.limits.panels`)
    expect([1, 2, 3].map(limitsOf)).toEqual(['3', undefined, '3'])
    const stored = found.replace('like: two', 'like: one')
    expect(takenOver(saidKeys(stored), 2).has('ramps.2.limits.panels')).toBe(false)
    const left = saidKeys(removeRamp(stored, 0))
    expect([0, 1, 2].map((ramp) => left.has(`ramps.${ramp}.limits.panels`))).toEqual([true, false, true])
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

describe('a ramp of another kind', () => {
  it.each(templates)('of %s reads and can be built, and keeps what both kinds have', (name) => {
    const text = templateText(name)
    const before = rampsOf(text)
    for (const [i, { kind }] of before.entries()) {
      const other = kind === 'flat' ? 'quarter' : 'flat'
      // one that another is like, or stored in, is another matter
      if (new RegExp(`(like|ramp): ${before[i]!.name}\\b`).test(text)) continue
      const changed = changeKind(text, i, other)
      const ramp = rampsOf(changed)[i]!
      expect(ramp.kind).toBe(other)
      if (kind === 'flat' || before[i]!.storesInside === null) expect(ramp.width).toBe(before[i]!.width)
      expect(ramp.skin).toEqual(before[i]!.skin)
      expect(ramp.studs.section).toEqual(before[i]!.studs.section)
      const reading = readDesign(changed)
      if ('problems' in reading) throw new Error(name)
      expect(drawDesign(reading.design).stopped, name).toBe(false)
    }
  })

  it('comes back as it was but for what the other kind has not', () => {
    const there = changeKind(four, 0, 'flat')
    expect(saidKeys(there).get('ramps.0.kind')).toBe('flat')
    expect(saidKeys(there).has('ramps.0.toe')).toBe(false)
    expect(there).toContain('# outside')
    expect(saidKeys(there).get('ramps.0.studs.every')).toBe('150')
    // a twin says itself what it took over
    const twin = saidKeys(changeKind(four, 1, 'flat'))
    expect([twin.get('ramps.1.width'), twin.has('ramps.1.like'), twin.has('ramps.1.coping')]).toEqual([
      '1216',
      false,
      false,
    ])
  })

  it('keeps no height and no length, which the other kind measures in its own way, and nothing left open that it must say', () => {
    const twin = `${templateText('quarter-and-flat-mm')}  - { name: third, like: flat }\n`
    const quarter = saidKeys(changeKind(twin, 2, 'quarter'))
    const [height, length, deck] = ['height.surface', 'length', 'deck'].map((key) =>
      quarter.get(`ramps.2.${key}`),
    )
    expect([height, length, deck]).toEqual([undefined, undefined, '500'])
    const [first] = rampsOf(twin)
    const one = four.slice(0, four.indexOf('  - name: two'))
    const open = one.replace('width: 1216', 'width: solve').replace('deck: 500', 'length: 1900')
    const flat = rampsOf(changeKind(open, 0, 'flat'))[0]!
    // the examples of the schema
    expect(flat).toMatchObject({ width: 1216, length: 2440, height: { layer: 'surface', value: 110 } })
    expect(rampsOf(changeKind(twin, 0, 'flat'))[0]).toEqual(first)
  })

  it('leaves those that are like it as they were', () => {
    const all = rampsOf(four)
    const changed = changeKind(four, 0, 'flat')
    expect(rampsOf(changed).slice(1)).toEqual(all.slice(1))
    expect(changed).not.toContain('like: one')
    expect(saidKeys(changed).get('ramps.2.like')).toBe('two')
    // one in the middle of a chain hands on what it was like itself, and says its lists as they stood there
    const middle = changeKind(four, 1, 'flat')
    const without = saidKeys(middle)
    expect(without.get('ramps.2.like')).toBe('one')
    expect(without.get('ramps.1.skin')).toBe(saidKeys(four).get('ramps.0.skin'))
    expect(rampsOf(removeRamp(middle, 1))).toEqual([all[0], all[2], all[3]])
  })

  it('leaves one that is stored inside it a ramp of its own, and says what that can no longer be stored in', () => {
    const reading = readDesign(changeKind(templateText('pair-mm'), 0, 'flat'))
    expect('problems' in reading && reading.problems.map(({ message }) => message)).toEqual([
      'the ramp `outer` is a flat, too low to keep another inside; name a quarter',
    ])
  })
})
