// preloaded by the bench: says the process's time on the processor in ms and its peak memory in kB when it ends
process.on('exit', () => {
  const { user, system } = process.cpuUsage()
  process.stderr.write(`\ncost ${(user + system) / 1000} ${process.resourceUsage().maxRSS}\n`)
})
