#!/usr/bin/env node
import { readFileSync } from 'node:fs'
import { createRequire, wrap } from 'node:module'
import { dirname, join } from 'node:path'
import { cachedDataVersionTag } from 'node:v8'
import { Script } from 'node:vm'
import { crc32 } from 'node:zlib'
import { waitLonger } from '../process/v8-flags.ts'

/** Asked most often, or dear: each has a file of its own, that of figures without what draws a picture. */
const often = ['booklet', 'figures', 'plot']
const [, , asked = '', ...more] = process.argv
const draws = asked === 'figures' && more.some((word) => word.startsWith('--picture'))
const file = join(__dirname, `${often.includes(asked) && !draws ? asked : 'program'}.cjs`)

/**
 * The program as V8 compiled it when it was built, null where that is not there or not of this very text, this Node and its flags. V8
 * itself looks at no more than lengths, and falls over what is damaged: hence the seal, a sum that is had before hashes are loaded.
 */
const compiled = (): Script | null => {
  try {
    const [text, kept] = [readFileSync(file), readFileSync(file.replace(/cjs$/, 'code'))]
    const code = kept.subarray(4)
    // Node 20.15 has it
    const found = crc32(code, crc32(text, cachedDataVersionTag()))
    if (found !== kept.readUInt32LE()) return null
    // the build writes ASCII
    const script = new Script(wrap(text.toString('latin1')), { filename: file, cachedData: code })
    return script.cachedDataRejected ? null : script
  } catch {
    return null
  }
}

const script = compiled()
const load = createRequire(file)
// a set's code is a hash: once V8's flags are others, it compiles these modules of Node's anew, which takes twice as long
if (['booklet', 'plot', 'reprint'].includes(asked)) load('node:crypto')
waitLonger(often.includes(asked))
if (script === null) {
  // Node 22 and later keep what they compile of a file from run to run, if they are asked before it is loaded
  const { enableCompileCache } = load('node:module') as { enableCompileCache?: () => void }
  enableCompileCache?.()
  load(file)
} else {
  const program = { exports: {} }
  script.runInThisContext().call(program.exports, program.exports, load, program, file, dirname(file))
}
