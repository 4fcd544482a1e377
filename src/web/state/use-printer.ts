import { useState } from 'preact/hooks'
import { gaugeJob, isRefusal, type PaperName, type Profile, readProfile } from '../../index.ts'
import { faultWords } from '../words/form-words.ts'
import type { Lay } from '../worker/messages.ts'
import { mostProfile } from './keep.ts'
import type { KeptPrinters } from './use-printers.ts'

/** Without these a printer is not known: how each is asked for. */
const wanted: readonly (readonly [key: string, words: string])[] = [
  ['across', 'measure the side of the square across the page, with the unit: 149.5mm'],
  ['down', 'measure the side of the square down the page, with the unit: 149.5mm'],
  ['diagonals', 'measure both diagonals, with the unit: 212.1mm 212.1mm'],
]

/** What a rule says, as it is typed, by the names of its fields. */
export type Measures = Readonly<Record<string, string>>

export interface PrinterState {
  /** the one that the pages are corrected for */
  readonly known: Profile | null
  /** the file of each, by its name */
  readonly all: Readonly<Record<string, string>>
  readonly words: string
  /** called as one that is kept already: stored only when that is said */
  readonly clash: Profile | null
  readonly measure: (name: string, measures: Measures) => void
  readonly read: (file: File | undefined) => Promise<void>
  readonly replace: (one: Profile) => void
  readonly forget: (one: Profile) => void
  /** the one that was forgotten last, unless its name is there again */
  readonly forgotten: Profile | null
  /** keeps it after all */
  readonly again: (one: Profile) => void
}

/** The printers that this browser keeps, and the one that the pages are laid for. */
export const usePrinter = (lay: Lay, printers: KeptPrinters, paper: PaperName): PrinterState => {
  const [words, setWords] = useState('')
  const [clash, setClash] = useState<Profile | null>(null)
  const profile = lay.profile === null ? null : readProfile(lay.profile)
  const known = profile !== null && !('error' in profile) ? profile : null
  // one that was opened as a file stands there too
  const all = known === null ? printers.all : { ...printers.all, [known.name]: lay.profile! }
  const { last } = printers
  const forgotten = last === null || Object.hasOwn(all, last.name) ? null : last

  const offer = (one: Profile, replacing = false): void => {
    const done = printers.keep(one, replacing)
    setClash(done === 'name taken' ? one : null)
    setWords(
      done === 'name taken'
        ? `a printer called ${one.name} is kept already: give another name, or replace it`
        : done === 'kept'
          ? `${one.name} is kept in this browser`
          : `this browser keeps nothing: save the file of ${one.name}`,
    )
  }
  const forget = (one: Profile): void => {
    printers.forget(one)
    setClash(null)
    setWords('')
  }
  const measure = (name: string, measures: Measures): void => {
    const said = (key: string): readonly string[] =>
      [measures[key] ?? ''].filter((text) => text.trim() !== '')
    const missing = wanted.filter(([key]) => said(key).length === 0)
    if (missing.length > 0) {
      setWords(missing.map(([, words]) => words).join('\n'))
      return
    }
    const found = gaugeJob(
      name.trim() || 'my printer',
      {
        across: said('across'),
        down: said('down'),
        diagonals: said('diagonals'),
        ...(measures.margins && { margins: measures.margins }),
      },
      paper,
    )
    if (!isRefusal(found)) offer(found)
    else setWords('faults' in found ? faultWords(found.faults) : 'it cannot be measured')
  }
  const read = async (file: File | undefined): Promise<void> => {
    if (file === undefined) return
    const found = readProfile(await file.slice(0, mostProfile).text())
    if ('error' in found) setWords(found.error)
    else offer(found)
  }
  const replace = (one: Profile): void => offer(one, true)
  const told = forgotten === null ? words : `${forgotten.name} is forgotten in this browser\n${words}`.trim()
  return { known, all, words: told, clash, measure, read, replace, forget, forgotten, again: offer }
}
