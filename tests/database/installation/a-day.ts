import { randomUUID } from 'node:crypto';
import type { Actor } from '@/lib/access/rules';
import { readHandOverFacts } from '@/lib/commissions/reads/agreement/hand-over';
import { handOverBody } from '@/lib/commissions/rules/agreement/hand-over';
import { takePayment } from '@/lib/commissions/writes/money';
import { workEntryInput, type WorkEntry } from '@/lib/installation/input/work/entry';
import type { AppointmentKind } from '@/lib/installation/rules/diary/kinds';
import { keepWorkEntry } from '@/lib/installation/writes/work/keep-entry';
import { db } from '@/lib/platform/db/client';
import { aPayment, aPicture, dayAt, done, on } from '@/tests/database/commissions/a-commission';
import { agreedByProposal, agreedOn } from '@/tests/database/commissions/an-agreement';
import type { OpenGallery } from '@/tests/database/sales/open-gallery';
import { lookAtWall } from '@/tests/helpers/look-at-wall';

/** The day of the hanging in these stories. */
export const hungOn = '2026-05-11';

/** A commission that is agreed and, unless it is said otherwise, paid. */
export async function aPiece(gallery: OpenGallery, isPaid = true): Promise<string> {
  const { commissionId } = await agreedByProposal(gallery);
  if (isPaid) {
    done(await takePayment(on(gallery.owner, agreedOn), aPayment(commissionId, 1_080_000n)));
  }
  await lookAtWall(commissionId);
  return commissionId;
}

let hour = 0;

/** An appointment of the maker, each at an hour of its own. */
export async function anAppointment(
  gallery: OpenGallery,
  commissionId: string | null,
  kind: AppointmentKind = 'hanging',
): Promise<string> {
  hour += 1;
  const startsAt = new Date(dayAt(hungOn).getTime() + hour * 3_600_000);
  const { id } = await db().appointment.create({
    data: {
      ...{ kind, commissionId, leadId: gallery.maker.id, address: '4 Ropewalk Lane' },
      ...{ startsAt, endsAt: new Date(startsAt.getTime() + 3_600_000), codes: '4711 at the gate' },
      ...{ bookedById: gallery.maker.id, bookedAt: dayAt(agreedOn) },
    },
    select: { id: true },
  });
  return id;
}

/** An entry as a device sends it. */
export function anEntry(
  appointmentId: string,
  by: Actor,
  what: { did: WorkEntry['did'] } & Record<string, unknown>,
): WorkEntry {
  const at = dayAt(hungOn).toISOString();
  return workEntryInput.parse({ id: randomUUID(), appointmentId, madeById: by.id, at, ...what });
}

/** A tick, or something said, as a device sends it. */
export function aTick(appointmentId: string, by: Actor, item: string, more: object = {}) {
  return anEntry(appointmentId, by, { did: 'tick', item, isDone: true, ...more });
}

/** Sends an entry as whoever wrote it. */
export async function send(entry: WorkEntry, by: Actor, more: { picture?: Blob; at?: Date } = {}) {
  const { picture = null, at = dayAt(hungOn) } = more;
  return keepWorkEntry({ actor: by, at }, entry, { picture, device: 'a telephone' });
}

/** Everything that has to be there before a hanging is signed: weight, fixings, a word on the plan. */
export async function madeReady(appointmentId: string, by: Actor): Promise<void> {
  const weight = anEntry(appointmentId, by, { did: 'weigh', weightG: 45_360 });
  const picture = anEntry(appointmentId, by, { did: 'picture', of: 'fixings' });
  done(await send(weight, by));
  done(await send(picture, by, { picture: await aPicture(90) }));
  const words = 'Two cleats into four studs, seen by the owner';
  done(await send(aTick(appointmentId, by, 'plan_word', { words }), by));
}

/** A signature as a device has it drawn under what the book says. */
export async function aSignature(
  appointmentId: string,
  by: Actor,
  more: Record<string, unknown> = {},
): Promise<WorkEntry> {
  const { commissionId } = await db().appointment.findUniqueOrThrow({
    where: { id: appointmentId },
    select: { commissionId: true },
  });
  const said = { parts: 60, fixings: 'Two cleats', careGiven: true, remarks: '' };
  const readOn = hungOn;
  const facts = await readHandOverFacts(db(), commissionId ?? '');
  const read = handOverBody({ ...facts, ...said, takenBy: 'Marit Oland', handedOn: readOn });
  const signature = { signedName: 'Marit Oland', signedAs: 'typed' };
  return anEntry(appointmentId, by, {
    did: 'sign',
    ...{ ...signature, ...said, readOn, read, ...more },
  });
}
