import { useCallback, useState } from 'preact/hooks'
import { mostSetBytes, readProfile } from '../../index.ts'
import type { Asking } from '../worker/ask.ts'
import type { Answer } from '../worker/messages.ts'
import { mostProfile } from './keep.ts'
import type { KeptPrinters } from './use-printers.ts'

/** No design comes near; of what is longer so much is read, so that its reader says what it is. */
const mostText = 8_000_000

export interface OpenedSet {
  /** of its file */
  readonly name: string
  readonly bytes: Uint8Array
  readonly found: Extract<Answer, { kind: 'open-set' }>
}

export interface Files {
  readonly set: OpenedSet | null
  readonly closeSet: () => void
  /** what was wrong with the last one, or what it is */
  readonly words: string
  readonly open: (file: File | undefined) => Promise<void>
}

/** Null where it is no text in UTF-8; of what is cut off the last letter may be half one. */
const textOf = (bytes: ArrayBuffer, cut: boolean): string | null => {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes, { stream: cut })
  } catch {
    return null
  }
}

/** A file that is opened or dropped: a set is told by its first letters, a printer's file by its figures, all else is read as a design. */
export const useFiles = (
  asking: Asking,
  takeDesign: (text: string) => void,
  keepPrinter: KeptPrinters['keep'],
): Files => {
  const [set, setSet] = useState<OpenedSet | null>(null)
  const [words, setWords] = useState('')
  const takeText = (name: string, text: string): void => {
    const profile = text.length > mostProfile ? { error: '' } : readProfile(text)
    if ('error' in profile) {
      takeDesign(text)
      return
    }
    const what = `${name} is the file of printer ${profile.name}, no design`
    setWords(
      keepPrinter(profile) === 'name taken'
        ? `${what}; another of that name is kept here: open it under printer to replace that one`
        : `${what}: the pages are corrected for it now`,
    )
  }
  const open = useCallback(async (file: File | undefined): Promise<void> => {
    if (file === undefined) return
    setWords('')
    // what is refused leaves no other set beside its words
    setSet(null)
    const head = new TextDecoder('latin1').decode(await file.slice(0, 5).arrayBuffer())
    if (head !== '%PDF-') {
      const text = textOf(await file.slice(0, mostText).arrayBuffer(), file.size > mostText)
      if (text === null) setWords(`${file.name} is not text in UTF-8; save it as plain text in UTF-8`)
      else takeText(file.name, text)
      return
    }
    if (file.size > mostSetBytes) {
      setWords(`${file.name} is larger than any set`)
      return
    }
    try {
      const bytes = new Uint8Array(await file.arrayBuffer())
      const answer = await asking.ask({ kind: 'open-set', bytes })
      if (answer.kind === 'open-set') setSet({ name: file.name, bytes, found: answer })
    } catch (error) {
      setWords(error instanceof Error ? error.message : String(error))
    }
  }, [])
  return { set, closeSet: useCallback(() => setSet(null), []), words, open }
}
