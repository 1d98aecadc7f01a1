import { createContext, runInContext } from 'node:vm';
import { beforeEach, expect, test } from 'vitest';
import { workerSource } from '@/app/work-order-worker.js/source';

type Asked = { request: { url: string; method: string; mode: string } };
type Answered = { status: number; ok: boolean; type: string; says: string; clone: () => Answered };

const here = 'https://gallery.example';
const path = '/diary/one/work';
let stores: Map<string, Map<string, Answered>>;
let online: (url: string) => Promise<Answered>;
let listeners: Map<string, (event: unknown) => void>;

function answered(says: string, more: Partial<Answered> = {}): Answered {
  const answer = { status: 200, ok: true, type: 'basic', says, ...more };
  return { ...answer, clone: () => answered(says, more) };
}

beforeEach(() => {
  stores = new Map();
  listeners = new Map();
  const store = (name: string) => {
    const kept = stores.get(name) ?? new Map<string, Answered>();
    stores.set(name, kept);
    return {
      match: (key: string) => Promise.resolve(kept.get(key)),
      put: (key: string, answer: Answered) => Promise.resolve(void kept.set(key, answer)),
      delete: (key: string) => Promise.resolve(kept.delete(key)),
    };
  };
  const self = {
    registration: { scope: here + path },
    location: { origin: here },
    addEventListener: (name: string, listen: (event: unknown) => void) => {
      listeners.set(name, listen);
    },
  };
  const caches = { open: (name: string) => Promise.resolve(store(name)) };
  const fetch = ({ url }: Asked['request']) => online(url);
  runInContext(
    workerSource,
    createContext({ self, caches, fetch, URL, setTimeout, Error, Promise }),
  );
});

/** What the worker answers; undefined where it leaves the browser alone. */
async function ask(url: string, mode = 'navigate', method = 'GET'): Promise<string | undefined> {
  let answer: Promise<Answered> | undefined;
  const respondWith = (given: Promise<Answered>) => {
    answer = given;
  };
  listeners.get('fetch')?.({ request: { url, mode, method }, respondWith });
  return (await answer)?.says;
}

const noLine = () => Promise.reject(new Error('no line'));

test('the page comes from the gallery first, and from the device where there is no line', async () => {
  online = () => Promise.resolve(answered('first'));
  expect(await ask(here + path)).toBe('first');
  online = () => Promise.resolve(answered('second'));
  expect(await ask(here + path)).toBe('second');
  online = noLine;
  expect(await ask(here + path)).toBe('second');
  online = () => Promise.resolve(answered('fault', { ok: false, status: 503 }));
  expect(await ask(here + path)).toBe('second');
});

test('a page that was never kept is not made up', async () => {
  online = noLine;
  await expect(ask(here + path)).rejects.toThrow('no line');
});

test('whoever is led to the door instead loses the page', async () => {
  online = () => Promise.resolve(answered('page'));
  await ask(here + path);
  const door = { ok: false, status: 0, type: 'opaqueredirect' };
  online = () => Promise.resolve(answered('door', door));
  expect(await ask(here + path)).toBe('door');
  online = noLine;
  await expect(ask(here + path)).rejects.toThrow('no line');
});

test('parts are kept as they never change', async () => {
  online = () => Promise.resolve(answered('script'));
  expect(await ask(`${here}/_next/static/a.js`, 'no-cors')).toBe('script');
  online = noLine;
  expect(await ask(`${here}/_next/static/a.js`, 'no-cors')).toBe('script');
  expect([...stores.keys()]).toEqual([`work-order ${path}`]);
});

test.each([
  ['another room', `${here}/commissions/7`, 'navigate', 'GET'],
  ['another work order', `${here}/diary/two/work`, 'navigate', 'GET'],
  ['its paper', `${here}${path}/pdf`, 'navigate', 'GET'],
  ['what is sent', `${here}${path}/send`, 'cors', 'POST'],
  ['what it asks for itself', `${here}${path}?_rsc=1`, 'cors', 'GET'],
  ['another house', 'https://other.example/_next/static/a.js', 'no-cors', 'GET'],
])('%s is none of its business', async (_label, url, mode, method) => {
  online = () => Promise.resolve(answered('from the gallery'));
  expect(await ask(url, mode, method)).toBeUndefined();
  expect(stores.size).toBe(0);
});
