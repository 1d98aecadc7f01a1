import Link from 'next/link';
import { Fragment } from 'react';
import { ButtonLink } from '@/app/ui/button/button';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Notice } from '@/app/ui/page/notice';
import { Section } from '@/app/ui/page/section';
import { SignatureFields } from '@/app/ui/signature/signature-fields';
import { requireActor } from '@/lib/access/reads';
import { findHandOverPaper } from '@/lib/commissions/reads/agreement/hand-over-for';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import type { HandOverFacts } from '@/lib/commissions/rules/agreement/hand-over';
import { owedBeforeHandOverCents } from '@/lib/commissions/rules/money/plan';
import { formatCents } from '@/lib/money/rules';
import { ActPage, AboutCommission } from '../act-page';
import { OwedWords } from '../owed-words';
import { readSheetFor, type SheetParams } from '../read-sheet';
import { giveItOver } from './actions';

export const metadata = { title: 'Hand it over' };

/** The hand-over, signed by whoever takes the piece. */
export default async function HandOverPage({ params }: Readonly<{ params: SheetParams }>) {
  const actor = await requireActor('commissions.hand_over');
  const sheet = await readSheetFor(actor, params, 'hand-over');
  const { facts } = await findHandOverPaper(actor, sheet.id);
  const { money, telling } = sheet;
  return (
    <ActPage sheet={sheet} title="Hand it over" lead={<OwedWords sheet={sheet} />}>
      <OpenChanges sheet={sheet} />
      <Section
        title="Sign it here"
        act={
          <ButtonLink href={`/commissions/${sheet.number}/hand-over/pdf`} variant="quiet">
            A paper to sign at the wall
          </ButtonLink>
        }
      >
        <FormFrame action={giveItOver} label="Hand it over">
          <RequestKey />
          <AboutCommission sheet={sheet} />
          <LookedOver sheet={sheet} facts={facts} />
          <GoesAnyway sheet={sheet} />
          <SignatureFields
            name={sheet.collector.name}
            onPaper
            under="Whoever takes the piece, as they sign."
          />
          <p>
            From this day the piece is theirs, and only now it counts as earned. The tax is charged
            at the rate of that day.
            {money && money.owedCents > 0n
              ? ` ${formatCents(money.owedCents, telling)} stays owed until it is paid.`
              : ''}
          </p>
          <SubmitButton>Hand it over</SubmitButton>
        </FormFrame>
      </Section>
    </ActPage>
  );
}

/** After the hand-over no change is signed any more. */
function OpenChanges({ sheet }: Readonly<{ sheet: Sheet }>) {
  const open = sheet.facts.changeOrders.filter(
    ({ signedOn, isWithdrawn }) => signedOn === null && !isWithdrawn,
  );
  if (open.length === 0) return null;
  return (
    <Notice kind="caution" title="A change is not signed yet">
      {open.map(({ number }) => (
        <Fragment key={number}>
          <Link href={`/commissions/${sheet.number}/change/${number}`}>
            Change order {number}
          </Link>{' '}
        </Fragment>
      ))}
      waits for a signature. After the hand-over none is signed: have it signed, or withdraw it,
      first.
    </Notice>
  );
}

function LookedOver({ sheet, facts }: Readonly<{ sheet: Sheet; facts: HandOverFacts }>) {
  return (
    <>
      <Field
        name="handedOn"
        label="Handed over on"
        kind="day"
        width="short"
        defaultValue={sheet.telling.today}
      />
      <Field
        name="parts"
        label="Parts, counted"
        kind="count"
        width="short"
        defaultValue={facts.parts === null ? '' : String(facts.parts)}
        optional
      />
      <Field
        name="fixings"
        label="How it is fixed"
        hint="Fixings, and what they go into, as they were before they were covered."
        kind="textarea"
        rows={2}
        defaultValue={facts.fixings}
        optional
      />
      <Choice
        name="careGiven"
        kind="tick"
        legend="How to look after it"
        options={[{ value: 'yes', label: 'It was told, and the paper about it given' }]}
      />
      <Field name="remarks" label="What they had to remark" kind="textarea" rows={2} optional />
    </>
  );
}

function GoesAnyway({ sheet }: Readonly<{ sheet: Sheet }>) {
  const before = owedBeforeHandOverCents(sheet.plan);
  if (before <= 0n) return null;
  return (
    <Field
      name="evenIfOwed"
      label={`${formatCents(before, sheet.telling)} is to be paid before it goes. Why does it go anyway?`}
      hint="Leave it empty to take the money first."
    />
  );
}
