import type { ReadPlatform } from './platform.ts'

/** What a file may not be: none that we wrote comes near it, and the parser would work on it for minutes. */
const most = { objects: 100_000, count: 1_000_000, hex: 1_000_000 } as const

/** As far from its type as the other entries of a dictionary of ours may stand, bytes. */
const near = 600

/**
 * Whether the parser may be let loose on a file: it opens streams that hold objects and cross-references itself, without a
 * bound. `inflate` throws where a stream is larger than any of ours.
 */
export const isBounded = (bytes: Uint8Array, { inflate }: ReadPlatform): boolean => {
  const text = latin1(bytes)
  return (
    countOf(text, ' obj') <= most.objects &&
    !hasLongHex(text) &&
    placesOf(text, /\/(?:ObjStm|XRef)\b/g).every((at) => {
      const head = text.slice(Math.max(0, at - near), at)
      const [tail] = text.slice(at, at + near).split('stream', 1)
      const dict = head.slice(head.lastIndexOf(' obj') + 1) + tail
      const start = at + tail!.length + 'stream'.length
      const counts = [...dict.matchAll(/\/(?:N|Size|Index|W)\s*\[?([\d\s]+)/g)].flatMap((match) =>
        match[1]!.trim().split(/\s+/).map(Number),
      )
      if (counts.some((count) => count > most.count)) return false
      const filter = /\/Filter\s*(\[[^\]]*\]|\/\w+)/.exec(dict)?.[1]
      if (filter === undefined) return true
      if (!/^\[?\s*\/FlateDecode\s*\]?$/.test(filter)) return false
      try {
        inflate(bytes.subarray(start + (text.startsWith('\r\n', start) ? 2 : 1)))
        return true
      } catch {
        return false
      }
    })
  )
}

const latin1 = (bytes: Uint8Array): string => new TextDecoder('latin1').decode(bytes)

const countOf = (text: string, word: string): number => {
  let count = 0
  for (let at = text.indexOf(word); at >= 0; at = text.indexOf(word, at + word.length)) count++
  return count
}

const placesOf = (text: string, form: RegExp): readonly number[] =>
  [...text.matchAll(form)].map(({ index }) => index)

/** A hexadecimal string is read letter by letter. */
const hasLongHex = (text: string): boolean => {
  for (let at = text.indexOf('<'); at >= 0; at = text.indexOf('<', at + 1)) {
    const end = text.indexOf('>', at)
    if (end - at > most.hex && /^<[\da-fA-F\s]+$/.test(text.slice(at, at + 1000))) return true
  }
  return false
}
