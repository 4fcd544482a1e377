import { expect, test } from 'vitest'
import { editDesign } from '../../src/design/edit.ts'
import { curvedOf } from '../../src/design/kind-traits.ts'
import { readDesign } from '../../src/design/read.ts'
import { figuresJob, figuresRecord } from '../../src/job/figures.ts'
import { drawDesign } from '../../src/ramp/solve.ts'
import { assertNear } from '../support/near.ts'
import { templates, templateText } from '../support/templates.ts'

const inch = 25.4
const designOf = (text: string) => {
  const reading = readDesign(text)
  if ('problems' in reading) throw new Error(reading.problems[0]!.message)
  return reading.design
}
const solvedAt = (text: string, i: number, toe: string) => {
  const { ramps, stopped } = drawDesign(designOf(editDesign(text, `ramps.${i}.toe`, toe)))
  return { ramp: curvedOf(ramps)[0]!, stopped }
}

test('the lowest toe takes a whole first stud, a step less does not, and leaves the step of the closed form', () => {
  let seen = 0
  for (const name of templates.filter((one) => !one.startsWith('pair') && !one.includes('flat'))) {
    const text = templateText(name)
    const design = designOf(text)
    const { choices } = figuresJob(design)
    const ramp = curvedOf(drawDesign(design).ramps)[0]!
    const { centre, radius } = ramp.transition!
    const step = design.units === 'mm' ? 1 : inch / 16
    const thin = Math.min(...ramp.design.studs.section)
    expect(choices[0]!.toes.map(({ by }) => by)).toEqual(['stud', 'saw'])
    for (const { by, toe, toeStep, bridge } of choices[0]!.toes) {
      // the ridden face over the toe, on the normal through its corner: c − r cos(a), cos(a) = (c − toe)/R
      const cos = (centre.y - toe) / radius.frame
      assertNear(toeStep, centre.y - radius.surface * cos, 1e-9)
      assertNear(bridge, radius.surface * Math.acos(cos), 1e-9)
      const there = solvedAt(text, 0, `${toe} mm`)
      expect(there.stopped).toBe(false)
      const lower = solvedAt(text, 0, `${toe - step} mm`)
      const wholeAt = ({ ramp: { studs } }: typeof there): boolean => {
        const { x, angle, width, depth, role } = studs[0]!
        const front = Math.min(
          ...[-1, 1].flatMap((end) =>
            [0, depth].map((down) => x + (end * width * Math.cos(angle)) / 2 + down * Math.sin(angle)),
          ),
        )
        return role === 'toe' && depth > thin - 1e-6 && Math.abs(front) < 1e-3
      }
      if (by === 'stud') expect([wholeAt(there), wholeAt(lower)]).toEqual([true, false])
      else assertNear(toe, design.units === 'mm' ? 12 : inch / 2, 1e-9)
      seen++
    }
  }
  expect(seen).toBe(8)
})

test('with its run-out a ramp is as long as it stands, what the sheet bridges along the floor and what lies flat', () => {
  const design = designOf(templateText('quarter-mm'))
  const { size, ramps } = figuresRecord(design, figuresJob(design))
  const [{ standing, withRunOut }] = size!.ramps as unknown as [
    { readonly standing: readonly number[]; readonly withRunOut: readonly number[] },
  ]
  const { radius, toeAngle } = ramps[0]!.transition!
  // the ridden face ends where the ramp does, and runs level under its own centre; 75 mm of the sheet lie on the floor
  assertNear(withRunOut[0]! - standing[0]!, radius.surface * Math.sin((toeAngle * Math.PI) / 180) + 75, 1e-9)
  expect(withRunOut.slice(1)).toEqual(standing.slice(1))
})

test('the words for the lip stand in the JSON, each with the radius and the height that bring it', () => {
  const design = designOf(templateText('quarter-mm'))
  const { words } = figuresRecord(design, figuresJob(design)).ramps[0]!.choices!
  expect(words).toHaveLength(6)
  for (const { word, radius, height } of words) {
    const wordOf = (path: string, mm: number): number => {
      const changed = designOf(editDesign(templateText('quarter-mm'), `ramps.0.${path}`, `${mm} mm`))
      const { transition } = curvedOf(drawDesign(changed).ramps)[0]!
      return transition === null ? 0 : 1 / (1 - Math.cos(transition.lipAngle))
    }
    // radius over height: common practice, no source
    const least = { 'very mellow': 3, mellow: 2.5, middle: 2, lively: 1.75, quick: 1.5, steep: 1.33 }[word]
    assertNear(wordOf('transition.circle.surface', radius), least, 1e-6)
    assertNear(wordOf('height.deck', height), least, 1e-6)
  }
})

test('nothing else could be of a flat', () => {
  const design = designOf(templateText('quarter-and-flat-mm'))
  expect(figuresJob(design).choices.map((choices) => choices === null)).toEqual([true, false])
})
