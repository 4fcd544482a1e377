const designKey = 'traceply.design'
const printersKey = 'traceply.printers'

const read = (key: string): string | null => {
  try {
    return localStorage.getItem(key)
  } catch {
    return null
  }
}

const write = (key: string, text: string): boolean => {
  try {
    localStorage.setItem(key, text)
    return true
  } catch {
    return false
  }
}

/** The design that this browser held last. */
export const keptDesign = (): string | null => read(designKey)

/** Whether it could be kept: a browser may refuse to keep anything, or be full. */
export const keepDesign = (text: string): boolean => write(designKey, text)

/** Files of measured printers by their names. */
export type Printers = Readonly<Record<string, string>>

export const keptPrinters = (): Printers => {
  try {
    const all: unknown = JSON.parse(read(printersKey) ?? '{}')
    return Object.fromEntries(
      Object.entries(Object(all)).filter((entry): entry is [string, string] => typeof entry[1] === 'string'),
    )
  } catch {
    return {}
  }
}

export const keepPrinters = (printers: Printers): boolean => write(printersKey, JSON.stringify(printers))
