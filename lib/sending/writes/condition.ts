import 'server-only';
import type { Doer } from '@/lib/access/rules';
import { dateFromDay } from '@/lib/dates/rules';
import { fileToKeep } from '@/lib/files/ready';
import { keepFile } from '@/lib/files/writes';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse } from '@/lib/platform/result';
import type { ConditionInput, MarksInput } from '@/lib/sending/input/condition';
import { conditionMost, readMarks, whenWords } from '@/lib/sending/rules/condition';
import { carryOut, findForWriting, tell, type SendingAnswer } from './carry-out';
import { readyAtMost } from './pictures';

/** A condition report that was written, of which shipment. */
export type Reported = { number: number; reportId: string };

/**
 * Writes down how a piece looks, with pictures of it.
 *
 * @returns refuses, in this order: too many pictures or one that cannot be kept, not allowed, a key
 *   used for something else, no such shipment, a day to come
 */
export async function reportCondition(
  doer: Doer,
  input: ConditionInput,
): Promise<SendingAnswer<Reported>> {
  const { shipmentId, when, on, words, requestKey } = input;
  const pictures = await readyAtMost(input.pictures, conditionMost.views);
  if (!pictures.ok) return pictures;
  const hashes = pictures.value.map(({ sha256 }) => sha256);
  const said = { requestKey, shipmentId, when, on, words, hashes };
  return carryOut<Reported>(doer, { name: 'reportCondition', input: said }, async (tx) => {
    const found = await findForWriting(tx, doer, shipmentId);
    if (!found.ok) return found;
    const { shipment, today } = found.value;
    if (on > today) return refuse({ code: 'day_to_come', today });
    const reportId = newId();
    const of = { shipmentId, commissionId: shipment.commissionId, when, words };
    const by = { on: dateFromDay(on), staffId: doer.actor.id, at: doer.at };
    await tx.conditionReport.create({ data: { id: reportId, ...of, ...by }, select: { id: true } });
    for (const [at, picture] of pictures.value.entries()) {
      const { id: fileId } = await keepFile(tx, fileToKeep(picture, doer.at));
      const data = { reportId, position: at + 1, fileId };
      await tx.conditionView.create({ data, select: { id: true } });
    }
    const did = `wrote how it looked ${whenWords[when]}`;
    await tell(tx, doer, { shipment, did, facts: { on, pictures: hashes.length } });
    return ok({ number: shipment.number, reportId });
  });
}

/**
 * Sets marks on a picture of a report, behind those that are there; what is marked stays marked.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, no such picture, and
 *   what {@link readMarks} refuses
 */
export async function setMarks(doer: Doer, input: MarksInput): Promise<SendingAnswer<Reported>> {
  const { viewId, rows } = input;
  return carryOut<Reported>(doer, { name: 'setMarks', input }, async (tx) => {
    const view = await tx.conditionView.findUnique({
      where: { id: viewId },
      select: {
        ...{ reportId: true, position: true, _count: { select: { marks: true } } },
        report: {
          select: { shipment: { select: { id: true, number: true, commissionId: true } } },
        },
      },
    });
    const shipment = view?.report.shipment;
    if (!view || !shipment) return refuse({ code: 'no_such_view' });
    const standing = view._count.marks;
    const marks = readMarks(rows, standing);
    if (!marks.ok) return marks;
    await tx.conditionMark.createMany({
      data: marks.value.map((mark, at) => ({ viewId, position: standing + at + 1, ...mark })),
    });
    const facts = { picture: view.position, marks: marks.value.length };
    await tell(tx, doer, { shipment, did: 'marked a picture of a condition report', facts });
    return ok({ number: shipment.number, reportId: view.reportId });
  });
}
