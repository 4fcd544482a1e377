import { alikeChecks } from '../ramp/check/alike.ts'
import { type Check, hasStop } from '../ramp/check/check.ts'
import type { Shell } from './shell.ts'
import { wrap } from './wrap.ts'

const words = { stop: 'STOP', warn: 'watch', note: 'note' } as const

/** Checks as the terminal shows them, one after the other; what holds for several ramps alike is said once. */
export const showChecks = (checks: readonly Check[], several: boolean): readonly string[] =>
  alikeChecks(checks).map(([{ id, level, message }, ramps]) =>
    wrap(`${words[level].padEnd(5)} ${several ? `${ramps.join(', ')}: ` : ''}${message} [${id}]`),
  )

/** For commands whose own words count: stops alone; without one, what to watch, and how many notes `figures` has. */
export const showBriefly = (checks: readonly Check[], several: boolean): readonly string[] => {
  const of = (level: Check['level']): readonly string[] =>
    showChecks(
      checks.filter((check) => check.level === level),
      several,
    )
  if (hasStop(checks)) return of('stop')
  const notes = of('note').length
  const counted = `${notes === 1 ? '1 note' : `${notes} notes`}: \`traceply figures DESIGN\` shows ${notes === 1 ? 'it' : 'them'}`
  return [...of('warn'), ...(notes > 0 ? [counted] : [])]
}

/** The same on the terminal, then what a PDF could not hold, then other notes. */
export const tellBriefly = (
  shell: Shell,
  {
    checks,
    several,
    lost,
    notes = [],
  }: {
    readonly checks: readonly Check[]
    readonly several: boolean
    readonly lost: readonly string[]
    readonly notes?: readonly string[]
  },
): void => {
  for (const line of [
    ...showBriefly(checks, several),
    ...lost.map((warning) => wrap(`watch ${warning}`)),
    ...notes.map((note) => `note  ${note}`),
  ])
    shell.err(`${line}\n`)
}
