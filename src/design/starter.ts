import type { Units } from '../length.ts'
import { kinds, type RampKind } from './design.ts'
import { rampPath, rowAt } from './schema.ts'

/** A design to start from, as data; the schema adds what each key means. */
export interface Starter {
  /** also the name of its file in templates/ */
  readonly name: string
  readonly kind: RampKind
  /** one line: whom it is for */
  readonly about: string
  readonly units: Units
  readonly title: string
  /** other keys of the file, before its ramps */
  readonly top?: StarterMap
  readonly ramps: readonly StarterMap[]
}

/** Keys in the order in which they are written; values as they would be typed. */
export interface StarterMap {
  readonly [key: string]: string | readonly string[] | StarterMap
}

/** column at which the comments start, where the value leaves room */
const commentColumn = 36

/** The starter as a commented design file. */
export const writeStarter = (starter: Starter): string => {
  const { about, title, units, top, ramps } = starter
  const lines = [
    `# ${about}`,
    '# Lengths: 17 3/16, 4 ft 7 1/4 in, 1.2 m, 18 mm; a number without a unit is read in `units`.',
    '# All keys, defaults and allowed values: docs/design-file.md',
    '',
    ...mapLines({ title, units, ...top }, '', ''),
    ...offeredLines(
      offered.filter((key) => top?.[key] === undefined),
      '',
      '',
      units,
    ),
    commented('ramps:', 'ramps'),
  ]
  for (const ramp of ramps) {
    const kind = kinds.find((known) => known === ramp.kind) ?? starter.kind
    const [first, ...rest] = mapLines(ramp, rampPath(kind), '    ')
    lines.push(`  - ${first!.trimStart()}`, ...rest)
    // wheels stand on the cut of the back bottom corner
    if (ramp.chamfer !== undefined && ramp.wheels === undefined)
      lines.push(...offeredLines(['wheels'], rampPath(kind), '    ', units))
  }
  return `${lines.join('\n')}\n`
}

/** Keys that a builder comes to later: they stand in the file as comments, and work when the first # is taken away. */
const offered = ['prices', 'space'] as const

const offeredLines = (
  keys: readonly string[],
  path: string,
  indent: string,
  units: Units,
): readonly string[] =>
  keys.map((key) => {
    const at = path === '' ? key : `${path}.${key}`
    return commented(`${indent}# ${key}: ${rowAt(at).example[units]}`, at)
  })

const mapLines = (map: StarterMap, path: string, indent: string): readonly string[] =>
  Object.entries(map).flatMap(([key, value]) => {
    const at = path === '' ? key : `${path}.${key}`
    if (typeof value === 'string') return [commented(`${indent}${key}: ${yamlScalar(value)}`, at)]
    if (isList(value)) return [commented(`${indent}${key}: [${value.map(yamlScalar).join(', ')}]`, at)]
    return [commented(`${indent}${key}:`, at), ...mapLines(value, at, `${indent}  `)]
  })

const isList = (value: readonly string[] | StarterMap): value is readonly string[] => Array.isArray(value)

const commented = (line: string, path: string): string =>
  `${line.padEnd(commentColumn - 2)}  # ${rowAt(path).help}`

/** In quotes where YAML would take it for something else than this text. */
const yamlScalar = (text: string): string =>
  /^[\p{L}\d.](?:[^:#[\]{},\p{Cc}]*[^:#[\]{},\s\p{Cc}])?$/u.test(text) ? text : JSON.stringify(text)
