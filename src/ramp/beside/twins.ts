import type { RampDesign } from '../../design/design.ts'

/** Ramps that take over what one says and they do not: like it, or like one that is. */
export const twinsOf = <D extends RampDesign>(
  { name, kind }: D,
  ramps: readonly RampDesign[],
): readonly D[] => {
  const names = new Set([name])
  // `like` names an earlier one
  return ramps.filter((other): other is D => {
    const follows = other.kind === kind && other.like !== null && names.has(other.like)
    if (follows) names.add(other.name)
    return follows
  })
}

type Plain = Readonly<Record<string, unknown>>

const isMap = (value: unknown): value is Plain =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const alike = (a: unknown, b: unknown): boolean => a === b || JSON.stringify(a) === JSON.stringify(b)

/** Keys that say which others may stand beside them. */
const choices = ['kind', 'layer', 'from'] as const

/** What becomes of a value of a twin when the one that it is like goes from one to another. */
const carriedValue = (from: unknown, to: unknown, twin: unknown): unknown => {
  if (alike(from, to)) return twin
  if (alike(from, twin)) return to
  if (!isMap(from) || !isMap(to) || !isMap(twin)) return twin
  // what it says in another way it says itself
  if (choices.some((key) => from[key] !== twin[key])) return twin
  const keys = new Set([...Object.keys(twin), ...Object.keys(to)])
  return Object.fromEntries([...keys].map((key) => [key, carriedValue(from[key], to[key], twin[key])]))
}

/** A twin after what it is like was changed: what it has in common with that changes too. */
export const carried = <D extends RampDesign>(from: D, to: D, twin: D): D => ({
  ...(carriedValue(from, to, twin) as D),
  name: twin.name,
  like: twin.like,
})

/** What a ramp of the file becomes when one of them is typed anew: that itself, those like it, and all others as they were. */
export const afterAll = <D extends RampDesign>(
  design: D,
  { from, to }: { readonly from: D; readonly to: D },
  all: readonly RampDesign[],
): D => {
  if (from === to) return design
  if (design.name === from.name) return to
  return twinsOf(from, all).some(({ name }) => name === design.name) ? carried(from, to, design) : design
}
