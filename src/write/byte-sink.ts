import { formatNumber, partsOf, tensOf } from '../drawing/number.ts'

/** ASCII written piece by piece: most of a page are numbers, for none of which a text is made. */
export interface ByteSink {
  readonly words: (text: string) => void
  /** As `formatNumber` has it. */
  readonly number: (value: number, decimals: number, name: string) => void
  /** All that was written since the last time. */
  readonly take: () => Uint8Array
}

/** Of a number that needs no text: sign, ten digits, point, ten more. */
const longest = 24

export const createByteSink = (): ByteSink => {
  let bytes = new Uint8Array(2 ** 15)
  let length = 0
  const keep = (more: number): void => {
    if (length + more <= bytes.length) return
    const larger = new Uint8Array(2 * (length + more))
    larger.set(bytes)
    bytes = larger
  }
  const words = (text: string): void => {
    keep(text.length)
    for (let i = 0; i < text.length; i++) bytes[length++] = text.charCodeAt(i)
  }
  /** Of a whole number below ten times `ten`; its last zeros only where they count. */
  const digits = (whole: number, ten: number, least: number): void => {
    let rest = whole
    for (let place = ten; place >= least || rest > 0; place /= 10) {
      const digit = Math.floor(rest / place)
      bytes[length++] = 48 + digit
      rest -= digit * place
    }
  }
  return {
    words,
    number: (value, decimals, name) => {
      const tens = tensOf[decimals]
      const parts = tens === undefined ? -1 : partsOf(Math.abs(value), tens)
      if (tens === undefined || parts < 0) {
        words(formatNumber(value, decimals, name))
        return
      }
      keep(longest)
      if (value < 0 && parts > 0) bytes[length++] = 45
      const units = Math.floor(parts / tens)
      let ten = 1
      while (10 * ten <= units) ten *= 10
      digits(units, ten, 1)
      const rest = parts - units * tens
      if (rest === 0) return
      bytes[length++] = 46
      digits(rest, tens / 10, tens)
    },
    take: () => {
      const written = bytes.slice(0, length)
      length = 0
      return written
    },
  }
}
