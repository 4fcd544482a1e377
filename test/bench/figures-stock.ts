import { readFileSync } from 'node:fs'
import { coverDesign } from '../../src/job/covering.ts'
import { figuresJob } from '../../src/job/figures.ts'
import { usualLaying } from '../../src/job/laying.ts'
import { rampChoices } from '../../src/job/ramp-choices.ts'
import { readSettled } from '../../src/job/settle/settle.ts'
import { solveDesign } from '../../src/ramp/solve.ts'

/**
 * Once, as a process of its own: the figures of a design `with` their panels, timber, weight and storing, or `without`: solved, covered,
 * what else a ramp could be. Near misses, which ask panels again, are in neither. Arguments: `figures`, which, the design.
 */
const [which, file] = process.argv.slice(3) as [string, string]
const reading = readSettled(readFileSync(file, 'utf8'))
if ('problems' in reading) throw new Error(JSON.stringify(reading.problems))
const { design, answers } = reading
if (which === 'with') figuresJob(design, [], answers)
else {
  const solved = solveDesign(design)
  if (solved.stopped) throw new Error('a check says stop')
  coverDesign(design, solved, usualLaying(design.paper))
  for (const ramp of solved.ramps) rampChoices(ramp, design.units, design.stock)
}
