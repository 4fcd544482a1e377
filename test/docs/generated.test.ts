import { expect, it } from 'vitest'
import { designFileDoc } from '../../src/design/doc.ts'
import { writeStarter } from '../../src/design/starter.ts'
import { starters } from '../../src/design/starters.ts'
import { pictures } from './pictures.ts'

/** `npm run docs` writes these files anew; the content is tested in test/design. */
it.each(starters)('templates/$name.yaml is what the table of starters says', async (starter) => {
  await expect(writeStarter(starter)).toMatchFileSnapshot(`../../templates/${starter.name}.yaml`)
})

it('docs/design-file.md is what the schema says', async () => {
  await expect(designFileDoc()).toMatchFileSnapshot('../../docs/design-file.md')
})

it.each(Object.entries(pictures))(
  'docs/images/%s.svg is drawn as the pages are, of a solved ramp',
  async (name, draw) => {
    await expect(draw()).toMatchFileSnapshot(`../../docs/images/${name}.svg`)
  },
)
