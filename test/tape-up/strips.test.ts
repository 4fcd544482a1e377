import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { readDesign } from '../../src/design/read.ts'
import { designStrips } from '../../src/pattern/ramp-strips.ts'
import { assertNear } from '../support/near.ts'
import { templates } from '../support/templates.ts'
import { wholeDesign } from '../support/whole.ts'
import { checkBlocks, type PlannedPage, type PlannedPlace, stripTicks } from './check-blocks.ts'
import { type Plotted, plotJob } from './plot.ts'
import { mapPoint } from './tape.ts'
import { tapeUp } from './tape-up.ts'

const template = (name: string): string =>
  readFileSync(new URL(`../../templates/${name}.yaml`, import.meta.url), 'utf8')

const plotted = async (...of: Parameters<typeof plotJob>): Promise<Plotted> => {
  const found = await plotJob(...of)
  if ('stops' in found) throw new Error(JSON.stringify(found.stops))
  return found
}

const corrections = [undefined, [1.01, 0.002, -0.003, 0.99], [0.9975, -0.004, -0.006, 1.0012]] as const

it.each(
  templates.flatMap((name) =>
    (['letter', 'a4', 'a3'] as const).map((paper, i) => ({ name, paper, correction: corrections[i] })),
  ),
)(
  '$name on $paper, $correction: the strips carry every mark at its place, taped from their pieces',
  async ({ name, paper, correction }) => {
    const text = template(name)
    const set = await plotted({ text, paper, cover: 'line', strips: true, ...(correction && { correction }) })
    const faults = [...tapeUp(set).faults]
    const count = checkBlocks(set, (what) => faults.push(what))
    expect(faults).toEqual([])
    expect(count.pairs).toBeGreaterThan(10)

    const reading = readDesign(text)
    if ('problems' in reading) throw new Error('no design')
    const { design } = reading
    const { strips } = designStrips(wholeDesign(design).ramps, design.units)
    const places = (set.plan.pages as readonly PlannedPage[])
      .filter(({ kind }) => kind === 'strip')
      .flatMap(({ page, places: own }) => own.map((place) => ({ page, place })))
    expect(new Set(places.map(({ place }) => place.pattern))).toEqual(new Set(strips.map((s) => s.name)))
    let seen = 0
    for (const strip of strips) {
      const own = places.filter(({ place }) => place.pattern === strip.name)
      const ticks = own.flatMap(({ page, place }) => stripTicks(set, page, place))
      for (const [i, edge] of (['upper', 'lower'] as const).entries()) {
        const drawn = ticks.filter((tick) => tick.edge === edge)
        const marks = strip.rows[i]?.marks ?? []
        // 6 mm for what is long, less for what ends in a ring
        const near = (sign: string, at: number) =>
          drawn.filter(
            (tick) =>
              Math.abs(tick.at - at) < 0.005 && Math.abs(tick.depth - (sign === 'tick' ? 6 : 2.6)) < 0.01,
          ).length
        for (const { at, sign } of marks)
          expect(near(sign, at), `${strip.name} ${sign} ${at}`).toBeGreaterThan(0)
        for (const { at, depth } of drawn) {
          const off = Math.min(...marks.map((mark) => Math.abs(mark.at - at)))
          assertNear(off, 0, 0.005, `${strip.name}: a tick of ${depth} at ${at}`)
        }
        seen += marks.length
      }
      // the pieces reach from end to end, and each overlaps the next by both of what they carry beyond the joint
      const spans = own.map(({ place }) => span(place)).sort((a, b) => a.from - b.from)
      assertNear(spans[0]!.from, -6, 0.02 + lean(correction), strip.name)
      assertNear(spans.at(-1)!.to, strip.length + 6, 0.02 + lean(correction), strip.name)
      spans.slice(1).forEach(({ from }, k) => {
        assertNear(spans[k]!.to - from, 12, 0.02 + 2 * lean(correction), strip.name)
      })
    }
    expect(seen).toBeGreaterThan(30)

    // page by page, from above, then from the left: the pieces of a strip follow each other
    const below = (a: PlannedPlace, b: PlannedPlace): number => {
      // a page that leans leaves none as high as the one beside it
      const lower = b.window[3] - a.window[3]
      return Math.abs(lower) > 20 ? lower : a.window[0] - b.window[0]
    }
    const read = [...places].sort((a, b) => a.page - b.page || below(a.place, b.place))
    const order = read.map(({ place }) => place.pattern)
    if (paper !== 'a3')
      expect(order.filter((one, i) => one !== order[i - 1])).toEqual(strips.map((strip) => strip.name))
    for (const strip of strips) {
      const from = read.flatMap(({ place }) => (place.pattern === strip.name ? [span(place).from] : []))
      expect(from, strip.name).toEqual([...from].sort((a, b) => a - b))
    }
  },
)

/** How much of a window's length is left out where the page leans. */
const lean = (correction: (typeof corrections)[number]): number =>
  correction ? Math.max(Math.abs(correction[1]), Math.abs(correction[2])) * 30 : 0

const span = ({ toPattern, window: [x0, y0, x1, y1] }: PlannedPlace) => {
  const xs = [
    { x: x0, y: y0 },
    { x: x1, y: y1 },
  ].map((p) => mapPoint(toPattern, p).x)
  return { from: Math.min(...xs), to: Math.max(...xs) }
}

it('strips change the second part of the set code alone, and no other page but the map, but for the code', async () => {
  const job = { text: template('quarter-mm'), paper: 'a4', cover: 'line' } as const
  const [without, having] = [await plotted(job), await plotted({ ...job, strips: true })]
  const parts = [without, having].map(({ plan }) => plan.set.split('-'))
  expect([0, 1, 2].filter((i) => parts[0]![i] !== parts[1]![i])).toEqual([1])
  // lines may break elsewhere, as one code is wider than another
  const plain = ({ read, plan }: Plotted, i: number): string =>
    read.pages[i]!.texts.map(({ text }) => text)
      .join(' ')
      .replaceAll(plan.set, 'SET')
  without.read.pages.forEach((page, i) => {
    // the map says what the strips are for
    if (having.plan.pages[i].kind === 'map') {
      expect(plain(having, i)).toContain('The strips at the end of the set')
      expect(plain(without, i)).not.toContain('The strips at the end of the set')
      return
    }
    // a title block is as wide as the code in it
    const lines = (strokes: typeof page.strokes) => strokes.filter(({ layer }) => layer !== 'note')
    expect(lines(having.read.pages[i]!.strokes)).toEqual(lines(page.strokes))
    expect(plain(having, i)).toBe(plain(without, i))
  })
})
