// Keeps the folder for use without a network: all of it is fetched once, and answered from here after that. FILES and VERSION are
// written in when the folder is packed; another version fetches anew and takes the place of the earlier one.
const FILES = [];
const VERSION = '';

addEventListener('install', (event) => {
  event.waitUntil((async () => {
    const cache = await caches.open(VERSION);
    await cache.addAll(FILES.map((file) => new Request(file, { cache: 'no-cache' })));
    await skipWaiting();
  })());
});

addEventListener('activate', (event) => {
  event.waitUntil((async () => {
    for (const name of await caches.keys()) if (name.startsWith('shellforge-') && name !== VERSION) await caches.delete(name);
    await clients.claim();
  })());
});

addEventListener('fetch', (event) => {
  if (event.request.method !== 'GET') return;
  event.respondWith((async () => {
    const cache = await caches.open(VERSION);
    return await cache.match(event.request, { ignoreSearch: true }) ?? fetch(event.request);
  })());
});
