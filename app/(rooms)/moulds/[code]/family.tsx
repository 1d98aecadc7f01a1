import Link from 'next/link';
import type { MouldShown } from '@/lib/catalogue/reads/mould-rows';
import { mouldKindWords } from '@/lib/catalogue/rules/moulds';
import css from './mould.module.css';

type FamilyProps = Readonly<{
  mould: MouldShown;
  /** All moulds of the same design. */
  moulds: readonly MouldShown[];
}>;

/** From which model a mould comes, and what was made from it: one line each, the eldest first. */
export function Family({ mould, moulds }: FamilyProps) {
  const line = forebears(mould, moulds);
  const made = moulds.filter(({ fromId }) => fromId === mould.id);
  if (line.length === 0 && made.length === 0) return null;
  return (
    <nav aria-label="What it was made from, and what from it">
      <ol className={css['family']}>
        {line.map((each) => (
          <li key={each.id}>
            <Named mould={each} />
          </li>
        ))}
        <li aria-current="page">
          <strong>{mould.code}</strong>{' '}
          <span className={css['quiet']}>{mouldKindWords[mould.kind].name}, this one</span>
        </li>
        {made.length > 0 ? (
          <li>
            <ul className={css['made']} aria-label="Made from it">
              {made.map((each) => (
                <li key={each.id}>
                  <Named mould={each} />
                </li>
              ))}
            </ul>
          </li>
        ) : null}
      </ol>
    </nav>
  );
}

function Named({ mould }: Readonly<{ mould: MouldShown }>) {
  const isGone = mould.wear === 'retired' || mould.wear === 'broken';
  const gone = isGone ? `, ${mould.wear}` : '';
  return (
    <>
      <Link href={`/moulds/${mould.code}`}>{mould.code}</Link>{' '}
      <span className={css['quiet']}>
        {mouldKindWords[mould.kind].name}
        {gone}
      </span>
    </>
  );
}

function forebears(mould: MouldShown, moulds: readonly MouldShown[]): MouldShown[] {
  const line: MouldShown[] = [];
  let source = moulds.find(({ id }) => id === mould.fromId);
  while (source && !line.includes(source)) {
    line.unshift(source);
    const { fromId } = source;
    source = moulds.find(({ id }) => id === fromId);
  }
  return line;
}
