import { make } from './make.ts';

/** Where the guide came from a web host, a worker keeps it for a bench without a network. */
export function keepOffline(window: Window): void {
  const { navigator, document, location } = window;
  if (!('serviceWorker' in navigator) || !location.protocol.startsWith('http')) return;
  navigator.serviceWorker.register('offline.js').then(
    () =>
      navigator.serviceWorker.ready.then(() => {
        document
          .querySelector('footer')
          ?.append(make('p', {}, 'This guide is kept in your browser, and opens without a network.'));
      }),
    // A browser that refuses, in a private window for instance, still shows the guide.
    () => undefined,
  );
}
