import Link from 'next/link';
import type { ReactNode } from 'react';
import { DayText, InstantText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Section } from '@/app/ui/page/section';
import type { CreditOpen, OpenPapers, PaperOpen } from '@/lib/collectors/reads/papers';
import css from '../collectors.module.css';

type OpenPapersProps = Readonly<{ papers: OpenPapers; zone: string }>;

/** What is open in somebody's name; nothing at all where nothing is. */
export function OpenInTheirName({ papers, zone }: OpenPapersProps) {
  const { holds, layaways, approvals, orders, credits } = papers;
  const count = [holds, layaways, approvals, orders, credits].flat().length;
  if (count === 0) return null;
  return (
    <Section title="Open in their name">
      <ul className={css['papers']}>
        {holds.map((paper) => (
          <Paper
            {...{ paper, zone }}
            key={paper.key}
            name="Hold"
            href={`/holds/${paper.number}`}
            until="until"
          />
        ))}
        {layaways.map((paper) => (
          <Paper
            {...{ paper, zone }}
            key={paper.key}
            name="Layaway"
            href={`/layaways/${paper.number}`}
            until="to be paid off by"
          />
        ))}
        {approvals.map((paper) => (
          <Paper
            {...{ paper, zone }}
            key={paper.key}
            name="On approval"
            href={`/on-approval/${paper.number}`}
            until="due back"
          />
        ))}
        {orders.map((paper) => (
          <Paper
            {...{ paper, zone }}
            key={paper.key}
            name="Special order"
            href={`/orders/${paper.number}`}
            until="ready about"
          />
        ))}
        {credits.map((credit) => (
          <Credit key={credit.code} credit={credit} />
        ))}
      </ul>
    </Section>
  );
}

type PaperProps = Readonly<{
  paper: PaperOpen;
  name: string;
  href: string;
  /** What its day is: until, due back. */
  until: string;
  zone: string;
}>;

function Paper({ paper, name, href, until, zone }: PaperProps) {
  const { number, title, untilAt, untilOn, totalCents } = paper;
  return (
    <Line
      link={
        <Link href={href}>
          {name} {number}
        </Link>
      }
      cents={totalCents}
    >
      <cite>{title}</cite>
      {untilAt ? (
        <>
          , {until} <InstantText at={untilAt} zone={zone} />
        </>
      ) : null}
      {untilOn ? (
        <>
          , {until} <DayText day={untilOn} style="short" />
        </>
      ) : null}
    </Line>
  );
}

function Credit({ credit }: Readonly<{ credit: CreditOpen }>) {
  const { kind, code, balanceCents, expiresOn } = credit;
  return (
    <Line
      link={
        <Link href={`/vouchers/${code}`}>
          {kind === 'voucher' ? 'Voucher' : 'Store credit'} {code}
        </Link>
      }
      cents={balanceCents}
    >
      left on it
      {expiresOn ? (
        <>
          , good till <DayText day={expiresOn} style="short" />
        </>
      ) : null}
    </Line>
  );
}

type LineProps = Readonly<{ link: ReactNode; cents: bigint | null; children: ReactNode }>;

function Line({ link, cents, children }: LineProps) {
  return (
    <li className={css['paper']}>
      <span>
        {link} <span className={css['quiet']}>{children}</span>
      </span>
      {cents === null ? null : <Money cents={cents} />}
    </li>
  );
}
