import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { Pt } from '../support/pt.ts'
import type { PdfPageRead } from '../support/read-pdf.ts'
import { type Plotted, plotJob } from './plot.ts'
import { tapeUp } from './tape-up.ts'

const text = readFileSync(new URL('../../templates/quarter-mm.yaml', import.meta.url), 'utf8')
const found = await plotJob({ text, paper: 'a3', cover: 'whole' })
if ('stops' in found) throw new Error('the template does not solve')
const good: Plotted = found

const point = 72 / 25.4
type Page = PdfPageRead
/** Pages of tiles in the file, from 0. */
const tilePages: readonly number[] = good.plan.pages.flatMap((page: { kind: string }, i: number) =>
  page.kind === 'tile' ? [i] : [],
)
const third = tilePages[2]!

const withPage = (change: (page: Page) => Page, at = third): Plotted => ({
  ...good,
  read: { ...good.read, pages: good.read.pages.map((page, i) => (i === at ? change(page) : page)) },
})

// biome-ignore lint/suspicious/noExplicitAny: as a script would find it
const withPlan = (change: (plan: any) => void): Plotted => {
  const plan = structuredClone(good.plan)
  change(plan)
  return { ...good, plan }
}

const withPlace = (change: (toPattern: number[], window: number[]) => void): Plotted =>
  withPlan((plan) => {
    const page = plan.pages[third]
    change(page.toPattern, page.window)
    page.places[0] = { pattern: page.pattern, toPattern: page.toPattern, window: page.window }
  })

const moved = <T extends { readonly layer: string; readonly path: Page['strokes'][number]['path'] }>(
  mark: T,
  dx: number,
): T => ({
  ...mark,
  path: mark.path.map((segment) =>
    segment.kind === 'close'
      ? segment
      : segment.kind === 'cubic'
        ? {
            ...segment,
            c1: { x: segment.c1.x + dx, y: segment.c1.y },
            c2: { x: segment.c2.x + dx, y: segment.c2.y },
            to: { x: segment.to.x + dx, y: segment.to.y },
          }
        : { ...segment, to: { x: segment.to.x + dx, y: segment.to.y } },
  ),
})

const strokes = (
  page: Page,
  change: (stroke: Page['strokes'][number], i: number) => Page['strokes'],
): Page => ({
  ...page,
  strokes: page.strokes.flatMap(change),
})

const texts = (page: Page, change: (text: Page['texts'][number]) => Page['texts'][number]): Page => ({
  ...page,
  texts: page.texts.map(change),
})

const pageWith = (word: string): number =>
  tilePages.find((i) => good.read.pages[i]!.texts.some((t) => t.text === word))!

/** The longest dashed straight stroke of the joints on a page. */
const jointLine = (page: Page): Page['strokes'][number] =>
  page.strokes
    .filter(({ layer, dash }) => layer === 'joint' && dash.length > 0)
    .reduce((a, b) => (lengthOf(b) > lengthOf(a) ? b : a))

const ends = ({ path }: Page['strokes'][number]): readonly Pt[] =>
  path.flatMap((segment) => ('to' in segment ? [segment.to] : []))

const lengthOf = (stroke: Page['strokes'][number]): number => {
  const [a, b] = ends(stroke) as [Pt, Pt]
  return Math.hypot(b.x - a.x, b.y - a.y)
}

/** The page with its longest joint line 3 mm short, and a ring of 4 mm so far beyond where that stops, mm; no ring where null. */
const shortJoint = (page: Page, ring: number | null): Page => {
  const line = jointLine(page)
  const [a, b] = ends(line) as [Pt, Pt]
  const on = (mm: number): Pt => {
    const share = (mm * point) / lengthOf(line)
    return { x: b.x + share * (b.x - a.x), y: b.y + share * (b.y - a.y) }
  }
  const short = { ...line, path: [line.path[0]!, { kind: 'line', to: on(-3) }] as typeof line.path }
  const strokes = page.strokes.map((s) => (s === line ? short : s))
  return { ...page, strokes: ring === null ? strokes : [...strokes, ringAt(on(ring - 3), line)] }
}

/** A ring of four quarters; 0.5523 of the radius: the nearest cubic (4/3 · (√2 - 1)). */
const ringAt = (at: Pt, like: Page['strokes'][number]): Page['strokes'][number] => {
  const [r, k] = [2 * point, 2 * point * (4 / 3) * (Math.SQRT2 - 1)]
  const p = (x: number, y: number): Pt => ({ x: at.x + x, y: at.y + y })
  const path: typeof like.path = [
    { kind: 'move', to: p(r, 0) },
    { kind: 'cubic', c1: p(r, k), c2: p(k, r), to: p(0, r) },
    { kind: 'cubic', c1: p(-k, r), c2: p(-r, k), to: p(-r, 0) },
    { kind: 'cubic', c1: p(-r, -k), c2: p(-k, -r), to: p(0, -r) },
    { kind: 'cubic', c1: p(k, -r), c2: p(r, -k), to: p(r, 0) },
    { kind: 'close' },
  ]
  return { ...like, layer: 'mark', dash: [], path }
}

describe('the tape-up sees', () => {
  it('nothing wrong in the set as it is', () => expect(tapeUp(good).faults).toEqual([]))

  it('nothing wrong in a joint line that stops at the ring of a screw', () =>
    expect(tapeUp(withPage((p) => shortJoint(p, 2.6))).faults).toEqual([]))

  it.each<readonly [string, () => Plotted, RegExp]>([
    [
      'a cut line 0.02 mm off',
      () => withPage((p) => strokes(p, (s) => [s.layer === 'cut' ? moved(s, 0.02 * point) : s])),
      /beside the outline/,
    ],
    [
      'a place 0.02 mm off',
      () =>
        withPlace((m) => {
          m[5]! += 0.02
        }),
      /beside the outline/,
    ],
    [
      'a page printed 0.05 % large',
      () =>
        withPlace((m) => {
          for (let i = 0; i < 4; i++) m[i]! *= 1.0005
        }),
      /not at full size/,
    ],
    [
      'a page that lost its cut line',
      () => withPage((p) => strokes(p, (s) => (s.layer === 'cut' ? [] : [s]))),
      /does not draw/,
    ],
    [
      'a cut line that lost its last stretch',
      () =>
        withPage(
          (p) => strokes(p, (s) => [s.layer === 'cut' ? { ...s, path: s.path.slice(0, -1) } : s]),
          tilePages[0]!,
        ),
      /does not draw|trimmed pieces/,
    ],
    [
      'a stroke in `cut` that is no edge',
      () =>
        withPage(
          (p) => strokes(p, (s) => [s.layer === 'mark' ? { ...s, layer: 'cut' } : s]),
          tilePages.find((i) => good.read.pages[i]!.strokes.some((s) => s.layer === 'mark')),
        ),
      /beside the outline/,
    ],
    [
      'an edge that is not in `cut`',
      () => withPage((p) => strokes(p, (s) => [s.layer === 'cut' ? { ...s, layer: 'mark' } : s])),
      /does not draw/,
    ],
    [
      'crosses that do not meet',
      () => withPage((p) => strokes(p, (s) => [s.layer === 'joint' ? moved(s, 0.02 * point) : s])),
      /crosses do not meet|lies beside the joint line/,
    ],
    ['a joint line that stops short', () => withPage((p) => shortJoint(p, null)), /joint lines differ/],
    [
      'a joint line that stops short of a ring',
      () => withPage((p) => shortJoint(p, 2.9)),
      /joint lines differ/,
    ],
    [
      'a joint without crosses',
      () =>
        withPage((p) =>
          strokes(p, (s) => (s.layer === 'joint' && s.path.length === 2 && s.width < 0.55 ? [] : [s])),
        ),
      /crosses/,
    ],
    [
      'a vernier that is read wrong',
      () =>
        withPage((p) =>
          strokes(p, (s) => {
            const [from, to] = s.path
            const tick =
              from?.kind === 'move' &&
              to?.kind === 'line' &&
              Math.abs(Math.hypot(to.to.x - from.to.x, to.to.y - from.to.y) - 5 * point) < 0.01
            return [s.layer === 'joint' && tick ? moved(s, 0.05 * point) : s]
          }),
        ),
      /zero ticks do not run through|vernier/,
    ],
    [
      'a tile that is missing',
      () =>
        withPlan((plan) => {
          plan.pages[third].kind = 'map'
        }),
      /no page holds|do not hang together|trimmed pieces/,
    ],
    [
      'a tile that touches no other',
      () =>
        withPlace((m) => {
          m[4]! += 5000
        }),
      /do not hang together/,
    ],
    [
      'two tiles of one name',
      () =>
        withPlan((plan) => {
          plan.pages[third].tile = plan.pages[third - 1].tile
        }),
      /second tile/,
    ],
    [
      'a window that leaves the margins',
      () =>
        withPlace((_, w) => {
          w[2]! += 1
        }),
      /leaves the margins/,
    ],
    [
      'a first place that is not repeated',
      () =>
        withPlan((plan) => {
          plan.pages[third].places[0].pattern = 'other'
        }),
      /not repeated/,
    ],
    [
      'KEEP on the waste side',
      () =>
        withPage(
          (p) => texts(p, (t) => (t.text === 'WASTE' ? { ...t, text: 'KEEP' } : t)),
          pageWith('WASTE'),
        ),
      /KEEP stands on the wrong side/,
    ],
    [
      'WASTE left out',
      () =>
        withPage((p) => texts(p, (t) => (t.text === 'WASTE' ? { ...t, text: '' } : t)), pageWith('WASTE')),
      /WASTE is missing/,
    ],
    [
      'a wrong page number',
      () => withPage((p) => texts(p, (t) => (t.text === '3' ? { ...t, text: '8' } : t))),
      /biggest word/,
    ],
    [
      'a word in the margin',
      () => withPage((p) => texts(p, (t) => ({ ...t, x: t.x - 400 }))),
      /into the margin/,
    ],
    [
      'a line in the margin',
      () => withPage((p) => strokes(p, (s) => [s.layer === 'joint' ? moved(s, 600) : s])),
      /into the margin/,
    ],
    [
      'a page laid on its side',
      () => withPage((p) => ({ ...p, width: p.height, height: p.width })),
      /MediaBox/,
    ],
    ['a page turned by its viewer', () => withPage((p) => ({ ...p, rotate: 90 })), /turned or scaled/],
    ['another label', () => withPage((p) => ({ ...p, label: '9 Z9' })), /label/],
    [
      'another set code',
      () =>
        withPlan((plan) => {
          plan.set = 'AAAA-BBBB-CCCC'
        }),
      /set code/,
    ],
    [
      'another design in the plan',
      () =>
        withPlan((plan) => {
          plan.design = plan.design.replace('surface: 1700', 'surface: 1700.5')
        }),
      /beside the outline/,
    ],
  ])('%s', (_, damage, expected) => {
    expect(tapeUp(damage()).faults.join('\n')).toMatch(expected)
  })
})
