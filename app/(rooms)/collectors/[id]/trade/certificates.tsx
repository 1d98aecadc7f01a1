import { SubmitButton } from '@/app/ui/button/submit-button';
import { DayText } from '@/app/ui/figures/day-text';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Empty } from '@/app/ui/page/empty';
import type { CertificateShown } from '@/lib/collectors/reads/trade-page';
import {
  certificateStanding,
  certificateWords,
  isSameState,
  type Certificate,
} from '@/lib/collectors/rules/trade';
import type { Day } from '@/lib/dates/rules';
import { withdraw } from './actions';
import css from './trade.module.css';

type StandingsProps = Readonly<{
  homeState: string;
  certificates: readonly Certificate[];
  today: Day;
}>;

/** For each state that matters, whether they buy untaxed there: green words or red ones. */
export function Standings({ homeState, certificates, today }: StandingsProps) {
  const states = certificates
    .map(({ state }) => state)
    .filter((state) => !isSameState(state, homeState));
  return (
    <ul className={css['standings']}>
      {[homeState, ...new Set(states)]
        .filter((state) => state !== '')
        .map((state) => (
          <Standing key={state} {...{ certificates, state, today }} />
        ))}
    </ul>
  );
}

type StandingProps = Readonly<{ certificates: readonly Certificate[]; state: string; today: Day }>;

/** How the certificates stand for one state, in a mark and in words. */
export function Standing({ certificates, state, today }: StandingProps) {
  const standing = certificateStanding(certificates, state, today);
  const isGood = standing.kind === 'good';
  return (
    <li className={css['standing']} data-good={isGood || undefined}>
      <span aria-hidden="true">{isGood ? '✓' : '✕'}</span>
      <span>
        {standing.kind === 'none' ? `${state}: ` : ''}
        {certificateWords(standing)}
      </span>
    </li>
  );
}

type CertificateListProps = Readonly<{
  certificates: readonly CertificateShown[];
  today: Day;
  mayWrite: boolean;
}>;

/** Every certificate that was handed in, the latest first. */
export function CertificateList({ certificates, today, mayWrite }: CertificateListProps) {
  if (certificates.length === 0) {
    return (
      <Empty title="No certificate was handed in yet">
        Ask for the certificate of each state that they want to buy untaxed in, and write it down
        here before the sale.
      </Empty>
    );
  }
  return (
    <ul className={css['certificates']}>
      {certificates.map((certificate) => (
        <li key={certificate.id} data-past={isPast(certificate, today) || undefined}>
          <One certificate={certificate} />
          {mayWrite && !certificate.isWithdrawn ? <Withdraw certificate={certificate} /> : null}
        </li>
      ))}
    </ul>
  );
}

function isPast({ isWithdrawn, untilOn }: Certificate, today: Day): boolean {
  return isWithdrawn || (untilOn !== null && untilOn < today);
}

function One({ certificate }: Readonly<{ certificate: CertificateShown }>) {
  const { state, permitNumber, legalName, buys, fromOn, untilOn, pictureHref } = certificate;
  return (
    <div>
      <p>
        <strong>
          {state} {permitNumber}
        </strong>
        , {legalName}
      </p>
      <p className={css['quiet']}>
        {certificate.isWithdrawn ? 'Withdrawn. ' : ''}From <DayText day={fromOn} style="short" />
        {untilOn ? (
          <>
            {' '}
            to <DayText day={untilOn} style="short" />
          </>
        ) : (
          ', does not run out'
        )}
        {buys === '' ? '' : `. For ${buys}`}
      </p>
      {pictureHref ? (
        <p>
          <a href={pictureHref}>
            See its picture<span className="heard-only">: {permitNumber}</span>
          </a>
        </p>
      ) : null}
    </div>
  );
}

function Withdraw({ certificate }: Readonly<{ certificate: CertificateShown }>) {
  return (
    <FormFrame action={withdraw} label={`Withdraw certificate ${certificate.permitNumber}`}>
      <RequestKey />
      <input type="hidden" name="certificateId" value={certificate.id} />
      <SubmitButton variant="quiet">
        Withdraw<span className="heard-only"> certificate {certificate.permitNumber}</span>
      </SubmitButton>
    </FormFrame>
  );
}
