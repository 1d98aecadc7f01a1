import type { Metadata } from 'next';
import { Button, ButtonLink } from '@/app/ui/button/button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { Caution } from '@/app/ui/page/caution';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Section, Slab } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { findLabels, labelsMost, type LabelsFound } from '@/lib/documents/reads/labels';
import { cautionFor, labelKinds, labelKindWords } from '@/lib/documents/rules/labels/words';
import { labelSheet, labelSheetKeys } from '@/lib/documents/rules/labels/sheets';
import { listPlacesWithPieces, type PlaceWithPieces } from '@/lib/documents/reads/label-places';
import { labelPdfHref, readLabelAddress, type LabelAddress } from './label-address';
import css from './labels.module.css';
import { SheetDrawn } from './sheet-drawn';

export const metadata: Metadata = { title: 'Labels' };

type LabelsPageProps = Readonly<{ searchParams: Promise<Record<string, string | string[]>> }>;

/** Labels: which pieces, which kind, on which sheet; what comes is drawn before it is printed. */
export default async function LabelsPage({ searchParams }: LabelsPageProps) {
  const actor = await requireActor('stock.see');
  const address = readLabelAddress(await searchParams);
  const [places, found] = await Promise.all([
    listPlacesWithPieces(actor),
    address.asked ? findLabels(actor, address.asked) : null,
  ]);
  return (
    <>
      <PageHead title="Labels" lead="Tags, wall labels and labels for the back, on label sheets." />
      <InThisRoom room="stock" here="labels" roles={actor.roles} />
      <Columns
        wide={
          <Slab>
            <LabelForm address={address} places={places} />
          </Slab>
        }
        beside={<WhatComes address={address} found={found} />}
      />
    </>
  );
}

type LabelFormProps = Readonly<{ address: LabelAddress; places: readonly PlaceWithPieces[] }>;

function LabelForm({ address, places }: LabelFormProps) {
  const { typed, placeId, print, faults } = address;
  const nowhere = { value: '', label: 'No place: the list above' };
  return (
    <form action="/stock/labels" className={css['form']} aria-label="Labels">
      <Field
        name="pieces"
        label="Which pieces"
        kind="textarea"
        rows={4}
        maxLength={12_000}
        defaultValue={typed}
        hint="Scan the tags, or write one SKU in each line with the count behind it: TS-10-CI 3."
        fault={faults.pieces}
      />
      <Field
        name="place"
        label="Or all that stands at"
        kind="select"
        options={[nowhere, ...places.map(({ id, words }) => ({ value: id, label: words }))]}
        defaultValue={placeId}
      />
      <Choice
        name="kind"
        legend="Kind of label"
        options={labelKinds.map((kind) => ({ value: kind, label: labelKindWords[kind] }))}
        defaultValue={print.kind}
        size="counter"
      />
      <Choice
        name="codes"
        legend="To be scanned"
        options={[
          { value: 'qr', label: 'QR code' },
          { value: 'bars', label: 'Bars' },
          { value: 'both', label: 'Both' },
          { value: 'none', label: 'Neither' },
        ]}
        defaultValue={print.codes}
        size="counter"
      />
      <div className={css['pair']}>
        <Field
          name="sheet"
          label="Sheet"
          kind="select"
          options={labelSheetKeys.map((key) => ({ value: key, label: labelSheet(key).words }))}
          defaultValue={print.sheet}
        />
        <Field
          name="first"
          label="Begin at label"
          kind="count"
          defaultValue={String(print.firstAt)}
          fault={faults.first}
        />
      </div>
      <Button type="submit" size="counter">
        Show the sheet
      </Button>
    </form>
  );
}

type WhatComesProps = Readonly<{ address: LabelAddress; found: LabelsFound | null }>;

function WhatComes({ address, found }: WhatComesProps) {
  if (!found) {
    return (
      <Empty title="A bare sheet">
        Say which pieces, and the sheet is drawn here before it is printed.
      </Empty>
    );
  }
  const count = found.pieces.length;
  return (
    <Section title={count === 1 ? 'One label' : `${count} labels`}>
      <Unknown found={found} />
      {count === 0 ? (
        <p>There is nothing to label.</p>
      ) : (
        <>
          <p>
            <ButtonLink href={labelPdfHref(address)} size="counter">
              Print {labelKindWords[address.print.kind].toLowerCase()}
            </ButtonLink>
          </p>
          <SheetDrawn pieces={found.pieces} print={address.print} />
          <Cautions found={found} />
          <p className={css['quiet']}>
            Print at its own size, without fitting it to the page, and try on plain paper first.
          </p>
        </>
      )}
    </Section>
  );
}

function Unknown({ found: { unknown, isCutOff } }: Readonly<{ found: LabelsFound }>) {
  return (
    <>
      {unknown.length > 0 ? (
        <Notice kind="refused">
          {unknown.slice(0, 8).join(', ')} {unknown.length === 1 ? 'is' : 'are'} not in the
          catalogue.
        </Notice>
      ) : null}
      {isCutOff ? (
        <Notice kind="caution">Only the first {labelsMost} labels are printed at once.</Notice>
      ) : null}
    </>
  );
}

function Cautions({ found }: Readonly<{ found: LabelsFound }>) {
  const about = new Set(found.pieces.map((piece) => cautionFor(piece)?.about));
  return (
    <>
      {about.has('food') ? (
        <Caution>
          A platter, bowl or planter whose glaze is not proven safe for food gets the statement that
          it is not for food. The label alone is not enough: the same words stand on its base for
          good, or a hole goes through it (21 CFR 109.16).
        </Caution>
      ) : null}
      {about.has('electricity') ? (
        <Caution>A lamp gets its words about the wiring; keep who tested it, and when.</Caution>
      ) : null}
    </>
  );
}
