// Keeps the page for use without a network. It is registered by the page where that is
// served over https, and asks for nothing but the page.
const name = 'forel';
const page = (request) => request.method === 'GET' && request.mode === 'navigate';

// A page that is open already is kept at once: it was there before this.
self.addEventListener('install', (event) => {
  self.skipWaiting();
  event.waitUntil((async () => {
    const store = await caches.open(name);
    for (const { url } of await self.clients.matchAll({ includeUncontrolled: true, type: 'window' })) {
      if (url.startsWith(self.registration.scope)) await store.add(url.split('#')[0]);
    }
  })());
});

self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));

// The newest page is taken where there is a network, else the one that was kept.
self.addEventListener('fetch', (event) => {
  if (!page(event.request)) return;
  event.respondWith((async () => {
    const store = await caches.open(name);
    try {
      const fresh = await fetch(event.request);
      if (fresh.ok) event.waitUntil(store.put(event.request, fresh.clone()));
      return fresh;
    } catch (err) {
      const kept = await store.match(event.request, { ignoreSearch: true });
      if (kept) return kept;
      throw err;
    }
  })());
});
