/**
 * pdf.js as it runs on Node 20. It puts slow stand-ins in the place of four functions of the language, for all that runs in the
 * process after it: a worker's tests took twice as long. Node's own are put back.
 */
const places = [
  [Array.prototype, 'push'],
  [JSON, 'parse'],
  [JSON, 'stringify'],
  [Function.prototype, 'toString'],
] as const
const own = places.map(([of, name]) => Object.getOwnPropertyDescriptor(of, name)!)

export const { getDocument, OPS } = await import('pdfjs-dist/legacy/build/pdf.mjs')
// else loaded by the first document, with the same effect
// @ts-expect-error it has no types
await import('pdfjs-dist/legacy/build/pdf.worker.mjs')

const { structuredClone } = globalThis
Object.assign(globalThis, {
  /**
   * Its own inflater takes less for a page's few kB than a stream of Node's, which waits for a thread each time: it is what pdf.js goes
   * on with where there is none. A word is thrown, as an error asks who called.
   */
  DecompressionStream: class {
    constructor() {
      throw 'none'
    }
  },
  /**
   * pdf.js clones each message, as if its worker had a thread of its own. What a page paints is nearly all that is sent: there new lists
   * are enough, as it empties its own once they are sent.
   */
  // biome-ignore lint/suspicious/noExplicitAny: pdf.js does not type its messages
  structuredClone: (message: any, options?: Parameters<typeof structuredClone>[1]) => {
    const { fnArray, argsArray } = message?.chunk ?? {}
    return fnArray
      ? { ...message, chunk: { ...message.chunk, fnArray: [...fnArray], argsArray: [...argsArray] } }
      : structuredClone(message, options)
  },
})

places.forEach(([of, name], i) => {
  Object.defineProperty(of, name, own[i]!)
})
