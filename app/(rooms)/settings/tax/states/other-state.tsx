import { DayText } from '@/app/ui/figures/day-text';
import { Facts } from '@/app/ui/page/facts';
import { Notice } from '@/app/ui/page/notice';
import { Section } from '@/app/ui/page/section';
import type { Day } from '@/lib/dates/rules';
import { formatCents } from '@/lib/money/rules';
import type { StateWatched } from '@/lib/sales/reads/sent-to';
import { thresholdWindowWords } from '@/lib/tax/rules/threshold';
import css from '../../settings.module.css';
import { StateForm } from './state-form';

type OtherStateProps = Readonly<{ state: StateWatched; today: Day; mayKeep: boolean }>;

/** One state: whether we collect there, what was sent there, and from how much we must. */
export function OtherState({ state, today, mayKeep }: OtherStateProps) {
  const { registeredFrom, lookedUpOn, note } = state;
  return (
    <Section title={state.state}>
      <div className={css['state']}>
        <Standing state={state} />
        <Facts
          facts={[
            {
              name: 'Registered since',
              value: registeredFrom && <DayText day={registeredFrom} style="short" />,
              notKnown: state.isKept
                ? 'not registered: nothing is charged there'
                : 'nothing is kept: the rates of its places are charged',
            },
            { name: 'Must register from', value: thresholdWords(state), notKnown: 'not looked up' },
            {
              name: 'Looked up on',
              value: lookedUpOn && <DayText day={lookedUpOn} style="short" />,
              notKnown: 'not yet',
            },
            ...(note === '' ? [] : [{ name: 'Note', value: note }]),
          ]}
        />
        {mayKeep ? (
          <details>
            <summary>
              Change this<span className="heard-only">: {state.state}</span>
            </summary>
            <StateForm known={state} today={today} />
          </details>
        ) : null}
      </div>
    </Section>
  );
}

function Standing({ state }: Readonly<{ state: StateWatched }>) {
  const { kind, words } = state.standing;
  if (state.isRegistered || kind === 'below' || kind === 'nothing_kept') {
    return <p>Sent there: {words}</p>;
  }
  return (
    <Notice
      kind={kind === 'reached' ? 'refused' : 'caution'}
      title={
        kind === 'reached'
          ? `The threshold of ${state.state} is reached`
          : `The threshold of ${state.state} is near`
      }
    >
      {words}{' '}
      {kind === 'reached'
        ? 'Ask a tax adviser now how to register there.'
        : 'Ask a tax adviser before more is sent there.'}
    </Notice>
  );
}

function thresholdWords(state: StateWatched): string | null {
  const { thresholdCents, thresholdSales, needsBoth, window } = state;
  const amounts = [
    thresholdCents === null ? null : formatCents(thresholdCents),
    thresholdSales === null ? null : `${thresholdSales} sales`,
  ].filter((each) => each !== null);
  if (amounts.length === 0) return null;
  return `${amounts.join(needsBoth ? ' and ' : ' or ')} in ${thresholdWindowWords[window]}`;
}
