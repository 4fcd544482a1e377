// preloaded by the bench: says the process's peak memory when it ends
process.on('exit', () => process.stderr.write(`peak ${process.resourceUsage().maxRSS}\n`))
