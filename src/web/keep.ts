const key = 'traceply.design'

/** The design that this browser held last; a browser may refuse to keep anything, which is said. */
export const kept = (): { readonly text: string | null; readonly refused: boolean } => {
  try {
    return { text: localStorage.getItem(key), refused: false }
  } catch {
    return { text: null, refused: true }
  }
}

/** Whether it could be kept. */
export const keep = (text: string): boolean => {
  try {
    localStorage.setItem(key, text)
    return true
  } catch {
    return false
  }
}
