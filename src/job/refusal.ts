import type { Check } from '../ramp/check/check.ts'

/** Why a job is not done. Each caller says it in its own way; nothing is thrown. */
export type Refusal =
  /** what was asked for cannot be: everything that is wrong, in words */
  | { readonly refused: 'asked'; readonly faults: readonly string[] }
  /** what was measured or read cannot be used, in words */
  | { readonly refused: 'measured'; readonly faults: readonly string[] }
  /** the design has a `stop` */
  | { readonly refused: 'stop'; readonly checks: readonly Check[] }
  /** the stock does not hold what is to be sawn, in words */
  | { readonly refused: 'stock'; readonly faults: readonly string[] }
  /** nothing of the design has a curve */
  | { readonly refused: 'no-curve' }

export const isRefusal = <T extends object>(result: T | Refusal): result is Refusal => 'refused' in result

export const asked = (faults: readonly string[]): Refusal => ({ refused: 'asked', faults })
