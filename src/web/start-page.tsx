import { render } from 'preact'
import { starterFor, writeStarter } from '../index.ts'
import { App } from './app.tsx'
import { keptDesign } from './state/keep.ts'
import { linked } from './state/link.ts'
import { startAsking, type WorkerSource } from './worker/ask.ts'

const textOf = (id: string): string => document.getElementById(id)?.textContent ?? ''

/** The drawing is there before the rest of the file is: what workers are started from stands behind it. */
const whole = new Promise<void>((done) => {
  if (document.readyState === 'loading') addEventListener('DOMContentLoaded', () => done(), { once: true })
  else done()
})

const noFonts = { regular: '', bold: '' }

/** A design in the link, else one that the file was written with, else the last one here, else a starter. */
export const startPage = (): void => {
  const given = textOf('design').trim()
  const start =
    linked(location.hash) ??
    (given === '' ? null : JSON.parse(given)) ??
    keptDesign() ??
    writeStarter(starterFor('quarter', 'mm'))
  const url = whole.then(() => URL.createObjectURL(new Blob([textOf('worker')], { type: 'text/javascript' })))
  const plain = async (): Promise<WorkerSource> => ({ url: await url, fonts: noFonts })
  const writing = async (): Promise<WorkerSource> => ({
    url: await url,
    fonts: { regular: textOf('font-regular'), bold: textOf('font-bold') },
  })
  render(
    <App
      start={start}
      askings={{ counting: startAsking(plain), looking: startAsking(plain), saving: startAsking(writing) }}
    />,
    document.getElementById('page')!,
  )
}
