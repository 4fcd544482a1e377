import { useEffect } from 'preact/hooks'
import type { Step } from './model.ts'

/** Fields that are not typed in. */
const untyped = ['button', 'checkbox', 'file', 'radio', 'range']

const isTypedIn = (target: EventTarget | null): boolean =>
  target instanceof HTMLTextAreaElement ||
  (target instanceof HTMLInputElement && !untyped.includes(target.type))

/** What the whole window hears: keys that go back and forward, files that are dropped. */
export const useWindow = (
  take: (step: Step) => void,
  open: (file: File | undefined) => Promise<void>,
): void => {
  useEffect(() => {
    const keys = (event: KeyboardEvent): void => {
      if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'z') return
      // a field that is being typed in has its own way back
      if (isTypedIn(event.target)) return
      event.preventDefault()
      take({ kind: event.shiftKey ? 'redo' : 'undo' })
    }
    const over = (event: DragEvent): void => event.preventDefault()
    const drop = (event: DragEvent): void => {
      event.preventDefault()
      open(event.dataTransfer?.files[0])
    }
    // what is typed in the next field is a step of its own
    const rest = (): void => take({ kind: 'rest' })
    addEventListener('keydown', keys)
    addEventListener('dragover', over)
    addEventListener('drop', drop)
    addEventListener('focusout', rest)
    return () => {
      removeEventListener('keydown', keys)
      removeEventListener('dragover', over)
      removeEventListener('drop', drop)
      removeEventListener('focusout', rest)
    }
  }, [take, open])
}
