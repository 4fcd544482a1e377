import { existsSync, linkSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { dirname, resolve } from 'node:path'
import { Failure } from './failure.ts'

/** Larger files are no design; they are not even read. */
const mostBytes = 4 * 1024 * 1024

const reason = (error: unknown): string => {
  const code = (error as NodeJS.ErrnoException).code ?? ''
  const words: Readonly<Record<string, string>> = {
    ENOENT: 'there is no such file or folder',
    ENOTDIR: 'a part of that path is a file, not a folder',
    EISDIR: 'that is a folder',
    EACCES: 'you may not do that there; choose another folder or change its rights',
    EPERM: 'you may not do that there; choose another folder or change its rights',
    EROFS: 'that disk can only be read; choose another folder',
    ENOSPC: 'the disk is full; make room or choose another one',
    ENAMETOOLONG: 'that name is too long; choose a shorter one',
  }
  return words[code] ?? (code || String(error))
}

/** The text of a file. Fails with exit 2 where it cannot be read, 1 where it is not text. */
export const readText = (file: string): string => {
  let bytes: Uint8Array
  try {
    const stat = statSync(file)
    if (stat.isDirectory()) throw Object.assign(new Error(), { code: 'EISDIR' })
    if (stat.size > mostBytes)
      throw new Failure(1, `${file} is ${Math.round(stat.size / 1024)} kB; a design file is at most 256 kB`)
    bytes = readFileSync(file)
  } catch (error) {
    if (error instanceof Failure) throw error
    throw new Failure(2, `cannot read ${file}: ${reason(error)}`)
  }
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    throw new Failure(1, `${file} is not text in UTF-8; a design file is plain text, save it as such`)
  }
}

/** Asked before the work is done, so that nobody waits for a result that cannot be kept. */
export const checkOut = (file: string, force: boolean): void => {
  const folder = dirname(resolve(file))
  if (!existsSync(folder))
    throw new Failure(2, `cannot write ${file}: there is no folder ${folder}; make it first`)
  if (!existsSync(file)) return
  if (statSync(file).isDirectory())
    throw new Failure(2, `cannot write ${file}: that is a folder; add a file name`)
  if (!force)
    throw new Failure(2, `${file} exists and is kept; choose another --out, or add --force to replace it`)
}

/** Written beside, then renamed: a file is there whole or not at all, and one that came meanwhile is kept. */
export const writeOut = (file: string, content: string | Uint8Array, force: boolean): void => {
  checkOut(file, force)
  const beside = `${file}.${process.pid}.part`
  try {
    writeFileSync(beside, content, { flag: 'wx' })
    if (force) renameSync(beside, file)
    else linkSync(beside, file)
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST')
      throw new Failure(2, `${file} exists and is kept; choose another --out, or add --force to replace it`)
    throw new Failure(2, `cannot write ${file}: ${reason(error)}`)
  } finally {
    rmSync(beside, { force: true })
  }
}
