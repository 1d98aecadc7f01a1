import { ButtonLink } from '@/app/ui/button/button';
import { Notice } from '@/app/ui/page/notice';
import { isAllowed, type Role } from '@/lib/access/rules';
import { formatInstant } from '@/lib/dates/rules';
import type { WorkOrder } from '@/lib/installation/reads/work/order';
import css from './work.module.css';

type SignedProps = Readonly<{ order: WorkOrder; roles: readonly Role[]; zone: string }>;

/** It was signed: by whom and when, and the papers that go with the piece, ready to print. */
export function Signed({ order: { signed, commission }, roles, zone }: SignedProps) {
  if (!signed || !commission) return null;
  const at = `/commissions/${commission.number}`;
  return (
    <Notice kind="done" title="It is handed over">
      <p>
        {signed.signedBy} signed {formatInstant(signed.at, zone)}, with {signed.by}.
      </p>
      <p className={css['acts']}>
        {isAllowed(roles, 'receipts.see') ? (
          <ButtonLink href={`/receipts/${signed.receiptNumber}`} variant="quiet">
            Receipt {signed.receiptNumber}
          </ButtonLink>
        ) : null}
        <ButtonLink href={`${at}/hand-over/pdf`} variant="quiet">
          What was signed
        </ButtonLink>
        <ButtonLink href={`${at}/certificate`} variant="quiet">
          Certificate
        </ButtonLink>
        <ButtonLink href={`${at}/care/pdf`} variant="quiet">
          Care sheet
        </ButtonLink>
        <ButtonLink href={`${at}#care`} variant="quiet">
          The looks after it
        </ButtonLink>
      </p>
    </Notice>
  );
}
