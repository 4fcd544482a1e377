import type { Place, Problem } from './problem.ts'

export type Report = (
  code: string,
  path: string,
  place: Place,
  message: string,
  meant?: string | undefined,
) => void

/** Beyond this many the file is something else than a design; the rest is not kept. */
const mostProblems = 100

/** A list of problems and the function that fills it. */
export const problemReport = (): { readonly problems: readonly Problem[]; readonly report: Report } => {
  const problems: Problem[] = []
  const report: Report = (code, path, place, message, meant) => {
    if (problems.length < mostProblems)
      problems.push({ code, path, place, message, ...(meant !== undefined && { meant }) })
  }
  return { problems, report }
}
