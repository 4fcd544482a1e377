import { describe, expect, test } from 'vitest'
import type { QuarterDesign, Sheet, Units } from '../../../src/design/design.ts'
import {
  bare,
  circleOf,
  copingOf,
  inch,
  notch,
  piped,
  plain,
  plywood,
  reveals,
  said,
  solve,
  stock,
  transitionOf,
} from '../ramps.ts'

type At = (value: number) => QuarterDesign

const clear = (design: QuarterDesign, id: string): void => expect(said(design, id)).toEqual([])
const speaks = (design: QuarterDesign, id: string, level: string): void => {
  const found = said(design, id)
  expect(found.map((message) => message.split(':')[0])).toEqual([level])
}

const height = (layer: 'frame' | 'deck' | 'surface', value: number): Pick<QuarterDesign, 'height'> => ({
  height: { layer, value },
})
const withPipe = (by: Parameters<typeof piped>[1], rest: Partial<QuarterDesign> = {}): QuarterDesign => ({
  ...plain,
  coping: piped({}, by),
  ...rest,
})
const roundPipe = (by: NonNullable<Parameters<typeof piped>[1]>): QuarterDesign => ({
  ...plain,
  coping: piped({ seat: 'round', by }),
})

/** Frame radius 1724 less a skin of 24; level at the floor on the ridden face: c = 1700. */
const [R, s, c] = [1724, 24, 1700]
const lipX = (h: number, t = 40): number => Math.sqrt(R * R - (c - h) ** 2) - Math.sqrt(R * R - (c - t) ** 2)
/** x of the frame's curve at a height, from the toe */
const frameX = (y: number): number => Math.sqrt(R * R - (c - y) ** 2) - Math.sqrt(R * R - (c - 40) ** 2)

/** A thin skin, a mellow lip and a deep seat: the pipe comes so far forward that its wall leaves the wood. */
const forward = (out: number): QuarterDesign => ({
  ...plain,
  ...height('frame', 400),
  skin: [plywood(3)],
  transition: circleOf('frame', R, 'frame', 0),
  deckBoard: null,
  coping: piped({ outside: 60, by: reveals(2, out) }),
})
// from the centre: lip at −1324, the pipe's middle at 400 + 2 − 30 = 372, so −1352; its wall over the lip: x = lip − 30
const forwardLip = Math.sqrt(R * R - 1324 ** 2)
const forwardLimit = 30 - (Math.hypot(forwardLip - 30, 1352) - (R - 3))
const forwardAlong = (out: number): number => Math.sqrt((R - 3 + 30 - out) ** 2 - 1352 ** 2) + 30 - forwardLip

/** Without a pipe, on a frame that is the same under any skin. */
const lipped: At = (s) => ({ ...bare(1724, 640, 40), skin: [plywood(s)], deckBoard: plywood(2) })
const sheeted =
  (material: Sheet['material']): At =>
  (thickness) => ({ ...plain, skin: [{ thickness, material }] })
const boarded: At = (v) => ({ ...plain, deckBoard: plywood(v) })

/** Limits worked out by hand; `bad` lies on the side where the check speaks. mm */
const limits: readonly (readonly [string, string, string, number, 1 | -1, At])[] = [
  ['overhang of the frame', 'overhang', 'stop', c, 1, (v) => ({ ...plain, ...height('frame', v) })],
  ['overhang of the deck', 'overhang', 'stop', c + 15, 1, (v) => ({ ...plain, ...height('deck', v) })],
  ['overhang of the face', 'overhang', 'stop', c, 1, (v) => ({ ...plain, ...height('surface', v) })],
  // the frame's curve level at 60: nothing of it lies lower
  [
    'toe under the lowest point',
    'toe-low',
    'stop',
    60,
    -1,
    (v) => ({ ...plain, transition: circleOf('frame', R, 'frame', 60), toe: v }),
  ],
  ['toe as high as the side', 'toe-high', 'stop', 640, 1, (v) => ({ ...plain, toe: v })],
  [
    'a face no higher than its level',
    'height-low',
    'stop',
    300,
    -1,
    (v) => ({
      ...plain,
      transition: circleOf('frame', R, 'surface', 300),
      toe: 299,
      ...height('surface', v),
    }),
  ],
  // cos 80° = (c − h) / R for the frame's own curve level at the floor, c = R
  ['80 degrees', 'steep', 'warn', 1000 * (1 - Math.cos((80 * Math.PI) / 180)), 1, (v) => bare(1000, v, 100)],
  // (c − t) / R = (c − 6) / (R − s), c = 1704
  [
    'a step of 6 at the toe',
    'toe-step',
    'warn',
    1704 - (R * (1704 - 6)) / (R - s),
    1,
    (v) => ({
      ...plain,
      transition: circleOf('surface', R - s, 'surface', 4),
      toe: v,
      runOut: { kind: 'none' },
      skin: [plywood(s)],
    }),
  ],
  // floor = h + board + up − d = h
  ['a floor at the top line', 'notch-level', 'stop', 60.3 - 15, 1, (v) => withPipe(reveals(v, 6))],
  ['a floor at the toe', 'notch-level', 'stop', 560, 1, (v) => withPipe(notch(48, v), { toe: 80 })],
  // the pipe's middle over the curve at the floor's height: along = r + x(floor) − lip
  [
    'a floor under the middle',
    'notch-floor',
    'stop',
    30.15 + frameX(640 - 33) - lipX(640),
    -1,
    (v) => withPipe(notch(v, 33)),
  ],
  ['a wall that comes out at the lip', 'notch-front', 'stop', forwardLimit, 1, forward],
  // the lip on the pipe's circle: a pipe 30.15 thick by radius, 28.15 below the top line
  [
    'a round seat that still opens at the lip',
    'notch-floor',
    'stop',
    30.15 + Math.sqrt(30.15 ** 2 - 5.15 ** 2),
    1,
    (v) => roundPipe(notch(v, 30.15 - 5.15)),
  ],
  [
    'a notch as long as the deck',
    'notch-long',
    'stop',
    48,
    -1,
    (v) => withPipe(notch(48, 33), { back: { from: 'deck', value: v } }),
  ],
  [
    '40 mm of wood behind it',
    'notch-wood',
    'warn',
    48 + 40,
    -1,
    (v) => withPipe(notch(48, 33), { back: { from: 'deck', value: v } }),
  ],
  [
    '40 mm of wood, by the length of the side',
    'notch-wood',
    'warn',
    lipX(640) + 48 + 40,
    -1,
    (v) => withPipe(notch(48, 33), { back: { from: 'length', value: v } }),
  ],
  ['a wall to the middle of the pipe', 'notch-wall', 'warn', 30.15, -1, (v) => withPipe(notch(48, v))],
  ['a pipe flush with the face', 'pipe-behind-face', 'warn', 0, -1, (v) => withPipe(reveals(8, v))],
  ['a pipe flush with the deck', 'pipe-under-deck', 'warn', 0, -1, (v) => withPipe(reveals(v, 6))],
  ['the same, by the notch', 'pipe-under-deck', 'warn', 60.3 - 15, 1, (v) => withPipe(notch(48, v))],
  // the curve stands at 45° where x − y is greatest: with R = c = 700 it is there 700 √2 − 700 − R sin a0
  [
    'a chamfer that meets the curve',
    'chamfer',
    'stop',
    Math.sqrt(700 ** 2 - 60 ** 2) + 60 - 700 * (Math.SQRT2 - 1),
    1,
    (v) => ({ ...bare(700, 640, 40), chamfer: v, back: { from: 'deck', value: 60 } }),
  ],
  // top line
  ['a chamfer as high as the side', 'chamfer', 'stop', 640, 1, (v) => ({ ...plain, chamfer: v })],
  // the notch's inner corner lies 48 behind the lip and 100 below the top line
  [
    'a chamfer that meets the notch',
    'chamfer',
    'stop',
    640 - 100 + 92,
    1,
    (v) => ({ ...withPipe(notch(48, 100), { back: { from: 'deck', value: 140 } }), chamfer: v }),
  ],
  [
    'a side that ends at the lip',
    'length-short',
    'stop',
    lipX(640),
    -1,
    (v) => ({ ...plain, back: { from: 'length', value: v } }),
  ],
  [
    'bays of 40 mm between the sides',
    'width',
    'stop',
    4 * 18 + 3 * 40,
    -1,
    (v) => ({ ...plain, width: v, sides: { thickness: 18, count: 4 } }),
  ],
  [
    'a run-out sheet whose ends are steps',
    'run-out',
    'warn',
    6,
    1,
    (v) => ({ ...plain, runOut: { kind: 'sheet', sheet: { thickness: v, material: 'hardboard' } } }),
  ],
  [
    // 210000 / (2 · 235) = 446.8 times its thickness, on a face of 1700
    'a run-out sheet of steel that yields',
    'run-out',
    'warn',
    1700 / (210_000 / 470 + 1),
    1,
    (v) => ({ ...plain, runOut: { kind: 'sheet', sheet: { thickness: v, material: 'steel' } } }),
  ],
  ['a feather at the toe', 'toe-thin', 'warn', 6, -1, (v) => ({ ...plain, toe: v })],
  // the face stands s cos a1 over the frame's lip: 24 (1700 − 640) / 1724; the deck by its board
  ['a deck over the face', 'lip-ledge', 'warn', (24 * 1060) / 1724 + 6, 1, boarded],
  ['a face over the deck', 'lip-ledge', 'warn', (24 * 1060) / 1724 - 6, -1, boarded],
  // s sin a1 wide, a1 = acos(1084 / 1724); sheets are laid 3 apart
  [
    'a groove wider than between sheets',
    'lip-groove',
    'note',
    3 / Math.sqrt(1 - (1084 / 1724) ** 2),
    1,
    lipped,
  ],
  // E t / (2 f) = 210 000 t / 470; the outer face of the only layer has a radius of 1724 less t
  ['steel that yields', 'steel-bend', 'warn', 1724 / (1 + 210_000 / 470), 1, sheeted('steel')],
  // IRC 2018 R312.1.1: more than 30 in (762 mm) above the ground
  ['a deck of 30 in', 'guard-height', 'note', 762, 1, (v) => ({ ...plain, ...height('deck', v) })],
]

describe('each check speaks just past its limit, and not on it or before', () => {
  test.each(limits)('%s', (_, id, level, limit, bad, at) => {
    clear(at(limit - bad * 0.01), id)
    speaks(at(limit + bad * 0.01), id, level)
  })

  // where the limit itself works, the last bits of a sum must not refuse it
  const included = [
    'overhang',
    'toe-low',
    'steep',
    'toe-step',
    'notch-wood',
    'notch-wall',
    'pipe-behind-face',
    'pipe-under-deck',
    'guard-height',
    'lip-ledge',
  ]
  test.each(limits.filter(([, id]) => included.includes(id)))(
    '%s, exactly on it',
    (_, id, __, limit, ___, at) => {
      clear(at(limit), id)
    },
  )
})

describe('panels', () => {
  const fits = (panel: readonly [number, number], design: QuarterDesign): boolean =>
    !solve(design, 'mm', panel).drafts.some((f) => f.id === 'panel-size')
  const long = lipX(640) + 500

  test('a side may lie or stand, and may be as large as the panel', () => {
    expect(fits([640, long], plain)).toBe(true)
    expect(fits([639.99, long], plain)).toBe(false)
    expect(fits([640, long - 0.01], plain)).toBe(false)
    // a short tall side stands on end
    const tall: QuarterDesign = { ...bare(900, 890, 100), back: { from: 'length', value: 600 } }
    expect(fits([600, 890], tall)).toBe(true)
    expect(fits([599, 890], tall)).toBe(false)
  })

  test('are saved by a shorter deck only where somebody stands on it and the notch keeps its wood', () => {
    const offered = (design: QuarterDesign, panel: number): number | null => {
      const [, most] =
        /make (?:the deck|it) (\d+) mm/.exec(
          solve(design, 'mm', [640, panel]).findingsOf('panel-size')[0]!.message,
        ) ?? []
      return most === undefined ? null : Number(most)
    }
    const lip = lipX(640)
    const heavy = { ...plain, width: 2400, sides: { thickness: 18, count: 3 } }
    expect(offered(heavy, lip + 100.5)).toBe(100)
    expect(offered(heavy, lip + 99.5)).toBe(null)
    // a rider tips a lighter one whose deck is so short
    expect(offered(plain, lip + 100.5)).toBe(null)
    // 40 of wood behind a notch that reaches 90 behind the lip
    const behind = { ...heavy, coping: piped({}, notch(90, 45)) }
    expect(offered(behind, lip + 130.5)).toBe(130)
    expect(said({ ...behind, back: { from: 'deck', value: 130 } }, 'notch-wood')).toEqual([])
    expect(offered(behind, lip + 129.5)).toBe(null)
    const long: QuarterDesign = { ...behind, back: { from: 'length', value: lip + 500 } }
    expect(offered(long, lip + 131)).toBe(Math.floor(lip + 131))
    expect(offered(long, lip + 129)).toBe(null)
  })
})

describe('the step at the toe', () => {
  const open: QuarterDesign = { ...plain, runOut: { kind: 'none' } }
  const sheet: Sheet = { thickness: 1.5, material: 'steel' }
  test('is a warning where nothing closes it, a note with a sheet, nothing where a flat ramp meets it', () => {
    speaks(open, 'toe-step', 'warn')
    speaks({ ...open, runOut: { kind: 'sheet', sheet } }, 'toe-step', 'note')
    clear({ ...open, runOut: { kind: 'flat' } }, 'toe-step')
  })
  test('is closed by a sheet that bends to the ridden face, as long as the sheet is cut once it is typed', () => {
    // S235 yields over E t / (2 f) = 210000 t / (2 · 235): 670.2 for 1.5 mm, 446.8 for 1 mm; it bends to the face less itself
    const tight = (radius: number): QuarterDesign => ({
      ...open,
      height: { layer: 'frame', value: 250 },
      transition: circleOf('surface', radius),
    })
    const way = /\(run-out: \{ sheet: (\S+) steel \}\), cut (.+?) (?:mm|in) long([a-z ]*)/
    const cut = /cut its sheet (.+?) (?:mm|in) long/
    for (const [radius, units, thickness, text, rolled] of [
      [700, 'mm', 1.5, '1.5', ''],
      [650, 'mm', 1, '1', ''],
      [430, 'mm', 1.5, '1.5', ' and rolled to the radius'],
      [650, 'in', inch / 32, '1/32', ''],
    ] as const) {
      const [, typed, long, more] = way.exec(said(tight(radius), 'toe-step', units).join())!
      expect([typed, more], `${radius}`).toEqual([text, rolled])
      const closed: QuarterDesign = {
        ...tight(radius),
        runOut: { kind: 'sheet', sheet: { thickness, material: 'steel' } },
      }
      expect(cut.exec(said(closed, 'toe-step', units).join())![1]).toBe(long)
      expect(said(closed, 'run-out', units).length > 0).toBe(rolled !== '')
    }
  })
})

describe('a ridden face that runs level above the floor', () => {
  const sheet: Sheet = { thickness: 1.5, material: 'steel' }
  const at = (level: number, more: Partial<QuarterDesign> = {}): QuarterDesign => ({
    ...plain,
    transition: circleOf('surface', 1700, 'surface', level),
    toe: 150,
    runOut: { kind: 'sheet', sheet },
    ...more,
  })
  test('by more than a wheel takes is no matter of a sheet: a warning, with the tangent that runs out on the floor', () => {
    speaks(at(6), 'toe-step', 'note')
    speaks(at(6.01), 'toe-step', 'warn')
    // the frame's curve lies 24 under: level at 6 where it is level at -18
    const frame = (height: number) => at(0, { transition: circleOf('surface', 1700, 'frame', height) })
    speaks(frame(-18), 'toe-step', 'note')
    speaks(frame(-17.99), 'toe-step', 'warn')
    expect(said(at(150), 'toe-step')).toEqual([
      'warn: the ridden face runs level 150 mm above the floor, so a run-out sheet would end in a step; ' +
        'lower the tangent to 0 mm: there it runs out on the floor, or let a flat meet it (run-out: flat)',
    ])
    // a flat of this skin of 24 needs 10 of wood
    expect(said(at(33), 'toe-step').join()).not.toContain('flat')
    expect(said(at(34), 'toe-step').join()).toContain('flat')
  })
  test('is no better with a sheet in place of none or of stepped layers', () => {
    const way =
      'the ridden face runs level 150 mm above the floor, so a run-out sheet would end in a step; lower the tangent to 0 mm with a sheet (run-out: { sheet: 1.5 steel })'
    for (const runOut of [{ kind: 'none' }, { kind: 'stepped', back: 10 }] as const) {
      const [message, ...more] = said(at(150, { runOut }), 'toe-step')
      expect(more).toEqual([])
      expect(message).toContain(way)
      expect(message).not.toContain('say what closes it')
    }
  })
  test('the toe that is typed is never offered', () => {
    for (const toe of [38, 40, 60, 100]) {
      // a first stud 38 thick lies whole behind a toe of about 38 · cos a0
      const offered = /a toe of (\d+) mm, the least/.exec(said({ ...at(0), toe }, 'toe-step').join())
      if (offered) expect(Number(offered[1])).toBeLessThan(toe)
    }
  })
})

describe('words', () => {
  const message = (design: QuarterDesign, id: string, units: Units = 'mm'): string =>
    said(design, id, units).join('\n')

  // c = 1700, least radius 1700 + (1750.4 − 1700) = 1750.4 and so 1751, height 1700
  test('overhang names the least radius of the layer that was given', () => {
    expect(
      message({ ...plain, ...height('frame', 1750.4), transition: circleOf('surface', 1700) }, 'overhang'),
    ).toBe(
      'stop: a frame height of 1750.4 mm lies above the centre of the curve (1700 mm), so the lip would lean over the rider; ' +
        'the least surface radius for this height is 1751 mm, or lower the height to 1700 mm',
    )
    // in inches: 60 in of radius, 61 1/32 in of height: the least radius is 61 1/32, so 61 1/16; the height 60
    expect(
      message(
        {
          ...plain,
          ...height('frame', (61 + 1 / 32) * inch),
          transition: circleOf('frame', 60 * inch, 'frame'),
        },
        'overhang',
        'in',
      ),
    ).toBe(
      'stop: a frame height of 61+ in lies above the centre of the curve (60 in), so the lip would lean over the rider; ' +
        'the least frame radius for this height is 61 1/16 in, or lower the height to 60 in',
    )
  })

  test('toe-low names the lowest toe', () => {
    const design: QuarterDesign = { ...plain, transition: circleOf('frame', R, 'frame', 60.5) }
    expect(message(design, 'toe-low')).toBe(
      'stop: the curve never comes down to a toe of 40 mm: its lowest point is 60.5 mm above the floor; ' +
        'the lowest toe is 61 mm, or lower the tangent to 40 mm',
    )
  })

  test('toe-low leaves the tangent at the flat that is met', () => {
    const met: QuarterDesign = {
      ...plain,
      transition: circleOf('frame', R, 'frame', 60.5),
      runOut: { kind: 'flat' },
    }
    expect(message(met, 'toe-low')).toMatch(/above the floor; the lowest toe is 61 mm$/)
  })

  test('toe-high', () => {
    expect(message({ ...plain, ...height('frame', 250), toe: 250 }, 'toe-high')).toBe(
      "stop: a toe of 250 mm is not below the side's top line, 250 mm above the floor; " +
        'make the toe 249 mm or less, or make the frame height 251 mm or more',
    )
  })

  // any height above 300 leaves the toe of 40 below the curve, so only the tangent helps
  test('height-low', () => {
    const design: QuarterDesign = {
      ...plain,
      ...height('deck', 200),
      transition: circleOf('frame', R, 'frame', 300),
    }
    expect(message(design, 'height-low')).toBe(
      'stop: a deck height of 200 mm is not above the lowest point of the curve; lower the tangent to 40 mm',
    )
  })

  // cos a1 = (1000 − 900) / 1000: 84.3°; 900 / (1 − cos 80°) = 1089.1
  test('steep names the least radius', () => {
    expect(message(bare(1000, 900, 100), 'steep')).toBe(
      'warn: the lip stands at 84.3°, over 80°: nearly a wall; at this height a frame radius of 1090 mm or more keeps it under 80°',
    )
  })

  // c = 1700: cos a0 = 1660/1724; step 1700 − 1700 · 1660/1724 = 63.1; bridge 1700 · acos(1660/1724) = 464.7;
  // 50 laps on the skin, 75 lies on the floor: 589.7, and so 590
  test('toe-step names what closes it', () => {
    expect(message({ ...plain, runOut: { kind: 'none' } }, 'toe-step')).toBe(
      'warn: the ridden face ends 63.1 mm above the floor at the toe, a wheel stops at more than 6 mm; ' +
        'say what closes it (run-out: { sheet: 1.5 steel }), cut 590 mm long',
    )
  })

  test('notch-level', () => {
    expect(message(withPipe(reveals(50, 6)), 'notch-level')).toBe(
      "stop: the notch's floor comes out 4.7 mm above the side's top line, so there is nothing to seat the pipe; " +
        'with this deck board `up` may be at most 15 mm',
    )
    expect(message(withPipe(notch(48, 561), { toe: 80 }), 'notch-level')).toBe(
      'stop: the notch is 561 mm deep and its floor comes out below the toe; it may be at most 300 mm deep',
    )
  })

  // along 48 and 40 of wood behind it, from the lip; without a pipe the lip alone
  test('length-short offers a side with wood behind the notch', () => {
    const at = (more: Partial<QuarterDesign>): string =>
      message({ ...plain, back: { from: 'length', value: 500 }, ...more }, 'length-short')
    const made = (text: string): number => Number(/make it (\d+) mm or more/.exec(text)![1])
    expect(made(at({ coping: piped({}, notch(48, 33)) }))).toBe(Math.ceil(lipX(640) + 88))
    // without a pipe the first that keeps 40 of wood behind the lip
    expect(made(at({}))).toBe(Math.ceil(lipX(640) + 40))
  })

  test('notch-level offers what also holds the pipe, where that is near', () => {
    // the floor comes to the top line at an `up` of 45.3, the wall to the middle of the pipe 30.15 under that
    expect(message(withPipe(reveals(50, 6)), 'notch-level')).toContain('`up` may be at most 15 mm')
    // a board of 40 as well: 20.3 brings the floor to it, and the middle comes to -9.85, under the deck
    const board = { deckBoard: plywood(40) }
    expect(message(withPipe(reveals(50, 6), board), 'notch-level')).toContain('`up` may be at most 20 mm')
  })

  test('notch-floor', () => {
    const least = 30.15 + frameX(640 - 33) - lipX(640)
    expect(message(withPipe(notch(2, 33)), 'notch-floor')).toBe(
      `stop: there is no floor under the pipe's middle: the curve passes ${(least - 2).toFixed(1)} mm behind it; ` +
        `\`along\` must be at least ${Math.ceil(least)} mm (2 mm now)`,
    )
  })

  test('a round seat that does not open', () => {
    expect(message(roundPipe(notch(90, 25)), 'notch-floor')).toBe(
      'stop: the round seat does not meet the curve; take a square seat, or bring the pipe further out of the face: ' +
        `\`along\` at most ${Math.ceil(30.15 + Math.sqrt(30.15 ** 2 - 5.15 ** 2)) - 1} mm (90 mm now)`,
    )
  })

  test('notch-long and notch-wood, in the words of the key that was given', () => {
    const at = (from: 'deck' | 'length', value: number) => withPipe(notch(120, 33), { back: { from, value } })
    expect(message(at('deck', 100), 'notch-long')).toBe(
      'stop: the notch reaches 120 mm behind the lip, the deck is only 100 mm; it needs a deck of 160 mm',
    )
    expect(message(at('deck', 150.5), 'notch-wood')).toBe(
      'warn: only 30.5 mm of wood stands behind the notch; 40 mm or more is stronger: a deck of 160 mm',
    )
    const run = lipX(640)
    expect(message(at('length', run + 150), 'notch-wood')).toBe(
      `warn: only 30 mm of wood stands behind the notch; 40 mm or more is stronger: a side ${Math.ceil(run + 160)} mm long`,
    )
  })

  test('notch-wall', () => {
    expect(message(withPipe(notch(48, 20.15)), 'notch-wall')).toBe(
      "warn: the notch's back wall ends 10 mm below the pipe's middle and does not hold it; " +
        'a notch 31 mm deep or more does',
    )
  })

  test('notch-wall and pipe-under-deck of a board thicker than half the pipe, neither of which offers the other', () => {
    // 40 mm of board less 30.15 mm of pipe, 5 mm down
    const thick = withPipe(reveals(-5, 6), { deckBoard: { thickness: 40, material: 'plywood' } })
    expect(message(thick, 'notch-wall')).toBe(
      "warn: the notch's back wall ends 4.9 mm below the pipe's middle and does not hold it; a deck board 35 mm thick or less does",
    )
    expect(message(thick, 'pipe-under-deck')).toBe(
      "warn: the pipe's top lies 5 mm under the deck board; `up` 0 with a deck board 30 mm thick or less brings it level",
    )
  })

  test('pipe-behind-face and pipe-under-deck', () => {
    expect(message(withPipe(reveals(-3, -4.5)), 'pipe-behind-face')).toBe(
      'warn: the pipe lies 4.5 mm behind the ridden face instead of standing out; `out` 0 brings it flush, more brings it out',
    )
    expect(message(withPipe(reveals(-3, -4.5)), 'pipe-under-deck')).toBe(
      "warn: the pipe's top lies 3 mm under the deck board; `up` 0 brings it level, more brings it up",
    )
    expect(message(withPipe(notch(48, 50)), 'pipe-under-deck')).toBe(
      "warn: the pipe's top lies 4.7 mm under the deck board; a notch 45 mm down brings it level, less brings it up",
    )
  })

  test('chamfer', () => {
    expect(message({ ...plain, chamfer: 640 }, 'chamfer')).toBe(
      'stop: a chamfer with a leg of 640 mm cuts into the top line; it may be at most 600 mm',
    )
  })

  test('length-short, width, guard-height, panel-size', () => {
    const run = lipX(640)
    expect(message({ ...plain, back: { from: 'length', value: 700 } }, 'length-short')).toBe(
      `stop: a side 700 mm long ends before the lip, ${run.toFixed(1)} mm behind the toe; make it ${Math.ceil(run + 40)} mm or more`,
    )
    expect(message({ ...plain, width: 200, sides: { thickness: 60, count: 4 } }, 'width')).toBe(
      'stop: 4 sides of 60 mm leave no room for studs in a width of 200 mm, a stud wants 40 mm; ' +
        'make it 360 mm or more, or take fewer (sides: { count: 2 })',
    )
    expect(message({ ...plain, ...height('deck', 800) }, 'guard-height')).toBe(
      'note: the deck is 800 mm above the floor; above 762 mm a guard is a common requirement: ask your building office',
    )
    const wide = { ...plain, back: { from: 'deck', value: 2000 } } as const
    expect(message(wide, 'panel-size')).toBe(
      `warn: a side needs ${Math.ceil(run + 2000)} mm × 640 mm, a panel of your stock is 2440 mm × 1220 mm; ` +
        `make the deck ${Math.floor(2440 - run)} mm or less from lip to back, or buy panels of 3050 mm × 1220 mm`,
    )
    const typed = (design: QuarterDesign, panel: readonly [number, number], units: Units = 'mm') =>
      solve(design, units, panel)
        .findingsOf('panel-size')[0]!
        .offers!.flat()
        .filter(({ of }) => of === 'file')
    // what is sold: common practice, no source; other sheets keep the panel they have
    const deck = (value: number): QuarterDesign => ({ ...plain, back: { from: 'deck', value } })
    expect(message(deck(2440.5 - run), 'panel-size')).toMatch(/, or buy panels of 2500 mm × 1250 mm$/)
    expect(typed(deck(2440.5 - run), stock.panel)).toEqual([
      { of: 'file', key: 'stock.panel', value: '1250 mm x 2500 mm' },
    ])
    expect(typed(deck(2501 - run), stock.panel)[0]!.value).toBe('1220 mm x 3050 mm')
    expect(typed(deck(2501 - run), [1250, 2500])[0]!.value).toBe('1500 mm x 3000 mm')
    expect(typed(deck(400), [1220, 1220])[0]!.value).toBe('1220 mm x 2440 mm')
    expect(typed(deck(3051 - run), stock.panel)).toEqual([])
    expect(message(deck(3051 - run), 'panel-size')).toMatch(
      / from lip to back, or let each side be pieces that meet over a stud$/,
    )
    expect(typed(deck(2440.5 - run), [48 * inch, 96 * inch], 'in')[0]!.value).toBe('48 in x 120 in')
    expect(typed(deck(121 * inch - run), [48 * inch, 96 * inch], 'in')).toEqual([])
    const huge: QuarterDesign = { ...bare(5000, 2400, 40), back: { from: 'deck', value: 2400 } }
    expect(message(huge, 'panel-size')).toMatch(
      /; hardly any panel is sold so large: let each side be pieces that meet over a stud, where one has room for that, or make the ramp smaller$/,
    )
    expect(solve(wide, 'mm', stock.panel).ramp.side).not.toBeNull()
  })

  test('run-out', () => {
    const closed = (thickness: number, material: 'steel' | 'plywood'): string =>
      message({ ...plain, runOut: { kind: 'sheet', sheet: { thickness, material } } }, 'run-out')
    expect(closed(12, 'steel')).toMatch(
      /^warn: the run-out sheet is too thick \(12 mm steel\): its two ends stand 12 mm over .*, and it does not bend down from a ridden face of 1700 mm, its least radius is 5362 mm; take steel of 3 mm$/,
    )
    expect(closed(9, 'plywood')).toMatch(
      /more than 6 mm; take steel of 3 mm, or plane both of its ends to a long slope$/,
    )
    // E t / 2 f (S235 of EN 10025): 893 mm for 2 mm, 670 mm for 1.5 mm
    const onTight = (thickness: number): QuarterDesign => ({
      ...plain,
      height: { layer: 'deck', value: 200 },
      transition: circleOf('surface', 700),
      runOut: { kind: 'sheet', sheet: { thickness, material: 'steel' } },
    })
    expect(message(onTight(2), 'run-out')).toMatch(/\(2 mm steel\).*; take steel of 1\.5 mm$/)
    clear(onTight(1.5), 'run-out')
  })
  test('toe-thin and lip-ledge', () => {
    expect(message({ ...plain, toe: 3 }, 'toe-thin')).toMatch(
      /^warn: a toe of 3 mm is a feather edge that splinters and is soon trodden off; 12 mm is blunt enough: a toe of 1[2-9] mm or more$/,
    )
    // a bare face ends at its toe: 6 mm would close the step, and be a feather
    const open: QuarterDesign = { ...plain, skin: [], toe: 12, runOut: { kind: 'none' } }
    expect(message(open, 'toe-step')).not.toContain('lower the toe')
    expect(message({ ...open, skin: [plywood(1)] }, 'toe-step')).not.toContain('lower the toe')
    // flush at 24 · 1060 / 1724 = 14.76, the nearest that is sold by the mm 15
    expect(message(boarded(25), 'lip-ledge')).toBe(
      'warn: at the lip the deck stands 10.2 mm above the ridden face and no pipe covers it, a wheel stops at more than 6 mm; a deck board 15 mm thick meets it',
    )
    expect(message(boarded(5), 'lip-ledge')).toContain('stands 9.8 mm below the ridden face')
    expect(message(boarded(5), 'lip-ledge')).toContain('a deck board 15 mm thick meets it')
    clear({ ...boarded(25), coping: piped() }, 'lip-ledge')
    clear({ ...plain, deckBoard: null }, 'lip-ledge')
  })
  test('a step and a deck just over the limit are told from it', () => {
    // flush at 24 · 1060 / 1724 = 14.76
    const board = (24 * 1060) / 1724 + 6.04
    expect(message(boarded(board), 'lip-ledge')).toContain(
      'the deck stands just over 6 mm above the ridden face and no pipe covers it, a wheel stops at more than 6 mm; ',
    )
    expect(message(boarded(board + 0.02), 'lip-ledge')).toContain('the deck stands 6.1 mm above')
    const runOut = (thickness: number): QuarterDesign => ({
      ...plain,
      runOut: { kind: 'sheet', sheet: { thickness, material: 'other' } },
    })
    expect(message(runOut(6.04), 'run-out')).toContain(
      'stand just over 6 mm over the skin and the floor, a wheel',
    )
    // 6 mm are 0.236 in: 1/4 in is more
    expect(solve(boarded(board), 'in').findingsOf('lip-ledge')[0]!.message).toContain(
      'the deck stands 1/4 in above the ridden face and no pipe covers it, a wheel stops at more than 6 mm, a shade under 1/4 in; ',
    )
    expect(message({ ...plain, ...height('deck', 762.04) }, 'guard-height')).toContain(
      'the deck is just over 762 mm above the floor; above 762 mm a guard',
    )
  })
  test('lip-ledge offers no deck board that a rider breaks', () => {
    // flush near 12 · 1060 / 1712 = 7.4, which breaks; up to 6 over it a wheel rolls on
    const thin: QuarterDesign = { ...boarded(15), skin: [plywood(6), plywood(6)] }
    const way = /a deck board (\d+) mm thick/.exec(message(thin, 'lip-ledge'))
    const met = { ...thin, deckBoard: plywood(Number(way?.[1])) }
    for (const id of ['lip-ledge', 'board-load', 'board-free']) clear(met, id)
    speaks({ ...thin, deckBoard: plywood(7) }, 'board-load', 'warn')
    // flush near 4, and what is thin enough for the wheel does not carry
    const thinner: QuarterDesign = { ...boarded(15), skin: [plywood(6)] }
    expect(message(thinner, 'lip-ledge')).toMatch(
      /more than 6 mm; take a thicker skin, seat a pipe there \(coping\), or plane what stands over to a slope$/,
    )
    // nor while a stop hides what it bears
    speaks({ ...thinner, width: 20 }, 'width', 'stop')
    expect(message({ ...thinner, width: 20 }, 'lip-ledge')).toMatch(/more than 6 mm; take a thicker skin, /)
  })

  test('steel-bend and sheet-bend', () => {
    expect(message(sheeted('steel')(60), 'steel-bend')).toMatch(
      /^warn: layer 1 \(60 mm steel\) does not spring to its curve of 1664 mm but yields: flat sheet of mild steel so thick does below a radius of 26809 mm; take steel of 3 mm/,
    )
    // E t / 2 f: 893 mm for 2 mm, 670 mm for 1.5 mm
    const tight = (thickness: number): QuarterDesign => ({
      ...sheeted('steel')(thickness),
      height: { layer: 'frame', value: 300 },
      transition: circleOf('surface', 800),
    })
    expect(message(tight(2), 'steel-bend')).toMatch(/take steel of 1\.5 mm/)
    clear(tight(1.5), 'steel-bend')
    expect(message(sheeted('other')(6), 'sheet-bend')).toBe(
      'note: no table is known of how far layer 1 (6 mm of another sheet) bends: bend a piece to a radius of 1718 mm first',
    )
    clear(sheeted('hardboard')(6), 'sheet-bend')
    speaks({ ...bare(600, 300, 20), skin: [{ thickness: 6, material: 'hardboard' }] }, 'sheet-bend', 'note')
  })

  test('notch-front', () => {
    expect(message(forward(25), 'notch-front')).toBe(
      `stop: the notch's back wall comes out ${(-forwardAlong(25)).toFixed(1)} mm in front of the lip, where there is no wood; ` +
        `\`out\` may be at most ${Math.floor(forwardLimit)} mm (25 mm now)`,
    )
  })

  // frame 300 with a skin of 240 leaves a face of 60, upright at the lip; pipes 80 out of it have their middles on a
  // circle of 60 + 30 − 80 = 10 about (…, 300): over the level of the lip's normal, 300, there is nothing near
  test('a pipe out of reach of a small curve', () => {
    const design = (up: number): QuarterDesign => ({
      ...plain,
      ...height('frame', 300),
      transition: circleOf('frame', 300, 'frame', 0),
      skin: [plywood(60), plywood(60), plywood(60), plywood(60)],
      deckBoard: plywood(60),
      coping: piped({ outside: 60, by: reveals(up, 80) }),
    })
    expect(message(design(-1), 'pipe-reach')).toBe(
      'stop: a pipe 60 mm thick standing -1 mm up lies above the reach of the curve; take a thinner pipe or a higher ramp',
    )
    clear(design(-30), 'pipe-reach')
  })

  test('radius-skin', () => {
    const design: QuarterDesign = {
      ...plain,
      transition: circleOf('frame', 300),
      skin: Array.from({ length: 6 }, () => plywood(50)),
    }
    expect(message(design, 'radius-skin')).toBe(
      "stop: the frame's radius 300 mm leaves no ridden face inside a skin 300 mm thick; give a radius of 940 mm or more",
    )
    clear({ ...design, transition: circleOf('frame', 301) }, 'radius-skin')
  })
})

test('a deep notch that stands out is no warning at all', () => {
  expect(solve(withPipe(reveals(8, 6))).findings.filter((f) => f.level !== 'note')).toEqual([])
  expect(copingOf(withPipe(reveals(8, 6))).along).toBeGreaterThan(0)
  expect(transitionOf(plain).heights.frame).toBe(640)
})
