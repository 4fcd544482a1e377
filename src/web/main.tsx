import { startPage } from './start-page.tsx'

startPage()
