import 'server-only';
import type { ChangesTold, ShownWhole, TileTold } from '@/lib/commissions/reads/colours/shown';
import type { ProgressTold } from '@/lib/commissions/reads/course/progress';
import { fileIdOf } from '@/lib/commissions/reads/picture';
import { placeWords } from '@/lib/commissions/rules/colours/places';
import { keptFacts, progressWords } from '@/lib/commissions/rules/course/progress';
import {
  anEntry,
  type Entry,
  type EvidencePicture,
} from '@/lib/commissions/rules/evidence/chapters';
import { approvalWayWords } from '@/lib/commissions/rules/words';
import { formatDay } from '@/lib/dates/rules';
import { formatWeight } from '@/lib/units/rules';
import type { ShownMarked, ShownMarks } from './marks';
import { signedLine } from './written';

/** Sketches and colour tiles as they were shown, with every answer, spot and fired part. */
export function shownEntries(
  shown: readonly ShownWhole[],
  marks: ShownMarks,
  zone: string,
): Entry[] {
  return shown.map((each) => shownEntry(each, marks.get(each.id), zone));
}

function shownEntry(each: ShownWhole, marked: ShownMarked | undefined, zone: string): Entry {
  const { label, what, sketch, tile, changes, shownOn } = each;
  return anEntry({
    title: what === 'sketch' ? `Sketch ${label}` : `Colour tile ${label}`,
    on: shownOn,
    lines: [
      ...(sketch ? sketchLines(sketch) : []),
      ...(tile ? tileLines(tile) : []),
      ...changes.flatMap(changesLines),
      ...yesLines(each, marked, zone),
    ],
    pictures: picturesOf(each),
    drawing: marked?.signature?.fileId ?? null,
    mark: marked?.mark ?? null,
  });
}

function yesLines({ yes }: ShownWhole, marked: ShownMarked | undefined, zone: string): string[] {
  if (!yes) return ['Without a yes.'];
  const light = yes.light === '' ? '' : `, looked at ${yes.light}`;
  const on = formatDay(yes.approvedOn, 'long');
  return [
    `${yes.approvedBy} said yes ${approvalWayWords[yes.how]} on ${on}${light}.`,
    ...signedLine(marked?.signature ?? null, zone),
  ];
}

/** What was remembered of the making and the hanging. */
export function progressEntries(progress: readonly ProgressTold[], unit: 'lb' | 'kg'): Entry[] {
  return progress.map((each) => {
    const { kind, words, on, picture, fileId, weightG } = each;
    const weight = weightG === null ? '' : formatWeight(weightG, unit);
    return anEntry({
      title: words,
      on,
      lines: [[progressWords[kind], ...keptFacts(each, weight)].join(' · ')],
      pictures: picture && fileId ? [{ ...picture, fileId }] : [],
    });
  });
}

function picturesOf({ fileId, picture, tile, label }: ShownWhole): EvidencePicture[] {
  const range = (tile?.shades ?? []).flatMap(({ shade, picture: one }) => {
    const id = one && fileIdOf(one);
    return one && id && id !== fileId
      ? [{ ...one, fileId: id, alt: `Colour tile ${label}, ${shade}` }]
      : [];
  });
  return [{ ...picture, fileId }, ...range];
}

function sketchLines({ note, scale, areas }: NonNullable<ShownWhole['sketch']>): string[] {
  return [
    note,
    scale === '' ? '' : `Scale: ${scale}`,
    ...areas.map((area) => `Area ${area.name}, ${placeWords(area)}`),
  ].filter(Boolean);
}

function tileLines(tile: TileTold): string[] {
  const measured = tile.shades.flatMap(({ shade, lab }) =>
    lab ? [`${shade}: L* ${lab[0]}, a* ${lab[1]}, b* ${lab[2]} under D50`] : [],
  );
  return [
    tile.glazes,
    [
      tile.body,
      tile.coats === null ? null : `${tile.coats} coats`,
      tile.cone === '' ? null : `cone ${tile.cone}`,
      tile.firing === '' ? null : `firing ${tile.firing}`,
      tile.batch === null ? null : `bucket ${tile.batch}`,
      tile.keptAt === '' ? null : `kept at ${tile.keptAt}`,
    ]
      .filter(Boolean)
      .join(' · '),
    tile.areas.length === 0 ? '' : `For ${tile.areas.join(', ')}`,
    ...measured,
    tile.given
      ? `Its twin was given ${tile.given.how}, ${formatDay(tile.given.on, 'long')}.`
      : 'Its twin was not given.',
    ...tile.fired.map(
      ({ where, deltaE, limit, nearest, measuredOn }) =>
        `Fired, ${where}: ${Math.round(deltaE * 100) / 100} from the ${nearest} by CIEDE2000, limit ${limit}, measured ${formatDay(measuredOn, 'long')}.`,
    ),
  ].filter(Boolean);
}

function changesLines({ askedBy, askedOn, how, words, spots, round }: ChangesTold): string[] {
  const counted = round === null ? '' : `, round ${round}`;
  return [
    `${askedBy} asked for changes ${approvalWayWords[how]} on ${formatDay(askedOn, 'long')}${counted}${words === '' ? '.' : `: “${words}”`}`,
    ...spots.map((spot, at) => `Spot ${at + 1}, ${placeWords(spot)}: ${spot.words}`),
  ];
}
