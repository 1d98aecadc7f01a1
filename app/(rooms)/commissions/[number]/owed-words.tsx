import type { Sheet } from '@/lib/commissions/reads/sheet';
import { formatCents } from '@/lib/money/rules';

/** What it comes to, what came in and what is owed, in one sentence. */
export function OwedWords({ sheet }: Readonly<{ sheet: Sheet }>) {
  const { money, telling, handOver } = sheet;
  if (!money) return null;
  const [total, paid, owed] = [money.totalCents, money.paidCents, money.owedCents].map((cents) =>
    formatCents(cents, telling),
  );
  const tax = handOver ? 'with tax' : 'with tax at today’s rate';
  return (
    <>
      It comes to {total} {tax}; {paid} came in, {owed} is owed.
    </>
  );
}
