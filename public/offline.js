/**
 * Keeps the page's own files, so that it opens and works without a network. Holds no sound and no report.
 * The page sends the addresses of all its files; files of an earlier version are then forgotten.
 */
const SHELF = 'evenfall-files';

self.addEventListener('install', () => self.skipWaiting());
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));

self.addEventListener('message', (event) => {
  const addresses = event.data;
  const keep = async () => {
    const shelf = await caches.open(SHELF);
    await Promise.all(addresses.map(async (address) => (await shelf.match(address)) ?? shelf.add(address)));
    const stale = (await shelf.keys()).filter(({ url }) => !addresses.includes(url));
    await Promise.all(stale.map((request) => shelf.delete(request)));
  };
  event.waitUntil(keep());
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET' || !request.url.startsWith(self.location.origin)) return;
  const kept = () => caches.match(request, { ignoreSearch: request.mode === 'navigate', ignoreVary: true });
  // The page itself: the newest if there is a network. Its files carry a fingerprint in their names: kept ones first.
  const answer =
    request.mode === 'navigate'
      ? fetch(request).catch(async () => (await kept()) ?? Response.error())
      : kept().then((found) => found ?? fetch(request));
  event.respondWith(answer);
});
