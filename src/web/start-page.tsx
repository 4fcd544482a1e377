import { render } from 'preact'
import { starterFor, writeStarter } from '../index.ts'
import { App } from './app.tsx'
import { keptDesign } from './state/keep.ts'
import { linked } from './state/link.ts'
import { startAsking } from './worker/ask.ts'

const textOf = (id: string): string => document.getElementById(id)?.textContent ?? ''

/** A design in the link, else one that the file was written with, else the last one here, else a starter. */
export const startPage = (): void => {
  const given = textOf('design').trim()
  const start =
    linked(location.hash) ??
    (given === '' ? null : JSON.parse(given)) ??
    keptDesign() ??
    writeStarter(starterFor('quarter', 'mm'))
  const asking = () =>
    startAsking(textOf('program'), () => ({ regular: textOf('font-regular'), bold: textOf('font-bold') }))
  render(
    <App start={start} askings={{ counting: asking(), looking: asking(), saving: asking() }} />,
    document.getElementById('page')!,
  )
}
