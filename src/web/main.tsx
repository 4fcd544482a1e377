import { startPage } from './start-page.tsx'
import { startWorker } from './worker/worker.ts'

// one program for both: the worker is started from this very text
if (typeof document === 'undefined') startWorker()
else startPage()
