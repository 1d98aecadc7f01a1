/** Where what a page needs without a line is kept; one store for each work order. */
const storeOf = (path: string) => `work-order ${path}`;
const isOurs = (store: string) => store.startsWith('work-order ');

/** Whether the page opens again without a line: yes, not at this address, or it did not work. */
export type PageKept = 'yes' | 'not_here' | 'no';

/**
 * Keeps a work order's page and everything it is made of on the device, and lets the worker stand
 * before it. Browsers allow that only at addresses that are safe (https, or the device itself).
 */
export async function keepPage(path: string): Promise<PageKept> {
  if (!('serviceWorker' in navigator) || !('caches' in window)) return 'not_here';
  try {
    await navigator.serviceWorker.register('/work-order-worker.js', { scope: path });
    const page = await fetch(path, { cache: 'no-store', redirect: 'error' });
    if (!page.ok) return 'no';
    const store = await caches.open(storeOf(path));
    await store.put(path, page);
    await Promise.all(madeOf().map((address) => keepPart(store, address)));
    return 'yes';
  } catch {
    return (await isKept(path)) ? 'yes' : 'no';
  }
}

/** Forgets one page: it was signed, and its codes are nobody's business any more. */
export async function forgetPage(path: string): Promise<void> {
  if (!('caches' in window)) return;
  await caches.delete(storeOf(path));
  const worker = await navigator.serviceWorker.getRegistration(path);
  if (worker && new URL(worker.scope).pathname === path) await worker.unregister();
}

/** Forgets every work order's page, as one leaves. What was not sent stays, until it is. */
export async function forgetPages(): Promise<void> {
  if (!('caches' in window)) return;
  const stores = (await caches.keys()).filter(isOurs);
  await Promise.all(stores.map((store) => caches.delete(store)));
  const workers = await navigator.serviceWorker.getRegistrations();
  const ours = workers.filter(({ scope }) =>
    /^\/diary\/[^/]+\/work$/.test(new URL(scope).pathname),
  );
  await Promise.all(ours.map((worker) => worker.unregister()));
}

async function isKept(path: string): Promise<boolean> {
  const page = await caches.match(path, { cacheName: storeOf(path), ignoreVary: true });
  return page !== undefined;
}

async function keepPart(store: Cache, address: string): Promise<void> {
  if (await store.match(address, { ignoreVary: true })) return;
  await store.add(address);
}

/** What the page is made of: its scripts, styles and type, by what the browser has loaded. */
function madeOf(): string[] {
  const loaded = performance.getEntriesByType('resource').map(({ name }) => name);
  const named = Array.from(document.querySelectorAll('script[src], link[href]'), (part) =>
    part instanceof HTMLScriptElement ? part.src : part instanceof HTMLLinkElement ? part.href : '',
  );
  const isPart = (address: string) =>
    address.startsWith(`${location.origin}/_next/static/`) || address.endsWith('/icon.svg');
  return [...new Set([...loaded, ...named])].filter(isPart);
}
