import type { Page } from 'playwright-core'

/** Gives the page a file, as one that is dropped on it. */
export const drop = (page: Page, content: string | Uint8Array, name = 'design.yaml'): Promise<void> =>
  page.evaluate(
    ([inside, packed, called]) => {
      const dataTransfer = new DataTransfer()
      const bytes = packed && Uint8Array.from(atob(packed), (letter) => letter.charCodeAt(0))
      dataTransfer.items.add(new File([bytes || inside!], called!))
      dispatchEvent(new DragEvent('drop', { dataTransfer, cancelable: true }))
    },
    [
      typeof content === 'string' ? content : null,
      typeof content === 'string' ? null : Buffer.from(content).toString('base64'),
      name,
    ],
  )

/** Each length with its unit, so that the file's own may be another. */
export const shed = `title: Ramp for the boathouse shed
units: mm
ramps:
  - kind: quarter
    width: 1200 mm
    height: { deck: 500 mm }
    transition: { circle: { surface: 1400 mm } }
    toe: 40 mm
    deck: 450 mm
    sides: { thickness: 18 mm }
    studs: { section: 38 mm x 89 mm, every: 200 mm }
    skin: [ 9 mm plywood, 9 mm plywood, 6 mm hardboard ]
    deck-board: 15 mm plywood
`
