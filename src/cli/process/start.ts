import type { Command } from '../command.ts'
import { reason } from '../files.ts'
import { runAmong } from '../run-among.ts'
import { lineProgress } from '../words/progress.ts'
import { outputClosed } from './closed-output.ts'
import { outputTo } from './output.ts'

/** The process: what it was asked among these commands, its screen and its exit code. */
export const start = async (commands: readonly Command[]): Promise<void> => {
  // 2 once words were lost; whoever reads them may stop early (`| head`): that loses nothing
  let lost = 0
  const isLost = (): void => {
    lost = 2
    // a stream may tell so once all is done
    process.exitCode ||= lost
  }
  const cannotPrint = (why: string): void => {
    if (lost === 0) err.write(`cannot print: ${why}\n`)
    isLost()
  }
  const out = outputTo(1, (error) => {
    if (error.code !== 'EPIPE') cannotPrint(reason(error))
  })
  const err = outputTo(2, (error) => {
    if (error.code !== 'EPIPE') isLost()
  })
  const closed = outputClosed()
  const print = (content: string | Uint8Array): void => {
    if (closed) cannotPrint('standard output is closed')
    else out.write(content)
  }
  // few commands ask anything: what reads a line is loaded where someone may sit there
  const person = out.isScreen ? (await import('./terminal.ts')).personThere() : null
  try {
    const exit = await runAmong(commands, process.argv.slice(2), {
      out: print,
      err: err.write,
      ...(!out.isScreen && { bytes: print }),
      ...(person && { ask: person.ask }),
      ...(err.isScreen && { progress: lineProgress(err.write, () => performance.now()) }),
    })
    process.exitCode = exit || lost
  } catch (fault) {
    // none of the codes that scripts rely on
    process.exitCode = 3
    err.write(
      `this is a fault of traceply, not yours: ${String(fault instanceof Error ? fault.message : fault).split('\n', 1)[0]}\n` +
        'please report it with your design file and the command line\n',
    )
  } finally {
    person?.close()
  }
}
