import { readdirSync, readFileSync } from 'node:fs'

const folder = new URL('../../templates/', import.meta.url)

/** Names of all templates, without their ending. */
export const templates: readonly string[] = readdirSync(folder)
  .map((name) => name.replace(/\.yaml$/, ''))
  .sort()

export const templateText = (name: string): string => readFileSync(new URL(`${name}.yaml`, folder), 'utf8')
