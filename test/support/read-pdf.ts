import { getDocument } from './pdfjs.ts'
import { type PageMarks, type PdfPoint, type PdfSegment, readPageMarks } from './read-page.ts'

export interface PdfPageRead extends PageMarks {
  /** points, as in the MediaBox */
  readonly width: number
  readonly height: number
  readonly rotate: number
  readonly userUnit: number
  readonly label: string
}

export interface PdfRead {
  readonly pages: readonly PdfPageRead[]
  readonly title: string
  readonly subject: string
  readonly info: Readonly<Record<string, unknown>>
  /** names of the layers and whether they show */
  readonly layers: readonly { readonly name: string; readonly visible: boolean }[]
  readonly labels: readonly string[]
  /** each bookmark with the number of its page, from 1 */
  readonly outline: readonly { readonly title: string; readonly page: number }[]
  readonly viewerPreferences: Readonly<Record<string, unknown>>
  readonly attachments: readonly {
    readonly name: string
    readonly description: string
    readonly bytes: Uint8Array
  }[]
}

// pdf.js takes the buffer away
const open = (bytes: Uint8Array) =>
  getDocument({
    data: bytes.slice(),
    disableFontFace: true,
    useSystemFonts: false,
    verbosity: 0,
    stopAtErrors: true,
  })

/** What is attached alone: its pages take far longer. */
export const readAttachments = async (bytes: Uint8Array): Promise<PdfRead['attachments']> => {
  const task = open(bytes)
  try {
    return await attachmentsOf(await task.promise)
  } finally {
    await task.destroy()
  }
}

const attachmentsOf = async (
  doc: Awaited<ReturnType<typeof open>['promise']>,
): Promise<PdfRead['attachments']> => {
  const attachments = Object.entries(
    ((await doc.getAttachments()) ?? {}) as Record<string, { description?: string; content: Uint8Array }>,
  )
  // by the key of the name tree: pdf.js takes file names for paths and turns their backslashes
  return attachments.map(([name, file]) => ({
    name,
    description: file.description ?? '',
    bytes: file.content,
  }))
}

/** Reads a PDF through pdf.js, which knows nothing of our writer. Coordinates are float32: 5e-5 mm on office paper. */
export const readPdf = async (bytes: Uint8Array): Promise<PdfRead> => {
  const task = open(bytes)
  const doc = await task.promise
  try {
    const layers = await doc.getOptionalContentConfig()
    const labels = (await doc.getPageLabels()) ?? []
    const pages: PdfPageRead[] = []
    for (let number = 1; number <= doc.numPages; number++) {
      const page = await doc.getPage(number)
      const { fnArray, argsArray } = await page.getOperatorList()
      const [x0, y0, x1, y1] = page.view as [number, number, number, number]
      pages.push({
        width: x1 - x0,
        height: y1 - y0,
        rotate: page.rotate,
        userUnit: page.userUnit,
        label: labels[number - 1] ?? '',
        ...readPageMarks(fnArray, argsArray, (id) => {
          const name = layers.getGroup(id)?.name
          if (typeof name !== 'string') throw new Error(`no layer has the id ${id}`)
          return name
        }),
      })
      page.cleanup()
    }
    const { info } = (await doc.getMetadata()) as unknown as { info: Record<string, unknown> }
    const outline: { title: string; page: number }[] = []
    for (const item of (await doc.getOutline()) ?? []) {
      const page = Array.isArray(item.dest) ? await doc.getPageIndex(item.dest[0]) : -1
      outline.push({ title: item.title, page: page + 1 })
    }
    return {
      pages,
      title: String(info.Title ?? ''),
      subject: String(info.Subject ?? ''),
      info,
      layers: [...layers].map(([, group]) => ({ name: String(group.name), visible: group.visible })),
      labels,
      outline,
      viewerPreferences: { ...(await doc.getViewerPreferences()) },
      attachments: await attachmentsOf(doc),
    }
  } finally {
    await task.destroy()
  }
}

/** Points along a path, `steps` to each cubic and, unless told, to each line, joints included; one list for each subpath. */
export const pathPoints = (
  path: readonly PdfSegment[],
  steps: number,
  lineSteps = steps,
): readonly (readonly PdfPoint[])[] => {
  const runs: PdfPoint[][] = []
  for (const segment of path) {
    if (segment.kind === 'move') {
      runs.push([segment.to])
      continue
    }
    const run = runs.at(-1)
    if (!run) throw new Error('a path that does not begin with a move')
    const from = run.at(-1)!
    const to = segment.kind === 'close' ? run[0]! : segment.to
    if (segment.kind === 'close' && from.x === to.x && from.y === to.y) continue
    const parts = segment.kind === 'cubic' ? steps : lineSteps
    for (let i = 1; i < parts; i++) {
      const t = i / parts
      const u = 1 - t
      if (segment.kind === 'cubic') {
        const { c1, c2 } = segment
        const [w0, w1, w2, w3] = [u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t]
        run.push({
          x: w0 * from.x + w1 * c1.x + w2 * c2.x + w3 * to.x,
          y: w0 * from.y + w1 * c1.y + w2 * c2.y + w3 * to.y,
        })
      } else run.push({ x: u * from.x + t * to.x, y: u * from.y + t * to.y })
    }
    run.push(to)
  }
  return runs
}
