import { SubmitButton } from '@/app/ui/button/submit-button';
import { Table } from '@/app/ui/figures/table';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { CountedLine, CountSheet } from '@/lib/stock/reads/moves/counts';
import { whyWords } from '@/lib/stock/rules/moves/count';
import { setOne, unsee } from '../actions';
import css from './count.module.css';

type CountedLinesProps = Readonly<{ countId: string; lines: readonly CountedLine[] }>;

/** What was counted so far; each line can be put right by hand. */
export function CountedLines({ countId, lines }: CountedLinesProps) {
  return (
    <ul className={css['lines']}>
      {lines.map((line) => (
        <li key={line.skuId} className={css['line']}>
          <div className={css['words']}>
            <span className={css['title']}>{line.title}</span>
            <span className={css['quiet']}>
              {line.sku} · {line.what}
            </span>
          </div>
          {line.isNumbered ? (
            <Numbers countId={countId} line={line} />
          ) : (
            <SetTo key={line.counted} countId={countId} line={line} />
          )}
        </li>
      ))}
    </ul>
  );
}

type LineProps = Readonly<{ countId: string; line: CountedLine }>;

function SetTo({ countId, line }: LineProps) {
  return (
    <FormFrame action={setOne} label={`How many of ${line.title}`} layout="row">
      <RequestKey />
      <input type="hidden" name="countId" value={countId} />
      <input type="hidden" name="skuId" value={line.skuId} />
      <Field
        name="counted"
        label={`How many of ${line.title}, ${line.sku}`}
        labelHeardOnly
        kind="count"
        width="short"
        size="counter"
        defaultValue={String(line.counted)}
      />
      <SubmitButton variant="quiet" size="counter">
        So many
      </SubmitButton>
    </FormFrame>
  );
}

function Numbers({ countId, line }: LineProps) {
  if (line.numbers.length === 0) return <span className={css['quiet']}>none</span>;
  return (
    <FormFrame action={unsee} label={`Numbers of ${line.title}`} layout="row">
      <RequestKey />
      <input type="hidden" name="countId" value={countId} />
      <input type="hidden" name="skuId" value={line.skuId} />
      {line.numbers.map((number) => (
        <SubmitButton
          key={number}
          variant="quiet"
          size="counter"
          name="number"
          value={String(number)}
        >
          {number}
          <span aria-hidden="true"> ✕</span>
          <span className="heard-only">, take it back</span>
        </SubmitButton>
      ))}
    </FormFrame>
  );
}

/** What a count that is over had found, against what the books said. */
export function BookedLines({ count }: Readonly<{ count: CountSheet }>) {
  if (count.lines.length === 0) return <p>Nothing was counted.</p>;
  return (
    <Table
      caption="What was counted"
      captionHeardOnly
      columns={[
        { name: 'Piece' },
        { name: 'SKU', wideOnly: true },
        { name: 'In the books', figure: true },
        { name: 'Counted', figure: true },
        { name: 'Why it differed' },
      ]}
      rows={count.lines.map((line) => ({
        key: line.skuId,
        cells: [
          <i key="title">{line.title}</i>,
          line.sku,
          line.expected ?? '',
          line.numbers.length === 0
            ? line.counted
            : `${line.counted} (number ${line.numbers.join(', ')})`,
          line.why === '' ? '' : whyWords(line.why),
        ],
      }))}
    />
  );
}
