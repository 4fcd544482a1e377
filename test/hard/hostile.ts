import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { randomFrom } from '../support/random.ts'
import { templates, templateText } from '../support/templates.ts'
import { traceply } from '../support/traceply.ts'

/** One hostile input: a command line, and what it made. */
export interface Hostile {
  readonly kind: string
  readonly faults: readonly string[]
  readonly ms: number
}

/** What attacks start from: a set, its plan, a profile. */
export interface Victims {
  readonly folder: string
  readonly pdf: Uint8Array
  readonly profile: string
}

export const victimsIn = async (folder: string): Promise<Victims> => {
  mkdirSync(join(folder, 'printers'), { recursive: true })
  const design = join(folder, 'whole.yaml')
  writeFileSync(design, templateText('quarter-mm'))
  const set = join(folder, 'set.pdf')
  await traceply('plot', design, '--paper', 'a3', '--cover', 'line', '--out', set, '--force')
  const sides = ['--across', '149mm', '--down', '150.5mm']
  await traceply('gauge', 'shed', ...sides, '--profiles', join(folder, 'printers'), '--force')
  return {
    folder,
    pdf: new Uint8Array(readFileSync(set)),
    profile: readFileSync(join(folder, 'printers', 'shed.json'), 'utf8'),
  }
}

const pieces = [
  ...[
    '\u0000',
    '\u001b[31m',
    '\ufeff',
    '\ud800',
    '\u202e',
    '🛹',
    '\t',
    '"',
    "'",
    '`',
    '\\',
    '\n',
    ':',
    '- ',
    '{',
    ']',
  ],
  ...[
    '&a *a',
    '!!js/function',
    '<<: *a',
    '%YAML',
    '---',
    '...',
    '|',
    '>',
    '?',
    '#',
    '~',
    'null',
    '__proto__',
    'nan',
  ],
  ...[
    '1e999',
    '-0',
    '0x10',
    '9'.repeat(400),
    '1/0',
    '3/4/5',
    '17 3/16 in',
    '١٢',
    'Infinity',
    '.',
    '-',
    '1..2',
    ',',
    '½',
  ],
]

/** A text with some of it cut, doubled, swapped, or replaced by what programs stumble over. */
const spoiled = (text: string, random: () => number): string => {
  const at = (): number => Math.floor(random() * (text.length + 1))
  const piece = (): string => pieces[Math.floor(random() * pieces.length)]!
  let out = text
  for (let left = 1 + Math.floor(random() * 3); left > 0; left--) {
    const [from, to] = [at(), at()].sort((a, b) => a - b) as [number, number]
    switch (Math.floor(random() * 5)) {
      case 0:
        out = out.slice(0, from) + piece() + out.slice(from)
        break
      case 1:
        out = out.slice(0, from) + out.slice(Math.min(to, from + 40))
        break
      case 2:
        out = out.slice(0, from) + out.slice(from, Math.min(to, from + 200)).repeat(2) + out.slice(from)
        break
      case 3:
        out =
          out.slice(0, from) +
          piece().repeat(1 + Math.floor(random() * 50)) +
          out.slice(Math.min(to, from + 5))
        break
      default:
        out = out.replace(/\d+(?=\D*$)/, piece())
    }
  }
  return out
}

const spoiledBytes = (bytes: Uint8Array, random: () => number): Uint8Array => {
  const out = Uint8Array.from(bytes)
  const at = (): number => Math.floor(random() * out.length)
  if (random() < 0.3) return out.slice(0, at())
  for (let left = 1 + Math.floor(random() * 8); left > 0; left--) out[at()] = Math.floor(random() * 256)
  return out
}

const options = [
  '--paper',
  '--cover',
  '--margin',
  '--overlap',
  '--printer',
  '--set',
  '--every',
  '--as-cut',
] as const
const words = ['a4', 'line', '10', '12mm', '1,2,3,4', 'BCDF-GHJK-2345', 'shed', 'along=48,down=30']

/** The same number, the same case. */
export const hostileCase = async (number: number, victims: Victims): Promise<Hostile> => {
  const random = randomFrom(number * 104_729 + 13)
  const { folder } = victims
  const among = <T>(of: readonly T[]): T => of[Math.floor(random() * of.length)]!
  const file = (name: string): string => join(folder, name)
  const kind = among(['design', 'design', 'options', 'profile', 'pdf', 'plan', 'lengths'])
  const out = file('out.pdf')
  rmSync(out, { force: true })
  const args = ((): readonly string[] => {
    switch (kind) {
      case 'design':
        writeFileSync(file('bad.yaml'), spoiled(templateText(among(templates)), random))
        return among([
          ['figures', file('bad.yaml')],
          ['figures', file('bad.yaml'), '--json'],
          ['offsets', file('bad.yaml')],
        ])
      case 'options':
        return [
          among(['plot', 'offsets', 'figures', 'square', 'reprint', 'gauge', 'new']),
          ...(random() < 0.8 ? [file('whole.yaml')] : []),
          among(options),
          spoiled(among(words), random),
          ...(random() < 0.5 ? ['--out', among([out, file('no/x.pdf'), folder, ''])] : ['--out', out]),
        ]
      case 'profile':
        writeFileSync(file('printers/bad.json'), spoiled(victims.profile, random))
        return ['gauge', '--show', 'bad', '--profiles', file('printers')]
      case 'lengths':
        return [
          'gauge',
          'x',
          '--across',
          spoiled('149.5mm/150mm', random),
          '--down',
          spoiled('5 7/8in', random),
          '--profiles',
          file('new'),
        ]
      case 'pdf':
        writeFileSync(file('bad.pdf'), spoiledBytes(victims.pdf, random))
        return ['reprint', file('bad.pdf'), among(['1', 'map', 'A1', 'trial']), '--out', out]
      default: {
        const text = Buffer.from(victims.pdf).toString('latin1')
        writeFileSync(file('bad.pdf'), Buffer.from(spoiled(text.slice(-3000), random), 'latin1'))
        const whole = text.slice(0, -3000) + readFileSync(file('bad.pdf'), 'latin1')
        writeFileSync(file('bad.pdf'), Buffer.from(whole, 'latin1'))
        return ['reprint', file('bad.pdf'), '1', '--out', out]
      }
    }
  })()
  const start = performance.now()
  const faults: string[] = []
  try {
    const said = await traceply(...args)
    if (![0, 1, 2].includes(said.exit)) faults.push(`exit ${said.exit}`)
    if (said.exit !== 0 && said.err === '' && said.out === '') faults.push('no message')
    if (/\n\s+at \S.*:\d+:\d+|\bNaN\b|\bundefined\b|\[object/.test(said.err))
      faults.push(`says ${said.err.slice(0, 200)}`)
    if (/(?![\n\t])\p{Cc}/u.test(said.err + said.out)) faults.push('a control character reaches the terminal')
    if (said.exit !== 0 && existsSync(out)) faults.push('a file is left')
  } catch (error) {
    faults.push(`throws ${String((error as Error).stack).slice(0, 300)}`)
  }
  rmSync(file('new'), { recursive: true, force: true })
  return {
    kind,
    faults: faults.map((fault) => `${fault}: ${JSON.stringify(args).slice(0, 300)}`),
    ms: performance.now() - start,
  }
}
