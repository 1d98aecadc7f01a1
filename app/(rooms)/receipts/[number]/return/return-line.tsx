import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { Slab } from '@/app/ui/page/section';
import { formatCents } from '@/lib/money/rules';
import { leftOf, numbersLeft, type SoldLine } from '@/lib/returns/rules/sold';
import css from '../../receipts.module.css';

const places = [
  { value: 'shelf', label: 'Back on the shelf', hint: 'looked at, and sound' },
  { value: 'second', label: 'It is a second now', hint: 'sound, but with a flaw' },
  { value: 'broken', label: 'It is broken' },
  { value: 'nothing', label: 'It stays with the visitor' },
];

type ReturnLineProps = Readonly<{ line: SoldLine; isAlone: boolean }>;

/** One line of the receipt: how many of it came back, and what becomes of them. */
export function ReturnLine({ line, isAlone }: ReturnLineProps) {
  const left = leftOf(line);
  const { id, kind, isSecond } = line;
  return (
    <Slab>
      <p className={css['title']}>{line.title}</p>
      <p className={css['small']}>
        {line.what} · {left} still out · paid {formatCents(line.netCents)} before tax
      </p>
      <HowMany line={line} isAlone={isAlone} />
      {kind === 'piece' ? (
        <>
          <Choice
            name={`to.${id}`}
            legend="What becomes of it"
            options={places.filter((place) => place.value !== 'second' || !isSecond)}
            defaultValue="shelf"
            size="counter"
          />
          {isSecond ? null : (
            <Field
              name={`flaw.${id}`}
              label="If it is a second: what is wrong with it"
              maxLength={120}
              optional
            />
          )}
        </>
      ) : (
        <input type="hidden" name={`to.${id}`} value="nothing" />
      )}
    </Slab>
  );
}

function HowMany({ line, isAlone }: ReturnLineProps) {
  const { id } = line;
  const left = leftOf(line);
  if (line.numbers.length > 0) {
    const numbers = numbersLeft(line).map((number) => ({
      value: String(number),
      label: `Number ${number}`,
    }));
    return (
      <>
        <input type="hidden" name={`pieces.${id}`} value="" />
        <Choice
          name={`number.${id}`}
          legend="Which numbers came back"
          options={numbers}
          kind="tick"
          size="counter"
        />
      </>
    );
  }
  return (
    <Field
      name={`pieces.${id}`}
      label="How many came back"
      kind="count"
      width="short"
      size="counter"
      defaultValue={isAlone && left === 1 ? '1' : ''}
      hint={`At most ${left}. Leave it empty if none did.`}
    />
  );
}
