import { parse } from 'yaml'

/**
 * The numbers of a design that shape its sides, read afresh from the text of the file: mm. It shares nothing with src/design
 * and knows only the forms that the templates and the generator write.
 */
export interface RawQuarter {
  readonly name: string
  readonly height: { readonly layer: 'frame' | 'deck' | 'surface'; readonly value: number }
  readonly radius: { readonly layer: 'frame' | 'surface'; readonly value: number }
  readonly tangent: { readonly layer: 'frame' | 'surface'; readonly value: number }
  readonly toe: number
  readonly back: { readonly from: 'deck' | 'length'; readonly value: number }
  /** thickness of the whole skin */
  readonly skin: number
  readonly board: number
  readonly coping: RawCoping | null
  readonly chamfer: number
}

export interface RawCoping {
  readonly outside: number
  readonly seat: 'square' | 'round'
  readonly by:
    | { readonly kind: 'reveals'; readonly up: number; readonly out: number }
    | { readonly kind: 'notch'; readonly along: number; readonly down: number }
}

// biome-ignore lint/suspicious/noExplicitAny: as YAML hands it over
type Raw = any

const lengthPattern = /^(-)?(\d+(?:\.\d+)?)?(?:\s*(?<![\d.])(\d+)\/(\d+))?$/

/** `640`, `17 3/16`, `-3/4`; a bare number in the design's units. */
const lengthReader =
  (unit: number) =>
  (said: Raw): number => {
    const [, minus, whole, over, under] = lengthPattern.exec(String(said).trim()) ?? []
    if (whole === undefined && over === undefined)
      throw new Error(`the test does not read the length ${said}`)
    const size = Number(whole ?? 0) + (over === undefined ? 0 : Number(over) / Number(under))
    return (minus ? -size : size) * unit
  }

const oneKey = <K extends string>(
  map: Raw,
  keys: readonly K[],
  mm: (said: Raw) => number,
): { readonly key: K; readonly value: number } => {
  const found = keys.filter((key) => map?.[key] !== undefined)
  if (found.length !== 1) throw new Error(`one of ${keys.join(', ')} in ${JSON.stringify(map)}`)
  return { key: found[0]!, value: mm(map[found[0]!]) }
}

/** `9 plywood`, `3/8 plywood`: thickness, then the material. */
const sheet = (said: string, mm: (said: Raw) => number): number => mm(said.slice(0, said.lastIndexOf(' ')))

export const rawQuarters = (text: string): readonly RawQuarter[] => {
  const design: Raw = parse(text)
  const mm = lengthReader(design.units === 'in' ? 25.4 : 1)
  const seen = new Map<string, Raw>()
  return design.ramps.flatMap((said: Raw): readonly RawQuarter[] => {
    const merged = { ...(said.like ? seen.get(said.like) : {}), ...said }
    // straight cuts only: it has no pattern
    if (merged.kind === 'flat') return []
    if (said.like && said.deck !== undefined) delete merged.length
    const name: string = said.name ?? 'ramp'
    seen.set(name, merged)
    const { coping } = merged
    const height = oneKey(merged.height, ['frame', 'deck', 'surface'] as const, mm)
    const radius = oneKey(merged.transition.circle, ['frame', 'surface'] as const, mm)
    const tangent = oneKey(merged.transition.tangent ?? { surface: 0 }, ['frame', 'surface'] as const, mm)
    const back = oneKey(merged, ['deck', 'length'] as const, mm)
    const none = (value: Raw): boolean => value === undefined || value === 'none'
    const quarter: RawQuarter = {
      name,
      height: { layer: height.key, value: height.value },
      radius: { layer: radius.key, value: radius.value },
      tangent: { layer: tangent.key, value: tangent.value },
      toe: mm(merged.toe),
      back: { from: back.key, value: back.value },
      skin: merged.skin.reduce((sum: number, layer: string) => sum + sheet(layer, mm), 0),
      board: none(merged['deck-board']) ? 0 : sheet(merged['deck-board'], mm),
      coping: none(coping)
        ? null
        : {
            outside: mm(coping.outside),
            seat: coping.seat,
            by: coping.notch
              ? { kind: 'notch', along: mm(coping.notch.along), down: mm(coping.notch.down) }
              : { kind: 'reveals', up: mm(coping.up), out: mm(coping.out) },
          },
      chamfer: none(merged.chamfer) ? 0 : mm(merged.chamfer.leg),
    }
    return [quarter]
  })
}
