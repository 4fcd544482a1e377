import type { Check } from '../ramp/check.ts'
import { wrap } from './wrap.ts'

const words = { stop: 'STOP', warn: 'watch', note: 'note' } as const

/** Checks as the terminal shows them, one after the other. */
export const showChecks = (checks: readonly Check[], several: boolean): readonly string[] =>
  checks.map(({ id, level, ramp, message }) =>
    wrap(`${words[level].padEnd(5)} ${several ? `${ramp}: ` : ''}${message} [${id}]`),
  )
