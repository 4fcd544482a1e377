import { useEffect, useRef, useState } from 'preact/hooks'
import { dropLink, isTorn, linked } from './link.ts'
import type { Step } from './model.ts'

/** Takes a link that is pasted into the address of the open page; whether the one that stands there is torn. */
export const useLink = (text: string, take: (step: Step) => void): boolean => {
  // the design that is shown in its place
  const [instead, setInstead] = useState(() => (isTorn(location.hash) ? text : null))
  const now = useRef(text)
  now.current = text
  useEffect(() => {
    const pasted = (): void => {
      const design = linked(location.hash)
      setInstead(isTorn(location.hash) ? now.current : null)
      if (design !== null) take({ kind: 'text', text: design, of: null })
    }
    addEventListener('hashchange', pasted)
    return () => removeEventListener('hashchange', pasted)
  }, [take])
  useEffect(() => {
    if (instead === null || instead === text) return
    dropLink()
    setInstead(null)
  }, [text])
  return instead === text
}
