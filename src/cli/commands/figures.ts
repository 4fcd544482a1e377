import { hasStop } from '../../ramp/check.ts'
import { designFigures } from '../../ramp/figures.ts'
import { solveDesign } from '../../ramp/solve.ts'
import { figuresTable } from '../figures-table.ts'
import { writeOut } from '../files.ts'
import { loadDesign } from '../load-design.ts'
import type { Shell } from '../shell.ts'

export interface FiguresOptions {
  readonly json?: boolean
  readonly out?: string
  readonly force?: boolean
}

/** What the ramp comes out as, and what will not work. Exit 1 when something stops it. */
export const figures = (file: string, options: FiguresOptions, shell: Shell): number => {
  const { design } = loadDesign(file)
  const solved = solveDesign(design)
  const text = options.json
    ? `${JSON.stringify(designFigures(design, solved), null, 2)}\n`
    : figuresTable(design, solved)
  if (options.out === undefined) shell.out(text)
  else writeOut(options.out, text, options.force ?? false)
  return hasStop(solved.checks) ? 1 : 0
}
