import { countWords } from '../../length/count-words.ts'
import { alikeChecks } from '../../ramp/check/alike.ts'
import { type Check, hasStop, levelWords } from '../../ramp/check/check.ts'
import type { Shell } from '../shell.ts'
import { typedName } from './typed-name.ts'
import { wrap } from './wrap.ts'

/** Checks as the terminal shows them, one after the other; what holds for several ramps alike is said once. */
export const showChecks = (checks: readonly Check[], several: boolean): readonly string[] =>
  alikeChecks(checks).map(([{ id, level, message }, ramps]) =>
    wrap(`${levelWords[level].padEnd(5)} ${several ? `${ramps.join(', ')}: ` : ''}${message} [${id}]`),
  )

/**
 * For commands whose own words count: stops alone; without one, what to watch, and how many notes `figures` has of the design in `file`,
 * which alone looks for near misses.
 */
export const showBriefly = (checks: readonly Check[], several: boolean, file: string): readonly string[] => {
  const of = (level: Check['level']): readonly string[] =>
    showChecks(
      checks.filter((check) => check.level === level),
      several,
    )
  if (hasStop(checks)) return of('stop')
  const notes = of('note').length
  const counted = `${countWords(notes, 'note')}: \`traceply figures ${typedName(file)}\` shows ${notes === 1 ? 'it' : 'them'}, and looks for what a small change would save`
  return [...of('warn'), ...(notes > 0 ? [counted] : [])]
}

/** What a title could not hold is not told again of the line that begins with it. */
const saidOnce = (lost: readonly string[]): readonly string[] =>
  lost.filter((warning) => {
    const [, text, more] = /^“(.*)”(: .*)$/s.exec(warning) ?? []
    return !lost.some((other) => {
      const [, begun, same] = /^“(.*)”(: .*)$/s.exec(other) ?? []
      return begun !== undefined && same === more && text!.startsWith(`${begun}: `)
    })
  })

/** The same on the terminal, then what a PDF could not hold, then other notes. */
export const tellBriefly = (
  shell: Shell,
  {
    checks,
    several,
    file,
    lost,
    notes = [],
  }: {
    readonly checks: readonly Check[]
    readonly several: boolean
    readonly file: string
    readonly lost: readonly string[]
    readonly notes?: readonly string[]
  },
): void => {
  for (const line of [
    ...showBriefly(checks, several, file),
    ...saidOnce(lost).map((warning) => wrap(`watch ${warning}`)),
    ...notes.map((note) => `note  ${note}`),
  ])
    shell.err(`${line}\n`)
}
