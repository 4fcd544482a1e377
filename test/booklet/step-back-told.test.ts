import { expect, test } from 'vitest'
import { pointDistance } from '../../src/geometry/point.ts'
import { assertNear } from '../support/near.ts'
import { templateText } from '../support/templates.ts'
import { bookletSaid } from './said.ts'
import { withOffsets } from './solved.ts'

const level = templateText('quarter-mm')
const stepped = level.replace(/^( *)sheet: .*$/m, '$1step-back: 20')

test('the toe end of each further layer is laid so far up from the one below as layers step back', () => {
  const said = bookletSaid(stepped, ['skin'])
  expect(said).toContain('Lay its toe end back by 20 from that of layer 1, up the curve and square to it')
  expect(said).toContain('Lay its toe end back by 20 from that of layer 2, up the curve and square to it')
  expect(said).toContain('it starts 20 further up')
  expect(said).not.toContain('flush with that of layer')
  // where the lower face of each layer ends, straight from that of the one below, less what its thickness adds square to it
  const [ramp] = withOffsets(stepped).quarters
  const { skin, transition } = ramp!
  skin.slice(1).forEach((layer, i) => {
    const before = skin[i]!
    const [own, lower] = [layer, before].map(({ below, start }) =>
      transition.curve.offset(below).point(start),
    )
    assertNear(Math.sqrt(pointDistance(own!, lower!) ** 2 - before.sheet.thickness ** 2), 20, 0.3)
  })
})

test('layers that end level are laid flush', () => {
  const said = bookletSaid(level, ['skin'])
  expect(said).toContain('Lay its toe end flush with that of layer 1, square to the curve')
  expect(said).not.toContain('back by')
})
