import { expect, test } from 'vitest'
import { assertNear } from '../support/near.ts'
import { bookletSaid } from './said.ts'

/** A flat whose ridden face lies 113 up, and quarters with those toes. */
const met = (...toes: readonly number[]): string => `title: Met
units: mm
ramps:
  - name: flat
    kind: flat
    width: 1216
    length: 2440
    height: { surface: 113 }
    skin: [18 plywood, 6 hardboard]
${toes
  .map(
    (toe, i) => `  - name: ${['left', 'right'][i]}
    width: 1216
    height: { deck: 650 }
    transition: { circle: { surface: 1700 }, tangent: { surface: 113 } }
    toe: ${toe}
    deck: 450
    skin: [9 plywood, 9 plywood, 6 hardboard]
    run-out: flat
    deck-board: 15 plywood
    coping: { outside: 60.3, up: 8, out: 6 }
`,
  )
  .join('')}`

const told = (...toes: readonly number[]): string => bookletSaid(met(...toes), ['flat']).replace(/\s+/g, ' ')

test('a flat between two quarters is tipped once: both plates are drilled, then all bolts go in, then the quarters are pushed on', () => {
  const said = told(89, 89)
  const order = [
    'Push the toe of left against its end stud.',
    'Push the toe of right against its other end stud.',
    'Hold flat and left together',
    'Hold flat and right together',
    'Pull left and right off again and tip each ramp up, flat once for the holes at both its ends: put 16 bolts M8, 50 long,',
    'Set all down and push left and right on again; then the plates over the bolts',
  ].map((words) => said.indexOf(words))
  expect(Math.min(...order)).toBeGreaterThan(0)
  expect(order).toEqual(order.toSorted((a, b) => a - b))
  expect(said.match(/tip each/g)).toHaveLength(1)
  expect(told(89)).toContain('tip each ramp up, flat too: put 8 bolts M8')
})

test('ridden faces are told to lie level only where they do, else the step and what is raised by it', () => {
  expect(told(89)).toMatch(/lie level: 113 and 113(\.\d)?\. Shim the lower one\./)
  expect(told(89)).not.toContain('pack strips')
  // the frame's circle has a radius of 1700 + 24 and stands on 89: its slope at 93 up has the cosine (1724 - 4) / 1724, and the
  // ridden face over the toe lies 1700 (1 - cos) over 113
  const step = 1700 * (4 / 1724)
  const said = told(93, 89)
  const [, high] = said.match(/ridden face of left stands ([\d.]+) higher: 113 and /) ?? []
  assertNear(Number(high), step, 0.05)
  expect(said).toContain(`raise flat by ${high} and right by ${high}.`)
  expect(said).toContain('under the middles of the studs of flat too')
  expect(told(93, 93)).toContain(`raise flat by ${high}.`)
})
