import { deflateSync, inflateSync, strFromU8, strToU8 } from 'fflate'

const mark = '#design='
/** a link longer than this was not made here */
const mostLetters = 200_000
/** no design has more than 262,144 letters, of at most 3 bytes each */
const mostBytes = 3 * 262_144

/** A messenger may write the `=` otherwise. */
const marked = (hash: string): string => hash.replace(/^#design%3d/i, mark)

/** The letters of a design behind the `#`, without what a mail, a sentence or a counter of clicks put into or behind them. */
const lettersOf = (hash: string): string => {
  const [letters = ''] = /^[\w-]*/.exec(hash.slice(mark.length).replaceAll(/\s|%(?:20|0[ad])/gi, '')) ?? []
  // no bytes pack to so many: the last one is a sign behind the link
  return letters.length % 4 === 1 ? letters.slice(0, -1) : letters
}

/** The design that a link carries behind its `#`, which no browser sends anywhere; null where it carries none, or not the whole of it. */
export const linked = (address: string): string | null => {
  const hash = marked(address)
  if (!hash.startsWith(mark) || hash.length > mostLetters) return null
  const letters = lettersOf(hash)
  // an empty design has letters too
  if (letters === '') return null
  try {
    const packed = atob(letters.replaceAll('-', '+').replaceAll('_', '/'))
    const out = inflateSync(
      Uint8Array.from(packed, (letter) => letter.charCodeAt(0)),
      { out: new Uint8Array(mostBytes) },
    )
    return strFromU8(out)
  } catch {
    return null
  }
}

/** Whether a link should carry a design, and does not carry the whole of it. */
export const isTorn = (hash: string): boolean => marked(hash).startsWith(mark) && linked(hash) === null

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

export const dropLink = (): void => history.replaceState(null, '', location.href.replace(/#.*$/, ''))

/** A link in the address goes once the design is another: loaded again, or copied, it would bring back the old one. */
export const leaveLink = (text: string): void => {
  const design = linked(location.hash)
  if (design !== null && design !== text) dropLink()
}
