#!/usr/bin/env node
// The program follows in a comment, so that Node need not read it twice. It starts from what V8 made of it when it was built
// (traceply.cache): compiling is most of a short run. Where that is missing, or another Node made it, it is compiled as usual.
const { readFileSync } = require('node:fs')
const { join } = require('node:path')
const { Script } = require('node:vm')

const compiled = () => {
  try {
    return readFileSync(join(__dirname, 'traceply.cache'))
  } catch {
    return undefined
  }
}

const file = readFileSync(__filename, 'latin1')
const program = file.slice(file.indexOf('\n/*\n') + 4, -4).replaceAll('*\x7f/', '*/')
const source = `(function (exports, require, module, __filename, __dirname) { ${program}\n})`
const script = new Script(source, { filename: __filename, cachedData: compiled() })
script.runInThisContext()(exports, require, module, __filename, __dirname)
// for the build, which keeps what was compiled
module.exports = script
