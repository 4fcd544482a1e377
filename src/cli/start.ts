import { isatty } from 'node:tty'
import { outputClosed } from './closed-output.ts'
import type { Command } from './command.ts'
import { reason } from './files.ts'
import { runAmong } from './run-among.ts'
import { pageProgress } from './words/progress.ts'

/** The process: what it was asked among these commands, its screen and its exit code. */
export const start = async (commands: readonly Command[]): Promise<void> => {
  const { stdout, stderr } = process
  // what is piped in is read when it is asked for: Node's stream would take it, or set it not to block
  // few commands ask anything: what reads a line is loaded where someone sits there
  const person =
    isatty(0) && stdout.isTTY ? (await import('./terminal.ts')).terminal(process.stdin, stdout) : null
  // 2 once words were lost; whoever reads them may stop early (`| head`): that loses nothing
  let lost = 0
  const cannotPrint = (why: string): void => {
    if (lost === 0) stderr.write(`cannot print: ${why}\n`)
    lost = 2
  }
  const closed = outputClosed()
  const print = (content: string | Uint8Array): void => {
    if (closed) cannotPrint('standard output is closed')
    else stdout.write(content)
  }
  for (const stream of [stdout, stderr])
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EPIPE') return
      if (stream === stdout) cannotPrint(reason(error))
      lost = 2
      process.exitCode ||= lost
    })
  try {
    const exit = await runAmong(commands, process.argv.slice(2), {
      out: print,
      err: (text) => stderr.write(text),
      ...(!stdout.isTTY && { bytes: print }),
      ...(person && { ask: person.ask }),
      ...(stderr.isTTY && {
        progress: pageProgress(
          (text) => stderr.write(text),
          () => performance.now(),
        ),
      }),
    })
    process.exitCode = exit || lost
  } catch (fault) {
    // none of the codes that scripts rely on
    process.exitCode = 3
    stderr.write(
      `this is a fault of traceply, not yours: ${String(fault instanceof Error ? fault.message : fault).split('\n', 1)[0]}\n` +
        'please report it with your design file and the command line\n',
    )
  } finally {
    person?.close()
  }
}
