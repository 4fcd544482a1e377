import type { Design, RampDesign, Units } from '../design/design.ts'
import { curvedOf } from '../design/kind-traits.ts'
import { implausible } from '../design/plausible.ts'
import { keysUnder, rampPath, rangeAt } from '../design/schema.ts'
import { nearWord } from '../length/near.ts'
import { quote } from '../length/quote.ts'
import { readLength, showLength } from '../length.ts'
import {
  type AcrossKey,
  type AsCut,
  acrossKeys,
  type DepthKey,
  depthKeys,
  type MeasuredCut,
  measuredCut,
  solveAsCut,
} from '../ramp/as-cut.ts'
import { revealWords } from '../ramp/check/reveal-words.ts'
import type { SolvedDesign } from '../ramp/ramp.ts'
import { asked, type Refusal } from './refusal.ts'

/** What was measured of a sawn notch, and the ramp that it was sawn in. */
export interface RampCut extends MeasuredCut {
  readonly ramp: string
}

export type RampAsCut = AsCut & { readonly ramp: string }

const example = { mm: 'along=25,down=37', in: 'along=7/8,down=1 7/16' } as const

/** Keys of which one is enough, and what they tell. */
const sayTheSame = [
  { all: acrossKeys, what: 'wall' },
  { all: depthKeys, what: 'floor' },
] as const

/** Reads all of what `--as-cut` says. */
export const readAsCut = (
  all: readonly string[],
  design: Design,
): { readonly cuts: readonly RampCut[] } | Refusal => {
  const faults: string[] = []
  const read = all.flatMap((said) => {
    const cut = readOne(said, design, faults)
    return cut === null ? [] : [{ said, cut }]
  })
  for (const [i, second] of read.entries()) {
    const first = read.slice(0, i).find(({ cut }) => cut.ramp === second.cut.ramp)
    if (first !== undefined)
      faults.push(`--as-cut is given twice for ${quote(second.cut.ramp)}; ${onceWords(first, second)}`)
  }
  return faults.length > 0 ? asked(faults) : { cuts: read.map(({ cut }) => cut) }
}

interface ReadCut {
  readonly said: string
  readonly cut: RampCut
}

/** How two measures of one notch are said at once. */
const onceWords = (first: ReadCut, second: ReadCut): string => {
  const apart =
    (first.cut.across === null) !== (second.cut.across === null) &&
    (first.cut.depth === null) !== (second.cut.depth === null)
  if (!apart) return 'give one notch for each ramp'
  const joined = `${first.said.trim()}, ${second.said.replace(/^[^=]*:/, '').trim()}`
  return `join the two with a comma: --as-cut "${quote(joined, 100).slice(1, -1)}"`
}

const readOne = (said: string, { ramps, units }: Design, faults: string[]): RampCut | null => {
  const shown = `--as-cut ${quote(said, 60).slice(1, -1)}`
  const match = /^(?:([^=]*):)?\s*(\w+)\s*=([^=]*?)(?:,\s*(\w+)\s*=([^=]*))?$/s.exec(said)
  const across = acrossKeys.find((key) => key === match?.[2] || key === match?.[4])
  const depth = depthKeys.find((key) => key === match?.[2] || key === match?.[4])
  if (!match || (match[4] === undefined ? 1 : 2) !== (across ? 1 : 0) + (depth ? 1 : 0)) {
    const notched = notchedNames(ramps)
    const keys = [match?.[2], match?.[4]]
    const same = sayTheSame.find(
      ({ all }) => keys[0] !== keys[1] && keys.every((key) => all.some((one) => one === key)),
    )
    if (same) {
      faults.push(
        `${shown}: \`${keys[0]}\` and \`${keys[1]}\` both say where the ${same.what} is; one of them is enough`,
      )
      return null
    }
    faults.push(`${shown}: write it like ${notched.length > 1 ? `${notched[0]}:` : ''}${example[units]}`)
    return null
  }
  const ramp = rampOf(match[1]?.trim(), ramps, units, shown, faults)
  if (across === 'floor' && ramp?.coping?.seat === 'round')
    faults.push(`${shown}: a round seat has no level floor; measure its wall from the back edge: \`back\``)
  const texts = new Map([
    [match[2], match[3]!],
    [match[4], match[5] ?? ''],
  ])
  const measured = <Key extends AcrossKey | DepthKey>(key: Key | undefined) => {
    if (key === undefined) return null
    const mm = lengthOf(key, texts.get(key)!.trim(), units, shown, faults)
    return mm === null ? undefined : { key, mm }
  }
  const [wall, floor] = [measured(across), measured(depth)]
  return ramp === null || wall === undefined || floor === undefined
    ? null
    : { ramp: ramp.name, across: wall, depth: floor }
}

const rampOf = (
  name: string | undefined,
  ramps: readonly RampDesign[],
  units: Units,
  shown: string,
  faults: string[],
): RampDesign | null => {
  const notched = notchedNames(ramps)
  if (name === undefined && notched.length > 1) {
    faults.push(
      `${shown}: ${notched.length} ramps have a notch, say which, like ${notched[0]}:${example[units]}; ${known(notched)}`,
    )
    return null
  }
  if (name === undefined && notched.length === 0 && ramps.length > 1) {
    faults.push(`${shown}: no ramp has a pipe; give one \`coping\` in the design file`)
    return null
  }
  // the only one that can be meant
  const meant = name ?? notched[0] ?? ramps[0]!.name
  const ramp = ramps.find((one) => one.name === meant)
  if (!ramp) {
    const near = nearWord(meant, notched)
    faults.push(
      `${shown}: no ramp is called ${quote(meant)}; ${near === undefined ? known(notched) : `did you mean ${quote(near)}?`}`,
    )
    return null
  }
  if (!keysUnder(rampPath(ramp.kind)).includes('coping')) {
    faults.push(`${shown}: ${quote(ramp.name)} is a ${ramp.kind} and has no pipe; say a ramp that has one`)
    return null
  }
  if (!ramp.coping) {
    faults.push(`${shown}: ${quote(ramp.name)} has no pipe; give it \`coping\` in the design file`)
    return null
  }
  return ramp
}

/** Ramps that a notch can be cut in. */
const notchedNames = (ramps: readonly RampDesign[]): readonly string[] =>
  ramps.flatMap((ramp) => (ramp.coping ? [ramp.name] : []))

const known = (names: readonly string[]): string =>
  names.length === 0
    ? 'none has a notch'
    : names.length === 1
      ? `the only one with a notch is ${quote(names[0]!)}`
      : `they are ${names.join(', ')}`

/** The key of the design whose range each measure shares. */
const rangeOf = {
  along: 'coping.notch.along',
  floor: 'coping.notch.along',
  back: 'length',
  down: 'coping.notch.down',
  bottom: 'height.frame',
} as const

const lengthOf = (
  key: AcrossKey | DepthKey,
  said: string,
  units: Units,
  shown: string,
  faults: string[],
): number | null => {
  const reading = readLength(said, units)
  if ('error' in reading) {
    faults.push(`${shown}: \`${key}\`: ${reading.error}`)
    return null
  }
  const fault = implausible(said, reading, rangeAt(`ramps[quarter].${rangeOf[key]}`), units)
  if (fault) faults.push(`${shown}: \`${key}\`: ${fault.fault}`)
  return fault ? null : reading.mm
}

/** What the cuts make of the solved ramps; null where a ramp's pipe could not be solved. */
export const asCuts = (cuts: readonly RampCut[], { ramps }: SolvedDesign): readonly (RampAsCut | null)[] =>
  cuts.map((cut) => {
    const ramp = curvedOf(ramps).find(({ name }) => name === cut.ramp)!
    const sawn = measuredCut(ramp, cut)
    const solved = sawn && solveAsCut(ramp, sawn)
    return solved && { ramp: cut.ramp, ...solved }
  })

/** A shim thinner than this is none. mm */
const nothing = 0.1

/** A shim thicker than this is asked about: a slip of the tape is likelier. mm */
const thick = 15

/** Reveals and what brings them to the wanted ones, a few lines for each notch. */
export const asCutLines = (
  all: readonly (RampAsCut | null)[],
  { ramps }: SolvedDesign,
  units: Units,
): readonly string[] =>
  all.flatMap((one) => {
    if (one === null) return []
    const show = (mm: number): string => showLength(mm, units, { decimals: 1 })
    const { wanted, shims } = one
    const { design } = curvedOf(ramps).find(({ name }) => name === one.ramp)!
    const shim = (where: string, mm: number, face: string): string =>
      mm < -nothing
        ? `${where} none: not deep enough yet, take ${show(-mm)} more off its ${face}`
        : `${where} ${mm > nothing ? show(mm) : 'none'}`
    return [
      '',
      `${one.ramp}, notch as cut: ${show(one.along)} along, ${show(one.down)} down`,
      `  pipe     ${revealWords(one, design, show)}; ` +
        `wanted ${show(wanted.up)} above and ${show(wanted.out)} out`,
      `  shim     ${shim('under the pipe', shims.under, 'floor')}; ${shim('behind it', shims.behind, 'back wall')}`,
      ...(Math.max(Math.abs(shims.under), Math.abs(shims.behind)) > thick
        ? [
            `  asked    is that measured so? The design's notch is ${show(one.along - shims.behind)} along and ${show(one.down - shims.under)} down`,
          ]
        : []),
    ]
  })
