import type { Design } from '../design/design.ts'
import { readDesign } from '../design/read.ts'
import { showProblem } from '../design/show-problem.ts'
import { Failure } from './failure.ts'
import { readText } from './files.ts'

/** A checked design and its text. Fails with every problem of the file at once. */
export const loadDesign = (file: string): { readonly design: Design; readonly text: string } => {
  const text = readText(file)
  const reading = readDesign(text)
  if ('problems' in reading) {
    const { problems } = reading
    const count = problems.length === 1 ? '1 problem' : `${problems.length} problems`
    throw new Failure(
      1,
      [
        ...problems.map((problem) => showProblem(problem, text, file)),
        `${count} in ${file}; nothing written`,
      ].join('\n'),
    )
  }
  return { design: reading.design, text }
}
