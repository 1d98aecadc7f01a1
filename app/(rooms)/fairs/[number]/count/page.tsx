import type { Metadata } from 'next';
import { ButtonLink } from '@/app/ui/button/button';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Section, Slab } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { standingRows } from '@/lib/fairs/reads/standing';
import type { StandingRow } from '@/lib/fairs/rules/count';
import { listHomePlaces, type HomePlace } from '@/lib/stock/reads/home-places';
import { countAction } from '../../actions';
import css from '../../fairs.module.css';
import { readFairOfAddress, type FairAddress } from '../read-fair';
import { TakeTable } from '../take-table';

export const metadata: Metadata = { title: 'Count back in' };

/** Counts a fair back in: what came back, broke, is missing; the rest still stands there. */
export default async function CountPage({ params }: FairAddress) {
  const actor = await requireActor('outside.keep');
  const sheet = await readFairOfAddress(actor, params);
  const { fair } = sheet;
  const [places, rows] = [await listHomePlaces(), standingRows(sheet.list)];
  return (
    <>
      <PageHead
        title={`Count ${fair.name} back in`}
        back={{ href: `/fairs/${fair.number}`, name: fair.name }}
        lead="Write what is back, broken or missing. Whatever is left still stands there."
      />
      {fair.closedAt ? (
        <Notice kind="done">It is counted back in: nothing stands there any more.</Notice>
      ) : (
        <Slab>
          <CountForm fairId={fair.id} rows={rows} places={places} />
        </Slab>
      )}
      <Section
        title="Sold without a slip?"
        act={
          <ButtonLink href="/counter" variant="quiet">
            To the counter
          </ButtonLink>
        }
      >
        <p>
          Ring it up at the counter, with this fair chosen, and it leaves the list by itself. The
          fair closes when nothing stands there any more.
        </p>
      </Section>
      <Section title="Out, sold, back, there">
        <TakeTable sheet={sheet} />
      </Section>
    </>
  );
}

type CountFormProps = Readonly<{
  fairId: string;
  rows: readonly StandingRow[];
  places: readonly HomePlace[];
}>;

function CountForm({ fairId, rows, places }: CountFormProps) {
  return (
    <FormFrame action={countAction} label="Count back in">
      <RequestKey />
      <input type="hidden" name="fairId" value={fairId} />
      <Field
        name="toId"
        label="What is back goes to"
        kind="select"
        options={places.map(({ id, name }) => ({ value: id, label: name }))}
        size="counter"
        width="half"
      />
      {rows.length === 0 ? <p>Nothing stands there. The fair can be closed.</p> : null}
      <ol className={css['count']}>
        {rows.map((row) => (
          <CountRow key={row.key} row={row} />
        ))}
      </ol>
      <SubmitButton size="counter">
        {rows.length === 0 ? 'Close the fair' : 'Write the count down'}
      </SubmitButton>
    </FormFrame>
  );
}

function CountRow({ row: { key, title, what, there } }: Readonly<{ row: StandingRow }>) {
  return (
    <li>
      <div>
        <cite>{title}</cite>
        <span className={css['quiet']}>
          {what} · {there} {there === 1 ? 'stands' : 'stand'} there
        </span>
        <input type="hidden" name={`seen.${key}`} value={there} />
      </div>
      <Field name={`back.${key}`} label="Back" kind="count" size="counter" />
      <Field name={`broken.${key}`} label="Broken" kind="count" size="counter" />
      <Field name={`missing.${key}`} label="Missing" kind="count" size="counter" />
      <Field name={`soldUnwritten.${key}`} label="Sold, no slip" kind="count" size="counter" />
    </li>
  );
}
