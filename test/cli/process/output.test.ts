import { expect, it, vi } from 'vitest'
import { outputTo } from '../../../src/cli/process/output.ts'

/** A pipe that takes three bytes at a time, up to so many, then says what it says; what came through it so. */
const pipe = (room: number, then: string, device = false) => {
  let taken = ''
  return {
    taken: () => taken,
    fstatSync: () => ({ isCharacterDevice: () => device }),
    writeSync: (_: number, bytes: Uint8Array, from: number) => {
      if (taken.length >= room) throw Object.assign(new Error(then), { code: then })
      taken += Buffer.from(bytes.subarray(from, from + 3)).toString('latin1')
      return Math.min(3, bytes.length - from)
    },
  }
}

it('writes on where a pipe takes a part only', () => {
  const system = pipe(100, '')
  outputTo(1, () => expect.fail(), system).write('ten inches\n')
  expect(system.taken()).toBe('ten inches\n')
})

it('leaves the rest, in order, to a stream that waits where a pipe is full and does not', () => {
  const system = pipe(2, 'EAGAIN')
  let waited = ''
  const stream = vi.spyOn(process.stdout, 'write').mockImplementation((content) => {
    waited += Buffer.from(content as Uint8Array).toString('latin1')
    return true
  })
  const { write, isScreen } = outputTo(1, () => expect.fail(), system)
  for (const word of ['toe ', 'to ', 'lip\n']) write(word)
  stream.mockRestore()
  expect([system.taken(), waited, isScreen]).toEqual(['toe', ' to lip\n', false])
})

it('tells why words are lost', () => {
  const system = pipe(3, 'ENOSPC')
  const why: (string | undefined)[] = []
  outputTo(2, ({ code }) => why.push(code), system).write('ten inches\n')
  expect([system.taken(), why]).toEqual(['ten', ['ENOSPC']])
})

it('asks for the stream where a screen may be', () => {
  const system = pipe(100, '', true)
  const stream = vi.spyOn(process.stdout, 'write').mockReturnValue(true)
  const { write, isScreen } = outputTo(1, () => expect.fail(), system)
  write('toe')
  expect([system.taken(), isScreen, stream.mock.calls]).toEqual([
    '',
    process.stdout.isTTY === true,
    [['toe']],
  ])
  stream.mockRestore()
})
