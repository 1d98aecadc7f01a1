import type { Doer } from '@/lib/access/rules';
import { carryLoad, type LoadAgreed } from '@/lib/data/writes/carry-load';

// A process of its own that brings a file in, so that a test can end it in the middle.
const [given = ''] = process.argv.slice(2);
const { actor, at, agreed } = JSON.parse(given) as {
  actor: Doer['actor'];
  at: string;
  agreed: LoadAgreed;
};
await carryLoad({ actor, at: new Date(at) }, agreed);
process.exit(0);
