import { ButtonLink } from '@/app/ui/button/button';
import { InstantText } from '@/app/ui/figures/day-text';
import { Section } from '@/app/ui/page/section';
import type { AnswerShown, LinkShown, MailShown } from '@/lib/commissions/reads/page/links';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import css from '../commissions.module.css';

type PageLinesProps = Readonly<{
  sheet: Sheet;
  links: readonly LinkShown[];
  /** Empty for those who do not see money. */
  mails: readonly MailShown[];
  answers: readonly AnswerShown[];
  /** Whether whoever looks may open the page to somebody, and may offer days. */
  may: Readonly<{ open: boolean; offer: boolean }>;
}>;

/** The collector's own page and the letters: to whom it is open, what went out, what they answered. */
export function PageLines({ sheet, links, mails, answers, may }: PageLinesProps) {
  const { number, gallery } = sheet;
  const zone = gallery.timeZone;
  const isOver = sheet.handOver !== null || sheet.ending !== null;
  return (
    <Section
      title="Their page and letters"
      id="their-page"
      act={
        <span className={css['acts']}>
          {may.open ? (
            <ButtonLink href={`/commissions/${number}/their-page`} variant="quiet">
              Open it to them, or write
            </ButtonLink>
          ) : null}
          {may.offer && !isOver ? (
            <ButtonLink href={`/commissions/${number}/days`} variant="quiet">
              Offer days
            </ButtonLink>
          ) : null}
        </span>
      }
    >
      {links.length === 0 && mails.length === 0 ? (
        <p className={css['quiet']}>Nobody has an address of it yet, and nothing was written.</p>
      ) : null}
      <ul className={css['lines']}>
        {links.map((link) => (
          <li key={link.id} data-off={link.state === 'open' ? undefined : true}>
            Address of {link.forName}:{' '}
            {link.state === 'open' ? (
              <>
                open until <InstantText at={link.runsOutAt} zone={zone} />
              </>
            ) : (
              link.state
            )}
            {link.lastUsedAt ? (
              <>
                , last looked at <InstantText at={link.lastUsedAt} zone={zone} />
              </>
            ) : (
              ', not looked at yet'
            )}
          </li>
        ))}
        {mails.map((mail) => (
          <li key={mail.id} data-off={mail.failure ? true : undefined}>
            Letter “{mail.subject}” to {mail.toAddress}, <InstantText at={mail.at} zone={zone} />
            {mail.failure ? `. It did not go out: ${mail.failure}` : null}
          </li>
        ))}
        {answers.map((answer) => (
          <li key={answer.id}>
            {answer.name} {answer.did} on their page, <InstantText at={answer.at} zone={zone} />
          </li>
        ))}
      </ul>
    </Section>
  );
}
