import type { QuarterDesign } from '../../design/design.ts'
import { isTold, type Offer, type Said, type Told } from './told.ts'

/**
 * stop: cannot be drawn or sawn; warn: drawn as asked, but said; note: good to know.
 * Ids are stable, so that scripts may rely on them.
 */
export type CheckLevel = 'stop' | 'warn' | 'note'

/** What a check of each level begins with. */
export const levelWords = { stop: 'STOP', warn: 'watch', note: 'note' } as const

export interface Check {
  readonly id: string
  readonly level: CheckLevel
  /** name of the ramp */
  readonly ramp: string
  readonly message: string
  /** ways out that can be typed, each with all of its keys */
  readonly offers: readonly (readonly Typing[])[]
}

/** A key by its path in the file, `ramps.0.height.deck`, and what to type there; null where it is taken out. */
export interface Typing {
  readonly path: string
  readonly value: string | null
}

/** A check before it is known which ramp it belongs to. */
export interface Finding {
  readonly id: string
  readonly level: CheckLevel
  readonly message: string
  readonly offers?: readonly Offer[]
}

/** The finding as a check of a ramp; `names` of all ramps, in the order of the file. */
export const checkOf = (
  { id, level, message, offers = [] }: Finding,
  ramp: string,
  names: readonly string[],
): Check => ({
  id,
  level,
  ramp,
  message,
  offers: offers.map((offer) =>
    offer.map(({ of, key, value }) => ({
      path: of === 'file' ? key : `ramps.${names.indexOf(of === 'own' ? ramp : of.ramp)}.${key}`,
      value,
    })),
  ),
})

/** No warning of any kind. */
export const anyWarning = 'any warning'

/**
 * Whether a ramp so changed is rid of the finding at hand, and has no stop that it did not have before; if told so, none of
 * these new warnings either.
 */
export type Trial<D = QuarterDesign> = (changed: D, without?: readonly string[]) => boolean

/** A finding whose remedies are tried on the whole ramp before they are offered. */
export type Draft<D = QuarterDesign> = Omit<Finding, 'message'> & {
  readonly message: string | ((trial: Trial<D>) => Said)
}

/** The finding that a draft comes to, its remedies tried. */
export const worded = <D>({ message, ...draft }: Draft<D>, trial: Trial<D>): Finding => {
  if (typeof message === 'string') return { ...draft, message }
  const said = message(trial)
  return isTold(said) ? { ...draft, message: said.words, offers: said.offers } : { ...draft, message: said }
}

interface Leveled<L extends CheckLevel, M> {
  readonly id: string
  readonly level: L
  readonly message: M extends Told ? string : M
  readonly offers?: readonly Offer[]
}

const leveled =
  <L extends CheckLevel>(level: L) =>
  <M>(id: string, message: M): Leveled<L, M> => {
    type Message = Leveled<L, M>['message']
    return isTold(message)
      ? { id, level, message: message.words as Message, offers: message.offers }
      : { id, level, message: message as Message }
  }

export const stop = leveled('stop')
export const warn = leveled('warn')
export const note = leveled('note')

export const hasStop = (checks: readonly { readonly level: CheckLevel }[]): boolean =>
  checks.some((check) => check.level === 'stop')
