import { expect, test } from 'vitest'
import { readSettled } from '../../src/job/settle/settle.ts'

const ramp = (name: string, width: string, height: number, more = ''): string => `  - name: ${name}
${width && `    width: ${width}\n`}    kind: quarter
    height: { deck: ${height} }
    transition: { circle: { surface: 2200 } }
    toe: 40
    deck: 380
    skin: [9 plywood, 9 plywood, 6 hardboard]
    run-out: { sheet: 1.5 steel }
${more}`

const widthsOf = (width: string, limits = ''): readonly number[] => {
  const reading = readSettled(`title: One in one in one
units: mm
ramps:
${ramp('a', width, 900, limits)}${ramp('b', '', 640, '    stores-inside: { ramp: a, clearance: 12 }\n')}${ramp('c', '', 420, '    stores-inside: { ramp: b, clearance: 12 }\n')}`)
  if ('problems' in reading) throw new Error(reading.problems.map(({ message }) => message).join('\n'))
  return reading.design.ramps.map((one) => one.width)
}

test('a width that is found reaches all ramps that are stored one in another, as one that is typed does', () => {
  const found = widthsOf('solve', '    limits: { panels: 3 }\n')
  // two sides of 18 and the clearance, each time
  expect(found).toEqual([found[0], found[0]! - 48, found[0]! - 96])
  expect(widthsOf(`${found[0]}`)).toEqual(found)
})
