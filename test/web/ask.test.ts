import { afterEach, expect, it, vi } from 'vitest'
import { startAsking, stopped } from '../../src/web/worker/ask.ts'
import type { Question } from '../../src/web/worker/messages.ts'

/** A worker that never answers. */
class Silent {
  static all: Silent[] = []
  onmessage: ((event: { readonly data: object }) => void) | null = null
  onerror: ((event: { readonly message?: string }) => void) | null = null
  ended = false
  constructor() {
    Silent.all.push(this)
  }
  heard: unknown[] = []
  postMessage(message: object): void {
    this.heard.push(message)
  }
  terminate(): void {
    this.ended = true
  }
}

afterEach(() => {
  vi.unstubAllGlobals()
})

const question: Question = { kind: 'checks', text: '' }

const asked = async () => {
  Silent.all = []
  vi.stubGlobal('Worker', Silent)
  const asking = startAsking(async () => ({ url: 'blob:', fonts: { regular: '', bold: '' } }))
  const ask = () => asking.ask(question).catch((error: Error) => error.message)
  const said = ask()
  await Promise.resolve()
  await Promise.resolve()
  return { asking, ask, said, worker: Silent.all[0]! }
}

it('a worker that broke is told in words, and the next question starts another', async () => {
  const { ask, said, worker } = await asked()
  worker.onerror!({ message: 'Uncaught RangeError: out of memory' })
  expect(await said).toBe(
    'what lays the pages broke off: Uncaught RangeError: out of memory; load the page anew',
  )
  expect(worker.ended).toBe(true)
  const again = ask()
  await Promise.resolve()
  await Promise.resolve()
  expect(Silent.all).toHaveLength(2)
  Silent.all[1]!.onerror!({})
  expect(await again).toContain('broke off: the browser does not say why')
})

it('a stop is told as one to what is being saved, and all else is answered', async () => {
  const { asking, said, worker } = await asked()
  const file = asking
    .ask({ kind: 'save', thing: 'pages', format: 'pdf', text: '', lay: { words: {}, profile: null } })
    .catch((error: Error) => error.message)
  await Promise.resolve()
  asking.stop()
  expect(await file).toBe(stopped)
  expect(worker.ended).toBe(true)
  const { heard, onmessage } = Silent.all[1]!
  const { id } = heard.at(-1) as { readonly id: number }
  expect(heard.slice(1)).toEqual([{ id, question }])
  onmessage!({ data: { id, answer: 'as asked' } })
  expect(await said).toBe('as asked')
})
