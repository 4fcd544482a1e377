import { createHash } from 'node:crypto'
import { readFileSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { deflateRawSync } from 'node:zlib'
import { build, buildSync } from 'esbuild'
import { alias, usedAlone } from './.build-used.mjs'

/** The page in a browser: one file, program, style and fonts inside, and a policy that forbids every request. */
const load = createRequire(import.meta.url)
const programOf = async (entry, more = { format: 'iife' }) => {
  const { outputFiles } = await build({
    entryPoints: [entry],
    write: false,
    bundle: true,
    minify: true,
    platform: 'browser',
    target: ['es2022'],
    charset: 'utf8',
    legalComments: 'none',
    jsx: 'automatic',
    jsxImportSource: 'preact',
    alias,
    plugins: [usedAlone],
    logLevel: 'warning',
    ...more,
  })
  // a closing tag inside would end the element
  return outputFiles[0].text.trim().replaceAll('</script', '<\\/script').replaceAll('<!--', '<\\!--')
}

/** What draws is read and run before anything is seen; what lays and writes the pages runs in workers, and may come later. */
const [program, worker] = await Promise.all([
  programOf('src/web/main.tsx'),
  // a module without imports or exports, started as a script: in no function, so that what is in it is looked through once
  programOf('src/web/worker/main.ts', { format: 'esm', banner: { js: '"use strict";' } }),
])
/** The program as a file of its own, which a browser reads beside the page; inside the page it would hold it up. */
const begin =
  "const program=document.createElement('script');" +
  "program.src=URL.createObjectURL(new Blob([document.getElementById('program').textContent],{type:'text/javascript'}));" +
  'document.head.append(program)'
const style = buildSync({
  entryPoints: ['src/web/style.css'],
  write: false,
  bundle: true,
  minify: true,
  logLevel: 'warning',
}).outputFiles[0].text.trim()

const sourceOf = (text) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`
const policy = [
  "default-src 'none'",
  `script-src ${sourceOf(begin)} blob:`,
  `style-src ${sourceOf(style)}`,
  'worker-src blob:',
  'img-src data: blob:',
  "base-uri 'none'",
  "form-action 'none'",
].join('; ')

const font = (name) =>
  deflateRawSync(readFileSync(load.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`)), { level: 9 }).toString('base64')

const page = readFileSync('src/web/page.html', 'utf8')
const parts = {
  policy,
  style,
  program,
  begin,
  worker,
  regular: font('DejaVuSansCondensed'),
  bold: font('DejaVuSansCondensed-Bold'),
}
writeFileSync(
  'dist/traceply.html',
  page.replaceAll(/\{\{(\w+)\}\}/g, (_, name) => {
    if (!(name in parts)) throw new Error(`page.html asks for ${name}`)
    return parts[name]
  }),
)
