import type { WorkEntrySent } from '@/lib/installation/input/work/entry';
import { sendOne } from './send-one';
import { addKept, dropKept, listKept, putKept, type Kept, type KeptPicture } from './store';

/** How the way to the gallery is just now. */
export type Line = 'idle' | 'sending' | 'none' | 'signed_out';

/** What the page shows of what is kept here. */
export type OutboxView = Readonly<{
  kept: readonly Kept[];
  line: Line;
  /** False until the device was asked what it keeps. */
  isRead: boolean;
  /** False where the browser keeps nothing over a reload. */
  canKeep: boolean;
  /** Goes up whenever everything was taken in. */
  emptied: number;
}>;

/** What is shown before the device was asked. */
export const nothingKept: OutboxView = {
  ...{ kept: [], line: 'idle', isRead: false, canKeep: true, emptied: 0 },
};

/** The place of what is just being written to the device: it has none yet. */
const beingKept = 0;
const isToSend = ({ standing, place }: Kept) => standing === 'waiting' && place !== beingKept;
const [yes, no] = [() => true, () => false];

/**
 * Keeps what was done on a work order on the device, and sends it in order once there is a line.
 * What is refused stays until somebody puts it away; it does not hold up what comes after it.
 */
export class Outbox {
  #view = nothingKept;
  readonly #listeners = new Set<() => void>();
  /** What a browser that keeps nothing holds as long as the page is open. */
  #memory: Kept[] = [];
  /** What is just being written to the device. */
  #coming: Kept[] = [];
  #isSending = false;

  constructor(readonly appointmentId: string) {}

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  readonly view = (): OutboxView => this.#view;

  /** Asks the device what it keeps, then sends what waits. */
  async begin(): Promise<void> {
    await this.#read();
    await this.send();
  }

  /** Keeps one more entry, and tries to send it. It is shown at once, as it is being kept. */
  async keep(entry: WorkEntrySent, picture: KeptPicture | null = null): Promise<void> {
    const coming = { entry, picture, place: beingKept, standing: 'waiting', sentence: '' } as const;
    this.#coming = [...this.#coming, coming];
    this.#show({ kept: [...this.#view.kept, coming] });
    const isKept = this.#view.canKeep && (await addKept(entry, picture).then(yes, no));
    this.#coming = this.#coming.filter((each) => each !== coming);
    if (!isKept) {
      this.#show({ canKeep: false });
      this.#memory = [...this.#memory, { ...coming, place: -1 - this.#memory.length }];
    }
    await this.#read();
    void this.send();
  }

  /** Sends what waits, in order; once at a time. */
  async send(): Promise<void> {
    if (this.#isSending || !this.#hasWaiting()) return;
    this.#isSending = true;
    this.#show({ line: 'sending' });
    try {
      this.#show({ line: await this.#sendAll() });
    } finally {
      this.#isSending = false;
    }
  }

  /** Sends what was refused once more. */
  async again(kept: Kept): Promise<void> {
    await this.#put({ ...kept, standing: 'waiting', sentence: '' });
    await this.send();
  }

  /** Forgets something that was refused. */
  async putAway(kept: Kept): Promise<void> {
    this.#memory = this.#memory.filter(({ place }) => place !== kept.place);
    if (kept.place > 0) await dropKept(kept);
    await this.#read();
  }

  /** Forgets everything that was taken in: the gallery has it. */
  async forgetSent(): Promise<void> {
    for (const kept of this.#view.kept) if (kept.standing === 'sent') await this.putAway(kept);
  }

  #hasWaiting(): boolean {
    return this.#view.kept.some(isToSend);
  }

  async #sendAll(): Promise<Line> {
    for (;;) {
      const next = this.#view.kept.find(isToSend);
      if (!next) {
        this.#show({ emptied: this.#view.emptied + 1 });
        return 'idle';
      }
      const sent = await sendOne(next);
      if (sent.as === 'signed_out') return 'signed_out';
      if (sent.as === 'no_line') return 'none';
      const sentence = sent.as === 'refused' ? sent.sentence : '';
      const isKept = sent.as === 'kept';
      const picture = isKept ? null : next.picture;
      await this.#put({ ...next, standing: isKept ? 'sent' : 'refused', sentence, picture });
    }
  }

  async #put(kept: Kept): Promise<void> {
    this.#memory = this.#memory.map((each) => (each.place === kept.place ? kept : each));
    if (kept.place > 0) await putKept(kept);
    await this.#read();
  }

  async #read(): Promise<void> {
    const kept = await listKept(this.appointmentId).catch(() => null);
    const canKeep = this.#view.canKeep && kept !== null;
    this.#show({
      kept: [...(kept ?? []), ...this.#memory, ...this.#coming],
      isRead: true,
      canKeep,
    });
  }

  #show(change: Partial<OutboxView>): void {
    this.#view = { ...this.#view, ...change };
    for (const listener of this.#listeners) listener();
  }
}
