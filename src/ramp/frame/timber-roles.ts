import type { DeckTimber } from './deck-timbers.ts'

/** What a timber behind the lip is for. */
export const roleWords: Readonly<Record<DeckTimber['role'], string>> = {
  pipe: 'under the pipe',
  backing: 'backing behind the pipe',
  deck: 'under the deck board',
  back: 'back bottom corner',
  wheels: 'for the wheels',
}
