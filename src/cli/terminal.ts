import { createInterface, type Interface } from 'node:readline'
import { Failure } from './failure.ts'

/** Questions to whoever sits at the terminal; what is typed ahead waits for its question. `close` lets the program end. */
export const terminal = (
  input: NodeJS.ReadableStream,
  output: NodeJS.WritableStream,
): { readonly ask: (question: string) => Promise<string>; readonly close: () => void } => {
  let lines: Interface | undefined
  let ended = false
  const ahead: string[] = []
  let waiting: { readonly line: (line: string) => void; readonly end: (why: Failure) => void } | undefined
  const open = (): void => {
    lines ??= createInterface({ input, output })
      .on('line', (line) => {
        if (waiting) waiting.line(line)
        else ahead.push(line)
      })
      .on('close', () => {
        ended = true
        waiting?.end(stopped())
      })
  }
  return {
    ask: (question) =>
      new Promise((resolve, reject) => {
        open()
        output.write(question)
        const line = ahead.shift()
        if (line !== undefined) return resolve(line)
        if (ended) return reject(stopped())
        waiting = {
          line: (typed) => {
            waiting = undefined
            resolve(typed)
          },
          end: reject,
        }
      }),
    close: () => lines?.close(),
  }
}

const stopped = (): Failure => new Failure(2, '\nstopped before the last answer; nothing written')
