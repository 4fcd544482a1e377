import type { Progress } from '../shell.ts'

/** Less is over before anybody wonders; and from one figure to the next, ms. */
const patience = 500
const pause = 100

/** `pages n of N` in one line of a terminal, from when the program has run for half a second. `now`: ms since its start. */
export const lineProgress = (write: (text: string) => void, now: () => number): Progress => {
  let shown: number | null = null
  return {
    at: (done, of, what = 'pages') => {
      const time = now()
      if (time < (shown === null ? patience : shown + pause)) return
      shown = time
      write(`\r${what} ${done} of ${of}`)
    },
    end: () => {
      if (shown !== null) write('\r\u001b[K')
      shown = null
    },
  }
}
