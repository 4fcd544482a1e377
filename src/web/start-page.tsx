import { render } from 'preact'
import { starterFor, writeStarter } from '../index.ts'
import { App } from './app.tsx'
import { firstText, keptDesign, keptTab, keptWhole } from './state/keep.ts'
import { linked } from './state/link.ts'
import { firstView } from './state/model.ts'
import { startAsking, type WorkerSource } from './worker/ask.ts'

const textOf = (id: string): string => document.getElementById(id)?.textContent ?? ''

/** The drawing is there before the rest of the file is: what workers are started from stands behind it. */
const whole = new Promise<void>((done) => {
  if (document.readyState === 'loading') addEventListener('DOMContentLoaded', () => done(), { once: true })
  else done()
})

/** The browser's turn: a task of over 50 ms is felt, and code that has never run is slow. */
const rest = (): Promise<void> => new Promise((go) => setTimeout(go))

const noFonts = { regular: '', bold: '' }

export const startPage = async (): Promise<void> => {
  const given = textOf('design').trim()
  await rest()
  const tab = keptTab(given)
  const { text, own } = firstText({
    linked: linked(location.hash),
    tab: tab.text,
    given: given === '' ? null : JSON.parse(given),
    last: keptDesign(),
  })
  const before = tab.text !== null ? tab.whole : given === '' ? keptWhole() : null
  const url = whole.then(() => URL.createObjectURL(new Blob([textOf('worker')], { type: 'text/javascript' })))
  const plain = async (): Promise<WorkerSource> => ({ url: await url, fonts: noFonts })
  const writing = async (): Promise<WorkerSource> => ({
    url: await url,
    fonts: { regular: textOf('font-regular'), bold: textOf('font-bold') },
  })
  await rest()
  const start = await firstView(text ?? writeStarter(starterFor('quarter', 'mm')), rest)
  await rest()
  // the width of the window is asked for by the drawing: the page is measured before
  document.documentElement.getBoundingClientRect()
  await rest()
  render(
    <App
      start={start}
      own={own}
      before={before}
      startLay={tab.lay}
      given={given}
      askings={{ counting: startAsking(plain), looking: startAsking(plain), saving: startAsking(writing) }}
    />,
    document.getElementById('page')!,
  )
}
