import { useCallback, useLayoutEffect, useRef, useState } from 'preact/hooks'

export interface Leaf {
  /** null where the ramp is shown */
  readonly page: number | null
  readonly turn: (page: number | null) => void
  readonly close: () => void
}

/** Whether it is drawn, and in no closed fold: Safari has `checkVisibility` since 17.4 only. */
export const isShown = (one: Element): boolean =>
  one.getClientRects().length > 0 && one.closest('details:not([open]) > :not(summary)') === null

/**
 * The page that is looked at. `count`: of the pages, null while none are known yet; on larger paper there are fewer, and of what has
 * none it is shut for good.
 */
export const useLeaf = (count: number | null): Leaf => {
  const [leaf, setLeaf] = useState<number | null>(null)
  const page = leaf === null || count === 0 ? null : Math.min(leaf, count ?? leaf)
  useLayoutEffect(() => {
    if (count === 0) setLeaf(null)
  }, [leaf, count])
  const shown = useRef(page)
  shown.current = page
  const close = useCallback((): void => {
    setLeaf(null)
    // back to where it was asked for
    const last = shown.current
    setTimeout(() => {
      const there = [...document.querySelectorAll<HTMLElement | SVGElement>(`[data-page="${last}"]`)]
      there.find(isShown)?.focus()
    })
  }, [])
  return { page, turn: setLeaf, close }
}
