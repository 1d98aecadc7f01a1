import type { Metadata } from 'next';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { listPiecesToMake } from '@/lib/studio/reads';
import { listLearnedLosses } from '@/lib/studio/reads/losses';
import { getStudioSettings } from '@/lib/studio/reads/settings';
import { planWith } from '@/lib/studio/rules/losses/learned';
import { likelyDaysOf, techniques } from '@/lib/studio/rules/routes';
import { openJob } from '../actions';
import { HowMany } from './how-many';

export const metadata: Metadata = { title: 'Begin something new' };

type NewJobPageProps = Readonly<{ searchParams: Promise<Record<string, string | string[]>> }>;

/** A job of the studio's own: pieces for stock, or a trial. */
export default async function NewJobPage({ searchParams }: NewJobPageProps) {
  const actor = await requireActor('studio.move');
  const pieces = await listPiecesToMake(actor);
  const asked = askedFor(await searchParams);
  const chosen = pieces.find((piece) => piece.skuId === asked.skuId);
  const [routes, { startInHundred }] = await Promise.all([
    listLearnedLosses(actor),
    getStudioSettings(),
  ]);
  const usual = routes.find((route) => route.technique === asked.technique && route.isUsual);
  const ways = routes.map(({ routeId, name, routeSteps, steps }) => ({
    ...{ routeId, name, hint: weeksWords(likelyDaysOf(routeSteps)) },
    losses: steps.map(({ step, learned }) => planWith(step, learned, 'likely')),
  }));
  return (
    <>
      <PageHead
        title="Begin something new"
        back={{ href: '/studio', name: 'Studio' }}
        lead="Pieces for stock, or something to try. The job of a commission is opened on the commission’s own sheet."
      />
      <FormFrame action={openJob} label="Begin something new">
        <RequestKey />
        <Field
          name="title"
          label="What is made"
          defaultValue={chosen?.words}
          maxLength={120}
          required
        />
        <HowMany
          ways={ways}
          chosen={usual?.routeId}
          wanted={asked.count}
          certaintyPercent={startInHundred}
        />
        {pieces.length > 0 ? (
          <Field
            name="skuId"
            label="Which piece of the stock list"
            kind="select"
            options={[
              { value: '', label: 'None of them' },
              ...pieces.map((piece) => ({ value: piece.skuId, label: piece.words })),
            ]}
            defaultValue={chosen?.skuId}
            optional
          />
        ) : null}
        <Field name="neededOn" label="Needed by" kind="day" width="short" optional />
        <SubmitButton size="counter">Put it on the bench</SubmitButton>
      </FormFrame>
    </>
  );
}

/** What a page that leads here asks for; what does not read is left out. */
function askedFor(query: Record<string, string | string[]>) {
  const text = (name: string) => [query[name] ?? ''].flat()[0] ?? '';
  const technique = text('technique');
  return {
    skuId: text('piece'),
    count: /^[1-9]\d{0,3}$/.test(text('pieces')) ? text('pieces') : undefined,
    technique: techniques.find((one) => one === technique),
  };
}

/** How long a route takes without any waiting: `5 weeks and the waiting for the kiln`. */
function weeksWords(days: number): string {
  const weeks = Math.max(1, Math.round(days / 7));
  return weeks === 1 ? 'a week, and the kiln’s queue' : `${weeks} weeks, and the kiln’s queue`;
}
