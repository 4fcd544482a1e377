import { squareJob } from '../../job/proving/square.ts'
import { squareSideIn } from '../../page/pages/square-page.ts'
import { sheetWindow } from '../../page/sheet/sheet.ts'
import { command, type Given } from '../command.ts'
import { done } from '../done.ts'
import { forceOption, marginOption, paperWords, planOption, profilesOption, unitsWords } from '../options.ts'
import { pdfOut } from '../pdf/pdf-out.ts'
import { writeSet } from '../pdf/write-set.ts'
import { sha256 } from '../platform.ts'
import { givenProfile } from '../profiles.ts'
import type { Shell } from '../shell.ts'

const rows = [
  {
    name: 'paper',
    takes: 'name',
    help: `${paperWords}; else the paper that \`--printer\` was measured on, else A4, or letter with \`--units in\``,
  },
  { name: 'units', takes: 'units', help: `${unitsWords}, for the figures beside the rulers` },
  marginOption,
  { name: 'printer', takes: 'name', help: 'print it with the correction of this printer, to prove that' },
  profilesOption,
  {
    name: 'out',
    takes: 'file',
    otherwise: 'square.pdf',
    help: 'where to write the PDF, `-` for standard output',
  },
  forceOption,
  planOption,
] as const

export const squareCommand = command({
  name: 'square',
  help: 'write one page that proves a printer: a true square, rulers, combs for the margins',
  args: [],
  options: rows,
  run: (_, given, shell) => square(given, shell),
})

/** One page that proves a printer, or its correction. */
const square = async (raw: Given<typeof rows>, shell: Shell): Promise<number> => {
  const job = done(squareJob(raw, givenProfile(raw), sha256))
  const { sheet, printer, warnings } = job.laying
  const out = pdfOut(raw.out ?? 'square.pdf', raw, shell)
  const { set } = job
  const lost = await writeSet(set, 'Test square', out)
  if (raw.json) shell.out(`${JSON.stringify(set.plan, null, 2)}\n`)
  else
    out.say(
      [
        `${out.name}: one page on ${sheet.paper.name}${printer === null ? '' : `, corrected for ${printer}`}.`,
        '1. Print it at 100 %, never "fit to page", from the tray you will use.',
        '2. Measure both sides of the square and both diagonals with a steel rule, from mark to mark.',
        printer === null
          ? '3. Type the `gauge` command printed on the page with your figures.'
          : `3. Both sides should now read ${squareSideIn(sheetWindow(sheet))} mm, and both diagonals the same.`,
        '',
      ].join('\n'),
    )
  for (const warning of [...warnings, ...lost]) shell.err(`watch ${warning}\n`)
  return 0
}
