import { render } from 'preact'
import { starterFor, writeStarter } from '../index.ts'
import { App } from './app.tsx'
import { kept } from './keep.ts'
import { linked } from './link.ts'
import { startAsking } from './worker/ask.ts'

const textOf = (id: string): string => document.getElementById(id)?.textContent ?? ''

/** A design in the link, else one that the file was written with, else the last one here, else a starter. */
export const startPage = (): void => {
  const { text: last, refused } = kept()
  const start =
    linked(location.hash) ??
    (textOf('design').trim() || null) ??
    last ??
    writeStarter(starterFor('quarter', 'mm'))
  render(
    <App start={start} storageRefused={refused} asking={startAsking(textOf('program'))} />,
    document.getElementById('page')!,
  )
}
