import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { Way } from '@/app/ui/button/way';
import { DayText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { Notice } from '@/app/ui/page/notice';
import { Section } from '@/app/ui/page/section';
import type {
  AgreementShown,
  ChangeOrderShown,
} from '@/lib/commissions/reads/agreement/agreements';
import type { TaxLooked } from '@/lib/commissions/reads/agreement/tax-rules';
import type { ProposalShown } from '@/lib/commissions/reads/proposal/facts';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import { signedPlaceWords } from '@/lib/commissions/rules/agreement/paper';
import { formatDay } from '@/lib/dates/rules';
import { TaxCautions } from './agreement/tax-cautions';
import css from '../commissions.module.css';

type AgreementLinesProps = Readonly<{
  sheet: Sheet;
  proposals: readonly ProposalShown[];
  agreement: AgreementShown | null;
  changes: readonly ChangeOrderShown[];
  /** How the tax looks at it; null before there is anything to look at. */
  tax?: TaxLooked | null | undefined;
}>;

/** What was proposed, agreed and changed: original and changes add up to what is agreed now. */
export function AgreementLines(props: AgreementLinesProps) {
  const { sheet, proposals, agreement, changes, tax } = props;
  const here = `/commissions/${sheet.number}`;
  const { acts } = sheet;
  return (
    <Section
      title="Proposal and agreement"
      id="agreement"
      act={
        <span className={css['acts']}>
          {acts.has('proposal') ? (
            <ButtonLink href={`${here}/proposal/new`} variant="quiet">
              Write a proposal
            </ButtonLink>
          ) : null}
          {acts.has('agreement') ? (
            <ButtonLink href={`${here}/agreement`} variant="quiet">
              {proposals.some((each) => each.answer?.accepted)
                ? 'Sign the agreement'
                : 'Write down what was agreed'}
            </ButtonLink>
          ) : null}
          {acts.has('change') ? (
            <ButtonLink href={`${here}/change`} variant="quiet">
              Write a change order
            </ButtonLink>
          ) : null}
        </span>
      }
    >
      {agreement ? <Proposed here={here} proposals={proposals} /> : null}
      {agreement ? (
        <Agreed sheet={sheet} agreement={agreement} changes={changes} />
      ) : (
        <p className={css['quiet']}>Nothing is agreed yet.</p>
      )}
      {sheet.handOver ? (
        <p>
          <Way href={`/commissions/${sheet.number}/hand-over/pdf`}>The hand-over</Way>, signed by{' '}
          {sheet.handOver.signedBy}.
        </p>
      ) : null}
      {tax ? <TaxCautions looked={tax} /> : null}
    </Section>
  );
}

function Proposed({
  here,
  proposals,
}: Readonly<{ here: string; proposals: readonly ProposalShown[] }>) {
  const newest = proposals[0];
  if (!newest) return null;
  const { sent, answer, version } = newest;
  const became = answer
    ? `${answer.by} said ${answer.accepted ? 'yes' : 'no'} on ${formatDay(answer.on, 'short')}`
    : sent
      ? `sent on ${formatDay(sent.on, 'short')}, holds until ${formatDay(newest.validUntilOn, 'short')}`
      : 'not sent yet';
  return (
    <p>
      <Link href={`${here}/proposal`}>Proposal {version}</Link>: {became}.
    </p>
  );
}

type AgreedProps = Readonly<{
  sheet: Sheet;
  agreement: AgreementShown;
  changes: readonly ChangeOrderShown[];
}>;

function Agreed({ sheet, agreement, changes }: AgreedProps) {
  const here = `/commissions/${sheet.number}`;
  const { currency, today } = sheet.telling;
  const money = (cents: bigint) => <Money key="cents" cents={cents} currency={currency} />;
  const rows = [
    {
      key: 'original',
      cells: [
        <Way key="what" href={`${here}/agreement/pdf`}>
          {`Agreed by ${agreement.agreedBy}`}
        </Way>,
        <DayText key="day" day={agreement.agreedOn} />,
        money(agreement.priceCents),
      ],
    },
    ...changes.map((change) => ({
      key: `change-${change.number}`,
      cells: [
        <Link key="what" href={`${here}/change/${change.number}`}>
          {`Change order ${change.number}: ${change.words}`}
        </Link>,
        change.signed ? <DayText key="day" day={change.signed.on} /> : stateOf(change),
        change.signed ? money(change.priceCents) : '',
      ],
    })),
  ];
  const where = agreement.signedWhere
    ? `It was signed ${signedPlaceWords[agreement.signedWhere]}.`
    : '';
  return (
    <>
      <Table
        caption="The original and its signed changes, before tax"
        columns={[{ name: 'What' }, { name: 'Signed' }, { name: 'Before tax', figure: true }]}
        rows={rows}
        foot={['Agreed now', '', money(sheet.agreement?.priceCents ?? agreement.priceCents)]}
      />
      {where === '' ? null : <p className={css['quiet']}>{where}</p>}
      {agreement.clayFromOn && today < agreement.clayFromOn ? (
        <Notice kind="caution">
          It was signed at their home and can be cancelled: no clay is cut before{' '}
          {formatDay(agreement.clayFromOn, 'long')}.
          {agreement.cancelNotice ? '' : ' The papers of the right to cancel did not go with it.'}
        </Notice>
      ) : null}
    </>
  );
}

function stateOf({ withdrawnWhy }: ChangeOrderShown): string {
  return withdrawnWhy === null ? 'waits for a signature' : 'withdrawn';
}
