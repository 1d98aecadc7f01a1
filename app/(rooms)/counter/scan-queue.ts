import { startTransition } from 'react';
import { idle, type FormState } from '@/app/ui/form-state';
import { scan } from './actions';

const lost: FormState = {
  kind: 'refused',
  message: 'That did not arrive. Scan it once more.',
  ...{ fields: {}, submitted: {} },
};

/** Scans that are sent one after the other, in their order, however fast they come. */
export class ScanQueue {
  private readonly waiting: { scanned: FormData; answered: (answer: FormState) => void }[] = [];
  private sending = false;

  /** Whether a scan is on its way. */
  get isBusy(): boolean {
    return this.sending;
  }

  /** Sends a scan as soon as those before it were answered. */
  send(scanned: FormData, answered: (answer: FormState) => void): void {
    this.waiting.push({ scanned, answered });
    if (!this.sending) void this.sendAll();
  }

  private async sendAll(): Promise<void> {
    this.sending = true;
    for (let next = this.waiting.shift(); next; next = this.waiting.shift()) {
      const answer = await scan(idle, next.scanned).catch(() => lost);
      const { answered } = next;
      startTransition(() => answered(answer));
    }
    this.sending = false;
  }
}
