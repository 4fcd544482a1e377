/**
 * stop: cannot be drawn or sawn; warn: drawn as asked, but said; note: good to know.
 * Ids are stable, so that scripts may rely on them.
 */
export type CheckLevel = 'stop' | 'warn' | 'note'

export interface Check {
  readonly id: string
  readonly level: CheckLevel
  /** name of the ramp */
  readonly ramp: string
  readonly message: string
}

/** A check before it is known which ramp it belongs to. */
export type Finding = Omit<Check, 'ramp'>

export const stop = (id: string, message: string): Finding => ({ id, level: 'stop', message })
export const warn = (id: string, message: string): Finding => ({ id, level: 'warn', message })
export const note = (id: string, message: string): Finding => ({ id, level: 'note', message })

export const hasStop = (checks: readonly { readonly level: CheckLevel }[]): boolean =>
  checks.some((check) => check.level === 'stop')
