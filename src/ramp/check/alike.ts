import type { Check } from './check.ts'

/** Checks that say the same of several ramps together, in the order of the first of each. */
export const alikeChecks = (
  checks: readonly Check[],
): readonly (readonly [check: Check, ramps: readonly string[]])[] => {
  const alike = new Map<string, readonly [Check, string[]]>()
  for (const check of checks) {
    const key = JSON.stringify([check.level, check.id, check.message])
    const known = alike.get(key)
    if (known) known[1].push(check.ramp)
    else alike.set(key, [check, [check.ramp]])
  }
  return [...alike.values()]
}
