import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import type { Actor } from '@/lib/access/rules';
import { listEarnedByTurns } from '@/lib/studio/reads/firings/earned';
import { turnsWords } from '@/lib/studio/rules/firings/words';
import css from './kilns.module.css';

/** What a turn of the kilns earned, by commission and by piece of the stock list. */
export async function EarnedByTurns({ actor }: Readonly<{ actor: Actor }>) {
  const works = await listEarnedByTurns(actor);
  if (works.length === 0) {
    return <p className={css['quiet']}>Nothing that went through a kiln here is finished yet.</p>;
  }
  return (
    <>
      <p className={css['quiet']}>
        Of finished work: the agreed price, or the price of the stock list, over the turns it took.
        Hands, clay and glaze are not taken off.
      </p>
      <Table
        caption="What a turn earned"
        captionHeardOnly
        columns={[
          { name: 'Work' },
          { name: 'Finished', figure: true, wideOnly: true },
          { name: 'Turns it took', figure: true },
          { name: 'Brought', figure: true, wideOnly: true },
          { name: 'A turn earned', figure: true },
        ]}
        rows={works.map((work) => ({
          key: work.key,
          cells: [
            work.words,
            work.finished,
            turnsWords(Math.round(work.turnThousandths / 10)),
            <Money key="brought" cents={work.earnedCents} />,
            <Money key="turn" cents={work.centsPerTurn} />,
          ],
        }))}
      />
    </>
  );
}
