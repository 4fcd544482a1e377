/**
 * What ends a command: 1 where what was read, measured or solved is not good; 2 where the command line is not, or a place
 * cannot be read or written. The message says the remedy.
 */
export class Failure extends Error {
  constructor(
    readonly exit: 1 | 2,
    message: string,
  ) {
    super(message)
  }
}
