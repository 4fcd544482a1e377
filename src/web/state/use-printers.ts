import { useCallback, useMemo, useRef, useState } from 'preact/hooks'
import { type Profile, writeProfile } from '../../index.ts'
import { isTaken, keepPrinter, keptPrinters, type Printers } from './keep.ts'

export interface KeptPrinters {
  /** those of this browser; where it keeps nothing, those of this page */
  readonly all: Printers
  /** keeps one and takes it for the pages; nothing where another of its name is there and is not to be replaced */
  readonly keep: (one: Profile, replacing?: boolean) => 'kept' | 'not kept' | 'name taken'
}

/** The printers that are known here, however each came. */
export const usePrinters = (take: (file: string | null) => void): KeptPrinters => {
  const [all, setAll] = useState(keptPrinters)
  const now = useRef(all)
  now.current = all
  const keep = useCallback((one: Profile, replacing = false) => {
    const there = { ...now.current, ...keptPrinters() }
    if (!replacing && isTaken(one, there)) return 'name taken'
    const file = writeProfile(one)
    const kept = keepPrinter(one.name, file)
    setAll({ ...there, [one.name]: file })
    take(file)
    return kept ? 'kept' : 'not kept'
  }, [])
  return useMemo(() => ({ all, keep }), [all])
}
