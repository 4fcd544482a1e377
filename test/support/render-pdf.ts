import { getDocument } from './pdfjs.ts'

/** How dark each pixel is, 0 white … 1 black, row by row from the top. */
export interface Picture {
  readonly width: number
  readonly height: number
  readonly dark: Float32Array
}

/** A page as pdf.js paints it on a canvas of its own; `perMm` pixels to a millimetre. */
export const renderPage = async (bytes: Uint8Array, number: number, perMm: number): Promise<Picture> => {
  const task = getDocument({
    data: bytes.slice(),
    verbosity: 0,
    standardFontDataUrl: new URL('../../node_modules/pdfjs-dist/standard_fonts/', import.meta.url).pathname,
  })
  const doc = await task.promise
  try {
    const page = await doc.getPage(number)
    const viewport = page.getViewport({ scale: (perMm * 25.4) / 72 })
    const [width, height] = [Math.round(viewport.width), Math.round(viewport.height)]
    // biome-ignore lint/suspicious/noExplicitAny: pdf.js does not type its own canvas factory
    const { canvas, context } = (doc as any).canvasFactory.create(width, height)
    await page.render({ canvas, canvasContext: context, viewport }).promise
    const { data } = context.getImageData(0, 0, width, height)
    const dark = new Float32Array(width * height)
    for (let i = 0; i < dark.length; i++)
      dark[i] = 1 - (data[4 * i] + data[4 * i + 1] + data[4 * i + 2]) / 765
    return { width, height, dark }
  } finally {
    await task.destroy()
  }
}

/** Darkness at a place of the picture, between pixels as between neighbours (bilinear); white outside. */
export const darkAt = ({ width, height, dark }: Picture, x: number, y: number): number => {
  const i = Math.floor(x)
  const j = Math.floor(y)
  if (i < 0 || j < 0 || i + 1 >= width || j + 1 >= height) return 0
  const u = x - i
  const v = y - j
  const at = j * width + i
  const below = at + width
  return (
    (1 - v) * ((1 - u) * dark[at]! + u * dark[at + 1]!) + v * ((1 - u) * dark[below]! + u * dark[below + 1]!)
  )
}

/**
 * The picture as an image program stretches and leans it about its middle: what lay x to the right and y above the middle
 * comes to lie at across·x + lean·y, down·y.
 */
export const stretchPicture = (
  picture: Picture,
  { across, down, lean }: { readonly across: number; readonly down: number; readonly lean: number },
): Picture => {
  const { width, height } = picture
  const dark = new Float32Array(width * height)
  const [cx, cy] = [(width - 1) / 2, (height - 1) / 2]
  for (let row = 0; row < height; row++)
    for (let column = 0; column < width; column++) {
      const y = (cy - row) / down
      const x = (column - cx - lean * y) / across
      dark[row * width + column] = darkAt(picture, cx + x, cy - y)
    }
  return { width, height, dark }
}
