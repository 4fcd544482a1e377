import { nearWord } from '../../length/near.ts'
import { quote } from '../../length/quote.ts'
import { readLength, type Units } from '../../length.ts'
import { type Price, type Priced, type PricedWord, pricedWords } from '../design.ts'
import type { Entry } from '../file/entry.ts'
import type { Tree, TreeMap } from '../file/tree.ts'
import type { Range } from '../plausible.ts'
import type { Report } from '../report.ts'
import { rangeAt } from '../schema.ts'
import { thinWide } from '../section.ts'
import { lengthValue, pairValue, type Reading, sheetValue } from './value.ts'

interface Checking {
  readonly units: Units | undefined
  readonly report: Report
}

/** A figure and the currency about it, as typed: `62 EUR`, `$58`, `5,20 €`; a comma may stand for the point. */
interface Money {
  readonly amount: number
  readonly before: string
  readonly behind: string
}

const example = 'e.g. `18 plywood: 62 EUR`'

/** Sheets, sections and lengths that a price may name, mm. */
const ranges = {
  sheet: { least: 0.5, most: 60 },
  section: { least: 10, most: 300, timber: true as const },
  length: { least: 300, most: 12_000 },
}

/** Each thing with its price; all in one currency, which a bare figure shares. */
export const checkPrices = (tree: TreeMap, range: Range, path: string, on: Checking): Entry => {
  const { place } = tree
  const all: Price[] = []
  const seen = new Map<string, number>()
  let currency: (Money & { readonly line: number; readonly sign: string }) | null = null
  let bad = tree.pairs.length === 0
  if (bad) on.report('shape', path, place, `\`prices\` is empty; ${example}, or leave it out`)
  for (const [i, { key, value }] of tree.pairs.entries()) {
    const at = `${path}.${key.text}`
    const fail = (code: string, where: typeof place, message: string): void => {
      bad = true
      on.report(code, at, where, message)
    }
    const whole = brokenPrice(tree.pairs[i - 1]?.value, key.text, value)
    if (whole !== null) {
      fail(
        'price',
        key.place,
        `the price of ${quote(tree.pairs[i - 1]!.key.text)}: within braces a comma ends it; write ${quote(whole)}, with a point, or put it in quotes`,
      )
      continue
    }
    const what = pricedThing(key.text, on.units)
    if ('fault' in what) fail(what.code, key.place, what.fault)
    else if (seen.has(JSON.stringify(what.value)))
      fail(
        'duplicate-key',
        key.place,
        `${quote(key.text)} has a price already (line ${seen.get(JSON.stringify(what.value))}); keep one`,
      )
    else seen.set(JSON.stringify(what.value), key.place.line)
    const money = value.kind === 'scalar' ? moneyOf(value.text) : null
    if (!money) {
      const found = value.kind === 'scalar' ? quote(value.text) : `a ${value.kind}`
      fail(
        'price',
        value.place,
        `the price of ${quote(key.text)}: ${found} is no amount of money; ${example}`,
      )
      continue
    }
    if (money.amount < range.least || money.amount > range.most)
      fail(
        'range',
        value.place,
        `the price of ${quote(key.text)}: ${money.amount} is outside ${range.least} to ${range.most}`,
      )
    const sign = (money.before + money.behind).trim()
    if (sign !== '') {
      if (currency && currency.sign !== sign)
        fail(
          'currency',
          value.place,
          `\`prices\` are in two currencies, ${quote(currency.sign)} (line ${currency.line}) and ${quote(sign)}; write all of them in one`,
        )
      else if (!currency) currency = { ...money, sign, line: value.place.line }
    }
    if ('value' in what) all.push({ what: key.text, of: what.value, amount: money.amount })
  }
  return bad
    ? { kind: 'bad', place }
    : {
        kind: 'prices',
        prices: { before: currency?.before ?? '', behind: currency?.behind ?? '', all },
        place,
      }
}

const moneyOf = (text: string): Money | null => {
  const [, before, figure, behind] =
    /^([^\d\s.,+-]*\s*)(\d{1,7}(?:[.,]\d{1,2})?)(\s*[^\d\s.,+-]*)$/u.exec(text.trim()) ?? []
  if (figure === undefined || (before!.trim() !== '' && behind!.trim() !== '')) return null
  return { amount: Number(figure.replace(',', '.')), before: before!, behind: behind! }
}

/** The price, with a point, that the comma of `{ 18 plywood: 62,50 EUR }` broke into a figure and a key without a value; else null. */
const brokenPrice = (before: Tree | undefined, key: string, value: Tree): string | null => {
  if (before?.kind !== 'scalar' || value.kind !== 'scalar' || value.text !== '') return null
  const whole = `${before.text}.${key}`
  return /\d$/.test(before.text) && /^\d/.test(key) && moneyOf(whole) ? whole : null
}

/** `18 plywood`, that with a size, `38 x 89 x 2400`, or a word. */
const pricedThing = (text: string, units: Units | undefined): Reading<Priced> => {
  const word = text.trim().toLowerCase()
  if (pricedWords.includes(word as PricedWord)) return { value: { kind: 'word', word: word as PricedWord } }
  const parts = text.split(/\s*[x×]\s*/i)
  if (parts.length === 3) {
    if (isSheet(parts[0]!.trim(), units))
      return {
        code: 'shape',
        fault: `one size of a sheet is written ${quote(`${parts[0]} ${parts[1]} x ${parts[2]}`)}`,
      }
    const section = pairValue(`${parts[0]} x ${parts[1]}`, units, ranges.section)
    if ('fault' in section) return section
    const length = lengthValue(parts[2]!, units, ranges.length)
    if ('fault' in length) return length
    return { value: { kind: 'timber', section: thinWide(section.value), length: length.value } }
  }
  const [, panel, size] = /^(.*?\p{L})\s+(\d.*[x×].*)$/iu.exec(text.trim()) ?? []
  if (parts.length === 2 && panel !== undefined && isSheet(panel, units)) {
    const sheet = sheetValue(panel, units, ranges.sheet)
    if ('fault' in sheet) return sheet
    const sides = pairValue(size!, units, rangeAt('stock.panel'))
    if ('fault' in sides) return sides
    return { value: { kind: 'sheet', sheet: sheet.value, size: thinWide(sides.value) } }
  }
  if (parts.length === 2)
    return {
      code: 'shape',
      fault: `${quote(text)} has no length; a timber is priced by section and length, e.g. ${quote(`${text} x ${units === 'in' ? '96' : '2400'}`)}`,
    }
  if (isSheet(text.trim(), units)) {
    const sheet = sheetValue(text, units, ranges.sheet)
    return 'fault' in sheet ? sheet : { value: { kind: 'sheet', sheet: sheet.value, size: null } }
  }
  const near = nearWord(word, pricedWords)
  return {
    code: 'unknown-key',
    fault:
      `nothing of the list is called ${quote(text)}; ${near === undefined ? '' : `did you mean ${quote(near)}? `}` +
      `a price is for a sheet (18 plywood, or one size of it: 18 plywood 1220 x 2440), a timber (38 x 89 x 2400), or ${pricedWords.join(', ')}`,
  }
}

/** A thickness and a word. */
const isSheet = (text: string, units: Units | undefined): boolean => {
  const [, thickness] = /^(.*\S)\s+\p{L}+$/u.exec(text) ?? []
  return thickness !== undefined && 'mm' in readLength(thickness, units ?? 'mm')
}
