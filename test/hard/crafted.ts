import { PDFArray, PDFDict, PDFHexString, PDFRawStream, type PDFRef } from 'pdf-lib'
import {
  bomb,
  doubled,
  edited,
  escaped,
  latin1,
  name,
  objectStream,
  planned,
  unpacked,
  withObject,
  withTrailer,
} from './craft-pdf.ts'

/** A PDF that nobody makes by mistake, and what is said of it; `pages`: what is asked for. */
export interface Crafted {
  readonly name: string
  readonly craft: (set: Uint8Array) => Promise<Uint8Array>
  readonly said: RegExp
  readonly pages?: readonly string[]
  /** it is taken all the same */
  readonly taken?: true
}

const unbounded = / holds more than any set; take the PDF that plot wrote/
const torn = / is torn or damaged: /
const editedWords = / is not the one that plot wrote: /

/** `whole`: as large as an attack would have it; else as large as shows the same. */
export const crafted = (whole: boolean): readonly Crafted[] => {
  const large = whole ? 1 : 0.1
  return [
    { name: 'unpacked', craft: unpacked, said: /^$/, taken: true },
    { name: 'put in order for the web', craft: (set) => withTrailer(set, ''), said: /^$/, taken: true },
    {
      name: 'locked, which a trailer within says',
      craft: (set) => withTrailer(set, '/Encrypt 5 0 R', ' '.repeat(5000)),
      said: / is locked with a password or against changes; unlock it, /,
    },
    {
      name: 'a page tree that doubles at each of 31 levels',
      craft: (set) =>
        edited(set, (context, catalog) => {
          const pages = catalog.lookup(name('Pages'), PDFDict)
          const [leaf] = pages.lookup(name('Kids'), PDFArray).asArray()
          pages.set(name('Kids'), context.obj([doubled(context, leaf!)]))
        }),
      said: torn,
    },
    {
      name: 'a name tree that doubles',
      craft: (set) =>
        edited(set, (context, catalog) => {
          const files = catalog.lookup(name('Names'), PDFDict).lookup(name('EmbeddedFiles'), PDFDict)
          files.delete(name('Names'))
          files.set(name('Kids'), context.obj([doubled(context, context.obj({ Names: [] }))]))
        }),
      said: torn,
    },
    {
      name: 'a tree of page labels that doubles',
      craft: (set) =>
        edited(set, (context, catalog) => {
          const labels = catalog.lookup(name('PageLabels'), PDFDict)
          labels.delete(name('Nums'))
          labels.set(name('Kids'), context.obj([doubled(context, context.obj({ Nums: [] }))]))
        }),
      said: torn,
    },
    {
      name: 'bookmarks in a circle',
      craft: (set) =>
        edited(set, (_, catalog) => {
          const outlines = catalog.lookup(name('Outlines'), PDFDict)
          const first = outlines.lookup(name('First'), PDFDict)
          first.set(name('Next'), outlines.get(name('First'))!)
        }),
      said: /which left out the bookmarks/,
    },
    {
      name: 'objects without end',
      craft: async (set) =>
        withObject(set, '900002 0 obj\nnull\nendobj\n'.repeat(whole ? 1_000_000 : 110_000)),
      said: unbounded,
    },
    {
      name: 'a page that is packed a thousandfold',
      craft: (set) =>
        edited(set, (context, _, doc) => {
          const ref = doc.getPage(3).node.get(name('Contents')) as PDFRef
          context.assign(ref, PDFRawStream.of((context.lookup(ref) as PDFRawStream).dict, bomb(300 * large)))
        }),
      said: torn,
      pages: ['1'],
    },
    {
      name: 'a plan without end',
      craft: (set) =>
        edited(set, (context) => {
          for (const [ref, object] of context.enumerateIndirectObjects())
            if (object instanceof PDFRawStream && object.dict.get(name('Type')) === name('EmbeddedFile'))
              context.assign(ref, PDFRawStream.of(object.dict, bomb(300 * large)))
        }),
      said: torn,
    },
    ...['ObjStm', 'Obj#53tm'].flatMap((type): readonly Crafted[] => [
      {
        name: `an object stream without end called ${type}`,
        craft: async (set) =>
          withObject(set, objectStream(type, '/Filter /FlateDecode', '5', bomb(300 * large))),
        said: unbounded,
      },
      {
        name: `a filter that is named in other letters, in ${type}`,
        craft: async (set) =>
          withObject(set, objectStream(type, '/F#69lter /Fl#61teDecode', '5', bomb(300 * large))),
        said: unbounded,
      },
      {
        name: `a count of 1e9 objects in ${type}`,
        craft: async (set) =>
          withObject(set, objectStream(type, '', '1000000000', latin1('1 0 2 3 4 5 '.repeat(5)))),
        said: unbounded,
      },
      {
        name: `the same behind a reference, in ${type}`,
        craft: async (set) =>
          withObject(
            set,
            objectStream(type, '', '900003 0 R', latin1('1 0 2 3 4 5 '.repeat(5))),
            '900003 0 obj\n1000000000\nendobj\n',
          ),
        said: torn,
      },
    ]),
    {
      name: 'cross-references to 1e9 objects',
      craft: async (set) =>
        withObject(
          set,
          `900001 0 obj\n<< /Type /XR#65f /Size 1000000000 /W [1 2 1] /Index [0 1000000000] /Length 4 >>\nstream\n\0\0\0\0\nendstream\nendobj\n`,
        ),
      said: unbounded,
    },
    {
      name: 'a hexadecimal string without end',
      craft: async (set) => withObject(set, `900001 0 obj\n<${'61'.repeat((15 << 20) * large)}>\nendobj\n`),
      said: unbounded,
    },
    {
      name: 'lists in lists, 200,000 deep',
      craft: async (set) =>
        withObject(set, `900001 0 obj\n${'['.repeat(200_000)}${']'.repeat(200_000)}\nendobj\n`),
      said: torn,
    },
    {
      name: 'brackets of a text, 2 million deep',
      craft: async (set) =>
        withObject(set, `900001 0 obj\n${'('.repeat(2_000_000)}${')'.repeat(2_000_000)}\nendobj\n`),
      said: unbounded,
    },
    {
      name: 'a length that is its own reference',
      craft: async (set) =>
        withObject(set, '900001 0 obj\n<< /Length 900001 0 R >>\nstream\nxx\nendstream\nendobj\n'),
      said: /^$/,
      taken: true,
    },
    {
      name: 'resources in a chain without end',
      craft: (set) =>
        edited(set, (context, _, doc) => {
          let ref = context.register(context.obj({}))
          for (let i = 0; i < (whole ? 20_000 : 2000); i++) ref = context.register(context.obj({ Next: ref }))
          doc.getPage(3).node.lookup(name('Resources'), PDFDict).set(name('Chain'), ref)
        }),
      said: unbounded,
      pages: ['1'],
    },
    {
      name: 'a title in 2 million hexadecimal letters',
      craft: (set) =>
        edited(set, (context) => {
          context
            .lookup(context.trailerInfo.Info, PDFDict)
            .set(name('Title'), PDFHexString.fromText('a'.repeat(500_000)))
        }),
      said: unbounded,
    },
    ...[
      [0, 0, 0, 0],
      [1e308, 0, 0, 1e308],
      [1, 1, 1, 1],
      [-1, 0, 0, 1],
      [0.5, 0, 0, 0.5],
    ].map(
      (correction): Crafted => ({
        name: `a plan whose correction is ${correction}`,
        craft: (set) => planned(set, (plan) => ({ ...plan, correction })),
        said: editedWords,
      }),
    ),
    {
      name: 'a page of many places',
      craft: (set) =>
        planned(set, (plan) => {
          const place = { pattern: 'p', toPattern: [1, 0, 0, 1, 0, 0], window: [0, 0, 1, 1] }
          const [first, ...others] = plan.pages
          return {
            ...plan,
            pages: [{ ...first, places: Array(whole ? 100_000 : 1000).fill(place) }, ...others],
          }
        }),
      said: editedWords,
    },
    {
      name: 'a plan of 9 MB',
      craft: (set) => planned(set, (plan) => ({ ...plan, design: plan.design.padEnd(9 * 2 ** 20) })),
      said: torn,
    },
    {
      name: 'a plan whose tiles lie 1e9 mm apart',
      craft: (set) =>
        planned(set, (plan) => ({
          ...plan,
          pages: plan.pages.map((page: { kind: string; places: { toPattern: number[] }[] }, i: number) => ({
            ...page,
            places: page.places.map((place) => ({
              ...place,
              toPattern: place.toPattern.map((v, k) => (k === 4 ? v + 1e9 * i : v)),
            })),
          })),
        })),
      said: editedWords,
      pages: ['A999999'],
    },
    {
      name: 'a plan whose windows are none',
      craft: (set) =>
        planned(set, (plan) => ({
          ...plan,
          overlap: 1e300,
          pages: plan.pages.map((page: { places: object[] }) => ({
            ...page,
            places: page.places.map((place) => ({
              ...place,
              window: [0, 0, 0, 0],
              toPattern: [0, 0, 0, 0, 0, 0],
            })),
          })),
        })),
      said: editedWords,
      pages: ['99'],
    },
    ...['set', 'paper', 'pattern', 'printer', 'tile', 'label'].map(
      (of): Crafted => ({
        name: `a terminal's escapes in ${of}`,
        craft: (set) => escaped(set, of),
        said: /./,
        pages: ['99', 'map'],
      }),
    ),
  ]
}
