import { expect, test } from 'vitest'
import { bookletSaid } from './said.ts'

const design = (skin: string): string => `title: Bare side
units: mm
ramps:
  - kind: quarter
    width: 1200
    height: { frame: 760 }
    transition: { circle: { frame: 1830 }, tangent: { frame: 0 } }
    toe: 50
    length: 2030
    studs: { section: 38 x 89, every: 200 }
    skin: [${skin}]
    deck-board: none
    coping: { outside: 42.4, up: 6, out: 6, seat: round }
`

test('a ramp without skin is told nothing of skin to lay, to finish or to look after, one with it is', () => {
  const words = [
    'Skin, layer by layer',
    'Bent skin is a spring',
    'before any skin goes on',
    'the side edges of the skin',
    'where skin lies on the sides',
    'top sheet',
    'never at skin',
  ]
  const parts = ['glance', 'framing', 'skin', 'finishing', 'moving', 'care']
  const [bare, skinned] = [bookletSaid(design(''), parts), bookletSaid(design('9 plywood, 9 plywood'), parts)]
  for (const said of words) {
    expect(skinned, said).toContain(said)
    expect(bare, said).not.toContain(said)
  }
  expect(bare).toContain('tighten every screw of the frame and the pipe')
})
