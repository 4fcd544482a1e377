const designKey = 'traceply.design'
const printersKey = 'traceply.printers'

/** No design is longer. */
const mostLetters = 300_000

type Place = 'localStorage' | 'sessionStorage'

// asking for the place alone may throw
const read = (place: Place, key: string): string | null => {
  try {
    return globalThis[place].getItem(key)
  } catch {
    return null
  }
}

const write = (place: Place, key: string, text: string): boolean => {
  try {
    globalThis[place].setItem(key, text)
    return true
  } catch {
    return false
  }
}

/** The design of this tab before it was loaded again, else the last one of this browser. */
export const keptDesign = (): string | null =>
  read('sessionStorage', designKey) ?? read('localStorage', designKey)

/** Whether it could be kept: a browser may refuse to keep anything, or be full. Each tab has its own, the last is there for the next. */
export const keepDesign = (text: string): boolean => {
  // junk that was dropped is no design: what was kept stays
  if (text.length > mostLetters) return true
  const here = write('sessionStorage', designKey, text)
  return write('localStorage', designKey, text) && here
}

/** Files of measured printers by their names. */
export type Printers = Readonly<Record<string, string>>

export const keptPrinters = (): Printers => {
  try {
    const all: unknown = JSON.parse(read('localStorage', printersKey) ?? '{}')
    return Object.fromEntries(
      Object.entries(Object(all)).filter((entry): entry is [string, string] => typeof entry[1] === 'string'),
    )
  } catch {
    return {}
  }
}

/** Beside those that another tab kept meanwhile. */
export const keepPrinter = (name: string, file: string): boolean =>
  write('localStorage', printersKey, JSON.stringify({ ...keptPrinters(), [name]: file }))
