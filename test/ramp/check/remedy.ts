import type { Coping, QuarterDesign, Stock, Units } from '../../../src/design/design.ts'
import { readLength } from '../../../src/length.ts'
import type { Finding } from '../../../src/ramp/check/check.ts'

/** A design and a stock after the builder did what a message said. */
export interface Remedy {
  readonly words: string
  readonly design: QuarterDesign
  readonly panel?: Stock['panel']
}

type Change = (design: QuarterDesign, typed: readonly number[], words: string) => Omit<Remedy, 'words'>

const to = (change: (design: QuarterDesign, typed: number) => QuarterDesign): Change => {
  return (design, typed) => ({ design: change(design, typed[0]!) })
}

const copingBy = (design: QuarterDesign, by: (old: Coping['by']) => Coping['by']): QuarterDesign => ({
  ...design,
  coping: { ...design.coping!, by: by(design.coping!.by) },
})

const radius = to((d, value) => ({
  ...d,
  transition: { ...d.transition, circle: { ...d.transition.circle, radius: value } },
}))
const height = to((d, value) => ({ ...d, height: { ...d.height, value } }))
const toe = to((d, value) => ({ ...d, toe: value }))
const tangent = to((d, height) => ({
  ...d,
  transition: { ...d.transition, tangent: { ...d.transition.tangent, height } },
}))
const back = to((d, value) => ({ ...d, back: { ...d.back, value } }))
const up = to((d, value) =>
  copingBy(d, (by) => ({ ...(by as Coping['by'] & { kind: 'reveals' }), up: value })),
)
const out = to((d, value) =>
  copingBy(d, (by) => ({ ...(by as Coping['by'] & { kind: 'reveals' }), out: value })),
)
const along = to((d, value) =>
  copingBy(d, (by) => ({ ...(by as Coping['by'] & { kind: 'notch' }), along: value })),
)
const down = to((d, value) =>
  copingBy(d, (by) => ({ ...(by as Coping['by'] & { kind: 'notch' }), down: value })),
)
const width = to((d, value) => ({ ...d, width: value }))
const chamfer = to((d, value) => ({ ...d, chamfer: value }))
const noChamfer = to((d) => ({ ...d, chamfer: 0 }))
const bridged = to((d) => ({ ...d, runOut: { kind: 'sheet', sheet: { thickness: 1.5, material: 'steel' } } }))
const onFlat = to((d) => ({ ...d, runOut: { kind: 'flat' } }))
const levelled: Change = (design, typed, words) => bridged(tangent(design, typed, words).design, [], words)
const stepBack = to((d, value) => ({ ...d, runOut: { kind: 'stepped', back: value } }))
const every = to((d, value) => ({ ...d, studs: { ...d.studs, every: value } }))
const squareSeat = to((d) => ({ ...d, coping: { ...d.coping!, seat: 'square' } }))
const flushAt = to((d, value) => copingBy(d, () => ({ kind: 'reveals', up: value, out: 0 })))
const levelAt = to((d, value) => copingBy(d, () => ({ kind: 'reveals', up: 0, out: value })))
const depth = to((d, value) => ({
  ...d,
  studs: { ...d.studs, section: [Math.min(...d.studs.section), value] },
}))
const section: Change = (d, [a, b]) => ({ design: { ...d, studs: { ...d.studs, section: [a!, b!] } } })
const count: Change = (d, _, words) => ({
  design: { ...d, sides: { ...d.sides, count: Number(/count: (\d+)/.exec(words)![1]) } },
})
const steel = to((d, most) => ({
  ...d,
  skin: d.skin.map((sheet) =>
    sheet.material === 'steel' ? { ...sheet, thickness: Math.min(most, sheet.thickness) } : sheet,
  ),
}))
const runOutSteel = to((d, thickness) => ({
  ...d,
  runOut: { kind: 'sheet', sheet: { thickness, material: 'steel' } },
}))
const deckEvery = to((d, deck) => ({ ...d, studs: { ...d.studs, deck } }))
const layer = to((d, thickness) => ({ ...d, skin: [{ thickness, material: 'plywood' }, ...d.skin] }))
const levelUnder = to((d, thickness) => ({
  ...copingBy(d, (by) => ({ ...(by as Coping['by'] & { kind: 'reveals' }), up: 0 })),
  deckBoard: { ...d.deckBoard!, thickness },
}))
const board = to((d, thickness) => ({ ...d, deckBoard: { ...d.deckBoard!, thickness } }))
const outside = to((d, value) => ({ ...d, coping: { ...d.coping!, outside: value } }))
const onStuds = to((d) => ({ ...d, fasten: 'studs' }))
/** Sheets for layers that crack: `2 sheets for layer 1 and 3 sheets for layer 2`. */
const thinner: Change = (design, [thickness], words) => {
  const counts = new Map([...words.matchAll(/(\d+) sheets? for layer (\d+)/g)].map((m) => [+m[2]!, +m[1]!]))
  const sheet = { thickness: thickness!, material: 'plywood' as const }
  return {
    design: {
      ...design,
      skin: design.skin.flatMap((own, i) =>
        counts.has(i + 1) ? Array.from({ length: counts.get(i + 1)! }, () => sheet) : [own],
      ),
    },
  }
}
const panel: Change = (design, [a, b]) => ({ design, panel: [Math.min(a!, b!), Math.max(a!, b!)] })

/** A length as a message shows one that may be typed. */
const L = '(-?\\d+(?: \\d+/\\d+|/\\d+)? (?:mm|in))(?![\\d/.]| \\d)'

/** What each check tells the builder to type. Of each list at least one must stand in the message, and all that do are tried. */
const remedies: Readonly<Record<string, readonly (readonly [string, Change])[]>> = {
  overhang: [
    [`least (?:frame|surface) radius for this height is ${L}`, radius],
    [`lower the height to ${L}`, height],
  ],
  'radius-skin': [[`give a radius of ${L} or more`, radius]],
  'height-low': [
    [`make it ${L} or more`, height],
    [`lower the tangent to ${L}`, tangent],
  ],
  'toe-low': [
    [`the lowest toe is ${L}`, toe],
    [`lower the tangent to ${L}`, tangent],
  ],
  'toe-high': [
    [`make the toe ${L} or less`, toe],
    [`height ${L} or more`, height],
  ],
  steep: [[`(?:frame|surface) radius of ${L} or more`, radius]],
  'toe-step': [
    ['say what closes it', bridged],
    [`lower the toe to ${L}`, toe],
    [`lower the tangent to ${L}: there it runs out`, tangent],
    [`lower the tangent to ${L} with a sheet`, levelled],
    ['let a flat meet it', onFlat],
  ],
  'notch-level': [
    [`\`up\` (?:may be at most|must be at least) ${L}`, up],
    [`it may be at most ${L} deep`, down],
  ],
  'pipe-reach': [
    [`\`up\` may be at most ${L}`, up],
    [`take a (?:frame|surface) radius of ${L}`, radius],
  ],
  'notch-floor': [
    [`\`out\` (?:may be at most|at least) ${L}`, out],
    [`\`up\` must be at least ${L}`, up],
    [`take a (?:frame|surface) radius of ${L}`, radius],
    ['take a square seat', squareSeat],
    [`\`along\` (?:must be at least|at most) ${L}`, along],
  ],
  'notch-front': [
    [`\`out\` may be at most ${L}`, out],
    [`\`up\` must be at least ${L}`, up],
    [`take a (?:frame|surface) radius of ${L}`, radius],
  ],
  'notch-long': [[`it needs a (?:deck of|side) ${L}`, back]],
  'notch-wood': [[`stronger: a (?:deck of|side) ${L}`, back]],
  'notch-wall': [
    [`a notch ${L} deep or more`, down],
    [`\`up\` ${L} or less`, up],
    [`a deck board ${L} thick or less does`, board],
  ],
  'pipe-behind-face': [
    ['`out` (0) brings it flush', out],
    [`\`out\` 0 with \`up\` ${L} brings it flush`, flushAt],
    [`a notch ${L} along at this depth`, along],
  ],
  'pipe-under-deck': [
    ['`up` (0) brings it level', up],
    [`\`up\` 0 with \`out\` ${L} brings it level`, levelAt],
    [`\`up\` 0 with a deck board ${L} thick or less brings it level`, levelUnder],
    [`a notch ${L} down`, down],
  ],
  chamfer: [
    [`it may be at most ${L}`, chamfer],
    ['leave it out', noChamfer],
  ],
  'wood-narrow': [
    [`a chamfer of ${L} or less`, chamfer],
    ['no chamfer', noChamfer],
    [`\`up\` at least ${L}`, up],
    [`a notch ${L} down or less`, down],
    [`a (?:deck of|side) ${L} (?:or more|long)`, back],
  ],
  'length-short': [[`make it ${L} or more`, back]],
  width: [
    [`make it ${L} or more`, width],
    ['sides: \\{ count: (\\d+) \\}', count],
  ],
  'run-out': [[`take steel of ${L}`, runOutSteel]],
  'toe-thin': [[`a toe of ${L} or more`, toe]],
  'lip-ledge': [[`a deck board ${L} thick`, board]],
  'lip-groove': [],
  tips: [
    [`a chamfer of ${L} or less`, chamfer],
    ['no chamfer', noChamfer],
    [`a deck of ${L} or more from lip to back`, back],
    [`a side ${L} long`, back],
  ],
  'skin-load': [
    [`studs every ${L}`, every],
    [`one more layer of ${L} plywood`, layer],
  ],
  'skin-free': [
    [`one more layer of ${L} plywood`, layer],
    [`a notch ${L} down or less`, down],
  ],
  'board-load': [
    [`timbers every ${L}`, deckEvery],
    [`a deck board ${L} thick`, board],
  ],
  'board-free': [[`a deck board ${L} thick`, board]],
  span: [
    ['sides: \\{ count: (\\d+) \\}', count],
    [`studs ${L} deep or more`, depth],
  ],
  'panel-size': [
    [`make the deck ${L} or less from lip to back`, back],
    [`make it ${L} long or less`, back],
    [`panels of ${L} × ${L}`, panel],
  ],
  splice: [],
  'skin-none': [],
  'step-back': [[`\`step-back\` may be at most ${L}`, stepBack]],
  'deck-short': [[`did you mean \\d+ (?:cm|ft) \\(${L}\\)`, back]],
  'stud-nominal': [[`section: ([\\d /]+) x ([\\d /]+)`, section]],
  'pipe-nominal': [[`outside: ([\\d /.]+)`, outside]],
  'stud-outside': [
    [`studs every ${L} find`, every],
    [`a toe of ${L} makes room`, toe],
    [`rip the studs to ${L} deep`, depth],
  ],
  'stud-toe': [[`a toe of ${L} takes`, toe]],
  'stud-lip': [[`studs ripped to ${L} deep find`, depth]],
  'skin-bend': [
    [`take ${L} plywood instead(?:(?:,| and) \\d+ sheets? for layer \\d+)+`, thinner],
    [`(?:frame|surface) radius of ${L} or more`, radius],
  ],
  'steel-bend': [
    [`take steel of ${L}`, steel],
    [`(?:frame|surface) radius of ${L} or more`, radius],
  ],
  'seam-stud': [[`studs every ${L} or more leave`, every]],
  'screw-through': [['say `fasten: studs`', onStuds]],
  'fasten-between': [['say `fasten: studs`', onStuds]],
}

/** Messages that name a way out but no number, each with its reason. */
const withoutNumber: readonly RegExp[] = [
  // another part stops whatever that one number is
  /leave out the coping and the chamfer first, and put them back one by one$/,
  /no length alone puts it right: see to the notch, the chamfer and the studs as well/,
  /no length alone gives it: take a smaller chamfer or a thinner pipe$/,
  /no other spacing, toe or depth of stud was found that alone makes room/,
  /no `out` of 0 has a floor for it here/,
  /take fewer layers, or a run-out sheet$/,
  /take a larger radius$/,
  /take a thicker pipe or a thinner deck board$/,
  // no depth of notch keeps both a floor and the face: another pair of keys must be used
  /give `up` and `out` in place of the notch$/,
  // only on ramps as low as a pipe is thick
  /take a thinner pipe or a higher ramp$/,
  // the floor is not what is in the way
  /starts too steep, for this section$/,
  /no higher one was found that stops nothing else; take thinner studs$/,
  // no plywood of the table bends so far, and no ramp is so large
  /take (?:6 mm|1\/4–? in) hardboard$/,
  // a skin of one thin sheet, timbers that find no place: no one number is enough
  /neither closer studs nor one more layer was found to do alone: take both$/,
  /neither closer timbers nor a thicker deck board was found to do alone: take both$/,
  /have it rolled to the radius$/,
  /set a block between the sides there, .*no list has it\)$/,
  /fix it to a wall, or set another back to back with it$/,
  /ribs and deeper studs together would/,
  // a length meant in a larger unit, which stops or leaves too little wood here
  /a ledge that nobody stands on; make it longer$/,
  // no thickness of board meets the face
  /seat a pipe there \(coping\), or plane what stands over to a slope$/,
  // two rows of screws need wood, whatever the spacing
  /thick or more, or [^;]* where two stand side by side$/,
  // no stud finds room
  /set blocks (?:there|between the studs there)$/,
  // which panels can be had is the shop's to say
  /see to the panels(?:, or set studs wider apart)?$/,
  // no panel that is sold holds the side
  /let each side be pieces that meet over a stud(?:, where one has room for that, or make the ramp smaller)?$/,
  // the deck board is sawn longer than the design has it, which no key says
  /, or glue in a strip of wood planed to that wedge$/,
  // the pipe is thinner than the deck board beside it
  /take a thicker pipe or a thinner deck board$/,
]

/** A key that the design does not have cannot be typed: `up` beside a notch, or the reverse. */
const applies = (design: QuarterDesign, change: Change): boolean => {
  const by = design.coping?.by.kind
  if (change === up || change === out) return by === 'reveals'
  return change === along || change === down ? by === 'notch' : true
}

/**
 * Every way out of a stop or a warning, its number typed from the message as it is read. Throws where the message names none,
 * so that a check without a nearest value is a failing test.
 */
export const remediesOf = (design: QuarterDesign, finding: Finding, units: Units): readonly Remedy[] => {
  const ways = remedies[finding.id]
  if (!ways) throw new Error(`the tests know no way out of ${finding.id}: ${finding.message}`)
  const found = ways.flatMap(([pattern, change]): Remedy[] => {
    const match = new RegExp(pattern).exec(finding.message)
    if (!match || !applies(design, change)) return []
    const typed = match.slice(1).map((text) => {
      const reading = readLength(text, units)
      if ('error' in reading) throw new Error(`${reading.error} in: ${finding.message}`)
      return reading.mm
    })
    return [{ words: match[0], ...change(design, typed, match[0]) }]
  })
  if (found.length === 0 && !withoutNumber.some((form) => form.test(finding.message)))
    throw new Error(`no nearest value in ${finding.id}: ${finding.message}`)
  return found
}
