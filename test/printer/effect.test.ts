import { describe, expect, it } from 'vitest'
import { correctionOf, type Distortion, distortionMatrix } from '../../src/printer/distortion.ts'
import { curveEffect, leftAtLip } from '../../src/printer/effect.ts'
import { circleCurve } from '../../src/ramp/curve/circle.ts'
import { assertNear } from '../support/near.ts'
import { printed, printerOf } from '../support/printer.ts'
import { normal, randomFrom, rms } from '../support/random.ts'

const degree = Math.PI / 180

/** A low quarter by docs/geometry.md: surface 1700, skin 24, toe 40, frame 625 mm high. */
const [R, c, toeAngle, lipAngle] = (() => {
  const R = 1724
  const c = 1700
  return [R, c, Math.acos((c - 40) / R), Math.acos((c - 625) / R)] as const
})()
const curve = circleCurve({ x: -R * Math.sin(toeAngle), y: c }, R, toeAngle, lipAngle)
const run = R * (Math.sin(lipAngle) - Math.sin(toeAngle))
const rise = 625 - 40

/** Rows along the floor, on upright pages. */
const level = { rows: 'across', angle: 0 } as const

describe('what a printer does to a curve when nothing is corrected', () => {
  it.each([
    [0.985, 1.011],
    [1.025, 0.975],
    [1, 1.004],
    [0.99, 0.99],
  ])('makes an ellipse of a circle: %f across, %f down', (across, down) => {
    const effect = curveEffect(curve, { across, down, skew: 0 }, level)
    // ellipse with half axes A = across·R, B = down·R, at the parameter t of the circle's own slope
    const [A, B] = [across * R, down * R]
    const radius = (t: number): number => ((A * Math.cos(t)) ** 2 + (B * Math.sin(t)) ** 2) ** 1.5 / (A * B)
    assertNear(effect.toeRadius, radius(toeAngle), 1e-6, 'radius at the toe')
    assertNear(effect.lipRadius, radius(lipAngle), 1e-6, 'radius at the lip')
    assertNear(effect.lipBack, (across - 1) * run, 1e-9, 'lip back')
    assertNear(effect.lipUp, (down - 1) * rise, 1e-9, 'lip up')
  })

  it('agrees with 200 simulated printers, the turn of the sheet taken out', () => {
    for (let seed = 1; seed <= 200; seed++) {
      const printer = { ...printerOf(randomFrom(seed)), turn: 0 }
      const { across, down, lean } = printer
      const effect = curveEffect(curve, { across, down, skew: lean }, level)
      const page = { width: 0, height: 0 }
      const at = (place: number) => printed(printer, page, curve.point(place))
      const [toe, lip] = [at(toeAngle), at(lipAngle)]
      assertNear(effect.lipBack, lip.x - toe.x - run, 1e-9, 'lip back')
      assertNear(effect.lipUp, lip.y - toe.y - rise, 1e-9, 'lip up')
      // the circle through three neighbouring points of the print: abc/4K
      const through = (place: number): number => {
        const [p, q, r] = [place - 2e-3, place, place + 2e-3].map(at) as [typeof toe, typeof toe, typeof toe]
        const area = Math.abs((q.x - p.x) * (r.y - p.y) - (r.x - p.x) * (q.y - p.y)) / 2
        const side = (m: typeof toe, n: typeof toe): number => Math.hypot(m.x - n.x, m.y - n.y)
        return (side(p, q) * side(q, r) * side(r, p)) / (4 * area)
      }
      assertNear(effect.toeRadius, through(toeAngle), 0.05, 'radius at the toe')
      assertNear(effect.lipRadius, through(lipAngle), 0.05, 'radius at the lip')
    }
  })
})

describe('what is left at the lip of a corrected printer', () => {
  const likely = { across: 0.0004, down: 0.0006, skew: 0.0005 }
  const worst = { across: 0.0008, down: 0.001, skew: 0.0011 }

  it('spreads as 20,000 printers do that are known so well', () => {
    const random = randomFrom(11)
    const off = Array.from({ length: 20000 }, () => {
      const { lipUp, lipBack } = curveEffect(
        curve,
        {
          across: 1 + likely.across * normal(random),
          down: 1 + likely.down * normal(random),
          skew: likely.skew * normal(random),
        },
        level,
      )
      return Math.hypot(lipUp, lipBack)
    })
    assertNear(rms(off) / leftAtLip(curve, { likely, worst }, level).likely, 1, 0.02)
  })

  it('is at worst what no corner of the box of errors exceeds, and one reaches', () => {
    const signs = [-1, 1]
    const corners = signs.flatMap((s) =>
      signs.flatMap((t) =>
        signs.map((u) => {
          const { lipUp, lipBack } = curveEffect(
            curve,
            {
              across: 1 + s * worst.across,
              down: 1 + t * worst.down,
              skew: u * worst.skew,
            },
            level,
          )
          return Math.hypot(lipUp, lipBack)
        }),
      ),
    )
    assertNear(Math.max(...corners), leftAtLip(curve, { likely, worst }, level).worst, 0.002)
  })
})

it('a correction undoes its distortion, and written twice through a true printer changes nothing', () => {
  const random = randomFrom(5)
  const either = (most: number): number => (2 * random() - 1) * most
  for (let i = 0; i < 500; i++) {
    const distortion: Distortion = {
      across: 1 + either(0.03),
      down: 1 + either(0.03),
      skew: either(0.6 * degree),
    }
    const [a, b, cc, d] = correctionOf(distortion)
    const [A, B, C, D] = distortionMatrix(distortion)
    // first the correction, then the printer
    const product = [A * a + C * b, B * a + D * b, A * cc + C * d, B * cc + D * d]
    product.forEach((v, k) => {
      assertNear(v, [1, 0, 0, 1][k]!, 1e-12)
    })
  }
  expect(correctionOf({ across: 1, down: 1, skew: 0 })).toEqual([1, 0, -0, 1])
})
