import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout } from 'node:timers/promises'
import { inject } from 'vitest'

declare module 'vitest' {
  export interface ProvidedContext {
    builds: string
  }
}

/** Made by the first worker of a run that asks, in a folder of that name; the others wait. What fails, fails for all. */
export const madeOnce = async (
  name: string,
  make: (folder: string) => void | Promise<void>,
): Promise<string> => {
  const folder = join(inject('builds'), name)
  const done = `${folder}-done`
  try {
    mkdirSync(folder)
  } catch {
    while (!existsSync(done)) await setTimeout(50)
    const fault = readFileSync(done, 'utf8')
    if (fault) throw new Error(fault)
    return folder
  }
  let fault = ''
  try {
    await make(folder)
  } catch (error) {
    fault = String(error)
    throw error
  } finally {
    writeFileSync(done, fault)
  }
  return folder
}
