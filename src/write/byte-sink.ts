import { formatNumber, inParts, tensOf } from '../drawing/number.ts'

/** ASCII written piece by piece: most of a page are numbers, for none of which a text is made. */
export interface ByteSink {
  readonly words: (text: string) => void
  /** A number as `formatNumber` has it and a space; `what` it is of the thing named, said where it cannot be written. */
  readonly operand: (value: number, decimals: number, what: string, name: string) => void
  /** All that was written since the last time. */
  readonly take: () => Uint8Array
}

/** Of a number that needs no text: sign, ten digits, point, ten more, space. */
const longest = 24

export const createByteSink = (): ByteSink => {
  let bytes = new Uint8Array(2 ** 15)
  let length = 0
  const grow = (more: number): void => {
    const larger = new Uint8Array(2 * (length + more))
    larger.set(bytes)
    bytes = larger
  }
  const words = (text: string): void => {
    if (length + text.length > bytes.length) grow(text.length)
    for (let i = 0; i < text.length; i++) bytes[length++] = text.charCodeAt(i)
  }
  return {
    words,
    operand: (value, decimals, what, name) => {
      const tens = tensOf[decimals]
      const parts = tens === undefined ? -1 : inParts(Math.abs(value), tens)
      if (parts < 0) {
        words(`${formatNumber(value, decimals, `${what} of ${name}`)} `)
        return
      }
      if (length + longest > bytes.length) grow(longest)
      if (value < 0 && parts > 0) bytes[length++] = 45
      // its last zeros do not count, one digit stands before the point
      let rest = parts
      let behind = decimals
      while (behind > 0 && rest % 10 === 0) {
        rest /= 10
        behind--
      }
      let count = behind + 1
      for (let ten = 10 * tensOf[behind]!; ten <= rest; ten *= 10) count++
      // from the last digit on
      let at = length + count + (behind > 0 ? 1 : 0)
      length = at
      for (let k = 0; k < count; k++) {
        if (k === behind && k > 0) bytes[--at] = 46
        const digit = rest % 10
        bytes[--at] = 48 + digit
        rest = (rest - digit) / 10
      }
      bytes[length++] = 32
    },
    take: () => {
      const written = bytes.slice(0, length)
      length = 0
      return written
    },
  }
}
