import type { Metadata } from 'next';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { listPiecesToMake } from '@/lib/studio/reads';
import { routes, techniqueWords, type Technique } from '@/lib/studio/rules/routes';
import { openJob } from '../actions';

export const metadata: Metadata = { title: 'Begin something new' };

type NewJobPageProps = Readonly<{ searchParams: Promise<Record<string, string | string[]>> }>;

/** A job of the studio's own: pieces for stock, or a trial. */
export default async function NewJobPage({ searchParams }: NewJobPageProps) {
  const actor = await requireActor('studio.move');
  const pieces = await listPiecesToMake(actor);
  const asked = askedFor(await searchParams);
  const chosen = pieces.find((piece) => piece.skuId === asked.skuId);
  const techniques = Object.keys(routes).map((key) => {
    const technique = key as Technique;
    const days = routes[technique].reduce((sum, step) => sum + step.likelyDays, 0);
    const weeks = Math.round(days / 7);
    return { value: technique, label: techniqueWords[technique], hint: `about ${weeks} weeks` };
  });
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
        <Choice
          name="technique"
          legend="How"
          options={techniques}
          defaultValue={asked.technique}
          size="counter"
        />
        <Field
          name="pieces"
          label="How many pieces"
          hint="With the spare ones: a few crack on the way."
          kind="count"
          width="short"
          defaultValue={asked.count}
          required
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
    technique: technique in routes ? technique : undefined,
  };
}
