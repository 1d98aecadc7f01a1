import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Empty } from '@/app/ui/page/empty';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { dayOf } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { jobNumberInput, positionInput } from '@/lib/studio/input';
import { findJob, type JobTold } from '@/lib/studio/reads/job';
import type { StandingHere } from '@/lib/studio/reads/standing';
import { lossCauses, lossCauseWords } from '@/lib/studio/rules';
import { piecesWords } from '@/lib/studio/rules/words';
import { lose } from '../../actions';

export const metadata: Metadata = { title: 'Tell a loss' };

type LossPageProps = Readonly<{
  params: Promise<{ number: string }>;
  searchParams: Promise<{ at?: string | string[] }>;
}>;

/** Pieces that were lost at a step: how many, and why; what is too few is begun anew at once. */
export default async function LossPage({ params, searchParams }: LossPageProps) {
  const actor = await requireActor('studio.move');
  const number = jobNumberInput.safeParse((await params).number);
  const { timeZone } = await getGallery();
  const todayOn = dayOf(now(), timeZone);
  const job = number.success ? await findJob(actor, number.data, todayOn) : null;
  if (!job) notFound();
  const asked = positionInput.safeParse((await searchParams).at);
  const here = job.standings.find((one) => asked.success && one.position === asked.data);
  return (
    <>
      <PageHead
        title="Tell a loss"
        back={{ href: `/studio/${job.number}`, name: job.title }}
        lead={here ? leadOf(job, here) : undefined}
      />
      {here && here.position > 0 && here.free > 0 ? (
        <LossForm job={job} here={here} />
      ) : (
        <Empty title="Nothing to lose here">
          None of its pieces stands there now, or they are in a kiln that was lit.
        </Empty>
      )}
    </>
  );
}

function LossForm({ job, here }: Readonly<{ job: JobTold; here: StandingHere }>) {
  const causes = lossCauses.map((value) => ({ value, label: lossCauseWords[value] }));
  return (
    <FormFrame action={lose} label="Tell a loss">
      <RequestKey />
      <input type="hidden" name="jobId" value={job.id} />
      <input type="hidden" name="fromPosition" value={here.position} />
      <Field
        name="pieces"
        label="How many are lost"
        kind="count"
        width="short"
        size="counter"
        defaultValue={here.free === 1 ? '1' : undefined}
        required
      />
      <Choice name="cause" legend="Why" options={causes} size="counter" />
      <Field name="note" label="What was seen" maxLength={300} optional />
      <SubmitButton size="counter" pendingText="Writing it down…">
        Write the loss down
      </SubmitButton>
    </FormFrame>
  );
}

function leadOf(job: JobTold, here: StandingHere): string {
  const alive = job.standings.reduce((sum, one) => sum + one.pieces, 0);
  const spare = alive - job.wanted;
  const left =
    spare > 0
      ? `${spare === 1 ? 'One of them is' : `${spare} of them are`} spare.`
      : 'None is spare: whatever is lost is begun anew at once.';
  return `${piecesWords(here.free)} of ${job.title} at ${here.name}. ${job.wanted} are wanted. ${left}`;
}
