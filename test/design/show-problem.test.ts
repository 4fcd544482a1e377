import { expect, it } from 'vitest'
import type { Problem } from '../../src/design/problem.ts'
import { showProblem } from '../../src/design/show-problem.ts'
import { change, problemsOf, single } from './sample.ts'

/** A problem with `what`, which stands in the text once. */
const at = (text: string, what: string, message = 'not good'): Problem => {
  const offset = text.indexOf(what)
  const before = text.slice(0, offset).split('\n')
  const place = { line: before.length, column: before.at(-1)!.length + 1, offset, end: offset + what.length }
  return { code: 'x', path: '', place, message }
}

it('shows file, line, column, the line and a pointer', () => {
  const text = change(single, 'height', 'hieght')
  expect(problemsOf(text).map((problem) => showProblem(problem, text, 'low.yaml'))).toEqual([
    'low.yaml:5:5: unknown key `hieght`; did you mean `height`?\n' +
      '      hieght: { deck: 640 }\n' +
      '      ^^^^^^',
  ])
})

it('counts lines that end with a carriage return alone', () => {
  const text = change(single, 'height', 'hieght').replaceAll('\n', '\r')
  expect(problemsOf(text).map((problem) => showProblem(problem, text, 'low.yaml'))[0]).toBe(
    'low.yaml:5:5: unknown key `hieght`; did you mean `height`?\n' +
      '      hieght: { deck: 640 }\n' +
      '      ^^^^^^',
  )
})

it('points to the end of the line at most', () => {
  const text = 'a:\r\n  one\r\n  two\r\n'
  expect(showProblem(at(text, 'one\r\n  two'), text, 'f')).toBe('f:2:3: not good\n    one\n    ^^^')
})

it('shows about a hundred letters of a long line, the fault among them', () => {
  const text = `${'x'.repeat(500)}HERE${'y'.repeat(500)}`
  const [head, line, pointer] = showProblem(at(text, 'HERE'), text, 'f').split('\n')
  expect(head).toBe('f:1:501: not good')
  expect(line).toHaveLength(2 + 1 + 100 + 1)
  expect(line!.slice(pointer!.indexOf('^'), pointer!.lastIndexOf('^') + 1)).toBe('HERE')
  const start = `HERE${'y'.repeat(500)}`
  expect(showProblem(at(start, 'HERE'), start, 'f').split('\n')[1]).toBe(`  HERE${'y'.repeat(96)}…`)
})

it('a tab is a blank, so that the pointer stands right; letters beyond 16 bits count once', () => {
  const text = '\ta:\t🛹 bad'
  expect(showProblem(at(text, 'bad'), text, 'f')).toBe('f:1:8: not good\n   a: 🛹 bad\n        ^^^')
})

it('nothing of the file, its name or the message reaches the terminal raw', () => {
  const text = 'a: \u001b]0;owned\u0007\u202e\u009b31m bad'
  const shown = showProblem(at(text, 'bad', 'oh \u001b[31m'), text, 'evil\u001b[2J\n.yaml')
  expect(shown.replaceAll('\n', '')).toMatch(/^\P{C}*$/u)
  expect(shown.split('\n')).toHaveLength(3)
})

it('where there is no line, there is no pointer', () => {
  expect(showProblem(at('', ''), '', 'f')).toBe('f:1:1: not good')
})
