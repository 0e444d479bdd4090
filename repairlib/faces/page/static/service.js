// Keeps the whole page on the device. A version is kept whole or not at all, and answers from its
// own files only: there is never one half old and half new. The build writes VERSION and FILES, the
// SHA-256 of each file, in front of this text.

const HERE = new URL(self.registration.scope).pathname; // other pages of this host are left alone
const OURS = `page ${HERE} `;
const CACHE = OURS + VERSION;
const FIRST = 'index.html';

const digest = async (bytes) => {
  const sum = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return Array.from(sum, (byte) => byte.toString(16).padStart(2, '0')).join('');
};

const isIt = async (response, sum) =>
  Boolean(response?.ok) && await digest(await response.clone().arrayBuffer()) === sum;

const keep = async (cache, path, sum) => {
  // What lies in a folder named by its version never changes; what an earlier page kept, serves.
  const never = path.includes('/');
  let response = never ? await caches.match(path) : undefined;
  if (!await isIt(response, sum)) response = await fetch(path, { cache: never ? 'default' : 'reload' });
  if (!await isIt(response, sum)) throw new Error(`${response.status}, or changed: ${path}`);
  // A browser opens no page from an answer that was sent on, as some hosts do.
  await cache.put(path, response.redirected ? new Response(response.body, response) : response);
};

const keepAll = async () => {
  const cache = await caches.open(CACHE);
  try {
    await Promise.all(Object.entries(FILES).map(([path, sum]) => keep(cache, path, sum)));
  } catch (error) {
    await caches.delete(CACHE);
    throw error;
  }
};

const forgetOthers = async () => {
  const names = await caches.keys();
  const old = names.filter((name) => name.startsWith(OURS) && name !== CACHE);
  await Promise.all(old.map((name) => caches.delete(name)));
  await self.clients.claim();
};

const answer = async (request) => {
  const cache = await caches.open(CACHE);
  const { pathname } = new URL(request.url);
  const options = { ignoreSearch: true, ignoreVary: true };
  const kept = await cache.match(pathname === HERE ? FIRST : request, options);
  return kept ?? fetch(request);
};

self.addEventListener('install', (event) => event.waitUntil(keepAll()));
self.addEventListener('activate', (event) => event.waitUntil(forgetOthers()));
self.addEventListener('message', ({ data }) => { if (data === 'load') self.skipWaiting(); });
self.addEventListener('fetch', (event) => {
  const { request } = event;
  const ours = request.url.startsWith(self.registration.scope);
  if (request.method === 'GET' && ours) event.respondWith(answer(request));
});
