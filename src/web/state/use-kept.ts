import { useEffect, useState } from 'preact/hooks'
import type { Lay } from '../worker/messages.ts'
import { keepTab } from './keep.ts'

/** The design, and how its pages are laid, are kept through a reload; whether they could be. */
export const useKept = (text: string, lay: Lay): boolean => {
  const [keeps, setKeeps] = useState(true)
  useEffect(() => {
    // not with each key: a browser's storage is slow
    const timer = setTimeout(() => setKeeps(keepTab({ text, lay })), 200)
    const now = (): void => {
      keepTab({ text, lay })
    }
    addEventListener('pagehide', now)
    return () => {
      clearTimeout(timer)
      removeEventListener('pagehide', now)
    }
  }, [text, lay])
  return keeps
}
