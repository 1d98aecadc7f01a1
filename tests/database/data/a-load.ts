import { randomUUID } from 'node:crypto';
import type { Doer } from '@/lib/access/rules';
import type { FileKind } from '@/lib/data/rules/plan';
import { planFile } from '@/lib/data/reads/plan-file';
import { beginLoad, lookAtFile } from '@/lib/data/writes';
import { carryLoad, type LoadAgreed } from '@/lib/data/writes/carry-load';
import { db } from '@/lib/platform/db/client';

/** The text of a file as its bytes. */
export function bytesOf(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}

/** Looks at a file and begins to bring it in; what is left is the work itself. */
export async function begun(doer: Doer, kind: FileKind, text: string): Promise<LoadAgreed> {
  const bytes = bytesOf(text);
  const input = { requestKey: randomUUID(), kind, fileName: `${kind}.csv`, bytes };
  const shown = await lookAtFile(doer, input);
  if (!shown.ok) throw new Error(`Not looked at: ${shown.refusal.code}`);
  const planned = await planFile(db(), { kind, bytes, now: doer.at });
  if (!planned.ok) throw new Error(`Not planned: ${planned.refusal.code}`);
  const load = await beginLoad(doer, { requestKey: randomUUID(), loadId: shown.value.loadId });
  if (!load.ok) throw new Error(`Not begun: ${load.refusal.code}`);
  const { planSha256 } = planned.value;
  return { loadId: load.value.loadId, planSha256, leaveRefusedOut: false };
}

/** Brings a file in as a person does: looks at it, says yes. */
export async function broughtIn(doer: Doer, kind: FileKind, text: string) {
  return carryLoad(doer, await begun(doer, kind, text));
}

/** A file of so many people. */
export function manyPeople(count: number): string {
  const rows = Array.from({ length: count }, (_, at) => `Person ${at},p${at}@example.org,Tern Bay`);
  return ['name,email,city', ...rows].join('\n');
}
