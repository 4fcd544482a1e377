/** What programs stumble over. */
const pieces = [
  ...'\u0000 \u001b[31m \ufeff \ud800 \u202e 🛹 " \' ` \\ : { ] | > ? # ~ . - , ½ ١٢'.split(' '),
  ...[
    '\t',
    '\n',
    '- ',
    '&a *a',
    '!!js/function',
    '<<: *a',
    '%YAML',
    '---',
    '...',
    'null',
    '__proto__',
    'nan',
  ],
  ...['1e999', '-0', '0x10', '9'.repeat(400), '1/0', '3/4/5', '17 3/16 in', 'Infinity', '1..2'],
]

/** A text with some of it cut, doubled, swapped, or replaced by what programs stumble over. */
export const spoiled = (text: string, random: () => number): string => {
  const at = (): number => Math.floor(random() * (text.length + 1))
  const piece = (): string => pieces[Math.floor(random() * pieces.length)]!
  let out = text
  for (let left = 1 + Math.floor(random() * 3); left > 0; left--) {
    const [from, to] = [at(), at()].sort((a, b) => a - b) as [number, number]
    const [head, tail] = [out.slice(0, from), out.slice(from)]
    switch (Math.floor(random() * 5)) {
      case 0:
        out = head + piece() + tail
        break
      case 1:
        out = head + out.slice(Math.min(to, from + 40))
        break
      case 2:
        out = head + out.slice(from, Math.min(to, from + 200)).repeat(2) + tail
        break
      case 3:
        out = head + piece().repeat(1 + Math.floor(random() * 50)) + out.slice(Math.min(to, from + 5))
        break
      default:
        out = out.replace(/\d+(?=\D*$)/, piece())
    }
  }
  return out
}

export const spoiledBytes = (bytes: Uint8Array, random: () => number): Uint8Array => {
  const out = Uint8Array.from(bytes)
  const at = (): number => Math.floor(random() * out.length)
  if (random() < 0.3) return out.slice(0, at())
  for (let left = 1 + Math.floor(random() * 8); left > 0; left--) out[at()] = Math.floor(random() * 256)
  return out
}

type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json }

const values: readonly Json[] = [null, 0, -1, 1e308, 1e-308, 0.5, 1e6, '', 'x', '\u001b[2J', [], {}, true, -0]

/** A value like it with a leaf or a branch changed: another number, another kind, doubled, gone. */
export const spoiledJson = (value: Json, random: () => number): Json => {
  const other = (): Json =>
    typeof value === 'number' && random() < 0.5
      ? value * 10 ** Math.round(random() * 20 - 10)
      : values[Math.floor(random() * values.length)]!
  if (value === null || typeof value !== 'object' || random() < 0.08) return other()
  if (Array.isArray(value)) {
    const list = value as readonly Json[]
    const at = Math.floor(random() * list.length)
    if (list.length === 0) return other()
    if (random() < 0.1) return [...list, ...list]
    if (random() < 0.1) return list.filter((_, i) => i !== at)
    return list.map((item, i) => (i === at ? spoiledJson(item, random) : item))
  }
  const entries = Object.entries(value as { readonly [key: string]: Json })
  const at = Math.floor(random() * entries.length)
  if (entries.length === 0) return other()
  if (random() < 0.1) return Object.fromEntries(entries.filter((_, i) => i !== at))
  return Object.fromEntries(
    entries.map(([key, item], i) => [key, i === at ? spoiledJson(item, random) : item]),
  )
}
