import { useEffect } from 'preact/hooks'
import { isShown } from './state/use-leaf.ts'

/** No fields: a phone would open its keys. */
const takers = 'button:not(:disabled, [aria-disabled="true"]), summary'

/** A button that has the focus, and the elements around it, the innermost first. */
interface Held {
  readonly button: HTMLButtonElement
  readonly around: readonly Element[]
}

const heldOf = (button: HTMLButtonElement): Held => {
  const around: Element[] = []
  for (let at = button.parentElement; at !== null; at = at.parentElement) around.push(at)
  return { button, around }
}

/** Where one goes on without the button: what follows it in the innermost box that still stands, else the first there. */
const nextOf = ({ button, around }: Held): HTMLElement | undefined => {
  const follows = (other: Element): boolean =>
    button.isConnected && (button.compareDocumentPosition(other) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0
  for (const box of around.filter(({ isConnected }) => isConnected)) {
    const shown = [...box.querySelectorAll<HTMLElement>(takers)].filter(isShown)
    const next = shown.find(follows) ?? shown[0]
    if (next !== undefined) return next
  }
  return undefined
}

/**
 * A button that goes, or is barred, hands the focus on: without one the keyboard begins at the top again. One that is barred for a
 * while, as for what is being saved, gets it back, unless something was pressed meanwhile.
 */
export const useFocus = (): void => {
  useEffect(() => {
    let held: Held | null = null
    let lent: { readonly button: HTMLButtonElement; readonly to: HTMLElement } | null = null
    const took = ({ target }: FocusEvent): void => {
      held = target instanceof HTMLButtonElement ? heldOf(target) : null
    }
    // a press beside it leaves it
    const pressed = ({ target }: PointerEvent): void => {
      lent = null
      if (held !== null && !held.button.contains(target as Node)) held = null
    }
    const typed = (): void => {
      lent = null
    }
    const giveBack = (): void => {
      if (lent === null || lent.button.disabled) return
      if (document.activeElement === lent.to) lent.button.focus({ preventScroll: true })
      lent = null
    }
    const watch = new MutationObserver(() => {
      giveBack()
      const lost = held
      if (lost === null || (lost.button.isConnected && !lost.button.disabled)) return
      // what is drawn meanwhile may take the focus itself
      setTimeout(() => {
        const { activeElement } = document
        if (held !== lost || (activeElement !== document.body && activeElement !== lost.button)) return
        const to = nextOf(lost)
        if (to === undefined) return
        lent = { button: lost.button, to }
        to.focus({ preventScroll: true })
      })
    })
    addEventListener('focusin', took)
    addEventListener('pointerdown', pressed)
    addEventListener('keydown', typed)
    watch.observe(document.body, { subtree: true, childList: true, attributeFilter: ['disabled'] })
    return () => {
      removeEventListener('focusin', took)
      removeEventListener('pointerdown', pressed)
      removeEventListener('keydown', typed)
      watch.disconnect()
    }
  }, [])
}
