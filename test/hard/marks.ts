import { markOf } from './plotted.ts'

/** Run by each Node in turn: its version, then a line for each number with its mark. */
const [from, count] = process.argv.slice(2).map(Number) as [number, number]
console.log(`node ${process.versions.node}`)
for (let number = from; number < from + count; number++) console.log(`${number} ${await markOf(number)}`)
