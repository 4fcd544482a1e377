import {
  closeSync,
  linkSync,
  openSync,
  readdirSync,
  readSync,
  realpathSync,
  renameSync,
  rmSync,
  type Stats,
  statSync,
  writeFileSync,
} from 'node:fs'
import { basename, dirname, extname, join, resolve } from 'node:path'
import { Failure } from './failure.ts'

/** What a text is that is read, and how much of it: no more is looked at. A letter of a design may take four bytes. */
const textFiles = {
  design: { of: 'a design', kilobytes: 1024 },
  profile: { of: 'a profile', kilobytes: 256 },
  points: { of: 'a list of points', kilobytes: 256 },
} as const

const throughFile = 'a part of that path is a file, not a folder'

/** Why the system refuses, in words that say the way out. */
export const reason = (error: unknown): string => {
  const code = codeOf(error)
  const words: Readonly<Record<string, string>> = {
    ENOENT: 'there is no such file or folder',
    ERR_FS_EISDIR: 'that is a folder',
    ENOTDIR: throughFile,
    EISDIR: 'that is a folder',
    EEXIST: 'a file of that name is in the way',
    EACCES: 'you may not do that there; choose another folder or change its rights',
    EPERM: 'you may not do that there; choose another folder or change its rights',
    EROFS: 'that disk can only be read; choose another folder',
    ENOSPC: 'the disk is full; make room or choose another one',
    EDQUOT: 'your share of that disk is full; make room or choose another one',
    EFBIG: 'that disk takes no file of this size; choose another one',
    EBUSY: 'another program holds that file; close it there',
    EIO: 'the disk reports a fault; choose another one',
    ELOOP: 'its links lead round in a circle',
    ENAMETOOLONG: 'that name is too long; choose a shorter one',
  }
  return words[code] ?? `the system says ${code || String(error)}`
}

const codeOf = (error: unknown): string => (error as NodeJS.ErrnoException).code ?? ''

/** The text of a file, `-` for standard input. Fails with exit 2 where it cannot be read, 1 where it is not text. */
export const readText = (file: string, kind: keyof typeof textFiles = 'design'): string => {
  if (file === '') throw new Failure(2, 'the name of the file to read is empty')
  const { of, kilobytes } = textFiles[kind]
  const most = kilobytes * 1024
  let bytes: Uint8Array
  try {
    bytes = readAtMost(file, most + 1)
  } catch (error) {
    throw error instanceof Failure ? error : new Failure(2, `cannot read ${file}: ${reason(error)}`)
  }
  if (bytes.length > most)
    throw new Failure(1, `${file} has more than ${kilobytes} kB, the most of ${of}: is it the right file?`)
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    throw new Failure(1, `${file} is not text in UTF-8; save it as plain text in UTF-8`)
  }
}

const standardInput = 0
const pipeWords = 'that is a pipe; give the name of a file, or - for what is piped in'

/** Never more than `most`, even of a device that has no end. */
export const readAtMost = (file: string, most: number): Uint8Array => {
  // a pipe is waited for without end
  if (file !== '-' && statSync(file).isFIFO()) throw new Failure(2, `cannot read ${file}: ${pipeWords}`)
  const handle = file === '-' ? standardInput : openSync(file, 'r')
  try {
    const chunks: Buffer[] = []
    for (let left = most; left > 0; ) {
      const chunk = Buffer.alloc(Math.min(left, 65_536))
      const count = readSome(handle, chunk)
      if (count === 0) break
      chunks.push(chunk.subarray(0, count))
      left -= count
    }
    return Buffer.concat(chunks)
  } finally {
    if (handle !== standardInput) closeSync(handle)
  }
}

/** A pipe that another program has set not to block says again and again that nothing is there yet. */
const readSome = (handle: number, into: Uint8Array): number => {
  for (;;)
    try {
      return readSync(handle, into)
    } catch (error) {
      if (codeOf(error) !== 'EAGAIN') throw error
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 10)
    }
}

/**
 * Asked before the work is done, so that nobody waits for a result that cannot be kept. `source` is what the command reads:
 * not even --force replaces that.
 */
export const checkOut = (file: string, force: boolean, source?: string): void => {
  if (file === '') throw new Failure(2, 'the name of the file to write is empty')
  if (file === '-')
    throw new Failure(
      2,
      'cannot write -: what goes to standard output needs no --out; else give the name of a file',
    )
  const cannot = (why: string): Failure => new Failure(2, `cannot write ${file}: ${why}`)
  const known = (path: string): Stats | undefined => {
    try {
      return statSync(path, { throwIfNoEntry: false })
    } catch (error) {
      throw cannot(reason(error))
    }
  }
  if (process.platform === 'win32' && reservedName.test(basename(file)))
    throw cannot('Windows keeps that name for a device; choose another one')
  const there = known(file)
  if (there?.isDirectory() || /[/\\]$/.test(file)) throw cannot('that is a folder; add a file name')
  if (!there) {
    const folder = dirname(resolve(file))
    const above = known(folder)
    // newer Nodes say of a path that leads through a file only that nothing is there
    if (!nearestAbove(file, known)?.isDirectory()) throw cannot(throughFile)
    if (!above) throw cannot(`there is no folder ${folder}; make it first`)
    return
  }
  if (!there.isFile()) throw cannot('that is a device or a pipe; give the name of a file')
  const read = source === undefined ? undefined : known(source)
  if (read && read.ino === there.ino && read.dev === there.dev)
    throw cannot('that is the file that is read; choose another name')
  if (!force) throw kept(file)
}

/** The nearest of the folders above a path that there is. */
const nearestAbove = (path: string, known: (path: string) => Stats | undefined): Stats | undefined => {
  const above = dirname(resolve(path))
  return known(above) ?? (above === path ? undefined : nearestAbove(above, known))
}

const kept = (file: string): Failure =>
  new Failure(2, `${file} exists and is kept; choose another name, or add --force to replace it`)

const part = '.traceply-part'

/** From here on a signal waits until what is written beside is renamed or gone; nothing long comes after. */
const holdSignals = (): void => {
  for (const [signal, number] of [
    ['SIGINT', 2],
    ['SIGTERM', 15],
    ['SIGHUP', 1],
  ] as const)
    if (process.listenerCount(signal) === 0) process.once(signal, () => process.exit(128 + number))
}

/** What a run that was killed left in a folder. */
const removeStale = (folder: string): void => {
  try {
    for (const name of readdirSync(folder)) {
      const [, pid] = new RegExp(`^\\.(\\d+)-[\\da-f-]+\\${part}$`).exec(name) ?? []
      if (pid !== undefined && !isAlive(Number(pid))) removeQuietly(join(folder, name))
    }
  } catch {
    // it is not ours to look into
  }
}

const isAlive = (pid: number): boolean => {
  try {
    return process.kill(pid, 0)
  } catch (error) {
    return codeOf(error) === 'EPERM'
  }
}

/** Written beside, then renamed: a file is there whole or not at all, and one that came meanwhile is kept. */
export const writeOut = (file: string, content: string | Uint8Array, force: boolean): void => {
  checkOut(file, force)
  const target = force ? behindLinks(file) : file
  holdSignals()
  removeStale(dirname(target))
  const beside = join(dirname(target), `.${process.pid}-${crypto.randomUUID()}${part}`)
  try {
    writeFileSync(beside, content, { flag: 'wx' })
    if (force) renameSync(beside, target)
    else takeName(beside, target)
  } catch (error) {
    if (codeOf(error) === 'EEXIST') throw kept(file)
    throw new Failure(2, `cannot write ${file}: ${reason(error)}`)
  } finally {
    removeQuietly(beside)
  }
}

/** Windows keeps these for devices, whatever their ending. */
export const reservedName = /^(?:con|prn|aux|nul|com[\d¹²³]|lpt[\d¹²³])(?:\.|$)/i

/** What is written, and the endings that say so. */
export interface Written {
  readonly is: string
  readonly endings: readonly string[]
}

/** `checkOut` where a name that says it is something else is refused; one that says nothing is taken. */
export const checkNamed = (file: string, { is, endings }: Written, force: boolean, source?: string): void => {
  // a file that is there is told of last: another name may be needed anyway
  checkOut(file, true, source)
  const ending = extname(file).toLowerCase()
  if (/^\.[a-z]+$/.test(ending) && !endings.includes(ending))
    throw new Failure(
      2,
      `cannot write ${file}: what is written is ${is}; give it a name that ends in ${endings[0]}`,
    )
  checkOut(file, force, source)
}

/** The same for a PDF. */
export const checkPdf = (file: string, force: boolean, source?: string): void =>
  checkNamed(file, { is: 'a PDF', endings: ['.pdf'] }, force, source)

/** Whether two names lead to the same file, or will once it is there. */
export const sameFile = (one: string, other: string): boolean =>
  resolve(behindLinks(one)) === resolve(behindLinks(other))

/** A link stays a link: what it leads to is replaced. One that leads nowhere is replaced itself. */
const behindLinks = (file: string): string => {
  try {
    return realpathSync(file)
  } catch {
    return file
  }
}

/** Gives what was written beside its name, unless somebody else has it: of two at once, one wins. */
const takeName = (beside: string, file: string): void => {
  try {
    linkSync(beside, file)
  } catch (error) {
    if (codeOf(error) === 'EEXIST') throw error
    // memory sticks know no links: there the name is taken first, empty, and filled at once
    closeSync(openSync(file, 'wx'))
    try {
      renameSync(beside, file)
    } catch (fault) {
      removeQuietly(file)
      throw fault
    }
  }
}

/** What could not be made, or is gone already, need not be removed. */
const removeQuietly = (file: string): void => {
  try {
    rmSync(file, { force: true })
  } catch {}
}
