import Flatten from '@flatten-js/core'
import fc from 'fast-check'
import type { QuarterDesign, RampDesign, Sheet, Stock, Units } from '../../src/design/design.ts'
import { hasStop } from '../../src/ramp/check/check.ts'
import type { Timber } from '../../src/ramp/frame/timber.ts'
import type { Quarter } from '../../src/ramp/ramp.ts'
import { circleOf, kept, piped, plain, plywood, solve, studded } from './ramps.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const hardboard = (thickness: number): Sheet => ({ thickness, material: 'hardboard' })

export interface Job {
  readonly design: QuarterDesign
  readonly panel: Stock['panel']
  readonly units: Units
}

/** Ramps as they are built, of up to three sheets up the curve and two across. */
const drawn: fc.Arbitrary<Job> = fc
  .record({
    width: real(700, 4000),
    count: fc.integer({ min: 2, max: 4 }),
    height: real(300, 1300),
    ratio: real(1.35, 3.2),
    toe: real(15, 70),
    every: real(110, 320),
    foot: fc.option(fc.record({ every: real(90, 200), to: real(200, 900) })),
    section: fc.constantFrom([38, 89], [45, 95], [38, 140], [45, 70], [35, 60]),
    skin: fc.array(fc.constantFrom(6, 9, 9.5, 12).map(plywood), { minLength: 1, maxLength: 3 }),
    top: fc.option(fc.constantFrom(3, 6, 6.4).map(hardboard)),
    fasten: fc.constantFrom('studs' as const, 'between' as const),
    pipe: fc.option(fc.constantFrom(42.4, 48.3, 60.3)),
    panel: fc.constantFrom([1220, 2440], [1250, 2500], [600, 1200], [915, 2135]),
    units: fc.constantFrom('mm' as const, 'in' as const),
  })
  .map((r) => ({
    design: {
      ...plain,
      width: r.width,
      sides: { thickness: 18, count: r.count },
      height: { layer: 'frame' as const, value: r.height },
      transition: circleOf('frame', r.height * r.ratio),
      toe: r.toe,
      studs: studded({ every: r.every, foot: r.foot, section: r.section as [number, number] }),
      skin: r.top ? [...r.skin, r.top] : r.skin,
      fasten: r.fasten,
      coping: r.pipe === null ? null : piped({ outside: r.pipe }),
    },
    panel: r.panel as [number, number],
    units: r.units,
  }))

/** Those of them that can be sawn; by `sawnSeed` the same ones everywhere. */
export const job = kept(drawn, ({ design, panel, units }) => !hasStop(solve(design, units, panel).drafts))

/** Corners by turning a box, as a polygon of the other library. */
export const polygon = ({ x, y, angle, width, depth }: Timber): Flatten.Polygon => {
  const corner = (u: number, v: number): Flatten.Point =>
    new Flatten.Point(u, v).rotate(angle).translate(new Flatten.Vector(x, y))
  const h = width / 2
  return new Flatten.Polygon([corner(-h, 0), corner(-h, -depth), corner(h, -depth), corner(h, 0)])
}

/** A place on the flat sheet, bent: the layer's middle keeps its length; `into` mm under the frame's curve. */
export const bent = ({ transition, skin }: Quarter, i: number, at: number, into: number): Flatten.Point => {
  const { centre, radius, toeAngle } = transition!
  const { below, sheet } = skin[i]!
  const angle = toeAngle + at / (radius.frame - below - sheet.thickness / 2)
  const r = radius.frame + into
  return new Flatten.Point(centre.x + r * Math.sin(angle), centre.y - r * Math.cos(angle))
}

/** Where along the frame's curve. */
export const alongFrame = ({ transition, skin }: Quarter, i: number, at: number): number =>
  (at * transition!.radius.frame) / (transition!.radius.frame - skin[i]!.below - skin[i]!.sheet.thickness / 2)

/** The stretches of timber between sides and ribs, from the left outer face. */
export const bays = ({
  width,
  sides: { thickness, count },
}: Pick<RampDesign, 'width' | 'sides'>): readonly (readonly [number, number])[] => {
  const pitch = (width - thickness) / (count - 1)
  return Array.from({ length: count - 1 }, (_, k) => [k * pitch + thickness, (k + 1) * pitch])
}
