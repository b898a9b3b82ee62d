/**
 * The service worker: keeps the page's own files, so that it opens and works without a network. Holds no sound and no
 * report. `VERSION` and `FILES` are written above this text by the build (vite.config.ts). A newer version fetches its
 * files and then waits: the page goes over to it when its user says so, or when all its tabs have been closed.
 */
/* global VERSION, FILES */
/** Files that are shared with the page lie here until it takes them (share/received.ts); no version's own, so none takes it along. */
const SHARED = 'shared-with-evenfall';
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

/** Lays aside what the system passes to the page, and shows the page, which then takes it. */
async function takeIn(request) {
  const files = (await request.formData()).getAll('files').filter((file) => file instanceof File);
  const shelf = await caches.open(SHARED);
  for (const [index, file] of files.entries()) {
    const headers = { 'content-type': file.type, 'x-name': encodeURIComponent(file.name) };
    await shelf.put(`${SCOPE}shared/${Date.now()}-${index}`, new Response(file, { headers }));
  }
  return Response.redirect(SCOPE, 303);
}

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const isShared = request.method === 'POST' && request.mode === 'navigate' && request.url.startsWith(SCOPE);
  if (isShared) return event.respondWith(takeIn(request));
  if (request.method !== 'GET' || !request.url.startsWith(SCOPE)) return;
  // The page is one file, whatever is asked of it behind its address.
  const page = request.mode === 'navigate' && new URL(request.url).pathname === new URL(SCOPE).pathname;
  const answer = async () =>
    (await caches.match(page ? SCOPE : request, { cacheName: SHELF, ignoreVary: true })) ?? fetch(request);
  event.respondWith(answer());
});
