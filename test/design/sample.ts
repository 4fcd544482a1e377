import type { Design } from '../../src/design/design.ts'
import type { Problem } from '../../src/design/problem.ts'
import { readDesign } from '../../src/design/read.ts'

/** One good ramp with little more than it must say. */
export const single = `title: Boathouse
units: mm
ramps:
  - width: 1216
    height: { deck: 640 }
    transition: { circle: { surface: 1700 } }
    toe: 40
    deck: 500
    skin: [9 plywood, 6 hardboard]
    coping: { outside: 60.3 }
`

/** Two good ramps, the second stored in the first. */
export const pair = `title: Boathouse
units: mm
ramps:
  - name: outer
    width: 1216
    height: { deck: 640 }
    transition: { circle: { surface: 1700 } }
    toe: 40
    deck: 500
    sides: { thickness: 18.5 }
    skin: [9 plywood, 6 hardboard]
  - name: inner
    like: outer
    stores-inside: { ramp: outer, clearance: 12 }
`

/** Throws where `from` does not stand in the text, so that no test changes nothing unseen. */
export const change = (text: string, from: string, to: string): string => {
  if (!text.includes(from)) throw new Error(`the sample has no ${from}`)
  return text.replace(from, () => to)
}

export const good = (text: string): Design => {
  const reading = readDesign(text)
  if ('problems' in reading) throw new Error(reading.problems.map((p) => p.message).join('\n'))
  return reading.design
}

export const problemsOf = (text: string): readonly Problem[] => {
  const reading = readDesign(text)
  return 'problems' in reading ? reading.problems : []
}
