import { z } from 'zod';
import { db } from '@/lib/platform/db/client';

const model = z.object({
  models: z.record(
    z.string(),
    z.object({ fields: z.array(z.object({ name: z.string(), type: z.string() })) }),
  ),
});

/** Every field by which a row names a collector, read from Prisma's own model of the data. */
export function fieldsThatName(): string[] {
  const client: unknown = Reflect.get(db(), '_runtimeDataModel');
  const names = Object.entries(model.parse(client).models).flatMap(([table, { fields }]) => {
    const keys = fields.filter(({ type }) => type === 'Collector').map(({ name }) => `${name}Id`);
    const found = fields.filter(({ name }) => name === 'collectorId' || keys.includes(name));
    return found.map(({ name }) => `${table}.${name}`);
  });
  return names.toSorted();
}
