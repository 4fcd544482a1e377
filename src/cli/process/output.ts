import { fstatSync, writeSync } from 'node:fs'

/** Where words go. */
export interface Output {
  readonly write: (content: string | Uint8Array) => void
  /** a person reads them as they come */
  readonly isScreen: boolean
}

/** What the system does. */
interface System {
  readonly fstatSync: (file: number) => { readonly isCharacterDevice: () => boolean }
  readonly writeSync: (file: number, bytes: Uint8Array, from: number) => number
}

/**
 * Standard output (1) or that for errors (2), told at once what is written. Node's own streams take a process as short as ours a good
 * tenth of its time to load: they are asked where a screen may be, and where a pipe is full and set not to wait. `lost`: why
 * something could not be written.
 */
export const outputTo = (
  file: 1 | 2,
  lost: (error: NodeJS.ErrnoException) => void,
  system: System = { fstatSync, writeSync },
): Output => {
  const stream = (): NodeJS.WriteStream => (file === 1 ? process.stdout : process.stderr).on('error', lost)
  // a screen is a device that takes one character after another; so are others
  if (system.fstatSync(file).isCharacterDevice()) {
    const own = stream()
    return { write: (content) => own.write(content), isScreen: own.isTTY === true }
  }
  let waiting: NodeJS.WriteStream | null = null
  const write = (content: string | Uint8Array): void => {
    if (waiting) {
      waiting.write(content)
      return
    }
    const bytes = Buffer.from(content)
    let done = 0
    try {
      while (done < bytes.length) done += system.writeSync(file, bytes, done)
    } catch (error) {
      const why = error as NodeJS.ErrnoException
      if (why.code === 'EAGAIN') {
        waiting = stream()
        waiting.write(bytes.subarray(done))
      } else lost(why)
    }
  }
  return { write, isScreen: false }
}
