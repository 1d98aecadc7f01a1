import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { ButtonLink } from '@/app/ui/button/button';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { InstantText } from '@/app/ui/figures/day-text';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Facts } from '@/app/ui/page/facts';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { findHold, type HoldTold } from '@/lib/holds/reads/hold-list';
import { untilByDefault } from '@/lib/holds/rules';
import { endWords } from '@/lib/holds/rules/refusals';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { called, prolong, release, toSlip } from '../actions';
import { Until } from '../hold-row';
import css from '../holds.module.css';
import { Phone } from '../phone';
import { Touch } from '../touch';
import { untilFields } from '../until-fields';
import { readNumber } from './read-number';

export const metadata: Metadata = { title: 'A hold' };

type HoldPageProps = Readonly<{ params: Promise<{ number: string }> }>;

/** One hold: for whom, until when, and everything that can be done about it. */
export default async function HoldPage({ params }: HoldPageProps) {
  const actor = await requireActor('stock.hold');
  const at = now();
  const number = readNumber((await params).number);
  const hold = number === null ? null : await findHold(actor, number, at);
  if (!hold) notFound();
  const { timeZone: zone, holdHours } = await getGallery();
  return (
    <>
      <PageHead
        title={hold.title}
        work
        lead={`Hold ${hold.number}, for ${hold.forWhom}`}
        back={{ href: '/holds', name: 'Holds' }}
      >
        <ButtonLink href={`/holds/${hold.number}/pdf`} variant="quiet" size="counter" download>
          Print the slip
        </ButtonLink>
      </PageHead>
      <InThisRoom room="counter" here="holds" roles={actor.roles} />
      <Columns
        wide={<HoldFacts hold={hold} zone={zone} />}
        beside={
          hold.endedAt !== null && hold.endedHow !== null ? (
            <Notice kind="caution">
              It ended <InstantText at={hold.endedAt} zone={zone} />: {endWords[hold.endedHow]}.
            </Notice>
          ) : hold.untilAt === null ? (
            <p>It is free again when its paper ends.</p>
          ) : (
            <HoldActs hold={hold} until={untilFields(untilByDefault(at, holdHours), zone)} />
          )
        }
      />
    </>
  );
}

function HoldFacts({ hold, zone }: Readonly<{ hold: HoldTold; zone: string }>) {
  const { forWhom, collectorId, phone, quantity, editionNumber, note } = hold;
  const pieces = editionNumber === null ? `${quantity}` : `number ${editionNumber}`;
  const who = collectorId ? <Link href={`/collectors/${collectorId}`}>{forWhom}</Link> : forWhom;
  return (
    <Facts
      facts={[
        { name: 'For', value: who },
        { name: 'Telephone', value: phone === '' ? null : <Phone number={phone} /> },
        { name: 'Until', value: <Until hold={hold} zone={zone} /> },
        { name: 'Pieces', value: `${pieces}, ${hold.place}` },
        { name: 'SKU', value: <Link href={`/stock/${hold.code}`}>{hold.code}</Link> },
        { name: 'Promised by', value: hold.staffName },
        { name: 'Since', value: <InstantText at={hold.at} zone={zone} /> },
        {
          name: 'Called',
          value: hold.calledAt ? <InstantText at={hold.calledAt} zone={zone} /> : null,
          notKnown: 'not yet',
        },
        { name: 'Second in line', value: hold.nextInLine, notKnown: 'nobody' },
        { name: 'Note', value: note === '' ? null : note, notKnown: 'none' },
      ]}
    />
  );
}

type ActsProps = Readonly<{
  hold: HoldTold;
  until: Readonly<{ untilOn: string; untilTime: string }>;
}>;

function HoldActs({ hold, until }: ActsProps) {
  const fields = { holdId: hold.id };
  const named = hold.collectorId === null ? '' : `&for=${hold.collectorId}`;
  const chosen = `pieces=${hold.code}${piecesEnd(hold)}&hold=${hold.id}${named}`;
  return (
    <div className={css['all']}>
      <div className={css['offers']}>
        <Touch action={toSlip} fields={fields} label="Put it on a slip" variant="main">
          Put it on a slip
        </Touch>
        <Touch action={called} fields={fields} label="They were called">
          Called
        </Touch>
        <Touch action={release} fields={fields} label="Let it go">
          Let it go
        </Touch>
      </div>
      <Section title="Hold it longer">
        <FormFrame action={prolong} label="Hold it longer">
          <RequestKey />
          <input type="hidden" name="holdId" value={hold.id} />
          <div className={css['pair']}>
            <Field
              name="untilOn"
              label="Until the day"
              kind="day"
              defaultValue={until.untilOn}
              required
            />
            <Field
              name="untilTime"
              label="And the hour"
              kind="time"
              defaultValue={until.untilTime}
              required
            />
          </div>
          <SubmitButton variant="quiet">Hold it until then</SubmitButton>
        </FormFrame>
      </Section>
      <p>
        <Link href={`/layaways/new?${chosen}`} className={css['phone']}>
          Put it away and pay it off in parts
        </Link>
        <br />
        <Link href={`/on-approval/new?${chosen}`} className={css['phone']}>
          They take it home to try
        </Link>
      </p>
    </div>
  );
}

function piecesEnd({ editionNumber, quantity }: HoldTold): string {
  if (editionNumber !== null) return `~${editionNumber}`;
  return quantity > 1 ? `*${quantity}` : '';
}
