import Link from 'next/link';

type ForWhomProps = Readonly<{
  commission: Readonly<{ number: number; title: string; collector: string }> | null;
  phone: string | null | undefined;
}>;

/** For which commission and whom an appointment is, with their telephone. */
export function ForWhom({ commission, phone }: ForWhomProps) {
  if (!commission) return 'no commission';
  return (
    <>
      <Link href={`/commissions/${commission.number}`}>
        Commission {commission.number}, <cite>{commission.title}</cite>
      </Link>
      , {commission.collector}
      {phone ? (
        <>
          {', '}
          <a href={`tel:${phone.replace(/[^+\d]/g, '')}`}>{phone}</a>
        </>
      ) : null}
    </>
  );
}
