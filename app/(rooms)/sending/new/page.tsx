import type { Metadata } from 'next';
import Link from 'next/link';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { dayOf, formatDay } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { shipmentNumberInput } from '@/lib/sending/input/shipment';
import { listSalesToSend, readBeginning, type SaleToSend } from '@/lib/sending/reads/begin';
import { listTermsOn } from '@/lib/sending/reads/carriers';
import { startAction } from '../actions';
import css from '../sending.module.css';
import { WhereFields } from '../where-fields';

export const metadata: Metadata = { title: 'Send something' };

type NewProps = Readonly<{
  searchParams: Promise<{ commission?: string | string[]; receipt?: string | string[] }>;
}>;

/** Begins a shipment: of a commission, of a receipt, or by itself. */
export default async function NewShipmentPage({ searchParams }: NewProps) {
  const actor = await requireActor('sending.do');
  const { commission, receipt } = await searchParams;
  const [begins, gallery] = await Promise.all([
    readBeginning(actor, { commissionNumber: numberIn(commission), saleNumber: numberIn(receipt) }),
    getGallery(),
  ]);
  const today = dayOf(now(), gallery.timeZone);
  const [terms, sales] = await Promise.all([
    listTermsOn(actor, today),
    begins.forWords === '' ? listSalesToSend(actor) : [],
  ]);
  const { commissionId, saleNumber, forWords, ...known } = begins;
  return (
    <>
      <PageHead
        title="Send something"
        back={{ href: '/sending', name: 'Sending' }}
        lead={
          forWords === ''
            ? 'By itself to a person, or begin at a commission’s sheet or a receipt.'
            : `For ${forWords}.`
        }
      />
      <SalesToSend sales={sales} />
      <Section title="How and where to">
        <FormFrame action={startAction} label="Send something">
          <RequestKey />
          <input type="hidden" name="commissionId" value={commissionId ?? ''} />
          <input type="hidden" name="saleNumber" value={saleNumber ?? ''} />
          <WhereFields
            terms={terms}
            known={{
              ...{ ...known, how: 'carrier', termsId: null },
              ...{ carrier: '', insuredBy: '', note: '' },
            }}
          />
          <SubmitButton size="counter">Go on to what goes into it</SubmitButton>
        </FormFrame>
      </Section>
    </>
  );
}

function numberIn(text: string | string[] | undefined): number | null {
  const number = shipmentNumberInput.safeParse(text);
  return number.success ? number.data : null;
}

function SalesToSend({ sales }: Readonly<{ sales: readonly SaleToSend[] }>) {
  if (sales.length === 0) return null;
  return (
    <Section title="Receipts that say it is sent" lead="None of these is on its way yet.">
      <ul className={css['list']}>
        {sales.map(({ number, soldOn, toName }) => (
          <li key={number}>
            <Link href={`/sending/new?receipt=${number}`} className={css['row']}>
              <strong>
                Receipt {number}, {toName}
              </strong>
              <span>sold {formatDay(soldOn, 'short')}</span>
            </Link>
          </li>
        ))}
      </ul>
    </Section>
  );
}
