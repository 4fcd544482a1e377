import { sectionNames } from '../../booklet/book/booklet.ts'
import type { BookPage } from '../../booklet/book/pages.ts'
import { bookletInput, bookletJob } from '../../job/booklet.ts'
import { readLaying } from '../../job/laying-words.ts'
import { countWords } from '../../length/count-words.ts'
import { nearWord } from '../../length/near.ts'
import { quote } from '../../length/quote.ts'
import { command, type Given } from '../command.ts'
import { done } from '../done.ts'
import { loadDesign, nameOf } from '../load-design.ts'
import {
  coverOption,
  forceOption,
  marginOption,
  oneOfWords,
  overlapOption,
  paperOption,
  profilesOption,
} from '../options.ts'
import { pdfOut } from '../pdf/pdf-out.ts'
import { pdfOf } from '../pdf/write-pdf.ts'
import { sha256 } from '../platform.ts'
import { givenProfile } from '../profiles.ts'
import type { Shell } from '../shell.ts'
import { tellBriefly } from '../words/show-checks.ts'

/** Those of `plot` too: the booklet draws and counts the pages of that set. */
const rows = [
  paperOption,
  coverOption,
  marginOption,
  overlapOption,
  { name: 'printer', takes: 'name', help: 'the pages to tape as they are laid for this printer' },
  profilesOption,
  {
    name: 'only',
    takes: 'parts',
    help: `these parts alone, with commas: ${oneOfWords(sectionNames)}`,
  },
  { name: 'pages', help: 'list the pages, write nothing' },
  {
    name: 'out',
    takes: 'file',
    help: 'where to write the PDF, `-` for standard output; else beside you, named after the design',
  },
  forceOption,
] as const

export const bookletCommand = command({
  name: 'booklet',
  help: 'write the pages for the bench as a PDF: drawings, tables, steps, checks and cautions',
  args: [{ name: 'design', help: 'design file' }],
  options: rows,
  run: ([file], given, shell) => booklet(file, given, shell),
})

/** Drawings, tables and steps for the bench. Writes nothing where a check says stop. */
const booklet = async (file: string, options: Given<typeof rows>, shell: Shell): Promise<number> => {
  const { design } = loadDesign(file)
  const faults: string[] = []
  const only = options.only === undefined ? null : partsOf(options.only, faults)
  const laying = done(readLaying(options, givenProfile(options), design, faults))
  const out = options.pages
    ? null
    : pdfOut(options.out ?? `${nameOf(file)}-booklet.pdf`, options, shell, file)
  const several = design.ramps.length > 1
  const job = done(bookletJob(design, laying, { only, fingerprint: sha256 }), {
    file,
    several,
    done: 'build',
  })
  const { pages, solved } = job
  const begun = pages.flatMap(({ begins }) => begins.map(({ name }) => name))
  const notes = [...new Set(only ?? [])]
    .filter((part) => !begun.includes(part))
    .map((part) => `${quote(part)}: this design has nothing for it`)
  if (out === null) {
    shell.out(list(pages))
    for (const note of notes) shell.err(`note  ${note}\n`)
    return 0
  }
  const { bytes, warnings } = await pdfOf(bookletInput(design, job, laying.sheet))
  out.write(bytes)
  const { name } = laying.sheet.paper
  out.say(`${out.name}: ${countWords(pages.length, 'page')} on ${name}.\n${list(pages)}`)
  tellBriefly(shell, { checks: solved.checks, several, file, lost: [...laying.warnings, ...warnings], notes })
  return 0
}

const partsOf = (said: string, faults: string[]): readonly string[] =>
  said.split(',').flatMap((word) => {
    const part = word.trim().toLowerCase()
    if (sectionNames.includes(part)) return [part]
    const near = nearWord(part, sectionNames)
    faults.push(
      `--only ${quote(part)} is no part of the booklet${near ? `; did you mean \`${near}\`?` : ''} (${sectionNames.join(', ')})`,
    )
    return []
  })

/** A line for each part: where it begins, what `--only` calls it, its title. */
const list = (pages: readonly BookPage[]): string =>
  pages
    .flatMap(({ begins }, i) =>
      begins.map(({ name, title }) => `  page ${`${i + 1}`.padStart(2)}  ${name.padEnd(8)} ${title}\n`),
    )
    .join('')
