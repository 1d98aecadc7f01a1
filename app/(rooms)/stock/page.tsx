import type { Metadata } from 'next';
import { ButtonLink } from '@/app/ui/button/button';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Views } from '@/app/ui/page/views';
import { Wall } from '@/app/ui/piece/piece-hanging';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { isPieceKind, kindWords } from '@/lib/catalogue/rules';
import { getGallery } from '@/lib/platform/settings';
import { stockRoomInput } from '@/lib/stock/input';
import { listStock, type StockRoom } from '@/lib/stock/reads/stock-room';
import { countOfKind } from '@/lib/stock/rules/words';
import { FindPiece } from './find-piece';
import { Leaves } from './leaves';
import { PieceHung } from './piece-hung';
import css from './stock.module.css';

export const metadata: Metadata = { title: 'Stock' };

type StockPageProps = Readonly<{ searchParams: Promise<Record<string, string | string[]>> }>;

/** The stock room: every piece on the wall, what it costs and how many are here. */
export default async function StockPage({ searchParams }: StockPageProps) {
  const actor = await requireActor('stock.see');
  const { find, kind, page } = stockRoomInput.parse(await searchParams);
  const [room, { lengthUnit }] = await Promise.all([
    listStock(actor, { letters: find, kind, page }),
    getGallery(),
  ]);
  const mayLoad = isAllowed(actor.roles, 'stock.load');
  return (
    <>
      <PageHead title="Stock" lead={leadOf(room, find, kind)}>
        {mayLoad ? (
          <ButtonLink href="/stock/list" variant="quiet">
            Bring in a stock list
          </ButtonLink>
        ) : null}
        {isAllowed(actor.roles, 'catalogue.keep') ? (
          <ButtonLink href="/stock/new" variant="quiet">
            Write a piece down
          </ButtonLink>
        ) : null}
      </PageHead>
      <InThisRoom room="stock" here="pieces" roles={actor.roles} />
      <FindPiece find={find} kind={kind} />
      <Kinds room={room} find={find} kind={kind} />
      {room.pieces.length === 0 ? <BareWall find={find} mayLoad={mayLoad} /> : null}
      <div className={css['room']}>
        <Wall label="Pieces">
          {room.pieces.map((piece) => (
            <PieceHung key={piece.id} piece={piece} system={lengthUnit} {...awayMark(piece)} />
          ))}
        </Wall>
      </div>
      <Leaves page={room.page} pages={room.pages} hrefOf={(leaf) => hrefOf({ kind, page: leaf })} />
    </>
  );
}

function awayMark({ onHand, elsewhere }: { onHand: number; elsewhere: number }) {
  if (onHand > 0 || elsewhere === 0) return {};
  return { mark: 'away' as const, markText: `${elsewhere} elsewhere` };
}

function leadOf(room: StockRoom, find: string, kind: string): string {
  const pieces = countOfKind(room.total, isPieceKind(kind) ? kind : null);
  if (find.trim() !== '') return `${pieces} found for “${find.trim()}”.`;
  return `${pieces} in the catalogue, by title.`;
}

function hrefOf({
  find = '',
  kind = '',
  page = 1,
}: {
  find?: string;
  kind?: string;
  page?: number;
}) {
  const query = new URLSearchParams();
  if (find !== '') query.set('find', find);
  if (kind !== '') query.set('kind', kind);
  if (page > 1) query.set('page', String(page));
  return query.size === 0 ? '/stock' : `/stock?${query.toString()}`;
}

type KindsProps = Readonly<{ room: StockRoom; find: string; kind: string }>;

function Kinds({ room, find, kind }: KindsProps) {
  if (room.kinds.length < 2) return null;
  const all = { href: hrefOf({ find }), name: 'All', current: kind === '' };
  const kinds = room.kinds.map((each) => ({
    href: hrefOf({ find, kind: each.kind }),
    name: isPieceKind(each.kind) ? kindWords(each.kind, 2) : each.kind,
    current: each.kind === kind,
    count: each.count,
  }));
  return <Views label="Kinds of piece" views={[all, ...kinds]} />;
}

function BareWall({ find, mayLoad }: Readonly<{ find: string; mayLoad: boolean }>) {
  if (find.trim() !== '') {
    return (
      <Empty title="Nothing looks like that">
        Three letters of the title are enough, or the SKU on the tag, or the barcode.
      </Empty>
    );
  }
  return (
    <Empty
      title="The wall is bare"
      act={mayLoad ? <ButtonLink href="/stock/list">Bring in a stock list</ButtonLink> : null}
    >
      Your pieces hang here once they are in the catalogue. The quickest way is a stock list: one
      line for each piece, saved as CSV from any spreadsheet.
    </Empty>
  );
}
