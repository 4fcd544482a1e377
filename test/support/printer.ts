import type { Pt } from './pt.ts'

/** A printer as it might stand in a study: what it does to every page, whatever is on it. */
export interface SimulatedPrinter {
  /** printed length over written length, across the page and down its printed edge */
  readonly across: number
  readonly down: number
  /** the printed upright leans to the right by this, radians */
  readonly lean: number
  /** each sheet is drawn in askew and off its place */
  readonly turn: number
  readonly shift: Pt
}

export const printerOf = (random: () => number): SimulatedPrinter => {
  const either = (most: number): number => (2 * random() - 1) * most
  return {
    across: 1 + either(0.025),
    down: 1 + either(0.025),
    lean: (either(0.4) * Math.PI) / 180,
    turn: (either(0.5) * Math.PI) / 180,
    shift: { x: either(2), y: either(2) },
  }
}

/** Where ink lands that is written at `p` of a page; mm, y up. Stretched and leant about the page's middle, then turned, then moved. */
export const printed = (
  { across, down, lean, turn, shift }: SimulatedPrinter,
  page: { readonly width: number; readonly height: number },
  p: Pt,
): Pt => {
  const [x, y] = [p.x - page.width / 2, p.y - page.height / 2]
  const [u, v] = [across * x + down * Math.sin(lean) * y, down * Math.cos(lean) * y]
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
  return {
    x: page.width / 2 + cos * u - sin * v + shift.x,
    y: page.height / 2 + sin * u + cos * v + shift.y,
  }
}

/** A rule whose marks are a quarter of a millimetre apart, read to the nearest. */
export const ruled = (length: number): number => Math.round(length * 4) / 4
