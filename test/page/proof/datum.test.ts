import { describe, expect, it } from 'vitest'
import { readDesign } from '../../../src/design/read.ts'
import { pointDistance } from '../../../src/geometry/point.ts'
import { type DatumPlace, datumPages } from '../../../src/page/proof/datum-places.ts'
import { layOut } from '../../support/lay-out.ts'
import { templates, templateText } from '../../support/templates.ts'
import { jobOf } from '../../tape-up/jobs.ts'

/** Up to four places far apart, on other pages as long as there are any, by asking all of them each time. */
const slowlyApart = (places: readonly DatumPlace[]): readonly DatumPlace[] => {
  const chosen: DatumPlace[] = []
  const worth = ({ at }: DatumPlace): number =>
    chosen.length === 0
      ? -Math.hypot(at.x, at.y)
      : Math.min(...chosen.map((other) => pointDistance(at, other.at)))
  const firstOfMost = (some: readonly DatumPlace[]): DatumPlace | undefined => {
    const most = Math.max(...some.map(worth))
    return some.find((place) => worth(place) === most)
  }
  while (chosen.length < 4) {
    const other = firstOfMost(places.filter(({ tile }) => chosen.every((one) => one.tile !== tile)))
    const best = other ?? firstOfMost(places)
    if (!best || (!other && worth(best) < 120)) break
    chosen.push(best)
  }
  return chosen
}

const spread = (places: readonly DatumPlace[]): number =>
  Math.max(0, ...places.flatMap((a) => places.map((b) => pointDistance(a.at, b.at))))

describe('crosses', () => {
  it('are those that asking each place of each page would choose', () => {
    let looked = 0
    const texts = [
      ...templates.map(templateText),
      ...Array.from({ length: 5 }, (_, i) => jobOf(700 + i).text),
    ]
    for (const text of texts)
      for (const cover of ['whole', 'line', 'ribbon'] as const) {
        const reading = readDesign(text)
        if ('problems' in reading) throw new Error('a template has problems')
        for (const { pattern, tiles, datums } of layOut(text, 'a4', cover)?.groups ?? []) {
          const places = datumPages(tiles, pattern, reading.design.units).flatMap((page) =>
            page.candidates().flatMap((_, i) => page.placeOf(i) ?? []),
          )
          const onWood = slowlyApart(places.filter((place) => place.onWood))
          const anywhere = slowlyApart(places)
          const wanted = onWood.length >= 3 && spread(onWood) >= 0.75 * spread(anywhere) ? onWood : anywhere
          expect(datums.map(({ tile, at, words }) => ({ tile, at, words }))).toEqual(
            wanted.map(({ tile, at, words }) => ({ tile, at, words })),
          )
          looked += places.length
        }
      }
    expect(looked).toBeGreaterThan(2000)
  })
})
