import { SubmitButton } from '@/app/ui/button/submit-button';
import { InstantText } from '@/app/ui/figures/day-text';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Section } from '@/app/ui/page/section';
import type { LinkShown, MailShown } from '@/lib/commissions/reads/page/links';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import { AboutCommission } from '../act-page';
import { shutTheirPage } from './actions';
import css from './their-page.module.css';

type LinksMadeProps = Readonly<{
  sheet: Sheet;
  links: readonly LinkShown[];
  mails: readonly MailShown[];
}>;

/** The addresses that were made, and the letters that were written. */
export function LinksMade({ sheet, links, mails }: LinksMadeProps) {
  const zone = sheet.gallery.timeZone;
  return (
    <>
      <Section title="Addresses that were made" id="addresses">
        {links.length === 0 ? <p className={css['quiet']}>None was made yet.</p> : null}
        <ul className={css['lines']}>
          {links.map((link) => (
            <OneLink key={link.id} {...{ sheet, link }} />
          ))}
        </ul>
      </Section>
      <Section title="Letters that were written" id="letters">
        {mails.length === 0 ? <p className={css['quiet']}>None was written yet.</p> : null}
        <ul className={css['lines']}>
          {mails.map((mail) => (
            <li key={mail.id}>
              <details>
                <summary>
                  <strong>{mail.subject}</strong>, to {mail.toAddress}: {mailWords(mail)}
                </summary>
                <p className={css['words']}>{mail.words}</p>
              </details>
              <span className={css['quiet']}>
                By {mail.by}, <InstantText at={mail.at} zone={zone} />
              </span>
            </li>
          ))}
        </ul>
      </Section>
    </>
  );
}

/** What became of a letter, in words. */
function mailWords({ sentAt, failure }: MailShown): string {
  if (sentAt) return 'it has gone out';
  return failure ?? 'no word came back whether it went out';
}

function OneLink({ sheet, link }: Readonly<{ sheet: Sheet; link: LinkShown }>) {
  const zone = sheet.gallery.timeZone;
  return (
    <li>
      <span>
        <strong>{link.forName}</strong>,{' '}
        {link.state === 'open' ? (
          <>
            open until <InstantText at={link.runsOutAt} zone={zone} />
          </>
        ) : (
          link.state
        )}
      </span>
      <span className={css['quiet']}>
        {link.lastUsedAt ? (
          <>
            Last looked at <InstantText at={link.lastUsedAt} zone={zone} />
          </>
        ) : (
          'Not looked at yet'
        )}
      </span>
      {link.state === 'open' ? (
        <FormFrame action={shutTheirPage} label={`Withdraw the address of ${link.forName}`}>
          <RequestKey />
          <AboutCommission sheet={sheet} />
          <input type="hidden" name="linkId" value={link.id} />
          <SubmitButton variant="danger">Withdraw it</SubmitButton>
        </FormFrame>
      ) : null}
    </li>
  );
}
