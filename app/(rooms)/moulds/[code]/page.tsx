import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { DayText } from '@/app/ui/figures/day-text';
import { Table } from '@/app/ui/figures/table';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Facts } from '@/app/ui/page/facts';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import type { MouldShown } from '@/lib/catalogue/reads/mould-rows';
import { findMould, listCasts } from '@/lib/catalogue/reads/moulds';
import { castsWords, mouldWarning } from '@/lib/catalogue/rules/moulds';
import { dayOf } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { cast, retire } from '../actions';

export const metadata: Metadata = { title: 'A mould' };

type MouldPageProps = Readonly<{ params: Promise<{ code: string }> }>;

/** One mould: what it gave, what it still gives, and a line to write down the next casts. */
export default async function MouldPage({ params }: MouldPageProps) {
  const actor = await requireActor('stock.see');
  const mould = await findMould(actor, (await params).code);
  if (!mould) notFound();
  const [casts, { timeZone }] = await Promise.all([listCasts(actor, mould.id), getGallery()]);
  const warning = mouldWarning(mould);
  const isInUse = mould.retiredOn === null;
  return (
    <>
      <PageHead
        title={mould.code}
        back={{ href: '/moulds', name: 'Moulds and editions' }}
        lead={`Gives ${mould.design}; ${castsWords(mould.soFar)} so far, ${castsWords(mould.left)} left.`}
      />
      {warning === '' ? null : <Notice kind="caution">{warning}</Notice>}
      {isInUse && isAllowed(actor.roles, 'stock.move') ? (
        <FormFrame action={cast} label="What was cast" layout="row">
          <RequestKey />
          <input type="hidden" name="mouldId" value={mould.id} />
          <Field
            name="casts"
            label="How many casts"
            kind="count"
            width="short"
            size="counter"
            required
          />
          <Field
            name="on"
            label="On"
            kind="day"
            width="short"
            size="counter"
            defaultValue={dayOf(now(), timeZone)}
          />
          <SubmitButton size="counter">Write it down</SubmitButton>
        </FormFrame>
      ) : null}
      <MouldFacts mould={mould} />
      <Section title="What was cast">
        <Casts casts={casts} />
      </Section>
      {isInUse && isAllowed(actor.roles, 'catalogue.keep') ? (
        <FormFrame action={retire} label="Retire it">
          <RequestKey />
          <input type="hidden" name="mouldId" value={mould.id} />
          <SubmitButton variant="quiet">Retire it</SubmitButton>
        </FormFrame>
      ) : null}
    </>
  );
}

function MouldFacts({ mould }: Readonly<{ mould: MouldShown }>) {
  return (
    <Facts
      facts={[
        { name: 'Trusted for', value: castsWords(mould.lifeCasts) },
        { name: 'Had given before', value: castsWords(mould.begunWith) },
        { name: 'Made', value: <DayText day={mould.madeOn} /> },
        ...(mould.retiredOn === null
          ? []
          : [{ name: 'Retired', value: <DayText day={mould.retiredOn} /> }]),
        {
          name: 'Editions',
          value:
            mould.editions.length === 0
              ? null
              : mould.editions.map((code) => (
                  <span key={code}>
                    <Link href={`/stock/${code}`}>{code}</Link>{' '}
                  </span>
                )),
          notKnown: 'none',
        },
        { name: 'Note', value: mould.note === '' ? null : mould.note, notKnown: 'none' },
      ]}
    />
  );
}

function Casts({ casts }: Readonly<{ casts: Awaited<ReturnType<typeof listCasts>> }>) {
  if (casts.length === 0) return <p>Nothing was cast since it was written down.</p>;
  return (
    <Table
      caption="What was cast"
      captionHeardOnly
      columns={[{ name: 'When' }, { name: 'For' }, { name: 'Casts', figure: true }]}
      rows={casts.map((each) => ({
        key: each.key,
        cells: [
          <DayText key="day" day={each.on} />,
          each.jobNumber === null ? (
            ''
          ) : (
            <Link key="job" href={`/studio/${each.jobNumber}`}>
              job {each.jobNumber}
            </Link>
          ),
          `${each.casts}`,
        ],
      }))}
    />
  );
}
