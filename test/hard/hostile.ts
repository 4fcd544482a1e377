import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { randomFrom } from '../support/random.ts'
import { templates, templateText } from '../support/templates.ts'
import { traceply } from '../support/traceply.ts'
import { planned } from './craft-pdf.ts'
import { peakSince } from './peak.ts'
import { spoiled, spoiledBytes, spoiledJson } from './spoil.ts'

/** One hostile input: a command line, and what it made. */
export interface Hostile {
  readonly kind: string
  readonly args: readonly string[]
  readonly faults: readonly string[]
  /** CPU */
  readonly ms: number
  /** MB; null where the system does not tell */
  readonly peak: number | null
}

/** What attacks start from: a set, its plan, a profile. */
export interface Victims {
  readonly folder: string
  readonly pdf: Uint8Array
  readonly profile: string
}

/** What each may take. */
const most = { ms: 2000, peak: 300 } as const

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

const options = '--paper --cover --margin --overlap --printer --set --every --as-cut'.split(' ')
const words = ['a4', 'line', '10', '12mm', '1,2,3,4', 'BCDF-GHJK-2345', 'shed', 'along=48,down=30']

/** The same number, the same command line; what it reads lies in the victims' folder. */
export const hostileArgs = async (
  number: number,
  victims: Victims,
): Promise<{ readonly kind: string; readonly args: readonly string[] }> => {
  const random = randomFrom(number * 104_729 + 13)
  const among = <T>(of: readonly T[]): T => of[Math.floor(random() * of.length)]!
  const file = (name: string): string => join(victims.folder, name)
  const out = ['--out', file('out.pdf')]
  const kind = among(['design', 'design', 'options', 'profile', 'pdf', 'plan', 'lengths'])
  const args = async (): Promise<readonly string[]> => {
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
          ...(random() < 0.5 ? ['--out', among([out[1]!, file('no/x.pdf'), victims.folder, ''])] : out),
        ]
      case 'profile': {
        const text =
          random() < 0.5
            ? spoiled(victims.profile, random)
            : JSON.stringify(spoiledJson(JSON.parse(victims.profile), random))
        writeFileSync(file('printers/bad.json'), text)
        const given = ['--profiles', file('printers')]
        return among([
          ['gauge', '--show', 'bad', ...given],
          ['square', '--printer', 'bad', ...given, ...out],
          ['reprint', file('set.pdf'), '1', '--printer', 'bad', ...given, ...out],
        ])
      }
      case 'lengths': {
        const [across, down] = [spoiled('149.5mm/150mm', random), spoiled('5 7/8in', random)]
        return ['gauge', 'x', '--across', across, '--down', down, '--profiles', file('new')]
      }
      case 'pdf':
        writeFileSync(file('bad.pdf'), spoiledBytes(victims.pdf, random))
        return ['reprint', file('bad.pdf'), among(['1', 'map', 'A1', 'trial']), ...out]
      default: {
        // its seal made anew, or its text torn with the end of the file
        const head = victims.pdf.length - 3000
        const tail = Buffer.from(victims.pdf.subarray(head)).toString('latin1')
        const bytes =
          random() < 0.6
            ? await planned(victims.pdf, (plan) => spoiledJson(plan, random) as object | null)
            : Buffer.concat([victims.pdf.subarray(0, head), Buffer.from(spoiled(tail, random), 'latin1')])
        writeFileSync(file('bad.pdf'), bytes)
        return ['reprint', file('bad.pdf'), among(['1', '99', 'map']), ...out]
      }
    }
  }
  return { kind, args: await args() }
}

export const hostileCase = async (number: number, victims: Victims): Promise<Hostile> => {
  const { kind, args } = await hostileArgs(number, victims)
  const out = join(victims.folder, 'out.pdf')
  rmSync(out, { force: true })
  peakSince()
  const start = process.cpuUsage()
  const faults: string[] = []
  try {
    const said = await traceply(...args)
    faults.push(...saidFaults(said))
    if (said.exit !== 0 && existsSync(out)) faults.push('a file is left')
  } catch (error) {
    faults.push(`throws ${String((error as Error).stack).slice(0, 300)}`)
  }
  const { user, system } = process.cpuUsage(start)
  const [ms, peak] = [(user + system) / 1000, peakSince()]
  if (ms > most.ms) faults.push(`takes ${Math.round(ms)} ms`)
  if (peak !== null && peak > most.peak) faults.push(`takes ${Math.round(peak)} MB`)
  rmSync(join(victims.folder, 'new'), { recursive: true, force: true })
  return {
    kind,
    args,
    faults: faults.map((fault) => `${fault}: ${JSON.stringify(args).slice(0, 300)}`),
    ms,
    peak,
  }
}

/** What no input may make the program say, or end with. */
export const saidFaults = (said: {
  readonly exit: number
  readonly out: string
  readonly err: string
}): readonly string[] => [
  ...([0, 1, 2].includes(said.exit) ? [] : [`exit ${said.exit}`]),
  ...(said.exit !== 0 && said.err === '' && said.out === '' ? ['no message'] : []),
  ...(/\n\s+at \S.*:\d+:\d+|\bNaN\b|\bundefined\b|\[object/.test(said.err)
    ? [`says ${said.err.slice(0, 200)}`]
    : []),
  ...(/(?![\n\t])\p{Cc}/u.test(said.err + said.out) ? ['a control character reaches the terminal'] : []),
  ...(said.err.length > 20_000 ? ['words without end'] : []),
]
