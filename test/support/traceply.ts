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
