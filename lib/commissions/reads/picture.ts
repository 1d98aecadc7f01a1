import 'server-only';
import type { Prisma } from '@/generated/prisma/client';

/** A picture as a page shows it: its address, what it shows in words, its size in pixels. */
export type CommissionPictureShown = { src: string; alt: string; width: number; height: number };

/** The columns of a kept picture, without its bytes. */
export const fileColumns = { id: true, widthPx: true, heightPx: true } as const;

/** What has to be read to know the picture of a commission. */
export const pictureSelect = {
  title: true,
  sketches: {
    select: {
      letter: true,
      file: { select: fileColumns },
      approvals: { select: { approvedOn: true }, take: 1 },
    },
    orderBy: [{ at: 'asc' }, { letter: 'asc' }],
  },
  pictures: {
    select: { file: { select: fileColumns } },
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
    take: 1,
  },
} as const satisfies Prisma.CommissionSelect;

type PictureRow = {
  title: string;
  sketches: { letter: string; file: FileRow; approvals: { approvedOn: Date }[] }[];
  pictures: { file: FileRow }[];
};

/** A kept file as {@link fileColumns} reads it. */
export type FileRow = { id: string; widthPx: number | null; heightPx: number | null };

/**
 * The picture of a commission: the sketch that was approved last, or else the last one shown, or
 * else the first picture that came with the request.
 */
export function pictureOf(row: PictureRow): CommissionPictureShown | null {
  const approved = row.sketches
    .filter((sketch) => sketch.approvals.length > 0)
    .reduce<PictureRow['sketches'][number] | undefined>(
      (last, each) => (dayOfYes(each) >= dayOfYes(last) ? each : last),
      undefined,
    );
  const sketch = approved ?? row.sketches.at(-1);
  if (sketch) {
    const yes = approved ? 'the approved sketch' : 'the last sketch';
    return shownPicture(sketch.file, `${row.title}, ${yes}, ${sketch.letter}`);
  }
  const first = row.pictures[0];
  return first ? shownPicture(first.file, `${row.title}, a picture from the request`) : null;
}

function dayOfYes(sketch: PictureRow['sketches'][number] | undefined): number {
  return sketch?.approvals[0]?.approvedOn.getTime() ?? Number.NEGATIVE_INFINITY;
}

/** The file that a picture on a page shows; null for an address of anything else. */
export function fileIdOf({ src }: Pick<CommissionPictureShown, 'src'>): string | null {
  return /^\/files\/([0-9a-f-]{36})$/.exec(src)?.[1] ?? null;
}

/** A kept file as a picture on a page. */
export function shownPicture(file: FileRow, alt: string): CommissionPictureShown {
  return {
    src: `/files/${file.id}`,
    alt,
    width: file.widthPx ?? 1_200,
    height: file.heightPx ?? 900,
  };
}
