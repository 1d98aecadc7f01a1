import { requireActor } from '@/lib/access/reads';
import { csvText } from '@/lib/files/rules/csv';
import { plainCents } from '@/lib/money/rules';
import { monthAddress } from '@/lib/reports/input';
import { monthByDesign, type MonthByDesign } from '@/lib/reports/reads';

/** The month by design as CSV, for a spreadsheet. */
export async function GET(request: Request): Promise<Response> {
  const actor = await requireActor('month.see');
  const query = Object.fromEntries(new URL(request.url).searchParams);
  const { month } = monthAddress.parse(query);
  if (!month) return new Response('Write a month, such as 2026-11.', { status: 400 });
  const report = await monthByDesign(actor, month);
  return new Response(csvText(rowsOf(report)), {
    headers: {
      'content-type': 'text/csv; charset=utf-8',
      'content-disposition': `attachment; filename="month-by-design-${month}.csv"`,
      'cache-control': 'private, no-store',
    },
  });
}

function rowsOf({ month, designs, commissions, other, broughtBack }: MonthByDesign): string[][] {
  const heading = ['month', 'code', 'design', 'pieces', 'net', 'share in per cent'];
  const lines = designs.map((each) => ({ ...each, name: each.title }));
  const beside = [
    commissions && { ...commissions, code: '', name: 'Commissions handed over' },
    other && { ...other, code: '', name: 'Delivery, work and things typed in' },
    broughtBack && { ...broughtBack, code: '', name: 'Brought back', shareTenths: null },
  ].filter((each) => each !== null);
  const rows = [...lines, ...beside].map(({ code, name, units, netCents, shareTenths }) => [
    ...[month, code, name, String(units), plainCents(netCents)],
    shareTenths === null ? '' : `${Math.floor(shareTenths / 10)}.${shareTenths % 10}`,
  ]);
  return [heading, ...rows];
}
