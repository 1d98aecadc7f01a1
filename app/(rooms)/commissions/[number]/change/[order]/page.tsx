import { notFound } from 'next/navigation';
import { ButtonLink } from '@/app/ui/button/button';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Notice } from '@/app/ui/page/notice';
import { Section } from '@/app/ui/page/section';
import { SignatureFields } from '@/app/ui/signature/signature-fields';
import { WordForWord } from '@/app/ui/page/word-for-word';
import { requireActor } from '@/lib/access/reads';
import {
  changeOrdersForCollector,
  type ChangeOrderShown,
} from '@/lib/commissions/reads/agreement/agreements';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import { isOvertaken } from '@/lib/commissions/rules/agreement/change';
import { commissionRefusalMessage } from '@/lib/commissions/rules/refusals';
import { formatDay } from '@/lib/dates/rules';
import { ActPage, AboutCommission } from '../../act-page';
import css from '../../proposal/proposal.module.css';
import { readSheet } from '../../read-sheet';
import { sign, withdraw } from '../actions';

export const metadata = { title: 'A change order' };

type ChangeOrderProps = Readonly<{ params: Promise<{ number: string; order: string }> }>;

/** One change order: its words, and what became of it. */
export default async function ChangeOrderPage({ params }: ChangeOrderProps) {
  const actor = await requireActor('commissions.see_money');
  const sheet = await readSheet(actor, params);
  const { order } = await params;
  const changes = await changeOrdersForCollector(sheet.id);
  const change = changes.find((each) => String(each.number) === order);
  if (!change) notFound();
  const isOpen = change.signed === null && change.withdrawnWhy === null;
  return (
    <ActPage sheet={sheet} title={`Change order ${change.number}`} lead={change.words}>
      <State change={change} />
      {isOpen && isLate(sheet, change) ? (
        <Notice kind="caution">{commissionRefusalMessage({ code: 'change_overtaken' })}</Notice>
      ) : null}
      <Section title="Word for word">
        <WordForWord body={change.body} />
        <p>
          <ButtonLink
            href={`/commissions/${sheet.number}/change/${change.number}/pdf`}
            variant="quiet"
          >
            As a paper
          </ButtonLink>
        </p>
      </Section>
      {isOpen && sheet.acts.has('change') ? <SignHere sheet={sheet} change={change} /> : null}
    </ActPage>
  );
}

/** Whether another change was signed since this one was written. */
function isLate({ agreement, telling }: Sheet, change: ChangeOrderShown): boolean {
  return agreement !== null && isOvertaken(change, agreement, telling);
}

function State({ change }: Readonly<{ change: ChangeOrderShown }>) {
  const { signed, withdrawnWhy } = change;
  if (signed) {
    const where = signed.isOnTheirPage ? ' on their own page' : '';
    const words = `${signed.name} signed it on ${formatDay(signed.on, 'long')}${where}. It counts.`;
    return <Notice kind="done">{words}</Notice>;
  }
  if (withdrawnWhy !== null) return <Notice kind="caution">Withdrawn: {withdrawnWhy}</Notice>;
  return <Notice kind="caution">It is not signed yet, so nothing has changed.</Notice>;
}

function SignHere({ sheet, change }: Readonly<{ sheet: Sheet; change: ChangeOrderShown }>) {
  return (
    <div className={css['forms']}>
      <Section title="Sign it here">
        <FormFrame action={sign} label="Sign the change order">
          <RequestKey />
          <AboutCommission sheet={sheet} />
          <input type="hidden" name="changeOrderId" value={change.id} />
          <input type="hidden" name="contentSha256" value={change.contentSha256} />
          <SignatureFields
            name={sheet.collector.name}
            onPaper
            under="The collector, as they sign."
          />
          <SubmitButton>Sign the change order</SubmitButton>
        </FormFrame>
      </Section>
      <details>
        <summary>It is not to be signed</summary>
        <FormFrame action={withdraw} label="Withdraw the change order">
          <RequestKey />
          <AboutCommission sheet={sheet} />
          <input type="hidden" name="changeOrderId" value={change.id} />
          <Field name="why" label="Why" />
          <SubmitButton variant="danger">Withdraw it</SubmitButton>
        </FormFrame>
      </details>
    </div>
  );
}
