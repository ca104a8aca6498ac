// Loaded into the server that is measured: on a line of its standard error it tells, when asked by a signal, how much memory it holds
// and for how long its loop has stood still.
const { monitorEventLoopDelay } = require('node:perf_hooks');

const delay = monitorEventLoopDelay({ resolution: 1 });
delay.enable();
process.on('SIGUSR2', () => {
  globalThis.gc?.();
  const { heapUsed, rss } = process.memoryUsage();
  process.stderr.write(`probe ${JSON.stringify({ heapUsed, rss, p99: delay.percentile(99) / 1e6, longest: delay.max / 1e6 })}\n`);
  delay.reset();
});
