import { expect, test } from 'vitest'
import { readDesign } from '../../src/design/read.ts'
import { answerLine } from '../../src/job/settle/answer-words.ts'
import { readSettled } from '../../src/job/settle/settle.ts'
import { hasStop } from '../../src/ramp/check/check.ts'
import { solveDesign } from '../../src/ramp/solve.ts'

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

test('a width without a limit, or with one that does not bear on it is the widest that can be built', () => {
  const text = (width: string, limits: string): string =>
    `title: Wide\nunits: mm\nramps:\n${ramp('a', width, 640, limits)}`
  const idle = ['', 'length 1600 mm', 'lip 10..60°']
  for (const [i, limits] of ['', '    limits: { length: 1600 }\n', '    limits: { lip: 60° }\n'].entries()) {
    const reading = readSettled(text('solve', limits))
    if ('problems' in reading) throw new Error(limits)
    const { width } = reading.design.ramps[0]!
    expect(answerLine(reading.answers[0]!, 'mm')).toBe(
      `width ${width} mm: the widest that the timber sold allows${i > 0 ? `; it has no bearing on ${idle[i]}` : ''}`,
    )
    const stops = (mm: number): boolean => {
      const typed = readDesign(text(`${mm}`, ''))
      if ('problems' in typed) throw new Error(`${mm}`)
      return hasStop(solveDesign(typed.design).checks)
    }
    expect(stops(width)).toBe(false)
    // the timber that is sold is too short for it, and for all that are wider
    for (const more of [1, 2, 500, 4000]) expect(stops(width + more), `${width + more}`).toBe(true)
  }
})
