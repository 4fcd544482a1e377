import { useCallback, useEffect, useMemo, useRef, useState } from 'preact/hooks'
import { type Profile, writeProfile } from '../../index.ts'
import {
  forgetPrinter,
  isOfPrinters,
  isTaken,
  keepPrinter,
  keptPrinters,
  newestFile,
  type Printers,
} from './keep.ts'

export interface KeptPrinters {
  /** those of this browser; where it keeps nothing, those of this page */
  readonly all: Printers
  /** keeps one and takes it for the pages; nothing where another of its name is there and is not to be replaced */
  readonly keep: (one: Profile, replacing?: boolean) => 'kept' | 'not kept' | 'name taken'
  /** the pages are for none then */
  readonly forget: (name: string) => void
}

/** The printers that are known here, however each came: by another tab too. `take`: changes the one that the pages are laid for. */
export const usePrinters = (take: (next: (file: string | null) => string | null) => void): KeptPrinters => {
  const [all, setAll] = useState(keptPrinters)
  const now = useRef(all)
  now.current = all
  const keep = useCallback((one: Profile, replacing = false) => {
    const there = { ...now.current, ...keptPrinters() }
    if (!replacing && isTaken(one, there)) return 'name taken'
    const file = writeProfile(one)
    const kept = keepPrinter(one.name, file)
    setAll({ ...there, [one.name]: file })
    take(() => file)
    return kept ? 'kept' : 'not kept'
  }, [])
  const forget = useCallback((name: string) => {
    forgetPrinter(name)
    const { [name]: _, ...others } = now.current
    setAll(others)
    take(() => null)
  }, [])
  useEffect(() => {
    const heard = ({ key }: StorageEvent): void => {
      if (!isOfPrinters(key)) return
      const kept = keptPrinters()
      setAll(kept)
      take((file) => (file === null ? null : newestFile(file, kept)))
    }
    addEventListener('storage', heard)
    return () => removeEventListener('storage', heard)
  }, [])
  return useMemo(() => ({ all, keep, forget }), [all])
}
