/**
 * The service worker: keeps the page's own files, so that it opens and works without a network. Holds no sound and no
 * report. `VERSION` and `FILES` are written above this text by the build (vite.config.ts). A newer version fetches its
 * files and then waits: the page goes over to it when its user says so, or when all its tabs have been closed.
 */
/* global VERSION, FILES */
const SHELF = `evenfall-${VERSION}`;
const SCOPE = self.registration.scope;

async function keepAll() {
  const shelf = await caches.open(SHELF);
  await Promise.all(
    FILES.map(async (file) => {
      // A file with a fingerprint in its name is the same in every version that has it.
      const known = file.includes('assets/') ? await caches.match(file) : undefined;
      if (known) await shelf.put(file, known);
      else await shelf.add(new Request(file, { cache: 'reload' }));
    }),
  );
}

async function forgetOlder() {
  const names = await caches.keys();
  await Promise.all(
    names.filter((name) => name.startsWith('evenfall-') && name !== SHELF).map((name) => caches.delete(name)),
  );
  await self.clients.claim();
}

self.addEventListener('install', (event) => event.waitUntil(keepAll()));
self.addEventListener('activate', (event) => event.waitUntil(forgetOlder()));
self.addEventListener('message', (event) => {
  if (event.data === 'use') void self.skipWaiting();
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET' || !request.url.startsWith(SCOPE)) return;
  // The page is one file, whatever is asked of it behind its address.
  const page = request.mode === 'navigate' && new URL(request.url).pathname === new URL(SCOPE).pathname;
  const answer = async () =>
    (await caches.match(page ? SCOPE : request, { cacheName: SHELF, ignoreVary: true })) ?? fetch(request);
  event.respondWith(answer());
});
