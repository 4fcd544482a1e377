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

places.forEach(([of, name], i) => {
  Object.defineProperty(of, name, own[i]!)
})
