import type { Metadata } from 'next';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { isAllowed, type Actor } from '@/lib/access/rules';
import { listProposals, readBuildUp } from '@/lib/commissions/reads/proposal/proposals';
import { dayOf } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { jobNumberInput } from '@/lib/studio/input';
import type { AskDayInput } from '@/lib/studio/input/asked';
import {
  askDay,
  findCommissionToAsk,
  type CommissionToAsk,
} from '@/lib/studio/reads/forecast/asked';
import { listRoutes } from '@/lib/studio/reads/route-list';
import { askRefusalMessage } from '@/lib/studio/rules/forecast/telling/refusals';
import { ViewsOfDays } from '../parts/views-of-days';
import { AskForm } from './ask-form';
import { DayTold } from './day-told';
import { isAskedFor, readSaid, saidOf, textOf, type Asked, type Said } from './said';

export const metadata: Metadata = { title: 'Look a day up' };

/** The day by which something would be ready, before it is promised or a price is given. */
export default async function AskPage({
  searchParams,
}: Readonly<{ searchParams: Promise<Asked> }>) {
  const actor = await requireActor('studio.see');
  const asked = await searchParams;
  const { lengthUnit } = await getGallery();
  const [routes, commission] = await Promise.all([listRoutes(actor), commissionOf(actor, asked)]);
  const pieces = commission && (await piecesOf(actor, commission.id));
  const said = saidOf({ asked, routes, commission, pieces, lengthUnit });
  const read = readSaid(said);
  return (
    <>
      <PageHead title="Look a day up" lead={leadOf(commission)} />
      <InThisRoom room="studio" here="days" roles={actor.roles} />
      <ViewsOfDays here="asked" />
      <AskForm
        said={said}
        faults={isAskedFor(asked) && 'faults' in read ? read.faults : {}}
        routes={routes}
        commissionNumber={commission?.number ?? null}
      />
      {isAskedFor(asked) && 'read' in read ? (
        <Answer actor={actor} asked={read.read} said={said} commission={commission} />
      ) : null}
    </>
  );
}

function leadOf(commission: CommissionToAsk | null): string {
  return commission
    ? `For commission ${commission.number}, ${commission.title}.`
    : 'Before it is promised, and before a price is given.';
}

type AnswerProps = Readonly<{
  actor: Actor;
  asked: AskDayInput;
  said: Said;
  commission: CommissionToAsk | null;
}>;

async function Answer({ actor, asked, said, commission }: AnswerProps) {
  const { timeZone } = await getGallery();
  const todayOn = dayOf(now(), timeZone);
  const answer = await askDay(actor, asked, todayOn);
  if (!answer.ok) return <Notice kind="refused">{askRefusalMessage(answer.refusal)}</Notice>;
  const mayKeep = isAllowed(actor.roles, 'commissions.propose') && !commission?.hasEnded;
  const keepWith = mayKeep ? commission : null;
  return <DayTold asked={answer.value} {...{ todayOn, said, keepWith }} />;
}

async function commissionOf(actor: Actor, asked: Asked): Promise<CommissionToAsk | null> {
  const number = jobNumberInput.safeParse(textOf(asked, 'commission'));
  if (!number.success || !isAllowed(actor.roles, 'commissions.see')) return null;
  return findCommissionToAsk(actor, number.data);
}

/** How many pieces the newest proposal reckons with, for whoever may see how it was built up. */
async function piecesOf(actor: Actor, commissionId: string): Promise<number | null> {
  if (!isAllowed(actor.roles, 'commissions.propose')) return null;
  const newest = (await listProposals(actor, commissionId))[0];
  const kept = newest && (await readBuildUp(actor, newest.id));
  const pieces = Number(kept?.said['pieces'] ?? '');
  return Number.isInteger(pieces) && pieces >= 1 && pieces <= 1_000 ? pieces : null;
}
