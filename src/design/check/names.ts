import { nearWord } from '../../length/near.ts'
import { quote } from '../../length/quote.ts'
import type { RampKind } from '../design.ts'
import type { EntryMap } from '../file/entry.ts'
import type { TreeMap } from '../file/tree.ts'
import type { Report } from '../report.ts'

/** A ramp as the file says it, and what it is. */
export interface RampMap {
  readonly kind: RampKind
  readonly map: EntryMap
}

/** The same with its name; undefined where the name is missing or wrong. */
export interface NamedRamp extends RampMap {
  readonly name: string | undefined
  readonly path: string
}

/** What a single ramp without a name is called. */
export const nameOfOnlyOne = 'ramp'

/** Every ramp gets a name of its own; a single one may go without. */
export const nameRamps = (maps: readonly RampMap[], report: Report): readonly NamedRamp[] => {
  const firstLine = new Map<string, number>()
  return maps.map((ramp, i) => {
    const { map } = ramp
    const path = `ramps[${i}]`
    const said = map.entries.get('name')
    if (said === undefined) {
      if (maps.length === 1) return named(nameOfOnlyOne, path, ramp)
      const message = 'missing key `name`: with more than one ramp each needs a name; e.g. `name: outer`'
      report('missing-key', `${path}.name`, map.place, message)
      return { ...ramp, name: undefined, path }
    }
    if (said.kind !== 'text') return { ...ramp, name: undefined, path }
    if (said.text.includes('/'))
      report(
        'name',
        `${path}.name`,
        said.place,
        `the name ${quote(said.text)} has a slash; use a blank or a hyphen`,
      )
    const line = firstLine.get(said.text)
    if (line === undefined) firstLine.set(said.text, said.place.line)
    else
      report(
        'same-name',
        `${path}.name`,
        said.place,
        `two ramps are called ${quote(said.text)} (first on line ${line}); give each a name of its own`,
      )
    return named(said.text, path, ramp)
  })
}

const named = (name: string, path: string, { kind, map }: RampMap): NamedRamp => ({
  kind,
  name,
  path,
  map: { ...map, entries: new Map(map.entries).set('name', { kind: 'text', text: name, place: map.place }) },
})

/** Why a name leads nowhere, with the way out. */
export const noSuchRamp = (name: string, others: readonly NamedRamp[], which: string): string => {
  const names = others.flatMap((ramp) => ramp.name ?? [])
  const near = nearWord(
    name,
    names.map((n) => n.toLowerCase()),
  )
  const meant = names.find((n) => n.toLowerCase() === near)
  if (meant !== undefined) return `there is no ramp ${quote(name)}; did you mean ${quote(meant)}?`
  if (names.length === 0) return `there is no ramp ${quote(name)}; no ${which} ramp has a name`
  return `there is no ramp ${quote(name)}; ${which} ramps: ${names.map((n) => quote(n)).join(', ')}`
}

/** The ramp that a map is, by its name where it has one. */
export const calledIn = ({ pairs }: TreeMap): string => {
  const name = pairs.find(({ key }) => key.text === 'name')?.value
  return name?.kind === 'scalar' ? quote(name.text) : 'this'
}
