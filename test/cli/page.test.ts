import { readFileSync, writeFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { templateText } from '../support/templates.ts'
import { traceply } from '../support/traceply.ts'
import { template, useFolder } from './reprint-run.ts'

const { file } = useFolder()

/** What stands in the page as its design. */
const heldIn = (page: string): string =>
  />([^<]*)<\/script>/.exec(page.slice(page.indexOf('id="design"')))![1]!

describe('traceply page', () => {
  it('writes the page as it was built, or with a design in it, and replaces nothing', async () => {
    expect(await traceply('page', '--out', file('plain.html'))).toMatchObject({ exit: 0, err: '' })
    expect(heldIn(readFileSync(file('plain.html'), 'utf8'))).toBe('')
    expect(await traceply('page', template('pair-mm'), '--out', file('pair.html'))).toMatchObject({ exit: 0 })
    expect(JSON.parse(heldIn(readFileSync(file('pair.html'), 'utf8')))).toBe(templateText('pair-mm'))
    expect(await traceply('page', '--out', file('pair.html'))).toMatchObject({ exit: 2, out: '' })
  })

  it('looks at the design and the name before what is there', async () => {
    writeFileSync(file('kept.html'), '')
    expect((await traceply('page', file('none.yaml'), '--out', file('kept.html'))).err).toMatch(
      /^cannot read /,
    )
    expect((await traceply('page', '--out', file('page.txt'))).err).toBe(
      `cannot write ${file('page.txt')}: what is written is a page for a browser; give it a name that ends in .html\n`,
    )
    expect((await traceply('page', '--out', file('page.htm'))).exit).toBe(0)
  })

  it('holds a design that would end its element, and refuses one that is none', async () => {
    const text = templateText('quarter-mm').replace('title: Low', 'title: </script><b>Low')
    writeFileSync(file('end.yaml'), text)
    expect(await traceply('page', file('end.yaml'), '--out', file('end.html'))).toMatchObject({ exit: 0 })
    expect(JSON.parse(heldIn(readFileSync(file('end.html'), 'utf8')))).toBe(text)
    writeFileSync(file('bad.yaml'), 'title: 3\n')
    expect(await traceply('page', file('bad.yaml'), '--out', file('bad.html'))).toMatchObject({
      exit: 1,
      out: '',
    })
  })
})
