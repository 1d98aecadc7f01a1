import { z } from 'zod';
import type { WorkEntrySent } from '@/lib/installation/input/work/entry';
import type { KeptEntry } from '@/lib/installation/rules/work/on-device';

/** A picture as it is kept: its bytes, so that every browser can keep it. */
export type KeptPicture = Readonly<{ bytes: ArrayBuffer; type: string }>;

/** An entry in the order it was made; the place is given by the device. */
export type Kept = KeptEntry & Readonly<{ place: number; picture: KeptPicture | null }>;

const [database, table] = ['work-orders', 'entries'];

/** Everything that this device keeps of one work order, in the order it was made. */
export async function listKept(appointmentId: string): Promise<Kept[]> {
  const all = await allKept();
  return all.filter(({ entry }) => entry.appointmentId === appointmentId);
}

/** For which work orders this device keeps something that was not sent yet, and how much. */
export async function countNotSent(): Promise<ReadonlyMap<string, number>> {
  const counts = new Map<string, number>();
  for (const { entry, standing } of await allKept()) {
    if (standing === 'sent') continue;
    counts.set(entry.appointmentId, (counts.get(entry.appointmentId) ?? 0) + 1);
  }
  return counts;
}

const rows = z.array(
  z.object({
    place: z.number(),
    // The gallery reads it whole; here it need only be known whose it is.
    entry: z.custom<WorkEntrySent>((value) => mine.safeParse(value).success),
    picture: z.object({ bytes: z.instanceof(ArrayBuffer), type: z.string() }).nullable(),
    standing: z.enum(['waiting', 'sent', 'refused']),
    sentence: z.string(),
  }),
);
const mine = z.looseObject({ id: z.string(), appointmentId: z.string(), did: z.string() });

async function allKept(): Promise<Kept[]> {
  return rows.parse(await inStore<unknown[]>('readonly', (store) => store.getAll()));
}

/** Keeps an entry at the end of the others. */
export async function addKept(entry: WorkEntrySent, picture: KeptPicture | null): Promise<void> {
  const row = { entry, picture, standing: 'waiting', sentence: '' };
  await inStore<IDBValidKey>('readwrite', (store) => store.add(row));
}

/** Writes anew how an entry stands. */
export async function putKept(kept: Kept): Promise<void> {
  await inStore<IDBValidKey>('readwrite', (store) => store.put(kept));
}

/** Forgets one entry. */
export async function dropKept({ place }: Kept): Promise<void> {
  await inStore<undefined>('readwrite', (store) => store.delete(place));
}

async function inStore<Answer>(
  mode: IDBTransactionMode,
  work: (store: IDBObjectStore) => IDBRequest<Answer>,
): Promise<Answer> {
  const opened = await open();
  try {
    return await new Promise<Answer>((resolve, reject) => {
      const transaction = opened.transaction(table, mode);
      const request = work(transaction.objectStore(table));
      // Only once the transaction is over it is on the device.
      transaction.oncomplete = () => resolve(request.result);
      transaction.onerror = () => reject(faultOf(transaction.error));
      transaction.onabort = () => reject(faultOf(transaction.error));
    });
  } finally {
    opened.close();
  }
}

function open(): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(database, 1);
    request.onupgradeneeded = () => {
      request.result.createObjectStore(table, { keyPath: 'place', autoIncrement: true });
    };
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(faultOf(request.error));
    request.onblocked = () => reject(faultOf(null));
  });
}

function faultOf(fault: DOMException | null): Error {
  return fault ?? new Error('The device keeps nothing just now.');
}
