import Flatten from '@flatten-js/core'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Mark } from '../../src/drawing/drawing.ts'
import { type TextMark, textCorners } from '../../src/drawing/text-box.ts'
import { affineIdentity } from '../../src/geometry/affine.ts'
import { pathBounds } from '../../src/geometry/bounds.ts'
import type { Path } from '../../src/geometry/path.ts'
import type { Point } from '../../src/geometry/point.ts'
import { pathSample } from '../../src/geometry/sample.ts'
import { lipTrial } from '../../src/pattern/lip/lip-trial.ts'
import { pipeStrip } from '../../src/pattern/pipe-strip.ts'
import { job } from '../ramp/framed.ts'
import { inch, piped, plain, sawnSeed, sawnWithPipe, solve, wholeOf } from '../ramp/ramps.ts'
import { atLeast, atMost, hold } from '../support/hold.ts'
import { assertNear } from '../support/near.ts'

describe('the strip that is wrapped round the pipe', () => {
  test('a tick for each half millimetre, at π times the diameter with the paper', () => {
    const { ticks } = pipeStrip(60.3, 1000, 'mm')!
    // 60.3 lies next to 60.5; 6 ticks on either side of it
    expect(ticks.length).toBe(13)
    ticks.forEach(({ at, label }, i) => {
      const diameter = 57.5 + i / 2
      assertNear(at, Math.PI * (diameter + 0.1), 1e-9, `${diameter}`)
      expect(label).toBe(Number.isInteger(diameter) ? `${diameter}` : null)
    })
  })

  test('a tick for each 1/32 in, sixteenths labelled', () => {
    const { ticks } = pipeStrip(2.375 * inch, 1000, 'in')!
    ticks.forEach(({ at }, i) => {
      assertNear(at, Math.PI * ((2.375 + (i - 4) / 32) * inch + 0.1), 1e-9, `tick ${i}`)
    })
    expect(ticks.map((t) => t.label)).toEqual([
      '2 1/4',
      null,
      '2 5/16',
      null,
      '2 3/8',
      null,
      '2 7/16',
      null,
      '2 1/2',
    ])
  })

  test('is left out where the page is too short for it, and ends past its last tick', () => {
    const strip = pipeStrip(60.3, 1000, 'mm')!
    expect(strip.length).toBeGreaterThan(strip.ticks.at(-1)!.at)
    expect(pipeStrip(60.3, strip.length, 'mm')).toEqual(strip)
    expect(pipeStrip(60.3, strip.length - 0.01, 'mm')).toBeNull()
  })
})

describe('the piece of scrap for the lip trial', () => {
  const ramp = wholeOf({ ...plain, coping: piped() })

  test('carries the notch, the pipe and the lip, and is called by ramp and part', () => {
    const trial = lipTrial(ramp, 170, 200, 'mm')!
    const { piece } = trial
    const { centre } = ramp.coping!
    expect(trial.name).toBe('ramp/lip')
    expect(trial.outline).toBe(ramp.side.outline)
    expect(piece.x0).toBeLessThan(ramp.transition.lip.x)
    expect(piece.x1).toBeGreaterThan(centre.x + 30.15)
    expect(piece.y0).toBeLessThan(centre.y - 30.15)
    expect(piece.y1).toBeGreaterThan(Math.max(ramp.transition.heights.deck, centre.y + 30.15))
    expect(trial.steps[0]).toBe(
      'The pipe should stand 8 mm above the deck board and 6 mm out of the ridden face: that is its reveal.',
    )
  })

  test('of a round notch says its radius, half of the pipe', () => {
    for (const outside of [48.3, 60.3]) {
      const trial = lipTrial(
        wholeOf({ ...plain, coping: piped({ outside, seat: 'round' }) }),
        170,
        200,
        'mm',
      )!
      expect(trial.steps[0]).toContain(`The notch is round, radius ${(outside / 2).toFixed(1)} mm.`)
    }
  })

  test('there is none without a pipe, and a ramp that cannot be sawn is never whole', () => {
    expect(lipTrial(wholeOf(plain), 170, 200, 'mm')).toBeNull()
    expect(solve({ ...plain, coping: piped(), chamfer: 3000 }).whole).toBeNull()
  })

  test('of a pipe too thick for the page says what goes on past it, and by how much', () => {
    const seen = { none: 0, front: 0, pipe: 0 }
    for (const outside of [48.3, 60.3, 88.9, 114.3, 139.7, 168.3])
      for (const room of [170, 195, 120])
        for (const out of [6, 30]) {
          const { whole } = solve({
            ...plain,
            height: { layer: 'frame', value: 900 },
            coping: piped({ outside, by: { kind: 'reveals', up: 8, out } }),
          })
          const trial = whole && lipTrial(whole, room, 260, 'mm')
          if (!trial) continue
          const { piece } = trial
          const { centre } = whole.coping!
          const floor = centre.y - outside / 2
          // the notch alone: the floor and what the cut has between its front end and its wall
          const notch = pathSample(whole.side.outline, 0.05).filter(
            (p) => Math.abs(p.y - floor) < 1e-6 && p.x < centre.x + outside / 2 - 1e-6,
          )
          const front = piece.x0 - Math.min(...notch.map(({ x }) => x))
          const said = trial.steps.find((step) => step.includes('too thick for one page')) ?? ''
          const words = [
            ...(front > 1e-6 ? [`its notch goes on ${+front.toFixed(1)} mm to the front`] : []),
            ...(piece.y0 - floor > 1e-6
              ? [`its notch goes on ${+(piece.y0 - floor).toFixed(1)} mm below`]
              : []),
            ...(piece.x0 - centre.x + outside / 2 > 1e-6
              ? [`the pipe itself goes on ${+(piece.x0 - centre.x + outside / 2).toFixed(1)} mm to the front`]
              : []),
          ]
          for (const word of words) expect(said).toContain(word)
          expect(said.split(' goes on ').length - 1, said).toBe(words.length)
          seen.none += words.length === 0 ? 1 : 0
          seen.front += front > 1e-6 ? 1 : 0
          seen.pipe += words.some((word) => word.startsWith('the pipe')) ? 1 : 0
        }
    expect(Math.min(seen.none, seen.front, seen.pipe), JSON.stringify(seen)).toBeGreaterThan(0)
  })

  test('stays inside the room given and on the panel, whatever the ramp', () => {
    fc.assert(
      fc.property(
        sawnWithPipe,
        fc.double({ min: 40, max: 400, noNaN: true }),
        fc.double({ min: 60, max: 400, noNaN: true }),
        (design, width, height) => {
          const own = wholeOf(design)
          const trial = lipTrial(own, width, height, 'mm')
          if (!trial) return
          const { piece, marks } = trial
          atMost(piece.x1 - piece.x0, width + 1e-9)
          atMost(piece.y1 - piece.y0, height + 1e-9)
          atLeast(piece.x0, 0)
          atMost(piece.x1, own.side!.length + 1e-9)
          atLeast(piece.y0, 0)
          const drawn = marks.flatMap((mark: Mark) => (mark.kind === 'stroke' ? [pathBounds(mark.path)] : []))
          atMost(Math.max(...drawn.map((box) => box.y1)), piece.y1 + 1e-6)
          atMost(Math.max(...drawn.map((box) => box.x1)), piece.x1 + 1e-6)
        },
      ),
      { numRuns: 200, seed: sawnSeed, endOnFailure: true },
    )
  })
})

const textsOf = (marks: readonly Mark[]): readonly TextMark[] =>
  marks.filter((mark): mark is TextMark => mark.kind === 'text')
const linesOf = (marks: readonly Mark[]): readonly (readonly [Point, Point])[] =>
  marks.flatMap((mark) =>
    mark.kind === 'stroke' && mark.path.pieces.length === 1 && mark.path.pieces[0]!.kind === 'line'
      ? [[mark.path.start, mark.path.pieces[0]!.to] as const]
      : [],
  )

/** In a box that leans, without its very edge. */
const strictlyIn = ([a, b, , d]: readonly Point[], { x, y }: Point): boolean => {
  const share = (to: Point): number => {
    const [ux, uy] = [to.x - a!.x, to.y - a!.y]
    return ((x - a!.x) * ux + (y - a!.y) * uy) / (ux * ux + uy * uy)
  }
  return [share(b!), share(d!)].every((t) => t > 0.001 && t < 0.999)
}

describe('the reveals on the lip trial', () => {
  test('their lines run from the deck to the top of the pipe, and from the ridden face to its farthest point', () => {
    const count = { out: 0, drawn: 0, negative: 0, tiny: 0 }
    fc.assert(
      fc.property(sawnWithPipe, fc.constantFrom('mm' as const, 'in' as const), (design, units) => {
        const ramp = wholeOf(design, units)
        const trial = lipTrial(ramp, 168, 200, units)
        if (!trial) return
        count.drawn++
        const { coping, transition } = ramp
        const { up, out, outside, centre } = coping!
        if (Math.min(up, out) < 0) count.negative++
        if (Math.min(Math.abs(up), Math.abs(out)) < 2) count.tiny++
        const r = outside / 2
        const { deck } = transition!.heights
        const lines = linesOf(trial.marks)
        hold(
          lines.some(
            ([p, q]) => p.x === q.x && Math.abs(p.y - deck) < 0.01 && Math.abs(q.y - (centre.y + r)) < 0.01,
          ),
        )
        assertNear(centre.y + r - deck, up, 1e-6, 'up')
        // on a circle the ridden face and the pipe's farthest point lie on the line through both middles
        const c = transition!.centre
        const [dx, dy] = [centre.x - c.x, centre.y - c.y]
        const far = Math.hypot(dx, dy)
        const at = (reach: number): Point => ({ x: c.x + (dx / far) * reach, y: c.y + (dy / far) * reach })
        const [face, pipe] = [at(transition!.radius.surface), at(far - r)]
        const near = (p: Point, q: Point): boolean => Math.hypot(p.x - q.x, p.y - q.y) < 0.01
        // far from the lip it is left to the words
        const { piece } = trial
        if ([face, pipe].every(({ y }) => y < piece.y1)) {
          count.out++
          hold(lines.some(([p, q]) => near(p, face) && near(q, pipe)))
        }
        assertNear(transition!.radius.surface - (far - r), out, 1e-6, 'out')
        const said = textsOf(trial.marks).map(({ text }) => text)
        for (const [name, value] of Object.entries({ up, out })) {
          const figure = said.find((text) => text.startsWith(`${name} `))
          if (figure && units === 'mm')
            assertNear(Number(figure.slice(name.length + 1).replace('−', '-')), value, 0.0501, name)
        }
      }),
      { numRuns: 300, seed: sawnSeed, endOnFailure: true },
    )
    expect(count.drawn).toBeGreaterThan(150)
    expect(count.out).toBeGreaterThan(0.9 * count.drawn)
    expect(count.negative).toBeGreaterThan(30)
    expect(count.tiny).toBeGreaterThan(10)
  })

  test.each([
    ['mm', 60.3, 8, 6, 'up 8', 'out 6'],
    ['in', 2.375 * inch, 0.3125 * inch, 0.25 * inch, 'up 5/16', 'out 1/4'],
    ['mm', 60.3, 0, 0, 'up 0', 'out 0'],
    ['mm', 48.3, -3, 1, 'up −3', 'out 1'],
  ] as const)(
    'their figures stand on it in %s for a pipe of %s',
    (units, outside, up, out, upSaid, outSaid) => {
      const ramp = wholeOf({ ...plain, coping: piped({ outside }, { kind: 'reveals', up, out }) }, units)
      const said = textsOf(lipTrial(ramp, 168, 200, units)!.marks).map(({ text }) => text)
      expect(said).toContain(upSaid)
      expect(said).toContain(outSaid)
    },
  )
})

describe('the labels on the lip trial', () => {
  test('none is crossed by a line or lies over another, whatever the ramp; each layer has one or is said in words', () => {
    const count = { trials: 0, labels: 0, besides: 0 }
    fc.assert(
      fc.property(sawnWithPipe, fc.double({ min: 60, max: 190, noNaN: true }), (design, width) => {
        const ramp = wholeOf(design)
        const trial = lipTrial(ramp, width, 200, 'mm')
        if (!trial) return
        count.trials++
        const { marks, piece } = trial
        const strokes: readonly Path[] = [
          trial.outline,
          ...marks.flatMap((mark) => (mark.kind === 'stroke' ? [mark.path] : [])),
        ]
        const points = strokes
          .flatMap((path) => pathSample(path, 0.3))
          .filter(({ x, y }) => x > piece.x0 && x < piece.x1 && y > piece.y0 && y < piece.y1)
        const texts = textsOf(marks)
        const boxes = texts.map((mark) => textCorners(mark, affineIdentity))
        const polygons = boxes.map(
          (corners) => new Flatten.Polygon(corners.map(({ x, y }) => new Flatten.Point(x, y))),
        )
        texts.forEach(({ text }, i) => {
          count.labels++
          expect(
            points.filter((p) => strictlyIn(boxes[i]!, p)),
            text,
          ).toEqual([])
          for (const { x, y } of boxes[i]!)
            hold(x > piece.x0 && x < piece.x1 && y > piece.y0 && y < piece.y1, text)
          polygons.slice(i + 1).forEach((other) => {
            expect(polygons[i]!.intersect(other).length, text).toBe(0)
          })
        })
        const labels = texts.filter(({ text }) => /^layer \d: /.test(text))
        const told = trial.steps.some((step) => step.startsWith('Skin from the studs outward: '))
        for (const { layer, sheet } of ramp.skin.filter(({ length }) => length > 0)) {
          const label = labels.find(({ text }) => text.startsWith(`layer ${layer}: `))
          if (label)
            assertNear(
              Number(/: ([\d.]+) mm$/.exec(label.text)![1]),
              sheet.thickness,
              0.0501,
              'its thickness',
            )
          if (label?.angle === 0) count.besides++
          if (!label) expect(told && trial.steps.join(), `layer ${layer}`).toContain(`layer ${layer}: `)
        }
      }),
      { numRuns: 300, seed: sawnSeed, endOnFailure: true },
    )
    expect(count.trials).toBeGreaterThan(150)
    expect(count.labels).toBeGreaterThan(1000)
    expect(count.besides).toBeGreaterThan(20)
  })

  test('of thin layers those beside the stack stand in its order, each led to a dot inside its layer past no end of another', () => {
    const sheet = (thickness: number) => ({ ...plain.skin[0]!, thickness })
    const ramp = wholeOf({ ...plain, skin: [6, 6, 6, 6, 6, 3, 2].map(sheet), coping: piped() })
    const { curve } = ramp.transition
    const { marks } = lipTrial(ramp, 168, 200, 'mm')!
    const beside = textsOf(marks)
      .filter(({ text, angle }) => text.startsWith('layer ') && angle === 0)
      .sort((a, b) => b.at.y - a.at.y)
    expect(beside.map(({ text }) => text)).toEqual(['layer 7: 2 mm', 'layer 6: 3 mm', 'layer 1: 6 mm'])
    const dots = marks.flatMap((mark) => {
      if (mark.kind !== 'fill' || mark.path.pieces[0]!.kind !== 'arc') return []
      const { x0, x1, y0, y1 } = pathBounds(mark.path)
      return [curve.nearest({ x: (x0 + x1) / 2, y: (y0 + y1) / 2 })]
    })
    expect(dots.length).toBe(3)
    for (const { text } of beside) {
      const own = ramp.skin[Number(text[6]) - 1]!
      const deep = own.below + own.sheet.thickness / 2
      const dot = dots.find(({ distance }) => Math.abs(distance + deep) < 1e-6)!
      const middle = curve.offset(deep)
      for (const { layer, end } of ramp.skin)
        if (layer >= own.layer)
          atLeast(middle.lengthTo(end) - middle.lengthTo(dot.place), layer > own.layer ? 2.99 : 0.99, text)
    }
  })

  test('on ramps as they are built each layer has its label, and so has all else', () => {
    const count = { trials: 0, layers: 0, inWords: 0 }
    fc.assert(
      fc.property(job, ({ design, panel, units }) => {
        const ramp = wholeOf(design, units, panel)
        const trial = lipTrial(ramp, 168, 200, units)
        if (!trial) return
        count.trials++
        const said = textsOf(trial.marks).map(({ text }) => text)
        // one KEEP behind the notch, one along the curve
        expect(said.filter((text) => text === 'KEEP').length).toBe(2)
        for (const word of ['WASTE', 'up ', 'out ', 'pipe ', 'drill ', 'deck board '])
          expect(said.filter((text) => text.startsWith(word)).length, word).toBe(1)
        for (const { layer } of ramp.skin) {
          count.layers++
          if (!said.some((text) => text.startsWith(`layer ${layer}: `))) count.inWords++
        }
      }),
      { numRuns: 200, seed: sawnSeed, endOnFailure: true },
    )
    expect(count.trials).toBeGreaterThan(80)
    expect(count.inWords / count.layers).toBeLessThan(0.02)
  })

  test('a common ramp has all of them, with the hole for the saw and the gap to the pipe', () => {
    const trial = lipTrial(wholeOf({ ...plain, coping: piped() }), 168, 200, 'mm')!
    expect(
      textsOf(trial.marks)
        .map(({ text }) => text)
        .sort(),
    ).toEqual(
      [
        'WASTE',
        'KEEP',
        'KEEP',
        'up 8',
        'out 6',
        'layer 1: 9 mm',
        'layer 2: 9 mm',
        'layer 3: 6 mm',
        'pipe 60.3',
        'drill 8 mm first',
        'deck board 15',
      ].sort(),
    )
    expect(trial.steps[1]).toContain('each layer of skin 2 mm short of the pipe')
    const inches = lipTrial(wholeOf({ ...plain, coping: piped() }), 168, 200, 'in')!
    // 2 mm are 2.5/32 in
    expect(inches.steps[1]).toContain('each layer of skin a shade under 1/8 in short of the pipe')
    expect(trial.steps.at(-1)).toContain(
      'change "up" and "out" in your design file (the text that you wrote)',
    )
  })

  test('a ramp whose notch is given has that to change; a sunk pipe is said so; a round seat has no hole', () => {
    const given = wholeOf({ ...plain, coping: piped({}, { kind: 'notch', along: 30, down: 40 }) })
    expect(lipTrial(given, 168, 200, 'mm')!.steps.at(-1)).toContain('change "along" and "down"')
    const sunk = wholeOf({ ...plain, coping: piped({}, { kind: 'reveals', up: -3, out: -1 }) })
    expect(lipTrial(sunk, 168, 200, 'mm')!.steps[0]).toContain(
      'stand 3 mm below the deck board and 1 mm behind the ridden face',
    )
    const round = wholeOf({ ...plain, coping: piped({ seat: 'round' }) })
    const said = textsOf(lipTrial(round, 168, 200, 'mm')!.marks).map(({ text }) => text)
    expect(said.some((text) => text.startsWith('drill'))).toBe(false)
  })

  test('the hole touches the wall and the floor of the notch', () => {
    const ramp = wholeOf({ ...plain, coping: piped() })
    const { centre } = ramp.coping!
    const corner = { x: centre.x + 60.3 / 2, y: centre.y - 60.3 / 2 }
    const boxes = lipTrial(ramp, 168, 200, 'mm')!.marks.flatMap((mark) =>
      mark.kind === 'stroke' && mark.path.pieces[0]!.kind === 'arc' ? [pathBounds(mark.path)] : [],
    )
    const holes = boxes.filter((box) => Math.abs(box.x1 - box.x0 - 8) < 1e-6)
    expect(holes.length).toBe(1)
    assertNear(holes[0]!.x1, corner.x, 1e-6, 'wall')
    assertNear(holes[0]!.y0, corner.y, 1e-6, 'floor')
  })
})
