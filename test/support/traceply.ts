import { readFileSync } from 'node:fs'
import { run } from '../../src/cli/run.ts'

/** One command line: exit, both outputs. */
export const traceply = async (...args: readonly string[]) => {
  let [out, err] = ['', '']
  const exit = await run(args, {
    out: (text) => {
      out += text
    },
    err: (text) => {
      err += text
    },
  })
  return { exit, out, err }
}

const told = new Map<string, ReturnType<typeof traceply>>()

/** What `figures` prints of a good design, in words or as JSON; asked once a worker for each text, since it tries all remedies. */
export const figuresOf = (path: string, ...json: readonly '--json'[]): ReturnType<typeof traceply> => {
  const key = JSON.stringify([readFileSync(path, 'utf8'), json])
  const before = told.get(key)
  const now = before ?? traceply('figures', path, ...json)
  told.set(key, now)
  return now
}
