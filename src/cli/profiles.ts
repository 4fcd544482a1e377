import { existsSync, mkdirSync, readdirSync, rmdirSync, rmSync, statSync } from 'node:fs'
import { homedir } from 'node:os'
import { dirname, isAbsolute, join, resolve } from 'node:path'
import { nearWord } from '../length/near.ts'
import { type Profile, readProfile, writeProfile } from '../printer/profile.ts'
import { Failure } from './failure.ts'
import { readText, reason, reservedName, writeOut } from './files.ts'

/** The user's own configuration folder, by the platform's convention. */
const configFolder = (): string => {
  if (process.platform === 'win32') return process.env.APPDATA ?? join(homedir(), 'AppData', 'Roaming')
  if (process.platform === 'darwin') return join(homedir(), 'Library', 'Application Support')
  const said = process.env.XDG_CONFIG_HOME
  if (said?.startsWith('/')) return said
  const home = homedir()
  // a relative one would be another folder wherever you are
  if (!isAbsolute(home))
    throw new Failure(2, 'there is no home folder to keep printers in; name a folder with --profiles')
  return join(home, '.config')
}

export const profilesFolder = (said?: string): string => {
  if (said === '') throw new Failure(2, '--profiles: the name of the folder is empty')
  return said ?? join(configFolder(), 'traceply', 'printers')
}

const ending = '.json'
const nameRule = /^[A-Za-z0-9][A-Za-z0-9_-]{0,39}$/

const fileOf = (name: string, folder: string): string => {
  if (reservedName.test(name))
    throw new Failure(
      2,
      `\`${name}\` is no name for a printer: Windows keeps it for a device; choose another one`,
    )
  if (!nameRule.test(name))
    throw new Failure(
      2,
      `\`${name}\` is no name for a printer: 1 to 40 letters, digits, - and _, no blanks; e.g. study-laser`,
    )
  return join(folder, name + ending)
}

export const listProfiles = (folder: string): readonly string[] =>
  existsSync(folder)
    ? filesIn(folder)
        .filter((file) => file.endsWith(ending))
        .map((file) => file.slice(0, -ending.length))
        .sort()
    : []

const filesIn = (folder: string): readonly string[] => {
  try {
    return readdirSync(folder)
  } catch (error) {
    throw new Failure(2, `cannot look into ${folder}: ${reason(error)}; name another folder with --profiles`)
  }
}

/** The file of a printer that is known. Fails with exit 2 where there is none of that name. */
const knownFile = (name: string, folder: string): string => {
  const file = fileOf(name, folder)
  if (existsSync(file)) return file
  const known = listProfiles(folder)
  const close = nearWord(name, known)
  throw new Failure(
    2,
    `there is no printer called \`${name}\` in ${folder}; ` +
      (close
        ? `did you mean \`${close}\`?`
        : known.length > 0
          ? `there are: ${known.join(', ')}`
          : 'measure one first: traceply gauge --help'),
  )
}

/** Fails with exit 2 where there is none of that name, 1 where its file is no profile. */
export const loadProfile = (name: string, said?: string): Profile => {
  const file = knownFile(name, profilesFolder(said))
  const profile = readProfile(readText(file, 'profile'))
  if ('error' in profile) throw new Failure(1, `${file} cannot be used: ${profile.error}`)
  // a file that was copied goes by its new name
  return { ...profile, name }
}

/** `--printer` and where its profile lies. */
export interface ProfileGiven {
  readonly printer?: string
  readonly profiles?: string
}

/** The profile that `--printer` names; null where it is not given. */
export const givenProfile = (given: ProfileGiven): Profile | null =>
  given.printer === undefined ? null : loadProfile(given.printer, given.profiles)

/** One after the other: Node's own way waits without end for some places that cannot be made. Those that it made, the outer first. */
const makeFolder = (folder: string): readonly string[] => {
  if (existsSync(folder)) return []
  const above = dirname(folder)
  const made = above === folder ? [] : makeFolder(above)
  try {
    mkdirSync(folder)
    return [...made, folder]
  } catch (error) {
    removeEmpty(made)
    // a link that leads nowhere has the name: where it leads says why
    statSync(folder, { throwIfNoEntry: false })
    throw error
  }
}

/** Folders that were made for what could not be written. */
const removeEmpty = (made: readonly string[]): void => {
  try {
    for (const folder of made.toReversed()) rmdirSync(folder)
  } catch {
    // another run has put something there meanwhile
  }
}

const folderMade = (folder: string): readonly string[] => {
  try {
    return makeFolder(resolve(folder))
  } catch (error) {
    throw new Failure(2, `cannot make the folder ${folder}: ${reason(error)}; name another with --profiles`)
  }
}

export const saveProfile = (profile: Profile, folder: string, force: boolean): string => {
  const file = fileOf(profile.name, folder)
  const made = folderMade(folder)
  try {
    writeOut(file, writeProfile(profile), force)
  } catch (error) {
    removeEmpty(made)
    throw error
  }
  return file
}

/** Even a damaged profile may be forgotten; one that is not there may not. */
export const forgetProfile = (name: string, folder: string): string => {
  const file = knownFile(name, folder)
  try {
    rmSync(file)
  } catch (error) {
    throw new Failure(2, `cannot remove ${file}: ${reason(error)}`)
  }
  return file
}
