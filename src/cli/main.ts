#!/usr/bin/env node
import { run } from './run.ts'

run(process.argv.slice(2), {
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
}).then((exit) => {
  process.exitCode = exit
})
