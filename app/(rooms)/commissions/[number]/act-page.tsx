import type { ReactNode } from 'react';
import { PageHead } from '@/app/ui/page/page-head';
import type { Sheet } from '@/lib/commissions/reads/sheet';

type ActPageProps = Readonly<{
  sheet: Sheet;
  title: string;
  lead?: ReactNode;
  children: ReactNode;
}>;

/** The page on which one thing is done to a commission, and the way back to its sheet. */
export function ActPage({ sheet, title, lead, children }: ActPageProps) {
  const name = `${sheet.title}, commission ${sheet.number}`;
  return (
    <>
      <PageHead title={title} lead={lead} back={{ href: `/commissions/${sheet.number}`, name }} />
      {children}
    </>
  );
}

/** The hidden field that says which commission a form is about. */
export function AboutCommission({ sheet }: Readonly<{ sheet: Sheet }>) {
  return <input type="hidden" name="commissionId" value={sheet.id} />;
}
