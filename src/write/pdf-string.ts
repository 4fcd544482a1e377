import { PDFHexString } from 'pdf-lib'
import { letterCode } from '../drawing/letter-code.ts'

/** Text in any language for a dictionary (UTF-16, as hex: nothing to escape). A lone surrogate becomes U+FFFD. */
export const textString = (text: string): PDFHexString =>
  PDFHexString.fromText(text.replace(/[\ud800-\udfff]/gu, '\ufffd'))

const bare = /^[ -'*-[\]-~]*$/

/** Whether nothing of a text is to be escaped, and each letter is its own code. */
export const standsAsItIs = (text: string): boolean => bare.test(text)

/** A literal string of our own face's codes for a content stream, in ASCII. What has no code is shown as `?`. */
export const codedString = (text: string): string => {
  if (standsAsItIs(text)) return `(${text})`
  let out = '('
  for (const letter of text) {
    const code = letterCode(letter) ?? 63
    if (code > 126 || code < 32) out += `\\${code.toString(8).padStart(3, '0')}`
    else if (letter === '(' || letter === ')' || letter === '\\') out += `\\${letter}`
    else out += String.fromCharCode(code)
  }
  return `${out})`
}
