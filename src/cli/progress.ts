import type { ProgressPort } from '#app/ports.ts';
import { Failure } from '#core/failure.ts';

/**
 * Progress as one line on stderr that rewrites itself; nothing where stderr is no terminal. The first interrupt
 * cancels at the next report, so that what is being written is finished; the second ends at once.
 */
export function openProgress(): ProgressPort & { close(): void } {
  let cancelled = false;
  let shown = false;
  let last = 0;
  const onInterrupt = () => {
    if (cancelled) process.exit(2);
    cancelled = true;
  };
  process.on('SIGINT', onInterrupt);
  return {
    report(what, done, total) {
      if (cancelled)
        throw new Failure('cancelled', 'Cancelled.', 'What was finished is kept; run the command again to go on.');
      const now = Date.now();
      if (!process.stderr.isTTY || (now - last < 80 && done !== total)) return;
      last = now;
      shown = true;
      process.stderr.write(`\r\x1b[K${what}${total === null ? ' …' : ` ${done} of ${total}`}`);
    },
    close() {
      process.off('SIGINT', onInterrupt);
      if (shown) process.stderr.write('\r\x1b[K');
    },
  };
}
