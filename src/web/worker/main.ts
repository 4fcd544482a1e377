import { startWorker } from './worker.ts'

startWorker()
