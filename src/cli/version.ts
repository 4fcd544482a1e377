import { version } from '../../package.json'

export { version }
