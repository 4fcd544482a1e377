import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, it } from 'vitest'
import { run } from '../../src/cli/run.ts'
import { assertNear } from '../support/near.ts'
import type { Pt } from '../support/pt.ts'
import { darkAt, type Picture, renderPage, stretchPicture } from '../support/render-pdf.ts'

/** Pixels to a millimetre: about 300 to the inch. */
const perMm = 12

/** Middle of the dark between two places, weighed by darkness. Throws where there is nothing. */
const darkMiddle = (picture: Picture, from: Pt, to: Pt): Pt => {
  const steps = 4 * Math.ceil(Math.hypot(to.x - from.x, to.y - from.y))
  let [sum, share] = [0, 0]
  for (let i = 0; i <= steps; i++) {
    const t = i / steps
    const dark = darkAt(picture, from.x + (to.x - from.x) * t, from.y + (to.y - from.y) * t)
    sum += dark
    share += dark * t
  }
  if (sum < 2) throw new Error(`no line between ${JSON.stringify([from, to])}`)
  const t = share / sum
  return { x: from.x + (to.x - from.x) * t, y: from.y + (to.y - from.y) * t }
}

/** A straight through points by least squares: its middle and direction. */
const straight = (points: readonly Pt[]): { readonly at: Pt; readonly along: Pt } => {
  const at = {
    x: points.reduce((sum, p) => sum + p.x, 0) / points.length,
    y: points.reduce((sum, p) => sum + p.y, 0) / points.length,
  }
  let [xx, xy, yy] = [0, 0, 0]
  for (const p of points) {
    xx += (p.x - at.x) ** 2
    xy += (p.x - at.x) * (p.y - at.y)
    yy += (p.y - at.y) ** 2
  }
  const angle = Math.atan2(2 * xy, xx - yy) / 2
  return { at, along: { x: Math.cos(angle), y: Math.sin(angle) } }
}

const meet = (one: ReturnType<typeof straight>, other: ReturnType<typeof straight>): Pt => {
  const det = one.along.x * other.along.y - one.along.y * other.along.x
  const [dx, dy] = [other.at.x - one.at.x, other.at.y - one.at.y]
  const t = (dx * other.along.y - dy * other.along.x) / det
  return { x: one.at.x + t * one.along.x, y: one.at.y + t * one.along.y }
}

/** What a rule reads on the picture: sides and diagonals of the square, mm. `about`: roughly where a point of it lies, mm of the page. */
const measure = (picture: Picture, about: (u: number, v: number) => Pt) => {
  const pixel = ({ x, y }: Pt): Pt => ({ x: x * perMm - 0.5, y: picture.height - y * perMm - 0.5 })
  const reach = 3
  // clear of the diagonals
  const places = [22, 32, 42, 60, 88, 108, 118, 128]
  const upright = (u: number) =>
    straight(places.map((v) => darkMiddle(picture, pixel(about(u - reach, v)), pixel(about(u + reach, v)))))
  const level = (v: number) =>
    straight(places.map((u) => darkMiddle(picture, pixel(about(u, v - reach)), pixel(about(u, v + reach)))))
  const [left, right, bottom, top] = [upright(0), upright(150), level(0), level(150)]
  const [ll, lr, ul, ur] = [meet(left, bottom), meet(right, bottom), meet(left, top), meet(right, top)]
  const apart = (p: Pt, q: Pt): number => Math.hypot(p.x - q.x, p.y - q.y) / perMm
  return {
    across: [apart(ll, lr), apart(ul, ur)],
    down: [apart(ll, ul), apart(lr, ur)],
    diagonals: [apart(ll, ur), apart(lr, ul)],
  } as const
}

describe.each([
  { paper: 'a4', across: 0.985, down: 1.011, lean: 0.2 },
  { paper: 'letter', across: 1.02, down: 0.98, lean: -0.3 },
])('a printer that prints $across across, $down down, leaning $lean° on $paper', ({ paper, ...printer }) => {
  let folder: string
  let plain: ReturnType<typeof measure>
  let proved: ReturnType<typeof measure>
  let words = ''
  const degrees = Math.PI / 180
  const stretch = {
    across: printer.across,
    down: printer.down * Math.cos(printer.lean * degrees),
    lean: printer.down * Math.sin(printer.lean * degrees),
  }

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'traceply-square-'))
    const shell = { out: (text: string) => (words += text), err: (text: string) => (words += text) }
    const call = async (...args: readonly string[]): Promise<string> => {
      words = ''
      const exit = await run([...args], shell)
      if (exit !== 0) throw new Error(`${args.join(' ')}: ${words}`)
      return words
    }
    const print = async (name: string, ...args: readonly string[]) => {
      const file = join(folder, `${name}.pdf`)
      const plan = JSON.parse(await call('square', '--paper', paper, '--out', file, '--json', ...args))
      const [a, b, c, d, e, f] = plan.pages[0].toPattern as [number, number, number, number, number, number]
      const det = a * d - b * c
      const { width, height } = plan.paper
      // where the plan says that a point of the square is written, points to mm, and where that is pulled
      const about = (u: number, v: number): Pt => {
        const [x, y] = [(d * (u - e) - c * (v - f)) / det, (a * (v - f) - b * (u - e)) / det].map(
          (points) => (points * 25.4) / 72,
        ) as [number, number]
        return {
          x: width / 2 + stretch.across * (x - width / 2) + stretch.lean * (y - height / 2),
          y: height / 2 + stretch.down * (y - height / 2),
        }
      }
      const bytes = new Uint8Array(readFileSync(file))
      return measure(stretchPicture(await renderPage(bytes, 1, perMm), stretch), about)
    }
    plain = await print('plain')
    const mm = (value: number): string => `${value.toFixed(2)}mm`
    await call(
      ...['gauge', 'study', '--paper', paper, '--profiles', folder],
      ...['--across', mm(plain.across[0]), '--down', mm(plain.down[0])],
      ...['--diagonals', mm(plain.diagonals[0]), mm(plain.diagonals[1])],
    )
    proved = await print('proved', '--printer', 'study', '--profiles', folder)
  })
  afterAll(() => rmSync(folder, { recursive: true, force: true }))

  it('shows it on the square as it is plotted', () => {
    for (const side of plain.across) assertNear(side, 150 * printer.across, 0.05, 'across')
    for (const side of plain.down) assertNear(side, 150 * printer.down, 0.05, 'down')
    // law of cosines on the parallelogram
    const [a, d, sin] = [150 * printer.across, 150 * printer.down, Math.sin(printer.lean * degrees)]
    assertNear(plain.diagonals[0], Math.sqrt(a * a + d * d + 2 * a * d * sin), 0.06, 'rising')
    assertNear(plain.diagonals[1], Math.sqrt(a * a + d * d - 2 * a * d * sin), 0.06, 'falling')
  })

  it('prints a true square once it is gauged', () => {
    for (const side of [...proved.across, ...proved.down]) assertNear(side, 150, 0.15, 'side')
    assertNear(proved.diagonals[0], proved.diagonals[1], 0.2, 'diagonals')
    assertNear(proved.diagonals[0], 150 * Math.SQRT2, 0.2, 'diagonal')
  })
})
