import { harmless } from '../length/quote.ts'
import type { Problem } from './problem.ts'

/** letters of a line of the file that are shown */
const mostShown = 100
/** letters kept before the fault where a line is longer */
const lead = 30

/**
 * The problem as people read it: `file:line:column: message`, the line of the file, and `^^^` under what is meant. Nothing
 * of it can move a terminal's cursor or change its colours.
 */
export const showProblem = (problem: Problem, text: string, fileName: string): string => {
  const { line, column, offset, end } = problem.place
  const head = `${harmless(fileName)}:${line}:${column}: ${harmless(problem.message)}`
  const lineStart = offset - (column - 1)
  const newline = text.slice(lineStart).search(/[\r\n]/)
  const lineEnd = newline < 0 ? text.length : lineStart + newline
  const from = column - 1 > mostShown - lead ? offset - lead : lineStart
  const to = Math.min(lineEnd, from + mostShown)
  if (to <= from) return head

  const before = from > lineStart ? '…' : ''
  const after = to < lineEnd ? '…' : ''
  const blanks = ' '.repeat(lettersOf(before + harmless(text.slice(from, offset))))
  const marks = '^'.repeat(Math.max(1, lettersOf(harmless(text.slice(offset, Math.min(end, to))))))
  return `${head}\n  ${before}${harmless(text.slice(from, to))}${after}\n  ${blanks}${marks}`
}

const lettersOf = (text: string): number => [...text].length
