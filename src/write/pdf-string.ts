import { PDFHexString } from 'pdf-lib'
import { winAnsiCode } from '../drawing/win-ansi.ts'

/** Text in any language for a dictionary (UTF-16, as hex: nothing to escape). A lone surrogate becomes U+FFFD. */
export const textString = (text: string): PDFHexString =>
  PDFHexString.fromText(text.replace(/\p{Surrogate}/gu, '\ufffd'))

/** A literal string of WinAnsi codes for a content stream, in ASCII. What WinAnsi lacks is shown as `?`. */
export const winAnsiString = (text: string): string => {
  let out = '('
  for (const letter of text) {
    const code = winAnsiCode(letter) ?? 63
    if (code > 126) out += `\\${code.toString(8)}`
    else if (letter === '(' || letter === ')' || letter === '\\') out += `\\${letter}`
    else out += String.fromCharCode(code)
  }
  return `${out})`
}
