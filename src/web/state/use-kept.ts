import { useLayoutEffect, useRef, useState } from 'preact/hooks'
import { isChanged, keepLastPrinter, keepTab, type LastKept, type Tab } from './keep.ts'
import { leaveLink } from './link.ts'

/** The design, and how its pages are laid, are kept through a reload; whether they could be. */
export const useKept = (tab: Tab): boolean => {
  const [keeps, setKeeps] = useState(true)
  // what this tab began with is not its own work
  const last = useRef<LastKept>({ text: tab.text })
  // not after the next picture: a reload may come before it
  useLayoutEffect(() => {
    // where nothing is kept the link is all that there is
    if (keeps) leaveLink(tab.text)
    const keep = (): boolean => {
      const changed = isChanged(tab, last.current)
      const kept = keepTab(tab, changed)
      if (kept && changed) last.current = tab
      return kept
    }
    // not with each key: a browser's storage is slow
    const timer = setTimeout(() => setKeeps(keep()), 200)
    addEventListener('pagehide', keep)
    return () => {
      clearTimeout(timer)
      removeEventListener('pagehide', keep)
    }
  }, [tab.text, tab.whole, tab.lay])
  const { profile } = tab.lay
  const taken = useRef(profile)
  useLayoutEffect(() => {
    if (profile !== taken.current) keepLastPrinter(profile)
    taken.current = profile
  }, [profile])
  return keeps
}
