import { describe, expect, it } from 'vitest'
import { editDesign } from '../../src/design/edit.ts'
import { figuresJob } from '../../src/job/figures.ts'
import { readSettled } from '../../src/job/settle/settle.ts'
import type { Check } from '../../src/ramp/check/check.ts'
import { solveDesign } from '../../src/ramp/solve.ts'
import { templateText as template } from '../support/templates.ts'
import { jobOf } from '../tape-up/jobs.ts'

const checksOf = (text: string): readonly Check[] => {
  const reading = readSettled(text)
  if ('problems' in reading) throw new Error(reading.problems.map(({ message }) => message).join('\n'))
  return solveDesign(reading.design).checks
}

type Edit = readonly [path: string, value: string | null]

const edited = (text: string, edits: readonly Edit[]): string =>
  edits.reduce((all, [path, value]) => editDesign(all, path, value), text)

/** What is left of a check when its offers are typed into the file, each for itself, or what they bring instead. */
const leftOf = (text: string, check: Check, before: readonly Check[]): readonly string[] =>
  check.offers.flatMap((offer) => {
    const typed = edited(
      text,
      offer.map(({ path, value }) => [path, value]),
    )
    const stopped = ({ id, ramp }: Check): boolean =>
      before.some((one) => one.level === 'stop' && one.id === id && one.ramp === ramp)
    const still = checksOf(typed).find(
      (one) =>
        (one.id === check.id && one.ramp === check.ramp && one.level === check.level) ||
        (one.level === 'stop' && !stopped(one)),
    )
    return still ? [`${JSON.stringify(offer)} of ${check.message}\nleaves ${still.id}: ${still.message}`] : []
  })

/** A ramp spoiled in one way, and how many offers its check has. */
const spoiled: readonly (readonly [id: string, template: string, edits: readonly Edit[], offers: number])[] =
  [
    ['overhang', 'quarter-mm', [['ramps.0.transition.circle.surface', '500']], 3],
    ['overhang', 'quarter-in', [['ramps.0.transition.circle.surface', '20']], 3],
    ['toe-low', 'quarter-mm', [['ramps.0.transition.tangent.surface', '90']], 2],
    ['steep', 'quarter-mm', [['ramps.0.transition.circle.surface', '720']], 1],
    [
      'width',
      'quarter-mm',
      [
        ['ramps.0.width', '300'],
        ['ramps.0.sides.count', '6'],
        ['ramps.0.sides.thickness', '24'],
      ],
      2,
    ],
    [
      'wood-narrow',
      'quarter-mm',
      [
        ['ramps.0.chamfer.leg', '620'],
        ['ramps.0.deck', '300'],
      ],
      1,
    ],
    ['length-short', 'quarter-in-plain', [['ramps.0.length', '30']], 1],
    [
      'tips',
      'quarter-mm',
      [
        ['ramps.0.deck', '80'],
        ['ramps.0.chamfer', 'none'],
      ],
      1,
    ],
    ['pipe-under-deck', 'quarter-mm', [['ramps.0.coping.up', '-4']], 1],
    ['pipe-behind-face', 'quarter-mm', [['ramps.0.coping.out', '-4']], 1],
    ['toe-step', 'quarter-mm', [['ramps.0.run-out', 'none']], 1],
    ['toe-thin', 'quarter-mm', [['ramps.0.toe', '3']], 1],
    [
      'timber-short',
      'quarter-mm',
      [
        ['ramps.0.width', '2440'],
        ['stock.timber', '[ 1800 ]'],
      ],
      2,
    ],
    [
      'notch-wall',
      'quarter-mm',
      [
        ['ramps.0.deck-board', '45 plywood'],
        ['ramps.0.coping.up', '4'],
      ],
      1,
    ],
    [
      'pipe-under-deck',
      'quarter-mm',
      [
        ['ramps.0.deck-board', '45 plywood'],
        ['ramps.0.coping.up', '-12'],
      ],
      1,
    ],
    ['pipe-nominal', 'quarter-in', [['ramps.0.coping.outside', '2']], 1],
    ['pipe-nominal', 'quarter-mm', [['ramps.0.coping.outside', '50']], 1],
    ['stud-nominal', 'quarter-in', [['ramps.0.studs.section', '2 x 4']], 1],
    ['skin-bend', 'quarter-mm', [['ramps.0.skin', '[ 15 plywood, 6 hardboard ]']], 2],
    ['board-load', 'quarter-mm', [['ramps.0.deck-board', '6 plywood']], 1],
    ['stores-fit', 'pair-mm', [['ramps.1.height.deck', '630']], 1],
    ['stores-fit', 'pair-mm', [['ramps.0.sides.count', '3']], 1],
    ['flat-meets', 'quarter-and-flat-mm', [['ramps.1.transition.tangent.surface', '100']], 2],
    ['flat-low', 'quarter-and-flat-mm', [['ramps.0.height.surface', '30']], 1],
  ]

describe('what a check offers as data, typed into the file, takes the check away and brings no stop', () => {
  it.each(spoiled)('%s of %s', (id, name, edits, offers) => {
    const text = edited(template(name), edits)
    const checks = checksOf(text)
    const check = checks.find((one) => one.id === id && one.offers.length > 0)
    expect(check?.offers.length, checks.map((one) => `${one.id}: ${one.message}`).join('\n')).toBe(offers)
    expect(leftOf(text, check!, checks)).toEqual([])
  })

  it('for any ramp', () => {
    let met = 0
    const left: string[] = []
    for (const n of [3, 7, 12, 20, 31, 44]) {
      const { text } = jobOf(n)
      const checks = checksOf(text)
      for (const check of checks) {
        met += check.offers.length
        left.push(...leftOf(text, check, checks))
      }
    }
    expect(left).toEqual([])
    expect(met).toBeGreaterThan(12)
  })

  it('a number that a remedy names stands in what it offers', () => {
    const [check] = checksOf(edited(template('quarter-mm'), [['ramps.0.transition.circle.surface', '500']]))
    // the least, the least that need not be watched, and the height
    const [radius, calm, height] = check!.offers
    for (const one of [radius, calm])
      expect(one).toMatchObject([{ path: 'ramps.0.transition.circle.surface' }])
    expect(height).toMatchObject([{ path: 'ramps.0.height.deck' }])
    for (const offer of check!.offers) expect(check!.message).toContain(offer[0]!.value)
  })
})

describe('a figure that was left to the program', () => {
  const asked = (text: string) => {
    const reading = readSettled(text)
    if ('problems' in reading) throw new Error(reading.problems.map(({ message }) => message).join('\n'))
    return figuresJob(reading.design, [], reading.answers).solved.checks
  }
  const tangent = 'ramps.0.transition.tangent.surface'

  it.each<readonly [id: string, out: string, edits: readonly Edit[]]>([
    [
      'toe-step',
      'take `lip` out',
      [
        [tangent, 'solve'],
        ['ramps.0.lip', '48°'],
      ],
    ],
    [
      'toe-step',
      'take `lip` and `limits` out',
      [
        [tangent, 'solve'],
        ['ramps.0.lip', '48°'],
        ['ramps.0.limits', '{ length: 2000 }'],
      ],
    ],
    [
      'panel-size',
      'take `limits` out',
      [
        ['ramps.0.deck', null],
        ['ramps.0.length', 'solve'],
        ['ramps.0.limits', '{ length: 2600 }'],
      ],
    ],
  ])('is typed by what %s offers once the words are followed: %s', (id, out, edits) => {
    const text = edited(template('quarter-mm'), edits)
    const check = asked(text).find((one) => one.id === id && one.level === 'warn')!
    const key = edits.find(([, value]) => value === 'solve')![0]
    expect(check.message.endsWith(`; to type \`${key.replace('ramps.0.', '')}\` ${out}`), check.message).toBe(
      true,
    )
    const typing = check.offers.filter((offer) => offer.some(({ path }) => path === key))
    expect(typing.length).toBeGreaterThan(0)
    for (const offer of typing) {
      // what finds it is refused beside it
      expect('problems' in readSettled(edited(text, [[key, offer[0]!.value]]))).toBe(true)
      const typed = edited(
        text,
        offer.map(({ path, value }) => [path, value]),
      )
      expect(checksOf(typed).filter((one) => one.id === id && one.level === 'warn')).toEqual([])
    }
  })

  it('is not spoken of by what offers another key', () => {
    const text = edited(template('quarter-mm'), [
      ['ramps.0.deck', 'solve'],
      ['ramps.0.limits', '{ length: 2000 }'],
      ['ramps.0.run-out', 'none'],
    ])
    const [check] = asked(text).filter(({ id }) => id === 'toe-step')
    expect(check!.message).not.toContain('to type')
    expect(check!.offers.flat().every(({ value }) => value !== null)).toBe(true)
  })

  it('is typed in one ramp that is like another, or in the one they are like, with what each says itself', () => {
    const text = `${edited(template('quarter-mm'), [
      [tangent, 'solve'],
      ['ramps.0.lip', '48°'],
      ['ramps.0.name', 'a'],
    ])}\n  - { name: b, like: a }\n  - { name: c, like: b, lip: 47° }\n`
    const out = ['`lip` and `lip` of c', '`lip` of c', '`lip`']
    for (const [i, words] of out.entries()) {
      const check = asked(text).filter(({ id, level }) => id === 'toe-step' && level === 'warn')[i]!
      expect(check.message).toContain(`; to type \`transition.tangent.surface\` take ${words} out`)
      for (const offer of check.offers) {
        const typed = edited(
          text,
          offer.map(({ path, value }) => [path, value]),
        )
        expect(
          checksOf(typed).filter(
            (one) => one.ramp === check.ramp && one.id === 'toe-step' && one.level === 'warn',
          ),
        ).toEqual([])
      }
    }
  })
})
