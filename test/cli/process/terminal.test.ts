import { PassThrough } from 'node:stream'
import { expect, it } from 'vitest'
import { terminal } from '../../../src/cli/process/terminal.ts'

it('gives each question its line, those typed ahead too, and ends where the person has gone', async () => {
  const [input, output] = [new PassThrough(), new PassThrough()]
  const person = terminal(input, output)
  const first = person.ask('how high? ')
  input.write('600\nmellow\n')
  expect(await first).toBe('600')
  expect(await person.ask('how easy? ')).toBe('mellow')
  const last = person.ask('how wide? ')
  input.end()
  await expect(last).rejects.toMatchObject({ exit: 2 })
  await expect(person.ask('which? ')).rejects.toMatchObject({ exit: 2 })
  expect(String(output.read())).toContain('how high? ')
  person.close()
})
