import { kinds, materials } from './design.ts'
import { showRange } from './plausible.ts'
import { isRamp, kindOf, type Row, rowKey, rowTitle, type Value } from './row.ts'
import { rampPath, rowsUnder, schema } from './schema.ts'
import { writeStarter } from './starter.ts'
import { starters } from './starters.ts'

/** docs/design-file.md: the schema in words, with one whole example. */
export const designFileDoc = (): string => {
  const maps = schema.filter((row) => row.path !== '' && rowsUnder(row.path).length > 0)
  const example = starters.find((starter) => starter.name === 'pair-mm')!
  return `${[
    '# The design file',
    '<!-- Written from src/design/schema.ts by `npm run docs`; change it there. -->',
    'A design is a YAML text: keys, a colon and a blank, values. `#` starts a comment. This is a whole one:',
    `\`\`\`yaml\n${writeStarter(example)}\`\`\``,
    '## Lengths',
    [
      'A bare number is read in `units`; every length may carry its own unit.',
      '',
      '| written | read |',
      '|---|---|',
      '| `640`, `0.5`, `.5` | a number, in `units` |',
      '| `3/4`, `17 3/16`, `17-3/16` | an exact fraction, in `units` |',
      '| `17 3/16 in`, `17 3/16"` | inches |',
      '| `5 ft`, `4 ft 7 1/4 in`, `4\'7 1/4"` | feet, feet and inches |',
      '| `18 mm`, `120 cm`, `1.2 m` | millimetres, centimetres, metres |',
      '',
      'Decimals have a point. A pair is `A x B`; a unit behind B holds for both. A sheet is its thickness as measured, not as',
      `sold, and a material: ${materials.map((m) => `\`${m}\``).join(', ')}; plywood where none is said.`,
    ].join('\n'),
    '## Taking over from another ramp',
    [
      '`like: outer` takes over everything that is not said, key by key. A key that excludes others replaces them:',
      '`height: { frame: 600 }` takes the place of `height: { deck: 640 }`, `length` that of `deck`, `notch` that of `up` and',
      '`out`, `width` that of `stores-inside`. A list replaces the whole list. `name` is never taken over; nor are `lip` and',
      '`limits` where a length of its own stands for what is `solve` there, unless it says another figure `solve` that they find.',
      'Only from a ramp of the same kind: a flat takes nothing over from a quarter.',
      '',
      'With `stores-inside` the width follows: the width of the other ramp, less its two outer sides, less the clearance.',
    ].join('\n'),
    '## Leaving a figure to the program',
    [
      'One of height, radius, tangent, toe, deck, length and width of a quarter may be `solve`. With `lip: 48°` the height, the',
      'radius or the tangent is found for that angle, to a whole mm or 1/16 in. With `limits` the figure goes as far as they',
      'allow: the largest height, radius, deck, length or width, the least toe of 12 mm (1/2 in) or more, the tangent nearest to 0.',
      'A thinner toe is taken only where none of these keeps to the limits. Where no value keeps',
      'them, or none meets the angle, the nearest is taken and the check `limits` says what is passed or missed, and which limits',
      'exclude each other; a limit that the figure has no bearing on is left aside, and told. A width needs neither: without them',
      'it is the widest that the timber sold allows. `figures` shows what was found; the file keeps `solve`.',
    ].join('\n'),
    '## Top level',
    table(rowsUnder('')),
    ...maps.filter((row) => !row.path.startsWith('ramps')).flatMap(section),
    ...kinds.flatMap((kind) =>
      maps.filter(({ path }) => path.startsWith(rampPath(kind))).flatMap((row) => section(row)),
    ),
  ].join('\n\n')}\n`
}

const section = (row: Row): readonly string[] => [
  `## ${headOf(row)}`,
  `${row.help[0]!.toUpperCase()}${row.help.slice(1)}.`,
  table(rowsUnder(row.path)),
]

/** `A flat`, `Flat › height`; `stock` outside of ramps. */
const headOf = (row: Row): string => {
  if (isRamp(row)) return `A ${kindOf(row)}`
  const kind = kindOf(row)
  const head = rowTitle(row).replaceAll('.', ' › ').replace('[]', ', each')
  return kind === '' ? head : `${kind[0]!.toUpperCase()}${kind.slice(1)} › ${head}`
}

const table = (rows: readonly Row[]): string =>
  [
    '| key | means | value | where not said | for example |',
    '|---|---|---|---|---|',
    ...rows.map((row) => {
      const examples = [...new Set([row.example.mm, row.example.in])].map((e) => code(e)).join(' / ')
      return `| \`${rowKey(row)}\` | ${row.help} | ${showValue(row)} | ${showUnsaid(row)} | ${examples} |`
    }),
  ].join('\n')

const code = (text: string): string => `\`${text}\``

const showValue = (row: Row): string => [...row.words.map(code), describe(row.value)].join(' or ')

const describe = (value: Value): string => {
  switch (value.kind) {
    case 'length':
      return `a length, ${bothRanges(value)}`
    case 'lengths':
      return `a list of at most ${value.entries} lengths, ${bothRanges(value)} each`
    case 'pair':
      return `a pair, ${bothRanges(value)} each`
    case 'sheet':
      return `a sheet, ${bothRanges(value)} thick`
    case 'sheets':
      return `a list of at most ${value.entries} sheets, ${bothRanges(value)} thick each; may be empty`
    case 'count':
      return `a whole number, ${value.least} to ${value.most}`
    case 'angle':
      return `an angle, ${value.least}° to ${value.most}°`
    case 'angles':
      return `an angle or two with \`..\` between, ${value.least}° to ${value.most}°`
    case 'maps':
      return `a list of ${value.least} to ${value.most}`
    case 'text':
      return `a text of ${value.least} to ${value.most} letters`
    case 'choice':
      return value.of.map(code).join(', ')
    case 'prices':
      return `things and their prices, ${value.least} to ${value.most} each; [how](shopping.md#prices)`
    case 'map':
      return 'keys of its own'
    default:
      return value satisfies never
  }
}

const bothRanges = (value: { readonly least: number; readonly most: number }): string =>
  `${showRange(value, 'mm')} (${showRange(value, 'in')})`

const showUnsaid = ({ unsaid }: Row): string => {
  switch (unsaid.kind) {
    case 'required':
      return 'required'
    case 'keys':
      return 'as its keys say'
    case 'open':
      return unsaid.note
    case 'default': {
      const shown = [unsaid.text.mm, unsaid.text.in].map((text) =>
        code(typeof text === 'string' ? text : `[${text.join(', ')}]`),
      )
      return [...new Set(shown)]
        .map((text, i, all) => (all.length === 1 ? text : `${text} ${i === 0 ? '(mm)' : '(in)'}`))
        .join(', ')
    }
    default:
      return unsaid satisfies never
  }
}
