import { expect, test } from 'vitest'
import { planView, sectionNumber } from '../../src/booklet/views/plan-view.ts'
import { viewMarks, viewOf } from '../../src/booklet/views/view.ts'
import { curvedOf } from '../../src/design/kind-traits.ts'
import { readDesign } from '../../src/design/read.ts'
import type { SolvedRamp } from '../../src/ramp/ramp.ts'
import { drawDesign } from '../../src/ramp/solve.ts'
import { overlaps } from '../support/overlaps.ts'
import { opened } from '../support/strokes.ts'
import { templates, templateText } from '../support/templates.ts'
import { jobOf } from '../tape-up/jobs.ts'

test('the plan shows both ends of the section that others are named after, at any scale, on no words', () => {
  let [looked, outside] = [0, 0]
  for (const text of [
    ...templates.map(templateText),
    ...Array.from({ length: 30 }, (_, i) => jobOf(i).text),
  ]) {
    const reading = readDesign(text)
    if ('problems' in reading) throw new Error(text)
    const solved = drawDesign(reading.design)
    if (solved.stopped) continue
    for (const ramp of curvedOf(solved.ramps as readonly SolvedRamp[]))
      for (const ratio of [1 / 15, 1 / 25, 1 / 50]) {
        const view = planView(ramp, reading.design.units, ratio)
        const { words } = opened(view.parts.find(({ name }) => name === 'section')?.marks ?? [])
        expect(words.map((word) => word.text)).toEqual([sectionNumber, sectionNumber])
        if (words[0]!.corners[0]!.x < -12) outside++
        // without the mark nothing stands on anything either
        const others = viewOf(view.parts.filter(({ name }) => name !== 'section'))
        expect(
          overlaps(viewMarks(view)).faults,
          `${ramp.name} of ${reading.design.title} at 1 : ${1 / ratio}`,
        ).toEqual(overlaps(viewMarks(others)).faults)
        looked++
      }
  }
  expect(looked).toBeGreaterThan(90)
  expect(outside).toBeGreaterThan(5)
})
