import type { Mark } from '../../src/drawing/drawing.ts'
import { type Affine, affineInvert, affineThen } from '../../src/geometry/affine.ts'
import type { PageSet } from '../../src/page/set/draft.ts'
import { layOutSquare } from '../../src/page/set/square-set.ts'
import { defaultMargins, paperOf } from '../../src/page/sheet/paper.ts'
import { type Correction, noCorrection } from '../../src/printer/correction.ts'
import { correctionOf } from '../../src/printer/distortion.ts'
import { gaugePrinter, gaugeUncertainty, type Readings } from '../../src/printer/gauge.ts'
import { fingerprint } from './lay-out.ts'
import { printed, printerOf, ruled, type SimulatedPrinter } from './printer.ts'
import type { Pt } from './pt.ts'
import { randomFrom } from './random.ts'

const apart = (a: Pt, b: Pt): number => Math.hypot(a.x - b.x, a.y - b.y)
const on = ([a, b, c, d, e, f]: Affine, { x, y }: Pt): Pt => ({ x: a * x + c * y + e, y: b * x + d * y + f })
const mmPerPoint = 25.4 / 72

/** The square page as it is written: mm of the page. */
const squareOf = (correction: Correction, name: 'a4' | 'letter'): PageSet => {
  const units = name === 'a4' ? 'mm' : 'in'
  const sheet = { paper: paperOf(name), margins: defaultMargins(name), correction }
  return layOutSquare(units, sheet, correction === noCorrection ? null : 'study', fingerprint)
}

/** Corners of the square where the plan says that they are written: lower left, lower right, upper left, upper right. */
const cornersOf = ({ plan }: PageSet): readonly Pt[] => {
  const toWritten = affineInvert(plan.pages[0]!.toPattern!)
  return [
    [0, 0],
    [150, 0],
    [0, 150],
    [150, 150],
  ].map(([x, y]) => {
    const p = on(toWritten, { x: x!, y: y! })
    return { x: p.x * mmPerPoint, y: p.y * mmPerPoint }
  })
}

/** The two longest straights of the page that are no diagonal: the rulers from end to end, across and down. */
const rulersOf = ({ pages }: PageSet): Readonly<Record<'across' | 'down', readonly [Pt, Pt]>> => {
  const found: (readonly [Pt, Pt])[] = []
  const look = (marks: readonly Mark[], map: Affine): void => {
    for (const mark of marks) {
      if (mark.kind === 'group') look(mark.marks, affineThen(mark.map, map))
      const piece = mark.kind === 'stroke' && mark.layer === 'datum' ? mark.path.pieces[0] : undefined
      if (mark.kind === 'stroke' && piece?.kind === 'line')
        found.push([on(map, mark.path.start), on(map, piece.to)])
    }
  }
  look(pages[0]!.draw(), [1, 0, 0, 1, 0, 0])
  const longest = (way: (a: Pt, b: Pt) => boolean): readonly [Pt, Pt] =>
    found
      .filter(([a, b]) => way(a, b))
      .reduce((best, line) => (apart(line[0], line[1]) > apart(best[0], best[1]) ? line : best))
  return {
    across: longest((a, b) => Math.abs(b.y - a.y) < 0.05 * Math.abs(b.x - a.x)),
    down: longest((a, b) => Math.abs(b.x - a.x) < 0.05 * Math.abs(b.y - a.y)),
  }
}

/** What a builder writes down from one print of the square page. */
const readPrint = (page: PageSet, printer: SimulatedPrinter, rule: (length: number) => number): Readings => {
  const lands = (p: Pt): Pt => printed(printer, page.plan.paper, p)
  const between = (a: Pt, b: Pt, nominal: number) => {
    const measured = rule(apart(lands(a), lands(b)))
    return { measured, nominal, text: `${measured}mm/${nominal}mm` }
  }
  const [ll, lr, ul, ur] = cornersOf(page) as [Pt, Pt, Pt, Pt]
  const { across, down } = rulersOf(page)
  const diagonal = 150 * Math.SQRT2
  return {
    across: [between(ll, lr, 150), between(...across, apart(...across))],
    down: [between(ll, ul, 150), between(...down, apart(...down))],
    diagonals: [[between(ll, ur, diagonal), between(ul, lr, diagonal)]],
  }
}

/** The sides of the square alone, as a hasty builder measures. */
export const sidesAlone = ({ across, down, diagonals }: Readings): Readings => ({
  across: across.slice(0, 1),
  down: down.slice(0, 1),
  diagonals,
})

/** Curves of sides that come out of a panel 2438 mm long, as they may be wanted: 380 to 900 mm high. */
const curveOf = (random: () => number): readonly Pt[] => {
  const [height, toe] = [380 + 520 * random(), 20 + 40 * random()]
  const lipAngle = ((38 + 30 * random()) * Math.PI) / 180
  const radius = Math.min(height / (1 - Math.cos(lipAngle)), 2600)
  const [a0, a1] = [Math.acos(1 - toe / radius), Math.acos(1 - height / radius)]
  const run = radius * (Math.sin(a1) - Math.sin(a0))
  // a deck of 300 mm is left behind the lip
  const shrink = Math.min(1, (2438 - 300) / run)
  return Array.from({ length: 41 }, (_, i) => {
    const angle = a0 + ((a1 - a0) * i) / 40
    return {
      x: radius * (Math.sin(angle) - Math.sin(a0)) * shrink,
      y: radius * (Math.cos(a0) - Math.cos(angle)) * shrink,
    }
  })
}

/**
 * How far the curve, written with a correction and printed, lies off its place at most. The pages of a set join to one sheet
 * whose points all moved by the same matrix; it is laid down with its toe in place and its rows along the snap lines.
 */
const worstOff = (
  curve: readonly Pt[],
  correction: Correction,
  printer: SimulatedPrinter,
  rows: Pt,
): number => {
  const [a, b, c, d] = correction
  const page = { width: 0, height: 0 }
  const origin = printed(printer, page, { x: 0, y: 0 })
  const through = ({ x, y }: Pt): Pt => {
    const p = printed(printer, page, { x: a * x + c * y, y: b * x + d * y })
    return { x: p.x - origin.x, y: p.y - origin.y }
  }
  const row = through(rows)
  const turn = Math.atan2(rows.y, rows.x) - Math.atan2(row.y, row.x)
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
  return Math.max(
    ...curve.map((p) => {
      const q = through(p)
      return Math.hypot(cos * q.x - sin * q.y - p.x, sin * q.x + cos * q.y - p.y)
    }),
  )
}

/** Printers that are tried. */
export const trialCases = 2000
const plain = { a4: squareOf(noCorrection, 'a4'), letter: squareOf(noCorrection, 'letter') }

/** Gauge each printer by its print, and see what is left. */
export const gaugeTrial = (
  measure: (readings: Readings) => Readings,
  rule: (random: () => number) => (l: number) => number,
) => {
  const left: number[] = []
  let before = 0
  const off = { across: [] as number[], down: [] as number[], skew: [] as number[] }
  let known: ReturnType<typeof gaugeUncertainty> | undefined
  let beyond = 0
  for (let seed = 1; seed <= trialCases; seed++) {
    const random = randomFrom(seed)
    const printer = printerOf(random)
    const paper = seed % 2 === 0 ? 'a4' : 'letter'
    const readings = measure(readPrint(plain[paper], printer, rule(random)))
    const found = gaugePrinter(readings)
    if ('faults' in found) throw new Error(`case ${seed}: ${found.faults.join('; ')}`)
    const { distortion } = found
    // the drawing is upright on one half of the sets and turned on the other
    const [curve, rows] =
      seed % 4 < 2
        ? [curveOf(random), { x: 1, y: 0 }]
        : [curveOf(random).map(({ x, y }) => ({ x: -y, y: x })), { x: 0, y: 1 }]
    left.push(worstOff(curve, correctionOf(distortion), printer, rows))
    if (worstOff(curve, noCorrection, printer, rows) > 2.5) before++
    off.across.push(distortion.across / printer.across - 1)
    off.down.push(distortion.down / printer.down - 1)
    off.skew.push(distortion.skew - printer.lean)
    known = gaugeUncertainty(readings, rule === rounding ? 0.125 : 0.25)
    const { worst } = known
    // a share of a length that is itself up to 2.5 % off: second order
    const slack = 1.03
    if (
      Math.abs(off.across.at(-1)!) > worst.across * slack ||
      Math.abs(off.down.at(-1)!) > worst.down * slack ||
      Math.abs(off.skew.at(-1)!) > worst.skew * slack
    )
      beyond++
  }
  return { left: left.sort((a, b) => a - b), before, off, known: known!, beyond }
}

/** A rule read to the nearest quarter of a millimetre: off by up to 0.125. */
export const rounding = () => ruled
/** A reading that is off by up to 0.25 mm, evenly spread. */
export const loose = (random: () => number) => (length: number) => length + (2 * random() - 1) * 0.25
