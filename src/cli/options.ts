import { paperNames } from '../design/design.ts'
import { units } from '../length/units.ts'
import { type Cover, covers } from '../page/cover/cover.ts'
import type { OptionRow } from './command.ts'

/** `a`, `b` or `c` */
export const oneOfWords = (words: readonly string[]): string => {
  const coded = words.map((word) => `\`${word}\``)
  return coded.length < 2 ? coded.join('') : `${coded.slice(0, -1).join(', ')} or ${coded.at(-1)}`
}

export const paperWords = oneOfWords(paperNames)
export const unitsWords = oneOfWords(units)

const coverMeans: Readonly<Record<Cover, string>> = {
  whole: 'every page the outline touches',
  line: 'only what is traced',
  ribbon: 'the same in rows that follow the curve',
}

/** Options that several commands share, each said once. */
export const jsonOption = { name: 'json', help: 'print JSON alone, in mm and degrees' } as const
export const planOption = {
  name: 'json',
  help: 'print the plan of the pages as JSON in place of the words; the PDF is written all the same',
} as const
export const forceOption = { name: 'force', help: 'replace a file that exists' } as const
export const profilesOption = {
  name: 'profiles',
  takes: 'folder',
  help: 'folder of the measured printers; else your own configuration folder',
} as const

export const marginOption = {
  name: 'margin',
  takes: 'lengths',
  help:
    'one length, or four with commas: top, right, bottom, left of the upright page; else, with `--printer`, its gauged ' +
    'margins and 1 mm more; else 12.7 mm on inch papers, 10 mm on A papers',
} as const

export const paperOption = {
  name: 'paper',
  takes: 'name',
  help: `${paperWords}; else as the design says`,
} as const

export const coverOption = {
  name: 'cover',
  takes: 'how',
  help: `${covers.map((cover) => `\`${cover}\`: ${coverMeans[cover]}`).join('; ')}; else the way a careful builder would take`,
  more: '[What they are](docs/printing.md#how-much-to-print)',
} as const

export const overlapOption = {
  name: 'overlap',
  takes: 'length',
  help: 'how far pages lie over each other; else 12 mm',
} as const

/** How pages are laid: for `plot`, and for whatever lays the same set again. */
export const layingOptions = [
  paperOption,
  coverOption,
  {
    name: 'strips',
    help: 'add story strips at full size for what is bent or uneven: studs, seams, rows of screws; the rest is told for a tape',
    more: '[What they are for](docs/printing.md#story-strips)',
  },
  {
    name: 'pack',
    help: 'let small parts share pages: lip trials, strips that measure the pipe, story strips',
    more: '[How](docs/printing.md#small-parts-on-shared-pages)',
  },
  marginOption,
  overlapOption,
] as const satisfies readonly OptionRow[]
