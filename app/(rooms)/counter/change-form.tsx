import type { ReactNode } from 'react';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { SlipShown } from '@/lib/counter/reads';
import type { SlipChange } from '@/lib/counter/rules/change';
import { changeTheSlip } from './actions';
import { SlipState } from './slip-state';

type Does =
  SlipChange['does'] | 'no_discount' | 'no_collect' | 'name' | 'place' | 'aside' | 'take_up';

type ChangeFormProps = Readonly<{
  slip: Pick<SlipShown['slip'], 'id' | 'version'>;
  does: Does;
  /** Names the form for those who listen to the page. */
  label: string;
  layout?: 'down' | 'row';
  children: ReactNode;
}>;

/** A form that changes one thing on the slip. */
export function ChangeForm({ slip, does, label, layout, children }: ChangeFormProps) {
  return (
    <FormFrame action={changeTheSlip} label={label} layout={layout}>
      <RequestKey />
      <SlipState slip={slip} />
      <input type="hidden" name="does" value={does} />
      {children}
    </FormFrame>
  );
}
