import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { curveStations, type Offsets, solveOffsets } from '../../src/ramp/offsets.ts'
import { solveDesign } from '../../src/ramp/solve.ts'
import { withOffsets } from '../booklet/solved.ts'
import { assertNear } from '../support/near.ts'
import { templates, templateText } from '../support/templates.ts'
import { sampleBetween } from './curve/sampled-curve.ts'
import { inch } from './ramps.ts'

/** A frame of radius 72 in that runs out level at the floor, its front edge at the tangent: x and y are those of the table. */
const level72 = (height: number): string => `title: Boathouse bump
units: in
ramps:
  - width: 47 1/2
    height: { frame: ${height} }
    transition: { circle: { frame: 72 }, tangent: { frame: 0 } }
    toe: 0
    length: 90
    skin: [3/8 plywood]
    studs: { section: 1/2 x 1/2 }
    coping: none
`

/** reference.md §9, offsets of R = 72, inches */
const published = [
  [12, 1.007],
  [24, 4.118],
  [36, 9.646],
  [48, 18.334],
] as const

describe('stations', () => {
  it('are those of the published table', () => {
    const [offsets] = withOffsets(level72(36)).all as [Offsets]
    for (const [x, y] of published) {
      const station = offsets.stations.find((s) => Math.abs(s.x - x * inch) < 1e-9)
      assertNear(station?.y ?? Number.NaN, y * inch, 0.0005 * inch + 1e-9, `y at ${x}`)
      expect(station!.by).toBe('along')
    }
  })

  it('come by height where the curve is steep: x 60 in the published table stands at 32.201', () => {
    // a third of the height spacing below it the curve is already steeper than 45°
    const [offsets] = withOffsets(level72(36), (2 / 3) * 32.201 * inch).all as [Offsets]
    const station = offsets.stations.find((s) => Math.abs(s.y - 32.201 * inch) < 1e-6)
    expect(station!.by).toBe('up')
    // dx/dy at 56.4° is 0.66
    assertNear(station!.x, 60 * inch, 0.0005 * inch, 'x')
  })

  it('stand at every round distance on the gentle part and every round height on the steep one, and nowhere else', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1000, max: 2600, noNaN: true }),
        fc.double({ min: 0.2, max: 0.85, noNaN: true }),
        fc.integer({ min: 0, max: 60 }),
        fc.integer({ min: 20, max: 600 }),
        (radius, share, toe, every) => {
          const height = Math.round(radius * share)
          const text = `title: Slipway
units: mm
ramps:
  - width: 1216
    height: { frame: ${height} }
    transition: { circle: { frame: ${radius.toFixed(3)} }, tangent: { frame: 0 } }
    toe: ${toe}
    deck: 500
    skin: [9 plywood]
    studs: { section: 12 x 12 }
    coping: none
`
          const [{ stations }] = withOffsets(text, every).all as [Offsets]
          const R = Number(radius.toFixed(3))
          // centre R above the floor, x0 in front of the front edge; 45° is at R sin 45°, R (1 − cos 45°)
          const x0 = Math.sqrt(R * R - (R - toe) ** 2)
          const run = Math.sqrt(R * R - (R - height) ** 2) - x0
          const [bendX, bendY] = [R * Math.SQRT1_2 - x0, R - R * Math.SQRT1_2]
          const expected: [number, number][] = []
          for (let x = every; x < run - 1 && x <= bendX; x += every)
            expected.push([x, R - Math.sqrt(R * R - (x + x0) ** 2)])
          for (let y = every / 2; y < height - 1; y += every / 2)
            if (y > bendY && y > toe + 1) expected.push([Math.sqrt(R * R - (R - y) ** 2) - x0, y])
          // marks within a millimetre of the toe, the lip or each other may be left out
          const told = expected.filter(([x, y]) => Math.hypot(x, y - toe) > 1)
          for (const [x, y] of told) {
            const near = stations.some((s) => Math.hypot(s.x - x, s.y - y) < 1e-6)
            const doubled = expected.some(([a, b]) => !(a === x && b === y) && Math.hypot(a - x, b - y) < 0.6)
            if (!near && !doubled) throw new Error(`no station at ${x}, ${y}`)
          }
          expect(stations.length).toBeLessThanOrEqual(expected.length + 2)
          for (const s of stations) assertNear(Math.hypot(s.x + x0, R - s.y), R, 1e-6, 'on the circle')
        },
      ),
      { numRuns: 60 },
    )
  })

  it('need nothing but the queries of a curve: an ellipse known by points alone', () => {
    // half axes 1800 and 900, level at the floor
    const at = (t: number) => ({ x: 1800 * Math.sin(t), y: 900 - 900 * Math.cos(t) })
    const curve = sampleBetween(at, 0, 1.5, { count: 20000, before: 0, after: 0 })
    const stations = curveStations(curve, 150, 75, Number.POSITIVE_INFINITY)
    expect(stations.some((s) => s.by === 'up')).toBe(true)
    // 45° where dy/dx = tan t / 2 = 1: t = atan 2
    const bend = at(Math.atan(2))
    expect(stations.filter((s) => s.by === 'along').map((s) => Math.round(s.x))).toEqual(
      Array.from({ length: Math.floor(bend.x / 150) }, (_, i) => 150 * (i + 1)),
    )
    for (const s of stations) {
      if (s.by === 'along') assertNear(s.y, 900 - 900 * Math.sqrt(1 - (s.x / 1800) ** 2), 0.01, `y at ${s.x}`)
      else assertNear(s.x, 1800 * Math.sqrt(1 - (1 - s.y / 900) ** 2), 0.01, `x at ${s.y}`)
    }
  })

  it('refuse a distance that is no distance', () => {
    const { quarters, design } = withOffsets(templateText('quarter-mm'))
    for (const every of [0, -150, Number.NaN])
      expect(() => solveOffsets(quarters[0]!, every, design.stock.panel)).toThrow(RangeError)
  })
})

describe('checks of the curve', () => {
  it('chord and middle rise are those of the published table', () => {
    // reference.md §9: 24×72: 58.79, 6.27; 36×72: 72.00, 9.65 (height × radius, inches)
    for (const [height, chord, rise] of [
      [24, 58.79, 6.27],
      [36, 72, 9.65],
    ] as const) {
      const [offsets] = withOffsets(level72(height)).all as [Offsets]
      assertNear(offsets.chord, chord * inch, 0.005 * inch, 'chord')
      assertNear(offsets.rise, rise * inch, 0.005 * inch, 'rise')
    }
  })

  it('a straight line misses an arc by its sagitta, on the longest chord between marks', () => {
    for (const name of templates)
      for (const [i, offsets] of withOffsets(templateText(name)).all.entries()) {
        const R = withOffsets(templateText(name)).quarters[i]!.transition!.radius.frame
        const marks = [offsets.toe, ...offsets.stations, offsets.lip]
        const longest = Math.max(
          ...marks.slice(1).map((p, k) => Math.hypot(p.x - marks[k]!.x, p.y - marks[k]!.y)),
        )
        // r − √(r² − (c/2)²)
        assertNear(offsets.miss, R - Math.sqrt(R * R - (longest / 2) ** 2), 1e-6, name)
      }
  })

  it('both diagonals are those of the uncut panel', () => {
    // a panel of 90 × 36 in: √(90² + 36²) = 96.9330
    const [offsets] = withOffsets(level72(36)).all as [Offsets]
    for (const diagonal of offsets.panel.diagonals) assertNear(diagonal, 96.933 * inch, 0.001 * inch)
  })
})

describe('the notch', () => {
  it('of a square seat has three corners: wall, corner, mouth on the circle', () => {
    const { all, quarters } = withOffsets(templateText('quarter-mm'))
    const [{ notch, seat }] = all as [Offsets]
    const { transition, coping } = quarters[0]!
    const [top, corner, mouth] = notch
    expect(notch.map((p) => p.name)).toEqual(['notch, at the top', 'notch, corner', 'notch, on the curve'])
    expect(seat).toBeNull()
    // docs/geometry.md: down = h − (P.y − r), along = P.x + r − lip x
    assertNear(top!.y, transition!.heights.frame, 1e-9)
    assertNear(top!.x, transition!.lip.x + coping!.along, 1e-9)
    assertNear(corner!.x, top!.x, 1e-9)
    assertNear(corner!.y, transition!.heights.frame - coping!.down, 1e-9)
    assertNear(mouth!.y, corner!.y, 1e-9)
    const { x, y } = transition!.centre
    assertNear(Math.hypot(mouth!.x - x, mouth!.y - y), transition!.radius.frame, 1e-6)
  })

  it('of a round seat has its circle, and every corner of the arc lies on it', () => {
    const [{ notch, seat, stations }] = withOffsets(templateText('quarter-mm-round')).all as [Offsets]
    expect(seat!.radius).toBe(48.3 / 2)
    const { x, y } = seat!.centre
    for (const corner of notch.slice(1))
      assertNear(Math.hypot(corner.x - x, corner.y - y), 24.15, 1e-6, corner.name)
    expect(notch[0]!.y).toBeGreaterThan(notch[1]!.y)
    expect(stations.every((s) => s.cutAway === s.y > notch.at(-1)!.y)).toBe(true)
  })

  it('tells which marks it cuts away', () => {
    const [{ notch, stations }] = withOffsets(templateText('quarter-mm'), 40).all as [Offsets]
    const gone = stations.filter((s) => s.cutAway)
    expect(gone.length).toBeGreaterThan(0)
    for (const s of stations) expect(s.cutAway).toBe(s.y > notch.at(-1)!.y)
  })
})

describe('the swing arm', () => {
  it('stands at the centre of the frame, R sin of the toe angle in front', () => {
    const [{ swing }] = withOffsets(templateText('quarter-mm')).all as [Offsets]
    // surface 1700 level at the floor, skin 24: centre 1700 up; toe 40: x0 = √(1724² − 1660²)
    assertNear(swing!.arm, 1724, 1e-9)
    assertNear(swing!.pivot.above, 1700, 1e-9)
    assertNear(swing!.pivot.inFront, Math.sqrt(1724 ** 2 - 1660 ** 2), 1e-9)
    // a panel of 1220 × 2440 laid long; a side 625 high
    expect(swing!.sheet).toEqual({ length: 2440, height: 1220 })
    assertNear(swing!.floor.inFront, Math.sqrt(1724 ** 2 - 1660 ** 2), 1e-9)
    assertNear(swing!.floor.above, 480, 1e-9)
    assertNear(swing!.floorAbovePanel, 1075, 1e-9)
  })

  it('reaches every mark of the curve', () => {
    for (const name of templates)
      for (const { swing, stations, toe, lip } of withOffsets(templateText(name)).all)
        for (const p of [toe, ...stations, lip])
          assertNear(Math.hypot(p.x + swing!.pivot.inFront, p.y - swing!.pivot.above), swing!.arm, 1e-6, name)
  })

  it('needs no floor above a sheet that holds the screw', () => {
    const { quarters } = withOffsets(level72(36))
    // a sheet 80 in high holds a screw 72 in up; a side 90 in long lies along its long edge
    const { swing } = solveOffsets(quarters[0]!, 150, [80 * inch, 120 * inch])
    expect(swing!.floor).toEqual({ inFront: 0, above: 0 })
    assertNear(swing!.floorAbovePanel, 36 * inch, 1e-9)
  })
})

it('a ramp with a stop has no offsets: its design is never whole', () => {
  const { design } = withOffsets(templateText('quarter-mm'))
  const [ramp] = design.ramps
  const solved = solveDesign({
    ...design,
    ramps: [{ ...ramp!, height: { layer: 'frame', value: 2400 } }],
  })
  expect(solved.stopped).toBe(true)
})
