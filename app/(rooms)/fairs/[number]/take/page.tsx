import type { Metadata } from 'next';
import { ButtonLink } from '@/app/ui/button/button';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Section, Slab } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import type { FairSheet } from '@/lib/fairs/reads';
import { getGallery } from '@/lib/platform/settings';
import { findPieces } from '@/lib/stock/reads';
import { listHomePlaces, type HomePlace } from '@/lib/stock/reads/home-places';
import { takeAction } from '../../actions';
import { readFairOfAddress, type FairAddress } from '../read-fair';
import { TakeTable } from '../take-table';
import { FromStock } from './from-stock';

export const metadata: Metadata = { title: 'Take pieces along' };

type TakePageProps = FairAddress &
  Readonly<{ searchParams: Promise<Record<string, string | string[]>> }>;

/** Takes pieces to a fair: scanned one after the other, or written with their count. */
export default async function TakePage({ params, searchParams }: TakePageProps) {
  const actor = await requireActor('outside.keep');
  const sheet = await readFairOfAddress(actor, params);
  const { fair } = sheet;
  const letters = [(await searchParams)['find'] ?? ''].flat()[0] ?? '';
  const [places, found, { counterId, lengthUnit }] = await Promise.all([
    listHomePlaces(),
    findPieces(actor, letters),
    getGallery(),
  ]);
  const fromStock = { fair, letters, found, counterId, lengthUnit };
  return (
    <>
      <PageHead
        title={`Take along to ${fair.name}`}
        back={{ href: `/fairs/${fair.number}`, name: fair.name }}
        lead="What goes into the van is for sale at the fair, and no longer at home."
      >
        <ButtonLink href={`/fairs/${fair.number}/list`} variant="quiet" size="counter">
          Print the list
        </ButtonLink>
      </PageHead>
      {fair.closedAt ? (
        <Notice kind="caution">This fair is counted back in and closed.</Notice>
      ) : (
        <Columns
          wide={<TakeForm sheet={sheet} places={places} />}
          beside={
            <>
              <FromStock {...fromStock} />
              <HowToWrite />
            </>
          }
        />
      )}
      <Section title="In the van">
        <TakeTable sheet={sheet} />
      </Section>
    </>
  );
}

type TakeFormProps = Readonly<{ sheet: FairSheet; places: readonly HomePlace[] }>;

function TakeForm({ sheet, places }: TakeFormProps) {
  return (
    <Slab>
      <FormFrame action={takeAction} label="Take pieces along">
        <RequestKey />
        <input type="hidden" name="fairId" value={sheet.fair.id} />
        <Field
          name="fromId"
          label="From"
          kind="select"
          options={places.map(({ id, name }) => ({ value: id, label: name }))}
          size="counter"
        />
        <Field
          name="pieces"
          label="What goes along"
          kind="textarea"
          rows={7}
          maxLength={12_000}
          hint="Scan the tags one after the other."
          autoFocus
          required
        />
        <SubmitButton size="counter">Take them along</SubmitButton>
      </FormFrame>
    </Slab>
  );
}

function HowToWrite() {
  return (
    <Section title="How to write it">
      <p>
        One piece in each line, by its SKU or its barcode. A count may stand behind it:{' '}
        <b>TS-10-CI 3</b>. The same tag scanned twice counts twice.
      </p>
      <p>
        A piece of an edition goes by its number: <b>FN-12-TK#4</b>. What is held for somebody stays
        at home.
      </p>
    </Section>
  );
}
