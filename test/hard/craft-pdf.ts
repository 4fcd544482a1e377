import { createHash } from 'node:crypto'
import { deflateSync, inflateSync } from 'node:zlib'
import {
  PDFArray,
  type PDFContext,
  PDFDict,
  PDFDocument,
  PDFHexString,
  PDFName,
  PDFNumber,
  type PDFObject,
  PDFRawStream,
  type PDFRef,
} from 'pdf-lib'

export const name = PDFName.of
export const latin1 = (text: string): Uint8Array => Uint8Array.from(Buffer.from(text, 'latin1'))

export const edited = async (
  set: Uint8Array,
  edit: (context: PDFContext, catalog: PDFDict, doc: PDFDocument) => void,
): Promise<Uint8Array> => {
  const doc = await PDFDocument.load(set, { updateMetadata: false })
  const { context } = doc
  edit(context, context.lookup(context.trailerInfo.Root, PDFDict), doc)
  return doc.save({ updateFieldAppearances: false, useObjectStreams: false, addDefaultPage: false })
}

/** The same set with another plan, its seal made anew as anyone can. */
// biome-ignore lint/suspicious/noExplicitAny: as a script would find it in the file
export const planned = (set: Uint8Array, change: (plan: any) => object | null): Promise<Uint8Array> =>
  edited(set, (context) => {
    for (const [ref, object] of context.enumerateIndirectObjects()) {
      if (!(object instanceof PDFRawStream) || object.dict.get(name('Type')) !== name('EmbeddedFile'))
        continue
      const plan = JSON.parse(inflateSync(object.contents).toString())
      const text = sealed(change(plan))
      context.assign(ref, PDFRawStream.of(object.dict, new Uint8Array(deflateSync(text))))
    }
  })

const sealed = (plan: object | null): string => {
  if (plan === null || Array.isArray(plan)) return JSON.stringify(plan)
  const { seal: _, ...rest } = plan as { seal?: string }
  const seal = createHash('sha256').update(JSON.stringify(rest)).digest('hex')
  return JSON.stringify({ ...rest, seal })
}

/** Another trailer at its end that names the catalog, and what else is said; title and subject are named in the first alone. */
export const withTrailer = async (set: Uint8Array, more: string, after = ''): Promise<Uint8Array> => {
  const { context } = await PDFDocument.load(set, { updateMetadata: false })
  const dict = `/Type /XRef /Size 1 /W [1 2 1] /Index [0 1] /Root ${context.trailerInfo.Root} ${more}`
  return withObject(
    set,
    `900001 0 obj\n<< ${dict} /Length 4 >>\nstream\n\0\0\0\0\nendstream\nendobj\n${after}`,
  )
}

/** Every stream as it is when it is unpacked, as programs that mend files write it. */
export const unpacked = (set: Uint8Array): Promise<Uint8Array> =>
  edited(set, (context) => {
    for (const [ref, object] of context.enumerateIndirectObjects()) {
      if (!(object instanceof PDFRawStream) || object.dict.get(name('Filter')) !== name('FlateDecode'))
        continue
      object.dict.delete(name('Filter'))
      context.assign(ref, PDFRawStream.of(object.dict, new Uint8Array(inflateSync(object.contents))))
    }
  })

/** A tree in which each node names the next one twice: 2 to the 31st leaves. */
export const doubled = (context: PDFContext, leaf: PDFObject): PDFRef => {
  let ref = context.register(leaf)
  for (let level = 0; level < 31; level++)
    ref = context.register(context.obj({ Type: 'Pages', Count: 1, Kids: [ref, ref] }))
  return ref
}

/** Zeros without end, as little as they take. */
export const bomb = (megabytes: number): Uint8Array =>
  new Uint8Array(deflateSync(new Uint8Array(megabytes * 2 ** 20)))

/** Another object before the end of a file, without a place in its cross-references. */
export const withObject = (set: Uint8Array, body: string | Uint8Array, tail = ''): Uint8Array => {
  const end = Buffer.from(set).lastIndexOf('startxref')
  return Uint8Array.from(
    Buffer.concat([
      set.subarray(0, end),
      typeof body === 'string' ? latin1(body) : body,
      latin1(tail),
      set.subarray(end),
    ]),
  )
}

export const objectStream = (type: string, filter: string, count: string, content: Uint8Array): Uint8Array =>
  Uint8Array.from(
    Buffer.concat([
      latin1(
        `900001 0 obj\n<< /Type /${type} ${filter} /N ${count} /First 10 /Length ${content.length} >>\nstream\n`,
      ),
      content,
      latin1('\nendstream\nendobj\n'),
    ]),
  )

const trick = '\u001b[2J\u001b]0;x\u0007\u009b31m\u202e'

export const escaped = async (set: Uint8Array, of: string): Promise<Uint8Array> =>
  of === 'label'
    ? edited(set, (context, catalog) => {
        const nums = catalog.lookup(name('PageLabels'), PDFDict).lookup(name('Nums'), PDFArray)
        nums.set(1, context.obj({ P: PDFHexString.fromText(trick) }))
        expectNumber(nums.get(0))
      })
    : planned(set, (plan) => ({
        ...plan,
        ...(of === 'set' ? { set: trick } : {}),
        ...(of === 'printer' ? { printer: trick } : {}),
        ...(of === 'paper' ? { paper: { ...plan.paper, name: trick } } : {}),
        pages: plan.pages.map((page: { tile?: string; places: object[] }) => ({
          ...page,
          ...(of === 'tile' && page.tile ? { tile: `${page.tile}${trick}` } : {}),
          places: page.places.map((place) => ({ ...place, ...(of === 'pattern' ? { pattern: trick } : {}) })),
        })),
      }))

const expectNumber = (value: PDFObject): void => {
  if (!(value instanceof PDFNumber)) throw new Error('labels of another form')
}
