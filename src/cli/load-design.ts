import { basename, extname } from 'node:path'
import type { Design } from '../design/design.ts'
import type { Problem } from '../design/problem.ts'
import { showProblem } from '../design/show-problem.ts'
import { type Answer, readSettled } from '../job/settle/settle.ts'
import { countWords } from '../length/count-words.ts'
import { Failure } from './failure.ts'
import { readText } from './files.ts'

export interface Loaded {
  readonly design: Design
  readonly text: string
  /** the figures that the file leaves to the program */
  readonly answers: readonly Answer[]
}

/** What files made of a design are named after. */
export const nameOf = (file: string): string => (file === '-' ? 'ramp' : basename(file, extname(file)))

/** A checked design and its text, what it leaves open found. Fails with every problem of the file at once. */
export const loadDesign = (file: string): Loaded => {
  const text = readText(file)
  const reading = readSettled(text)
  if ('problems' in reading) {
    const { problems } = reading
    const count = countWords(problems.length, 'problem')
    throw new Failure(
      1,
      [
        ...problems.map((problem) => showProblem(withCommand(problem), text, file)),
        `${count} in ${file}; nothing written`,
      ].join('\n'),
    )
  }
  return { ...reading, text }
}

/** The core knows of no command line: what a command would cure is said here. */
const withCommand = (problem: Problem): Problem =>
  problem.code === 'empty'
    ? { ...problem, message: `${problem.message}; \`traceply new quarter\` writes one to start from` }
    : problem
