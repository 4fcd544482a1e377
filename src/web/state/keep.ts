import { type Profile, readProfile, writeProfile } from '../../index.ts'
import type { Lay } from '../worker/messages.ts'

const tabKey = 'traceply.tab'
const designKey = 'traceply.design'
const wholeKey = 'traceply.whole'
const printersKey = 'traceply.printers'
const lastPrinterKey = 'traceply.printer'

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

/** What one tab holds, beside what all of this browser share. */
export interface Tab {
  /** the design that the page's file was written with; empty where it was with none */
  readonly given: string
  readonly text: string
  /** the last one that could be read; null where there was none */
  readonly whole: string | null
  readonly lay: Lay
}

const noLay: Lay = { words: {}, profile: null }

const wordTypes: Readonly<Record<string, string>> = {
  cover: 'string',
  strips: 'boolean',
  pack: 'boolean',
  margin: 'string',
  overlap: 'string',
}

/** The file of a measured printer, or null: of one that was measured anew meanwhile, in another tab too, the new one. */
const profileOf = (value: unknown): string | null => {
  if (typeof value !== 'string' || 'error' in readProfile(value)) return null
  return newestFile(value, keptPrinters())
}

/** What of it cannot be read is as if it were not there. */
const layOf = (value: unknown): Lay => {
  const { words, profile } = Object(value)
  return {
    words: Object.fromEntries(
      Object.entries(Object(words)).filter(([key, said]) => typeof said === wordTypes[key]),
    ),
    profile: profileOf(profile),
  }
}

/** How a tab begins: with the printer that was taken last in this browser. */
const firstLay = (): Lay => ({ ...noLay, profile: profileOf(read('localStorage', lastPrinterKey)) })

/** This tab before it was loaded again; of a page's file with another design only the printer and the laying. */
export const keptTab = (
  given: string,
): { readonly text: string | null; readonly whole: string | null; readonly lay: Lay } => {
  const kept = read('sessionStorage', tabKey)
  if (kept === null) return { text: null, whole: null, lay: firstLay() }
  try {
    const { given: before, text, whole, lay } = Object(JSON.parse(kept))
    const own = (text: unknown): string | null => (typeof text === 'string' && before === given ? text : null)
    return { text: own(text), whole: own(whole), lay: layOf(lay) }
  } catch {
    return { text: null, whole: null, lay: noLay }
  }
}

/** The last design of this browser. */
export const keptDesign = (): string | null => read('localStorage', designKey)

/** The last of this browser that could be read. */
export const keptWhole = (): string | null => read('localStorage', wholeKey)

interface Found {
  /** the design in the link; null where it carries none */
  readonly linked: string | null
  readonly tab: string | null
  /** the design that the page's file was written with; null where it was with none */
  readonly given: string | null
  /** the last design of this browser */
  readonly last: string | null
}

/**
 * What a page begins with, null for a starter: the design in the link, else that of this tab, one that the file was written with,
 * the last one here. `own`: one's own, where another's is shown in its place; null where there is none, or it is shown.
 */
export const firstText = ({
  linked,
  tab,
  given,
  last,
}: Found): { readonly text: string | null; readonly own: string | null } => {
  const others = linked ?? (tab === null ? given : null)
  const own = tab ?? last
  return others === null ? { text: own, own: null } : { text: others, own: own === others ? null : own }
}

/** What a tab began with, or what it kept last. */
export interface LastKept {
  readonly text: string
  /** undefined before it kept any work of its own */
  readonly whole?: string | null
}

/** Whether a tab holds work of its own that is not kept: a design with open figures is read later than it is typed. */
export const isChanged = ({ text, whole }: Tab, last: LastKept): boolean =>
  text !== last.text || (last.whole !== undefined && whole !== last.whole)

/**
 * Whether it could be kept: a browser may refuse to keep anything, or be full. `changed`: its design becomes the last one of
 * this browser too; a tab that was only looked at leaves there what another one kept.
 */
export const keepTab = (tab: Tab, changed: boolean): boolean => {
  // junk that was dropped is no design: what was kept stays
  if (tab.text.length > mostLetters) return true
  const here = write('sessionStorage', tabKey, JSON.stringify(tab))
  if (!changed) return here
  const there = write('localStorage', designKey, tab.text)
  return (tab.whole === null || write('localStorage', wholeKey, tab.whole)) && here && there
}

/** Files of measured printers by their names. */
export type Printers = Readonly<Record<string, string>>

/** Of the text that is kept. */
export const printersOf = (text: string | null): Printers => {
  try {
    const all: unknown = JSON.parse(text ?? '{}')
    return Object.fromEntries(
      Object.entries(Object(all)).filter((entry): entry is [string, string] => typeof entry[1] === 'string'),
    )
  } catch {
    return {}
  }
}

export const keptPrinters = (): Printers => printersOf(read('localStorage', printersKey))

/** No printer's file has more letters. */
export const mostProfile = 100_000

export const forgetPrinter = (name: string): void => {
  const { [name]: _, ...others } = keptPrinters()
  write('localStorage', printersKey, JSON.stringify(others))
}

/** Beside those that another tab kept meanwhile. Where there is no room for it, what was kept under its name goes: it is out of date. */
export const keepPrinter = (name: string, file: string): boolean => {
  const kept = write('localStorage', printersKey, JSON.stringify({ ...keptPrinters(), [name]: file }))
  if (!kept) forgetPrinter(name)
  return kept
}

/** Whether a key that another tab wrote is that of the printers; null where it cleared all. */
export const isOfPrinters = (key: string | null): boolean => key === null || key === printersKey

/** A printer's file, or the one that is kept under its name. */
export const newestFile = (file: string, printers: Printers): string => {
  const own = readProfile(file)
  if ('error' in own || !Object.hasOwn(printers, own.name)) return file
  const kept = printers[own.name]!
  return 'error' in readProfile(kept) ? file : kept
}

/** One that is not there any more; null where all are. */
export const forgottenOf = (before: Printers, after: Printers): Profile | null => {
  const gone = Object.keys(before).find((name) => !Object.hasOwn(after, name))
  const one = gone === undefined ? null : readProfile(before[gone]!)
  return one === null || 'error' in one ? null : one
}

/** What a tab goes on with that has taken `file`: with none where that was forgotten; one that was never kept stays. */
export const fileAfter = (file: string, before: Printers, after: Printers): string | null => {
  const own = readProfile(file)
  const forgotten = !('error' in own) && before[own.name] === file && !Object.hasOwn(after, own.name)
  return forgotten ? null : newestFile(file, after)
}

/** Whether another one has its name: that is replaced only when one says so. */
export const isTaken = (one: Profile, printers: Printers): boolean =>
  Object.hasOwn(printers, one.name) && printers[one.name] !== writeProfile(one)

/** The printer that the next tab begins with; null for none. */
export const keepLastPrinter = (file: string | null): void => {
  write('localStorage', lastPrinterKey, file ?? '')
}
