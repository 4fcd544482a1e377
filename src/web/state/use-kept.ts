import { useEffect, useState } from 'preact/hooks'
import { keepDesign } from './keep.ts'

/** The design is kept through a reload; whether it could be. */
export const useKept = (text: string): boolean => {
  const [keeps, setKeeps] = useState(true)
  useEffect(() => {
    // not with each key: a browser's storage is slow
    const timer = setTimeout(() => setKeeps(keepDesign(text)), 200)
    const now = (): void => {
      keepDesign(text)
    }
    addEventListener('pagehide', now)
    return () => {
      clearTimeout(timer)
      removeEventListener('pagehide', now)
    }
  }, [text])
  return keeps
}
