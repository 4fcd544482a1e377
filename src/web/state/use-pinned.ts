import { useLayoutEffect, useRef } from 'preact/hooks'

/** What stays in sight at the top: what is scrolled to, or focused, stops below it. */
export const usePinned = () => {
  const pinned = useRef<HTMLDivElement>(null)
  useLayoutEffect(() => {
    const box = pinned.current!
    const root = document.documentElement
    const measure = (): void => {
      const { position } = getComputedStyle(box)
      // the page's policy takes no style in the markup
      root.style.scrollPaddingTop = position === 'sticky' ? `${box.offsetHeight + 8}px` : ''
    }
    measure()
    const watch = new ResizeObserver(measure)
    watch.observe(box)
    return () => watch.disconnect()
  }, [])
  return pinned
}
