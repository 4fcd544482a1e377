import { reason } from './files.ts'
import { run } from './run.ts'
import { terminal } from './terminal.ts'
import { pageProgress } from './words/progress.ts'

const main = async (): Promise<void> => {
  const { stdin, stdout, stderr } = process
  const person = stdin.isTTY && stdout.isTTY ? terminal(stdin, stdout) : null
  // 2 once words were lost; whoever reads them may stop early (`| head`): that loses nothing
  let lost = 0
  for (const stream of [stdout, stderr])
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EPIPE') return
      lost = 2
      process.exitCode ||= lost
      if (stream === stdout) stderr.write(`cannot print: ${reason(error)}\n`)
    })
  try {
    const exit = await run(process.argv.slice(2), {
      out: (text) => stdout.write(text),
      err: (text) => stderr.write(text),
      ...(!stdout.isTTY && { bytes: (content) => stdout.write(content) }),
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

main()
