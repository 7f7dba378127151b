// A worker of the browser: keeps one edition of the guide, and answers from it where the network does not.
interface Kept {
  /** Changes whenever anything of the guide does. */
  readonly edition: string;
  /** Addresses relative to the worker. */
  readonly files: readonly string[];
}

declare const self: ServiceWorkerGlobalScope & { readonly guide: Kept };

const prefix = `guide ${self.registration.scope} `;
const name = prefix + self.guide.edition;

self.addEventListener('install', (event) => {
  event.waitUntil(
    caches
      .open(name)
      .then((cache) => cache.addAll([...self.guide.files]))
      .then(() => self.skipWaiting()),
  );
});

self.addEventListener('activate', (event) => {
  event.waitUntil(
    caches
      .keys()
      .then((names) =>
        Promise.all(
          names.filter((other) => other.startsWith(prefix) && other !== name).map((old) => caches.delete(old)),
        ),
      )
      .then(() => self.clients.claim()),
  );
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET' || !request.url.startsWith(self.registration.scope)) return;
  event.respondWith(request.destination === 'image' ? keptFirst(request) : networkFirst(request));
});

/** Pictures are named by their content, so what is kept is right. */
async function keptFirst(request: Request): Promise<Response> {
  return (await caches.match(request)) ?? (await fetch(request).catch(() => sizeThatIsKept(request)));
}

async function networkFirst(request: Request): Promise<Response> {
  try {
    return await fetch(request);
  } catch (failure) {
    const address = new URL(request.url);
    const page = address.pathname.endsWith('/') ? 'index.html' : '';
    const kept = await caches.match(new URL(page, address.origin + address.pathname), { ignoreSearch: true });
    if (kept !== undefined) return kept;
    throw failure;
  }
}

/** One size of each picture is kept; it does for the others. */
async function sizeThatIsKept(request: Request): Promise<Response> {
  const picture = /\/pictures\/([0-9a-z]+)-\d+\.\w+$/.exec(new URL(request.url).pathname)?.[1];
  const file = self.guide.files.find((path) => picture !== undefined && path.startsWith(`pictures/${picture}-`));
  const kept = file === undefined ? undefined : await caches.match(new URL(file, self.registration.scope));
  return kept ?? Response.error();
}
