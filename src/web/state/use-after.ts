import { useCallback, useEffect, useState } from 'preact/hooks'
import { type Check, editDesign, type Typing } from '../../index.ts'
import { hurts } from '../words/hurts.ts'
import type { Asking } from '../worker/ask.ts'
import type { Heard } from './use-answer.ts'

interface Left {
  /** `then nothing to watch` */
  readonly words: string
  /** how grave all is that is left; nothing is 0 */
  readonly left: number
}

/** What typing an offer leads to; null while that is not known. */
export type AfterOffer = (offer: readonly Typing[]) => Left | null

/** ms without a change until offers are tried: each holds the worker up for as long as the checks do */
const pause = 400

const keyOf = (offer: readonly Typing[]): string => JSON.stringify(offer)

/** What is left, worst first. */
const leftOf = (checks: readonly Check[]): Left => {
  const stops = checks.filter(({ level }) => level === 'stop').length
  const dangers = checks.filter((check) => check.level === 'warn' && hurts(check)).length
  const others = checks.filter(({ level }) => level === 'warn').length - dangers
  const left = [
    stops > 0 && `${stops} STOP`,
    dangers > 0 && `${dangers} DANGER`,
    others > 0 && `${others} to watch`,
  ].filter(Boolean)
  return {
    words: left.length === 0 ? 'then nothing to watch' : `then ${left.join(', ')}`,
    left: stops * 10_000 + dangers * 100 + others,
  }
}

/** Each offer of what stops or is to be watched is tried on the whole file, one after the other, as long as nothing changes. */
export const useAfter = (asking: Asking, text: string, heard: Heard<'checks'>): AfterOffer => {
  const [found, setFound] = useState<{
    readonly text: string
    readonly left: Readonly<Record<string, Left>>
  }>({
    text: '',
    left: {},
  })
  useEffect(() => {
    const checks = heard.old ? [] : (heard.answer?.checks ?? [])
    const offers = checks.filter(({ level }) => level !== 'note').flatMap((check) => check.offers)
    let gone = false
    const tryAll = async (): Promise<void> => {
      const left: Record<string, Left> = {}
      for (const offer of offers) {
        if (gone) return
        const typed = offer.reduce((all, { path, value }) => editDesign(all, path, value), text)
        try {
          const answer = await asking.ask({ kind: 'checks', text: typed })
          if (answer.kind === 'checks') left[keyOf(offer)] = leftOf(answer.checks)
        } catch {
          // of what cannot be tried nothing is said
        }
        if (!gone) setFound({ text, left: { ...left } })
      }
    }
    const timer = offers.length === 0 ? undefined : setTimeout(tryAll, pause)
    return () => {
      gone = true
      clearTimeout(timer)
    }
  }, [heard])
  return useCallback(
    (offer) => (found.text === text ? (found.left[keyOf(offer)] ?? null) : null),
    [found, text === found.text],
  )
}
