import { editDesign, rampPath, readSaid, schema } from '../../index.ts'

/** A design with a ramp like one of its own at the end. `names`: of its ramps; each needs one then. */
export const withTwin = (text: string, names: readonly string[], ramp: number): string => {
  const own = names[ramp] ?? 'ramp'
  const isNamed = readSaid(text).said.has(`ramps.${ramp}.name`)
  const named = isNamed ? text : editDesign(text, `ramps.${ramp}.name`, own)
  const twin = editDesign(named, `ramps.${names.length}.name`, freeName(own, names))
  return editDesign(twin, `ramps.${names.length}.like`, own)
}

const name = schema.find(({ path }) => path === `${rampPath('quarter')}.name`)!.value
const mostLetters = name.kind === 'text' ? name.most : Number.POSITIVE_INFINITY

/** `own 2`, or with the next number that is free; one that is too long with it loses letters at its end. */
const freeName = (own: string, names: readonly string[]): string => {
  for (let n = 2; ; n++) {
    const end = ` ${n}`
    const free =
      [...own]
        .slice(0, mostLetters - end.length)
        .join('')
        .trimEnd() + end
    if (!names.includes(free)) return free
  }
}
