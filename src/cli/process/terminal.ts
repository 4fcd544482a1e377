import { createInterface, type Interface } from 'node:readline'
import { isatty } from 'node:tty'
import { Failure } from '../failure.ts'

interface Person {
  readonly ask: (question: string) => Promise<string>
  readonly close: () => void
}

/** Whoever can be asked. What is piped in is read when it is asked for: Node's stream would take it, or set it not to block. */
export const personThere = (): Person | null => (isatty(0) ? terminal(process.stdin, process.stdout) : null)

/** Questions to whoever sits at the terminal; what is typed ahead waits for its question. `close` lets the program end. */
export const terminal = (input: NodeJS.ReadableStream, output: NodeJS.WritableStream): Person => {
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
