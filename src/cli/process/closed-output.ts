import { fstatSync, readFileSync, readSync, statSync } from 'node:fs'

const standardOutput = 1

/**
 * Whether a shell closed our standard output (`>&-`). Before anything of ours runs Node puts the null device there, open to be read
 * too, which a shell's `>/dev/null` is not. Programs that throw words away on purpose may open it so: hence whose doing it is.
 */
export const outputClosed = (): boolean => {
  try {
    if (!isNull(fstatSync(standardOutput).rdev)) return false
    readSync(standardOutput, Buffer.alloc(1))
    return shells.test(giverOf(process.ppid))
  } catch {
    // closed to readers; a system without a null device, or where others cannot be looked at: Linux alone has these places
    return false
  }
}

const shells = /^-?(?:ba|da|a|z|k|mk|fi|tc|c)?sh$/

/** The nearest program above whose own standard output is not the null device: some shells close theirs until it is done. */
const giverOf = (pid: number): string =>
  isNull(statSync(`/proc/${pid}/fd/${standardOutput}`, { throwIfNoEntry: false })?.rdev)
    ? giverOf(Number(/^PPid:\s+(\d+)$/m.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))![1]))
    : readFileSync(`/proc/${pid}/comm`, 'utf8').trim()

const isNull = (device: number | undefined): boolean => device === statSync('/dev/null').rdev
