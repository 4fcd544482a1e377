import { expect, it } from 'vitest'
import { convexContains } from '../../../src/geometry/clip.ts'
import { layOut } from '../../support/lay-out.ts'
import { opened } from '../../support/strokes.ts'
import { templates, templateText } from '../../support/templates.ts'
import { jobOf } from '../../tape-up/jobs.ts'

const texts = [...templates.map(templateText), ...[801, 803, 808].map((number) => jobOf(number).text)]

it('a page that shows a timber without all of its screws says on it which page has them, or that the map has', () => {
  let [pages, map, silent] = [0, 0, 0]
  for (const text of texts)
    for (const cover of ['whole', 'line', 'ribbon'] as const) {
      const set = layOut(text, /units: in/.test(text) ? 'letter' : 'a4', cover)
      for (const { pattern, tiles } of set?.groups ?? [])
        for (const tile of tiles) {
          const page = set!.plan.pages.findIndex((one) => one.tile === `${tile.number}`)
          const words = opened(set!.pages[page]!.draw()).words.map((one) => one.text)
          const named = words.filter((one) => /^(stud|timber) \d+( flat| on edge)?$/.test(one))
          const told = words.filter((one) =>
            /(^|, )(other|\d) screws?: |(^|, )screws?: |^not all screws/.test(one),
          )
          const wanted = pattern.screws.filter(
            ({ called, timber, middles }) =>
              named.some((one) => new RegExp(`^${called} ${timber}\\b`).test(one)) &&
              !middles.every((p) => convexContains(tile.cell, p)),
          )
          silent += Math.max(0, wanted.length - told.length)
          for (const one of told) {
            const numbers = [...(one.split(': page')[1] ?? '').matchAll(/\d+/g)].map(([digits]) =>
              Number(digits),
            )
            // each page that is named keeps a screw of a timber named here
            for (const number of numbers) {
              const other = tiles.find((each) => each.number === number)!
              expect(other.number, one).not.toBe(tile.number)
              expect(
                wanted.some(({ middles }) => middles.some((p) => convexContains(other.cell, p))),
                `${tile.number}: ${one}`,
              ).toBe(true)
            }
            if (numbers.length === 0) map++
            else pages++
          }
        }
    }
  expect(pages).toBeGreaterThan(80)
  expect(map).toBeGreaterThan(5)
  // where the title's block had to be small
  expect(silent).toBeLessThan((pages + map) / 10)
})
