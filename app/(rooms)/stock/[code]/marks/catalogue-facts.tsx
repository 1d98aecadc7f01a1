import Link from 'next/link';
import { DayText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Caution } from '@/app/ui/page/caution';
import { Facts, type Fact } from '@/app/ui/page/facts';
import type { PieceFacts } from '@/lib/catalogue/reads/piece-facts';
import type { PieceKind } from '@/lib/catalogue/rules';
import { foodCaution, foodUseWords, mayBeAskedForFood } from '@/lib/catalogue/rules/food-use';
import { gradeWords } from '@/lib/stock/rules/marks/second';

type CatalogueFactsProps = Readonly<{ facts: PieceFacts; kind: PieceKind }>;

/** What the catalogue knows of a piece beyond its tag: flaw, food, year, sets, the next price. */
export function CatalogueFacts({ facts, kind }: CatalogueFactsProps) {
  const caution = foodCaution({ kind, foodUse: facts.foodUse });
  return (
    <>
      <Facts facts={factsOf(facts, kind)} />
      {caution === '' ? null : <Caution>{caution}</Caution>}
    </>
  );
}

function factsOf(facts: PieceFacts, kind: PieceKind): Fact[] {
  const { madeInYear, medium, sets, seconds, nextPrice, colourway, first, foodUse } = facts;
  const told: (Fact | null)[] = [
    facts.grade === 'first' ? null : { name: 'Marked', value: gradeWords(facts) },
    first && { name: 'Would have been', value: pieceLink(first.code) },
    madeInYear === null ? null : { name: 'Year', value: `${madeInYear}` },
    medium === '' ? null : { name: 'Medium', value: medium },
    mayBeAskedForFood(kind) ? { name: 'Food', value: foodUseWords(foodUse) } : null,
    colourway.endedOn && {
      name: 'Glazes',
      value: (
        <>
          no longer made since <DayText day={colourway.endedOn} />
        </>
      ),
    },
    nextPrice && {
      name: 'From',
      value: (
        <>
          <DayText day={nextPrice.fromOn} />: <Money cents={nextPrice.priceCents} />
        </>
      ),
    },
    sets.length === 0 ? null : { name: 'In sets', value: sets.map(setLink) },
    seconds.length === 0 ? null : { name: 'Its seconds', value: seconds.map(secondLine) },
  ];
  return told.filter((fact) => fact !== null);
}

function pieceLink(code: string) {
  return <Link href={`/stock/${code}`}>{code}</Link>;
}

function setLink({ code, title }: PieceFacts['sets'][number]) {
  return (
    <span key={code}>
      <Link href={`/sets/${code}`}>{title}</Link>{' '}
    </span>
  );
}

function secondLine(second: PieceFacts['seconds'][number]) {
  return (
    <div key={second.code}>
      {pieceLink(second.code)}, {gradeWords(second)}
    </div>
  );
}
