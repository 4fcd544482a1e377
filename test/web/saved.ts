import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { readDesign } from '../../src/index.ts'
import { readPdf } from '../support/read-pdf.ts'
import { traceply } from '../support/traceply.ts'

export const designOf = (text: string) => {
  const reading = readDesign(text)
  if ('problems' in reading) throw new Error(reading.problems.map(({ message }) => message).join('\n'))
  return reading.design
}

/** The plan in a set that the page saved, and the plan that the command prints for the same design. */
export const planOf = async (bytes: Uint8Array, text: string) => {
  const folder = mkdtempSync(join(tmpdir(), 'traceply-web-'))
  try {
    const file = join(folder, 'design.yaml')
    writeFileSync(file, text)
    const { out } = await traceply('plot', file, '--json', '--out', join(folder, 'set.pdf'))
    const { attachments } = await readPdf(new Uint8Array(bytes))
    return {
      saved: JSON.parse(
        new TextDecoder().decode(attachments.find(({ name }) => name === 'plan.json')!.bytes),
      ),
      command: JSON.parse(out),
    }
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}
