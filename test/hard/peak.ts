import { readFileSync, writeFileSync } from 'node:fs'

/** The most memory that this process had since the last time it was asked, MB; Linux tells it, elsewhere null. */
export const peakSince = (): number | null => {
  try {
    const [, kilobytes] = /VmHWM:\s+(\d+) kB/.exec(readFileSync('/proc/self/status', 'utf8')) ?? []
    // the mark is set back to what is in use now (proc(5))
    writeFileSync('/proc/self/clear_refs', '5')
    return Number(kilobytes) / 1024
  } catch {
    return null
  }
}
