import { inch } from '../geometry/inch.ts'
import { showLength } from '../length.ts'
import type { Reading } from './reading.ts'

/** No printer in order is further off than this. */
const mostOff = 0.03

const near = (value: number, nominal: number): boolean => Math.abs(value / nominal - 1) <= mostOff

/** The plausible reading that comes out when two neighbouring signs of the typed one are swapped, and whether one is its point. */
const swapped = ({
  text,
  measured,
  nominal,
}: Reading): { readonly text: string; readonly point: boolean } | undefined => {
  const number = /^[\d.]+/.exec(text)?.[0]
  if (number === undefined || Number(number) === 0) return undefined
  const unit = measured / Number(number)
  for (let i = 0; i + 1 < number.length; i++) {
    const other = number.slice(0, i) + number[i + 1] + number[i] + number.slice(i + 2)
    if (Number.isFinite(Number(other)) && near(Number(other) * unit, nominal))
      return {
        text: text.replace(number, other.replace(/\.$/, '')),
        point: number.slice(i, i + 2).includes('.'),
      }
  }
  return undefined
}

/** Several readings that are short by the same share, within a hundredth: a print that was scaled, and no slip of the hand. */
export const isScaled = (readings: readonly Reading[]): boolean => {
  const ratios = readings.map(({ measured, nominal }) => measured / nominal)
  return (
    ratios.length > 1 &&
    Math.max(...ratios) - Math.min(...ratios) < 0.01 &&
    ratios.every((ratio) => ratio < 1)
  )
}

/** Why a reading cannot be what a printer did to `nominal`, with the way out; null when it can. `scaled`: all of them are short alike. */
export const readingFault = (option: string, reading: Reading, scaled = false): string | null => {
  const { measured, nominal, text } = reading
  if (near(measured, nominal)) return null
  const mm = (value: number): string => showLength(value, 'mm', { decimals: 1, unit: true })
  const off = `${option} ${text}: that is ${((measured / nominal - 1) * 100).toFixed(1)} % off ${mm(nominal)}`
  if (near(measured * inch, nominal))
    return `${off}; inches read as mm? ${text.replace(/mm/i, 'in')} would fit`
  if (near(measured / inch, nominal))
    return `${off}; mm read as inches? ${text.replace(/in|"/i, 'mm')} would fit`
  const short = measured < nominal && measured > 0.85 * nominal
  const other = short && scaled ? undefined : swapped(reading)
  if (other !== undefined)
    return `${off}; ${other.point ? 'the point in the wrong place' : 'two digits swapped'}? ${other.text} would fit`
  if (short) return `${off}; print again at 100 %, never "fit to page", and measure from mark to mark`
  return `${off}; a printer in order is at most ${mostOff * 100} % off: measure again, from mark to mark`
}
