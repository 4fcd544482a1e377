import { expect, test } from 'vitest'
import { readDesign } from '../../src/design/read.ts'
import { coverDesign } from '../../src/job/covering.ts'
import { cutsJob } from '../../src/job/cuts.ts'
import { usualLaying } from '../../src/job/laying.ts'
import { answerChecks, answerLine } from '../../src/job/settle/answer-words.ts'
import { readSettled } from '../../src/job/settle/settle.ts'
import type { WholeDesign } from '../../src/ramp/ramp.ts'
import { drawDesign } from '../../src/ramp/solve.ts'

interface Said {
  readonly width?: string
  readonly toe?: string
  readonly deck?: string
}

const text = ({ width = '1216', toe = '40', deck = '500' }: Said, limits = ''): string =>
  `title: Boathouse nearest
units: mm
ramps:
  - width: ${width}
    height: { deck: 640 }
    transition: { circle: { surface: 1700 } }
    toe: ${toe}
    deck: ${deck}
    skin: [9 plywood, 9 plywood, 6 hardboard]
    run-out: { sheet: 1.5 steel }
    deck-board: 15 plywood
    coping: { outside: 60.3, up: 8, out: 6 }
    ${limits === '' ? '' : `limits: { ${limits} }`}
`

const found = (said: Said, limits: string) => {
  const reading = readSettled(text(said, limits))
  if ('problems' in reading) throw new Error(reading.problems.map(({ message }) => message).join('\n'))
  return reading.answers[0]!
}

/** Panels of the sides and pages to tape, counted afresh; null where it cannot be built. */
const takes = (said: Said): { readonly panels: number; readonly pages: number } | null => {
  const reading = readDesign(text(said))
  if ('problems' in reading) return null
  const solved = drawDesign(reading.design)
  const sides = cutsJob(reading.design)
  if (solved.stopped || 'refused' in sides) return null
  const { counts, cover } = coverDesign(
    reading.design,
    solved as WholeDesign,
    usualLaying(reading.design.paper),
  )
  const panels = sides.sheets
    .flatMap((sheet) => sheet.panels)
    .filter(({ pieces }) => pieces.some(({ part }) => part.part === 'side' || part.part === 'rib')).length
  return { panels, pages: counts[cover] }
}

test.each(['panels: 1, lip: 40..50°', 'panels: 1, paper: 5'])(
  'a deck cannot keep all of { %s }, and goes as far as one panel lets it',
  (limits) => {
    const { mm, measures } = found({ deck: 'solve' }, limits)
    expect(takes({ deck: `${mm}` })!.panels).toBe(1)
    expect(takes({ deck: `${mm + 1}` })!.panels).toBeGreaterThan(1)
    if (measures.paper !== undefined) expect(takes({ deck: `${mm}` })!.pages).toBe(measures.paper)
  },
)

test('of toes that take as many pages it is the least', () => {
  const { mm, measures } = found({ toe: 'solve' }, 'paper: 3')
  expect(takes({ toe: `${mm}` })!.pages).toBe(measures.paper)
  for (let less = mm - 1; less >= mm - 5; less--)
    expect(takes({ toe: `${less}` })?.pages ?? 100, `${less}`).toBeGreaterThan(measures.paper!)
})

test('a limit that the figure has no bearing on is told as that, and the others are kept', () => {
  const deck = found({ deck: 'solve' }, 'length: 1300, lip: 40..50°')
  expect([deck.passed, deck.unmoved, deck.together]).toEqual([['lip'], ['lip'], []])
  expect(deck.mm).toBe(found({ deck: 'solve' }, 'length: 1300').mm)
  expect(answerLine(deck, 'mm')).toBe(`deck ${deck.mm} mm: the most that length 1300 mm allows`)
  // height of the side 625, radius of its edge 1724 about 1700: cos(lip) = 1075/1724
  const lip = ((Math.acos(1075 / 1724) * 180) / Math.PI).toFixed(1)
  expect(answerChecks([deck], 'mm').map(({ message }) => message)).toEqual([
    `\`deck\` has no bearing on lip 40..50°: the lip is ${lip}° at any value; change the limit or another figure`,
  ])
})

test('a limit that the figure has no bearing on is left aside and told where there is no other, kept or passed', () => {
  const passed = found({ deck: 'solve' }, 'lip: 40..50°')
  const kept = found({ deck: 'solve' }, 'lip: 40..60°')
  // the most that the design file takes
  expect([passed.mm, kept.mm]).toEqual([3000, 3000])
  expect(answerChecks([passed], 'mm')[0]!.message).toMatch(/^`deck` has no bearing on lip 40\.\.50°: /)
  expect(answerLine(passed, 'mm')).toBe('deck 3000 mm: the most that can be typed')
  expect(answerLine(kept, 'mm')).toBe(
    'deck 3000 mm: the most that can be typed; it has no bearing on lip 40..60°',
  )
  const taken = [500, 1216, 2000].map((width) => takes({ width: `${width}` })!)
  expect(new Set(taken.map(({ pages, panels }) => `${pages} ${panels}`)).size).toBe(1)
  const width = found({ width: 'solve' }, 'paper: 2, panels: 3')
  expect([width.unmoved, width.idle]).toEqual([['paper'], ['panels']])
  expect(answerChecks([width], 'mm')[0]!.message).toContain(`the side takes ${taken[0]!.pages} pages at any`)
})
