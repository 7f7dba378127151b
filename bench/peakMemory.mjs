// Loaded before a program: says on stderr how much memory it came to hold.
process.on('exit', () => process.stderr.write(`peak ${process.resourceUsage().maxRSS} kB\n`));
