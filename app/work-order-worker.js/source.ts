/**
 * The worker as the browser runs it. It stands before one work order's page only (its scope), asks
 * the gallery first, and answers from what was kept on the device when there is no line. It keeps
 * nothing of any other room. Whoever is led to the door instead loses the page, not what they wrote.
 */
export const workerSource = String.raw`'use strict';
const path = new URL(self.registration.scope).pathname;
const storeName = 'work-order ' + path;
const patienceMs = 6000;

self.addEventListener('install', () => self.skipWaiting());
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));
self.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== 'GET' || origin !== self.location.origin) return;
  if (request.mode === 'navigate') {
    if (pathname === path) event.respondWith(openPage(request));
    return;
  }
  if (pathname.startsWith('/_next/static/')) event.respondWith(openPart(request));
});

async function openPage(request) {
  const store = await caches.open(storeName);
  const kept = await store.match(path, { ignoreVary: true });
  try {
    const asked = fetch(request);
    const page = await (kept ? Promise.race([asked, noLineAfter(patienceMs)]) : asked);
    if (page.type === 'opaqueredirect') await store.delete(path);
    else if (page.ok) await store.put(path, page.clone());
    else if (page.status >= 500 && kept) return kept;
    return page;
  } catch (fault) {
    if (kept) return kept;
    throw fault;
  }
}

function noLineAfter(ms) {
  return new Promise((_resolve, reject) => setTimeout(() => reject(new Error('no line')), ms));
}

async function openPart(request) {
  const store = await caches.open(storeName);
  const kept = await store.match(request.url, { ignoreVary: true });
  if (kept) return kept;
  const part = await fetch(request);
  if (part.ok) await store.put(request.url, part.clone());
  return part;
}
`;
