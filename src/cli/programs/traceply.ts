#!/usr/bin/env node
import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import module, { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { cachedDataVersionTag, setFlagsFromString } from 'node:v8'
import { Script } from 'node:vm'

/** Asked most often: each has a file of its own, that of figures without what draws a picture. */
const often = ['figures', 'plot']
const [, , asked = '', ...more] = process.argv
const drawn = asked === 'figures' && more.some((word) => word.startsWith('--picture'))
const file = join(__dirname, `${often.includes(asked) && !drawn ? asked : 'program'}.cjs`)

/**
 * The program as V8 compiled it when it was built, null where that is not there or not of this very text, this Node and its flags. V8
 * itself looks at no more than lengths, and falls over what is damaged: hence the seal.
 */
const compiled = (): Script | null => {
  try {
    const [text, kept] = [readFileSync(file), readFileSync(file.replace(/cjs$/, 'code'))]
    const [seal, code] = [kept.subarray(0, 32), kept.subarray(32)]
    const found = createHash('sha256').update(`${cachedDataVersionTag()} `).update(text).update(code).digest()
    if (!found.equals(seal)) return null
    // the build writes ASCII
    const script = new Script(module.wrap(text.toString('latin1')), { filename: file, cachedData: code })
    return script.cachedDataRejected ? null : script
  } catch {
    return null
  }
}

/**
 * V8 optimises a function after so few runs that in a process as short as ours much of it is thrown away again. Its flag by the Node
 * that has it: another one would complain.
 */
const later = '--invocation-count-for-turbofan=10000'
const patience: Readonly<Record<string, string>> = {
  20: '--interrupt-budget=1000000',
  22: later,
  24: later,
  26: later,
}

const script = compiled()
const flag = patience[process.versions.node.split('.', 1)[0]!]
if (flag) setFlagsFromString(flag)
const load = createRequire(file)
if (script === null) {
  // Node 22 and later keep what they compile of a file from run to run, if they are asked before it is loaded
  const { enableCompileCache } = module as { enableCompileCache?: () => void }
  enableCompileCache?.()
  load(file)
} else {
  const program = { exports: {} }
  script.runInThisContext().call(program.exports, program.exports, load, program, file, dirname(file))
}
