import type { PaperName } from '../../src/design/design.ts'
import type { PageKind } from '../../src/drawing/set-plan.ts'
import type { Pt } from '../support/pt.ts'
import type { PdfBox, PdfSegment, PdfText } from '../support/read-page.ts'
import type { Plotted } from './plot.ts'
import { runsOf } from './tape.ts'

/** mm, from the standards: ISO 216, and the inch sizes by their inches. */
const sizes: Readonly<Record<PaperName, readonly [number, number]>> = {
  letter: [215.9, 279.4],
  legal: [215.9, 355.6],
  tabloid: [279.4, 431.8],
  a4: [210, 297],
  a3: [297, 420],
  a2: [420, 594],
  a1: [594, 841],
  a0: [841, 1189],
}

/** Corners of the box of a text, points: capitals are 0.7 of the em high, letters such as g reach 0.21 below the line. */
export const textBox = ({ x, y, angle, size, width }: PdfText, below = 0.21): readonly Pt[] => {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
  return [
    [0, -below * size],
    [width, -below * size],
    [width, 0.7 * size],
    [0, 0.7 * size],
  ].map(([along, up]) => ({ x: x + along! * cos - up! * sin, y: y + along! * sin + up! * cos }))
}

/** Kinds of pages with lines to saw. */
const sawn: Readonly<Record<PageKind, boolean>> = {
  map: false,
  square: false,
  trial: true,
  tile: true,
  strip: false,
  parts: true,
}

const plainMap = [1, 0, 0, 1, 0, 0] as const

/** Nothing of a path lies farther out than these: of straight lines their ends. */
const extremes = (path: readonly PdfSegment[]): readonly Pt[] =>
  path.some(({ kind }) => kind === 'cubic')
    ? runsOf(path, plainMap).flat()
    : path.flatMap((segment) => (segment.kind === 'close' || segment.kind === 'cubic' ? [] : [segment.to]))

/** What pages share stands in a box, which may cut nothing off: ends of lines and the pen around them. */
const isWithin = ({ x0, y0, x1, y1 }: PdfBox, { x, y }: Pt, half: number): boolean =>
  x - half >= x0 && x + half <= x1 && y - half >= y0 && y + half <= y1

/** Every page of the file: upright, of the paper asked for, nothing outside of the margins, its plan beside it. */
export const checkPages = ({ job, read, plan, margins }: Plotted, fault: (what: string) => void): void => {
  const point = 72 / 25.4
  const [width, height] = sizes[job.paper]!.map((mm) => mm * point) as [number, number]
  const free = {
    x0: margins.left * point,
    y0: margins.bottom * point,
    x1: width - margins.right * point,
    y1: height - margins.top * point,
  }
  const beyond = (p: Pt): number =>
    Math.max(free.x0 - p.x, p.x - free.x1, free.y0 - p.y, p.y - free.y1) / point
  if (plan.pages.length !== read.pages.length)
    fault(`${plan.pages.length} pages planned, ${read.pages.length} written`)
  const names = new Set<string>()
  read.pages.forEach((page, i) => {
    const planned = plan.pages[i] ?? {}
    const say = (what: string): void => fault(`page ${i + 1} (${planned.kind}): ${what}`)
    if (planned.page !== i + 1) say(`the plan numbers it ${planned.page}`)
    if (!(Math.abs(page.width - width) < 0.01 && Math.abs(page.height - height) < 0.01))
      say(`MediaBox ${page.width} × ${page.height} for ${job.paper}`)
    if (page.rotate !== 0 || page.userUnit !== 1) say('it is turned or scaled')

    const shapes = [...page.strokes, ...page.fills.map((one) => ({ ...one, width: 0 }))]
    for (const { layer, path, clip, width: pen } of shapes) {
      if (clip && !extremes(path).every((p) => isWithin(clip, p, pen / 2)))
        say(`a line or fill in ${layer} is clipped`)
      const worst = extremes(path).reduce((most, p) => Math.max(most, beyond(p)), Number.NEGATIVE_INFINITY)
      if (!(worst <= 0.01)) say(`a line or fill in ${layer} reaches ${worst.toFixed(3)} mm into the margin`)
    }
    for (const text of page.texts) {
      if (text.clip) say(`"${text.text}" may be clipped`)
      const worst = Math.max(...textBox(text).map(beyond))
      if (!(worst <= 0.3)) say(`"${text.text}" reaches ${worst.toFixed(2)} mm into the margin`)
    }
    if (!sawn[planned.kind as PageKind] && page.strokes.some(({ layer }) => layer === 'cut'))
      say(`a ${planned.kind} page has a line to saw`)

    for (const { window } of planned.places ?? []) {
      const [x0, y0, x1, y1] = window
      if (!(Math.max(beyond({ x: x0, y: y0 }), beyond({ x: x1, y: y1 })) <= 1e-6 && x1 > x0 && y1 > y0))
        say(`its window ${window} leaves the margins`)
    }
    const { pattern, toPattern, window } = planned
    const [first] = planned.places ?? []
    if (JSON.stringify({ pattern, toPattern, window }) !== JSON.stringify(pick(first)))
      say('the first place is not repeated')
    if (planned.tile !== undefined) {
      if (names.has(planned.tile)) say(`a second tile ${planned.tile}`)
      names.add(planned.tile)
    }
  })
}

const pick = (place: { pattern?: unknown; toPattern?: unknown; window?: unknown } | undefined) => ({
  pattern: place?.pattern,
  toPattern: place?.toPattern,
  window: place?.window,
})
