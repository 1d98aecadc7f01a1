import { db } from '@/lib/platform/db/client';

/** Answers before anything was written. */
export function renameGallery(name: string): void {
  db().gallery.update({ where: { id: 1 }, data: { name } });
}
