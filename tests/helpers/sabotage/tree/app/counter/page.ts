import { client } from '../../lib/platform/db/client';
import { take } from '../../lib/stock/writes';

export const page = [client, take];
