import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { editDesign, saidKeys } from '../../src/design/edit.ts'
import { designOf } from '../support/design-of.ts'
import { hold } from '../support/hold.ts'
import { templates, templateText } from '../support/templates.ts'

const text = `# kept
title: Boathouse low   # kept too
units: mm
ramps:
  - width: 1216
    height: { deck: 640 }      # which layer
    transition: { circle: { surface: 1700 } }
    toe: 40
    deck: 500
    skin: [9 plywood, 9 plywood]
    coping: none
`

const quarterOf = (of: string) => {
  const [ramp] = designOf(of).ramps
  if (ramp?.kind !== 'quarter') throw new Error('no quarter')
  return ramp
}

describe('a key that the file says', () => {
  test('changes in its place and nothing else does', () => {
    expect(editDesign(text, 'ramps.0.height.deck', '17 3/16 in')).toBe(
      text.replace('deck: 640', 'deck: 17 3/16 in'),
    )
    expect(editDesign(text, 'title', 'Second: "try" #2')).toBe(
      text.replace('title: Boathouse low', 'title: "Second: \\"try\\" #2"'),
    )
  })

  test('is read back as typed', () => {
    expect(saidKeys(editDesign(text, 'title', 'Second: "try" #2')).get('title')).toBe('Second: "try" #2')
    expect(saidKeys(text).get('ramps.0.skin')).toBe('[9 plywood, 9 plywood]')
    expect(saidKeys(text).get('ramps.0.coping')).toBe('none')
  })

  test('goes when it is taken out, with the map that it leaves empty', () => {
    const without = editDesign(text, 'ramps.0.transition.circle.surface', null)
    expect(saidKeys(without).has('ramps.0.transition.circle.surface')).toBe(false)
    expect(without).not.toContain('transition')
    expect(editDesign(text, 'paper', null)).toBe(text)
  })
})

describe('a key that the file does not say yet', () => {
  test('is set in a text with carriage returns alone', () => {
    const old = text.replaceAll('\n', '\r')
    expect(quarterOf(editDesign(old, 'ramps.0.length', '1500')).back).toEqual({ from: 'length', value: 1500 })
  })

  test('takes the place of those that it excludes', () => {
    const changed = editDesign(text, 'ramps.0.height.frame', '600')
    expect(quarterOf(changed).height).toEqual({ layer: 'frame', value: 600 })
    expect(changed).toContain('# kept\n')
    expect(changed).toContain('# kept too')
    expect(changed).toContain('# which layer')
    expect(quarterOf(editDesign(text, 'ramps.0.length', '1500')).back).toEqual({
      from: 'length',
      value: 1500,
    })
  })

  test('takes the place of those that the map excludes which it comes in', () => {
    const piped = text.replace('coping: none', 'coping: { outside: 60.3, up: 8, out: 6 }')
    const along = editDesign(piped, 'ramps.0.coping.notch.along', '48')
    const notched = editDesign(along, 'ramps.0.coping.notch.down', '30')
    expect(quarterOf(notched).coping?.by).toEqual({ kind: 'notch', along: 48, down: 30 })
    const revealed = editDesign(editDesign(notched, 'ramps.0.coping.out', '6'), 'ramps.0.coping.up', '8')
    expect(quarterOf(revealed).coping?.by).toEqual({ kind: 'reveals', up: 8, out: 6 })
    expect(saidKeys(editDesign(text, 'ramps.0.stores-inside.ramp', 'outer')).has('ramps.0.width')).toBe(false)
  })

  test('takes the place of a word for its map', () => {
    const changed = editDesign(text, 'ramps.0.coping.outside', '60.3')
    expect(quarterOf(changed).coping?.outside).toBe(60.3)
    const notched = editDesign(
      editDesign(changed, 'ramps.0.coping.up', '8'),
      'ramps.0.coping.notch',
      '{ along: 48, down: 30 }',
    )
    expect(quarterOf(notched).coping?.by).toEqual({ kind: 'notch', along: 48, down: 30 })
  })

  test('makes the maps that it stands in', () => {
    expect(quarterOf(editDesign(text, 'ramps.0.studs.every', '150')).studs.every).toBe(150)
    expect(designOf(editDesign(text, 'stock.kerf', '2')).stock.kerf).toBe(2)
  })
})

test('every key of every template changes alone: the others stay as they were', () => {
  let seen = 0
  for (const name of templates) {
    const whole = templateText(name)
    for (const [path, value] of saidKeys(whole)) {
      expect(editDesign(whole, path, value)).toBe(whole)
      const out = editDesign(whole, path, null)
      const left = saidKeys(out)
      hold(!left.has(path))
      for (const [other, said] of saidKeys(whole))
        if (other !== path && !other.startsWith(`${path}.`))
          expect(left.get(other)?.replaceAll(' ', ''), `${name} ${path} ${other}`).toBe(
            said.replaceAll(' ', ''),
          )
      seen++
    }
  }
  expect(seen).toBeGreaterThan(100)
})

test('any one-line title comes back as typed', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme', maxLength: 60 }), (title) => {
      if (/[\r\n\u0085\u2028\u2029\ufeff]/.test(title)) return
      expect(saidKeys(editDesign(text, 'title', title)).get('title')).toBe(title)
    }),
    { numRuns: 100 },
  )
})
