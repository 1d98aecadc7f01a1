import { Field } from '@/app/ui/form/field';
import { referralWords } from '@/lib/commissions/rules/enquiry/referral';
import { Folded } from './folded';
import type { AskingProps } from './known';
import { YesNo } from './yes-no';
import css from '../commissions.module.css';

/** Who brought them: settled on the first day, and by the owner alone once it is agreed. */
export function BroughtQuestions({ known, maySettleReferral }: AskingProps) {
  return (
    <Folded
      title="Who brought them"
      about="settled now and not at the end: who, how much, do they know"
      names={['broughtLetters', 'broughtPercent', 'broughtKnown']}
      open={known !== null}
    >
      {maySettleReferral ? <Settle known={known} /> : <Settled known={known} />}
    </Folded>
  );
}

function Settle({ known }: Pick<AskingProps, 'known'>) {
  return (
    <>
      <input type="hidden" name="asksReferral" value="yes" />
      <input type="hidden" name="broughtById" value={known?.broughtBy?.id ?? ''} />
      <Field
        name="broughtLetters"
        label="Who brought them"
        hint="A few letters of the name, as in the address book."
        defaultValue={known?.broughtBy?.name ?? ''}
        autoComplete="off"
        width="half"
      />
      <Field
        name="broughtPercent"
        label="Referral fee"
        hint="Of the work alone: not of delivery, hanging or tax. 0 for none, and 0 without a name where nobody brought them. Empty while it is not settled."
        kind="percent"
        defaultValue={known?.broughtPercent ?? ''}
        width="half"
      />
      <YesNo
        name="broughtKnown"
        legend="Does the collector know of the fee"
        answer={known?.broughtKnown}
      />
    </>
  );
}

function Settled({ known }: Pick<AskingProps, 'known'>) {
  const words = referralWords({
    ...{ broughtById: known?.broughtBy?.id ?? null, name: known?.broughtBy?.name ?? null },
    ...{ percent: known?.broughtPercent ?? null, isKnown: known?.broughtKnown ?? null },
  });
  return (
    <p>
      {words ?? 'It was left open.'}{' '}
      <span className={css['quiet']}>
        Settled before it was agreed; only the owner changes that now.
      </span>
    </p>
  );
}
