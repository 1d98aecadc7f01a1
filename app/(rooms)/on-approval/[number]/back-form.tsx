import { PictureField } from '@/app/(rooms)/commissions/picture-field';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Section } from '@/app/ui/page/section';
import type { ApprovalShown } from '@/lib/holds/reads/approval-slips';
import { takeBack } from '../actions';

const whats = [
  { value: 'back', label: 'Came back' },
  { value: 'bought', label: 'They keep it and pay', hint: 'it goes onto a slip at once' },
];

/** What comes back, all or some, and how it is; or what they keep. */
export function BackForm({ approval }: Readonly<{ approval: ApprovalShown }>) {
  const out = approval.lines.filter((line) => line.out > 0);
  return (
    <Section title="It comes back, or they keep it">
      <FormFrame action={takeBack} label="Back or bought">
        <RequestKey />
        <input type="hidden" name="approvalId" value={approval.id} />
        {out.map((line) => (
          <Line key={line.position} line={line} alone={out.length === 1 && line.out === 1} />
        ))}
        <Choice name="what" legend="What happened" size="counter" options={whats} layout="down" />
        <Field name="condition" label="How it is now" optional maxLength={500} />
        <PictureField
          name="pictures"
          label="Pictures as it came back"
          hint="Side by side with those it left with. Up to eight."
          several
        />
        <SubmitButton size="counter" pendingText="Writing it down…">
          Write it down
        </SubmitButton>
      </FormFrame>
    </Section>
  );
}

type LineProps = Readonly<{ line: ApprovalShown['lines'][number]; alone: boolean }>;

function Line({ line, alone }: LineProps) {
  const number = line.editionNumber === null ? '' : `, number ${line.editionNumber}`;
  const name = `back-${line.position}`;
  if (alone) return <input type="hidden" name={name} value="1" />;
  return (
    <Field
      name={name}
      label={`${line.title}${number}: how many of ${line.out}`}
      kind="count"
      size="counter"
      width="short"
      defaultValue={`${line.out}`}
    />
  );
}
