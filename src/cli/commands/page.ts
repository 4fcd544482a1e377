import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { command, type Given } from '../command.ts'
import { Failure } from '../failure.ts'
import { checkNamed, writeOut } from '../files.ts'
import { loadDesign } from '../load-design.ts'
import { forceOption } from '../options.ts'
import type { Shell } from '../shell.ts'

const options = [
  { name: 'out', takes: 'file', otherwise: 'traceply.html', help: 'where to write it' },
  forceOption,
] as const

export const pageCommand = command({
  name: 'page',
  help: 'write the program as one page for a browser, with a design in it: a double click opens it, without a network',
  args: [{ name: 'design', optional: true, help: 'design file that it starts with' }],
  options,
  run: ([file], given, shell) => writePage(file, given, shell),
})

/** Where a design stands in the page that was built. */
const place = '<script type="text/plain" id="design"></script>'

/** Beside the program when it is installed; in the project's `dist` when its sources run. */
const builtPage = (): string => {
  for (const path of [join(__dirname, 'traceply.html'), join(__dirname, '../../../dist/traceply.html')])
    try {
      return readFileSync(path, 'utf8')
    } catch {
      // the other place
    }
  throw new Failure(2, 'there is no traceply.html beside the program: npm run build makes it')
}

const writePage = (
  file: string | undefined,
  { out = 'traceply.html', force = false }: Given<typeof options>,
  shell: Shell,
): number => {
  // read as every command reads it, so that a fault is told here and not in the browser
  const text = file === undefined ? null : loadDesign(file).text
  checkNamed(out, { is: 'a page for a browser', endings: ['.html', '.htm'] }, force, file ?? '')
  const page = builtPage()
  if (!page.includes(place)) throw new Failure(2, 'that traceply.html is of another version: npm run build')
  // a `<` could end the element that holds it
  const held = text === null ? '' : JSON.stringify(text).replaceAll('<', '\\u003c')
  writeOut(
    out,
    page.replace(place, () => place.replace('></', `>${held}</`)),
    force,
  )
  shell.out(`Wrote ${out}: open it with a double click. Nothing leaves this machine.\n`)
  return 0
}
