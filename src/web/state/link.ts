import { deflateSync, inflateSync, strFromU8, strToU8 } from 'fflate'

const mark = '#design='
/** a link longer than this was not made here */
const mostLetters = 200_000
/** no design has more than 262,144 letters, of at most 3 bytes each */
const mostBytes = 3 * 262_144

/** The design that a link carries behind its `#`, which no browser sends anywhere; null where it carries none. */
export const linked = (hash: string): string | null => {
  if (!hash.startsWith(mark) || hash.length > mostLetters) return null
  try {
    const packed = atob(hash.slice(mark.length).replaceAll('-', '+').replaceAll('_', '/'))
    const out = inflateSync(
      Uint8Array.from(packed, (letter) => letter.charCodeAt(0)),
      { out: new Uint8Array(mostBytes) },
    )
    return strFromU8(out)
  } catch {
    return null
  }
}

/** A link to this page with the design in it; null where it would be longer than one that is read. */
export const linkTo = (text: string, address: string): string | null => {
  const packed = deflateSync(strToU8(text), { level: 9 })
  const letters = btoa(Array.from(packed, (byte) => String.fromCharCode(byte)).join(''))
    .replaceAll('+', '-')
    .replaceAll('/', '_')
    .replaceAll('=', '')
  const hash = `${mark}${letters}`
  return hash.length > mostLetters ? null : `${address.replace(/#.*$/, '')}${hash}`
}

/** A link in the address goes once the design is another: loaded again, or copied, it would bring back the old one. */
export const leaveLink = (text: string): void => {
  const design = linked(location.hash)
  if (design !== null && design !== text) history.replaceState(null, '', location.href.replace(/#.*$/, ''))
}
