import { render } from 'preact'
import { starterFor, writeStarter } from '../index.ts'
import { App } from './app.tsx'
import { keptDesign } from './keep.ts'
import { linked } from './link.ts'
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
  const program = textOf('program')
  const fonts = { regular: textOf('font-regular'), bold: textOf('font-bold') }
  render(
    <App start={start} looking={startAsking(program, fonts)} saving={startAsking(program, fonts)} />,
    document.getElementById('page')!,
  )
}
