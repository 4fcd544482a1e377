import type { QuarterDesign } from '../../design/design.ts'

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

/**
 * Whether a ramp so changed is rid of the finding at hand, and has no stop that it did not have before; if told so, none of
 * these new warnings either.
 */
export type Trial<D = QuarterDesign> = (changed: D, without?: readonly string[]) => boolean

/** A finding whose remedies are tried on the whole ramp before they are offered. */
export type Draft<D = QuarterDesign> = Omit<Finding, 'message'> & {
  readonly message: string | ((trial: Trial<D>) => string)
}

interface Leveled<L extends CheckLevel, M> {
  readonly id: string
  readonly level: L
  readonly message: M
}

export const stop = <M>(id: string, message: M): Leveled<'stop', M> => ({ id, level: 'stop', message })
export const warn = <M>(id: string, message: M): Leveled<'warn', M> => ({ id, level: 'warn', message })
export const note = <M>(id: string, message: M): Leveled<'note', M> => ({ id, level: 'note', message })

export const hasStop = (checks: readonly { readonly level: CheckLevel }[]): boolean =>
  checks.some((check) => check.level === 'stop')
