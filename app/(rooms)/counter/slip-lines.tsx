import { Money } from '@/app/ui/figures/money';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Mark } from '@/app/ui/piece/mark';
import { Picture } from '@/app/ui/piece/picture';
import type { SlipShown } from '@/lib/counter/reads';
import { counterRefusalMessage } from '@/lib/counter/rules/refusals';
import type { ReckonedLine } from '@/lib/counter/rules/reckon';
import { sumCents } from '@/lib/money/rules';
import type { PricedLine } from '@/lib/sales/rules/pricing';
import { changeCount } from './actions';
import css from './counter.module.css';
import { SlipState } from './slip-state';

type SlipLinesProps = Readonly<{ shown: SlipShown }>;

/** What is on the slip: each line with how many, and the way to change that. */
export function SlipLines({ shown }: SlipLinesProps) {
  return (
    <FormFrame action={changeCount} label="What is on the slip">
      <RequestKey />
      <SlipState slip={shown.slip} />
      <ul className={css['lines']} aria-label="On the slip">
        {shown.reckoned.lines.map((line) => (
          <Line key={line.line.id} of={line} shown={shown} />
        ))}
      </ul>
    </FormFrame>
  );
}

type LineProps = Readonly<{ of: ReckonedLine; shown: SlipShown }>;

function Line({ of, shown }: LineProps) {
  const { line } = of;
  const lines = of.at.flatMap((place) => shown.reckoned.priced.lines[place] ?? []);
  const [first] = lines;
  const set = line.kind === 'set' ? shown.facts.sets.find((s) => s.setId === line.setId) : null;
  const title = set?.title ?? first?.title ?? 'Not known any more';
  const picture = shown.pictures.get(first?.skuId ?? '');
  return (
    <li className={css['line']}>
      {picture ? <Picture {...picture} alt="" size="thumb" /> : null}
      <div className={css['line-words']}>
        <p className={css['result-title']}>{title}</p>
        {set ? <SetMembers lines={lines} /> : <What text={first?.what ?? ''} />}
        <Numbers of={of} />
        <Discounts lines={lines} isSet={line.kind === 'set'} />
        <Faults lineId={line.id} shown={shown} />
      </div>
      <Quantity of={of} name={title} />
      <p className={css['line-sum']}>
        <Money cents={sumCents(lines.map((each) => each.netCents))} />
      </p>
    </li>
  );
}

function Numbers({ of }: Readonly<{ of: ReckonedLine }>) {
  const numbers = of.line.kind === 'piece' ? of.line.numbers : [];
  if (numbers.length === 0) return null;
  return <p className={css['quiet']}>number {numbers.join(', ')}</p>;
}

function What({ text }: Readonly<{ text: string }>) {
  return (
    <p className={css['quiet']}>
      {text.split(' · ').map((part, at) => (
        <span key={part}>
          {at === 0 ? '' : ' · '}
          <span className={css['whole']}>{part}</span>
        </span>
      ))}
    </p>
  );
}

function SetMembers({ lines }: Readonly<{ lines: readonly PricedLine[] }>) {
  return (
    <p className={css['quiet']}>
      the set: {lines.map((line) => `${line.quantity} × ${line.title}`).join(', ')}
    </p>
  );
}

function Discounts({ lines, isSet }: Readonly<{ lines: readonly PricedLine[]; isSet: boolean }>) {
  const sums = new Map<string, bigint>();
  for (const { kind, reason, amountCents } of lines.flatMap((line) => line.discounts ?? [])) {
    if (isSet && kind === 'set') continue;
    sums.set(reason, (sums.get(reason) ?? 0n) + amountCents);
  }
  return [...sums].map(([reason, cents]) => (
    <p key={reason} className={css['off']}>
      <Money cents={-cents} /> {reason}
    </p>
  ));
}

function Faults({ lineId, shown }: Readonly<{ lineId: string; shown: SlipShown }>) {
  return shown.reckoned.faults
    .filter((fault) => fault.lineId === lineId)
    .map(({ refusal }) => (
      <p key={refusal.code} className={css['fault']}>
        <Mark
          mark={refusal.code === 'held_for_another' ? 'held' : 'sold'}
          text={counterRefusalMessage(refusal, shown.zone)}
        />
      </p>
    ));
}

function Quantity({ of, name }: Readonly<{ of: ReckonedLine; name: string }>) {
  const { line } = of;
  const one = !('quantity' in line) || line.quantity === 1;
  const counted = 'quantity' in line && !(line.kind === 'piece' && line.numbers.length > 0);
  return (
    <div className={css['quantity']}>
      <button
        type="submit"
        name={one ? 'off' : 'less'}
        value={line.id}
        aria-label={one ? `Take ${name} off the slip` : `One ${name} less`}
      >
        {one ? '×' : '−'}
      </button>
      <span>{'quantity' in line ? line.quantity : 1}</span>
      {counted ? (
        <button type="submit" name="more" value={line.id} aria-label={`One ${name} more`}>
          +
        </button>
      ) : (
        <span />
      )}
    </div>
  );
}
