import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { DayText } from '@/app/ui/figures/day-text';
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
import { findMould, listCasts, listMoulds } from '@/lib/catalogue/reads/moulds';
import { castsWords, mouldKindWords, mouldWarning } from '@/lib/catalogue/rules/moulds';
import { dayOf, type Day } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { cast, retire } from '../actions';
import { Casts } from './casts';
import { Family } from './family';
import { ChangeForm, LookForm } from './mould-forms';

export const metadata: Metadata = { title: 'A mould' };

type MouldPageProps = Readonly<{ params: Promise<{ code: string }> }>;

/** One mould: what it gave, what it still gives, and a line to write down the next casts. */
export default async function MouldPage({ params }: MouldPageProps) {
  const actor = await requireActor('stock.see');
  const mould = await findMould(actor, (await params).code);
  if (!mould) notFound();
  const [casts, moulds, { timeZone }] = await Promise.all([
    listCasts(actor, mould.id),
    listMoulds(actor),
    getGallery(),
  ]);
  const today = dayOf(now(), timeZone);
  const warning = mouldWarning(mould);
  const isInUse = mould.retiredOn === null;
  const mayKeep = isInUse && isAllowed(actor.roles, 'catalogue.keep');
  const mayMove = isInUse && isAllowed(actor.roles, 'stock.move');
  const mayCast = mayMove && mould.kind === 'working' && mould.face !== 'broken';
  const sameDesign = moulds.filter(({ designId }) => designId === mould.designId);
  return (
    <>
      <PageHead
        title={mould.code}
        back={{ href: '/moulds', name: 'Moulds and editions' }}
        lead={leadOf(mould)}
      />
      {warning === '' ? null : <Notice kind="caution">{warning}</Notice>}
      {mayCast ? <CastForm mouldId={mould.id} today={today} /> : null}
      <Family mould={mould} moulds={sameDesign} />
      <MouldFacts mould={mould} />
      {mayMove ? <LookForm mouldId={mould.id} today={today} /> : null}
      {mould.kind === 'working' ? (
        <Section title="What was cast">
          <Casts casts={casts} />
        </Section>
      ) : null}
      {mayKeep ? <ChangeForm mould={mould} moulds={sameDesign} /> : null}
      {mayKeep ? (
        <FormFrame action={retire} label="Retire it">
          <RequestKey />
          <input type="hidden" name="mouldId" value={mould.id} />
          <SubmitButton variant="quiet">Retire it</SubmitButton>
        </FormFrame>
      ) : null}
    </>
  );
}

function leadOf({ kind, design, soFar, left }: MouldShown): string {
  if (kind !== 'working') return `The ${mouldKindWords[kind].name} of ${design}.`;
  return `Gives ${design}; ${castsWords(soFar)} so far, ${castsWords(left)} left to promise.`;
}

function CastForm({ mouldId, today }: Readonly<{ mouldId: string; today: Day }>) {
  return (
    <FormFrame action={cast} label="What was cast" layout="row">
      <RequestKey />
      <input type="hidden" name="mouldId" value={mouldId} />
      <Field
        name="casts"
        label="How many casts"
        kind="count"
        width="short"
        size="counter"
        required
      />
      <Field name="on" label="On" kind="day" width="short" size="counter" defaultValue={today} />
      <SubmitButton size="counter">Write it down</SubmitButton>
    </FormFrame>
  );
}

function MouldFacts({ mould }: Readonly<{ mould: MouldShown }>) {
  return (
    <Facts
      facts={[
        {
          name: 'Its face',
          value: mould.face === null ? null : <FaceSaid mould={mould} />,
          notKnown: 'nobody looked yet',
        },
        ...(mould.kind === 'working'
          ? [
              { name: 'Trusted for', value: castsWords(mould.lifeCasts) },
              { name: 'Had given before', value: castsWords(mould.begunWith) },
              {
                name: 'Slip for one cast',
                value: mould.slipMl === null ? null : `${mould.slipMl} ml`,
              },
            ]
          : []),
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

function FaceSaid({ mould }: Readonly<{ mould: MouldShown }>) {
  return (
    <>
      {mould.face}
      {mould.lookedOn === null ? null : (
        <>
          , looked at on <DayText day={mould.lookedOn} />
        </>
      )}
      {mould.faceNote ? `: ${mould.faceNote}` : null}
    </>
  );
}
