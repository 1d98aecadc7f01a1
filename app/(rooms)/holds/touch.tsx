import type { ReactNode } from 'react';
import type { ButtonVariant } from '@/app/ui/button/button';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { FormAction } from '@/app/ui/form-state';

type TouchProps = Readonly<{
  action: FormAction;
  /** What goes with it, unseen. */
  fields: Readonly<Record<string, string>>;
  /** Names the touch for those who listen: "Called Marit Oland". */
  label: string;
  variant?: ButtonVariant | undefined;
  children: ReactNode;
}>;

/** One touch that does one thing: a form with a single button. */
export function Touch({ action, fields, label, variant = 'quiet', children }: TouchProps) {
  return (
    <FormFrame action={action} label={label}>
      <RequestKey />
      {Object.entries(fields).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      <SubmitButton variant={variant} size="counter">
        {children}
      </SubmitButton>
    </FormFrame>
  );
}
