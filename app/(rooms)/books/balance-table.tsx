import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { Notice } from '@/app/ui/page/notice';
import type { TrialBalance } from '@/lib/ledger/reads';
import { inColumns } from '@/lib/ledger/rules';
import { formatCents, sumCents } from '@/lib/money/rules';

/** Every account with what it holds, in the debit column or in the credit column. */
export function BalanceTable({ balance }: Readonly<{ balance: TrialBalance }>) {
  const lines = balance.accounts.map((account) => ({
    ...account,
    ...inColumns(account.balanceCents),
  }));
  const rows = lines.map((line) => ({
    key: line.code,
    cells: [
      `${line.code} ${line.name}`,
      line.debitCents === null ? '' : <Money key="debit" cents={line.debitCents} />,
      line.creditCents === null ? '' : <Money key="credit" cents={line.creditCents} />,
    ],
  }));
  const debits = sumCents(lines.map((line) => line.debitCents ?? 0n));
  const credits = sumCents(lines.map((line) => line.creditCents ?? 0n));
  return (
    <>
      <Table
        caption="Trial balance"
        captionHeardOnly
        columns={[
          { name: 'Account' },
          { name: 'Debit', figure: true },
          { name: 'Credit', figure: true },
        ]}
        rows={rows}
        foot={[
          'Sum',
          <Money key="debits" cents={debits} />,
          <Money key="credits" cents={credits} />,
        ]}
      />
      {balance.sumCents === 0n ? (
        <p>Debits less credits: {formatCents(balance.sumCents)}, as it must be.</p>
      ) : (
        <Notice kind="refused">
          Debits and credits differ by {formatCents(balance.sumCents)}. That must not be; ask for
          help before you go on.
        </Notice>
      )}
    </>
  );
}
