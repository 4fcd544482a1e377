import { useCallback, useEffect, useMemo, useRef, useState } from 'preact/hooks'
import { type Profile, writeProfile } from '../../index.ts'
import {
  fileAfter,
  forgetPrinter,
  forgottenOf,
  isOfPrinters,
  isTaken,
  keepPrinter,
  keptPrinters,
  type Printers,
  printersOf,
} from './keep.ts'

export interface KeptPrinters {
  /** those of this browser; where it keeps nothing, those of this page */
  readonly all: Printers
  /** keeps one and takes it for the pages; nothing where another of its name is there and is not to be replaced */
  readonly keep: (one: Profile, replacing?: boolean) => 'kept' | 'not kept' | 'name taken'
  /** the pages are for none then */
  readonly forget: (one: Profile) => void
  /** the one that was forgotten last, in another tab too */
  readonly last: Profile | null
}

/** The printers that are known here, however each came: by another tab too. `take`: changes the one that the pages are laid for. */
export const usePrinters = (take: (next: (file: string | null) => string | null) => void): KeptPrinters => {
  const [all, setAll] = useState(keptPrinters)
  const [last, setLast] = useState<Profile | null>(null)
  const now = useRef(all)
  now.current = all
  const keep = useCallback((one: Profile, replacing = false) => {
    const there = { ...now.current, ...keptPrinters() }
    if (!replacing && isTaken(one, there)) return 'name taken'
    const file = writeProfile(one)
    const kept = keepPrinter(one.name, file)
    setAll({ ...there, [one.name]: file })
    setLast(null)
    take(() => file)
    return kept ? 'kept' : 'not kept'
  }, [])
  const forget = useCallback((one: Profile) => {
    forgetPrinter(one.name)
    const { [one.name]: _, ...others } = now.current
    setAll(others)
    setLast(one)
    take(() => null)
  }, [])
  useEffect(() => {
    const heard = ({ key, oldValue }: StorageEvent): void => {
      if (!isOfPrinters(key)) return
      const [before, kept] = [printersOf(oldValue), keptPrinters()]
      setAll(kept)
      setLast((last) => forgottenOf(before, kept) ?? last)
      take((file) => (file === null ? null : fileAfter(file, before, kept)))
    }
    addEventListener('storage', heard)
    return () => removeEventListener('storage', heard)
  }, [])
  return useMemo(() => ({ all, keep, forget, last }), [all, last])
}
