import 'server-only';
import { headers } from 'next/headers';

/** What their browser says it is, in short; kept with a signature. */
export async function readDevice(): Promise<string> {
  const said = (await headers()).get('user-agent') ?? '';
  return said.replace(/[^\x20-\x7e]+/g, ' ').slice(0, 200);
}
