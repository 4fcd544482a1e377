const written = Symbol('written')

/** As it stands in the file: a reference, a string. Told from a dictionary, which may have any key, by a key that none can have. */
export interface PdfToken {
  readonly [written]: string
}

/** Where an object is to be found. */
export interface PdfRef extends PdfToken {
  readonly number: number
}

/** A text alone is a name. */
export type PdfValue = string | number | boolean | PdfToken | readonly PdfValue[] | PdfDict

/** In the order in which it is written. */
export interface PdfDict {
  readonly [key: string]: PdfValue | undefined
}

/** Bytes as they stand in the file; its `Length` is written with them. */
export interface PdfStream {
  readonly dict: PdfDict
  readonly bytes: Uint8Array
}

/** The numbered objects of a document that is put together. */
export interface PdfObjects {
  /** a number for what is made later */
  readonly nextRef: () => PdfRef
  readonly assign: (ref: PdfRef, value: PdfValue) => void
  readonly register: (value: PdfValue) => PdfRef
  readonly assignStream: (ref: PdfRef, bytes: Uint8Array, dict: PdfDict) => void
  readonly stream: (bytes: Uint8Array, dict: PdfDict) => PdfRef
  /** by number from 1, an object as text or a stream; undefined where nothing was made for a number */
  readonly all: () => readonly (string | PdfStream | undefined)[]
}

export const token = (text: string): PdfToken => ({ [written]: text })

const refOf = (number: number): PdfRef => ({ [written]: `${number} 0 R`, number })

export const createPdfObjects = (): PdfObjects => {
  const made: (string | PdfStream | undefined)[] = []
  const nextRef = (): PdfRef => refOf(made.push(undefined))
  const assign = (ref: PdfRef, value: PdfValue): void => {
    made[ref.number - 1] = valueText(value)
  }
  const assignStream = (ref: PdfRef, bytes: Uint8Array, dict: PdfDict): void => {
    made[ref.number - 1] = { dict, bytes }
  }
  return {
    nextRef,
    assign,
    register: (value) => {
      const ref = nextRef()
      assign(ref, value)
      return ref
    },
    assignStream,
    stream: (bytes, dict) => {
      const ref = nextRef()
      assignStream(ref, bytes, dict)
      return ref
    },
    all: () => made,
  }
}

const isToken = (value: PdfToken | PdfDict): value is PdfToken => written in value

/** ISO 32000-1, 7.3. */
export const valueText = (value: PdfValue): string => {
  if (typeof value === 'string') return nameText(value)
  if (typeof value === 'number') return numberText(value)
  if (typeof value === 'boolean') return String(value)
  if (isList(value)) {
    let out = '[ '
    for (const one of value) out += `${valueText(one)} `
    return `${out}]`
  }
  if (isToken(value)) return value[written]
  let out = '<<\n'
  for (const key in value) {
    const one = value[key]
    if (one !== undefined) out += `${nameText(key)} ${valueText(one)}\n`
  }
  return `${out}>>`
}

const isList = (value: PdfValue): value is readonly PdfValue[] => Array.isArray(value)

/** No exponents. */
const numberText = (value: number): string => {
  const text = String(value)
  return text.includes('e') ? value.toFixed(12) : text
}

/** White space, delimiters, `#` and what is not plain ASCII are told by their codes, 7.3.5. */
const nameText = (name: string): string =>
  `/${name.replace(/[^!-~]|[#()<>[\]{}/%]/g, (letter) => `#${letter.charCodeAt(0).toString(16).padStart(2, '0').toUpperCase()}`)}`
