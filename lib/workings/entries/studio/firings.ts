import { z } from 'zod';
import { formatCents } from '@/lib/money/rules';
import { piecesToLay } from '@/lib/studio/rules/firings/load';
import { fillOf, layOnShelves } from '@/lib/studio/rules/firings/packing';
import { coolingMinutes, halvingMinutes } from '@/lib/studio/rules/kilns/cooling';
import { shareFiring } from '@/lib/studio/rules/kilns/energy';
import { firingTime, minutesWords } from '@/lib/studio/rules/kilns/firing';
import { keys, lengthMm, listOf, wholeCents } from '@/lib/workings/atoms';
import { workedValue, type Working } from '@/lib/workings/working';

const piecesMust = 'must be a whole number of pieces from 1 to 600';
const pieces = z.int(piecesMust).min(1, piecesMust).max(600, piecesMust);
const shelvesMust = 'must be a whole number of shelves from 1 to 40';
const aroundMust = 'must be a length in millimetres, from 0 to 1000';

const loadInput = keys({
  kiln: keys({
    insideHeightMm: lengthMm,
    shelfWidthMm: lengthMm,
    shelfDepthMm: lengthMm,
    shelfThickMm: lengthMm,
    shelves: z.int(shelvesMust).min(1, shelvesMust).max(40, shelvesMust),
  }),
  roomAroundMm: z
    .number(aroundMust)
    .min(0, aroundMust)
    .max(1_000, aroundMust)
    .transform((mm) => Math.round(mm * 1_000)),
  pieces: listOf(
    keys({ pieces, widthMm: lengthMm, depthMm: lengthMm, heightMm: lengthMm }),
    'sizes such as {"pieces":9,"widthMm":152,"depthMm":152,"heightMm":13}',
  ),
}).refine((given) => given.pieces.reduce((sum, line) => sum + line.pieces, 0) <= 600, {
  path: ['pieces'],
  message: 'must be at most 600 pieces together',
});

type LoadLaid = {
  shelves: number;
  laid: number;
  left: number;
  areaPercent: number;
  volumePercent: number;
};

/** How pieces lie in a kiln, and how full it is. */
export const kilnLoad: Working<z.infer<typeof loadInput>, LoadLaid> = {
  name: 'kiln-load',
  title: 'What fits in a kiln',
  formula:
    'The highest pieces first, each on the first shelf that has room for it; a shelf more while ' +
    'shelves and posts stay below the lid.',
  source: 'The maximal-rectangles method of packing; layers by height are common practice',
  caution:
    'Pieces are laid flat, as the boxes round them, and a quarter turned where that helps. A hand ' +
    'that nests odd forms often finds room for more.',
  example: {
    kiln: {
      ...{ insideHeightMm: 685, shelfWidthMm: 508, shelfDepthMm: 508 },
      ...{ shelfThickMm: 16, shelves: 8 },
    },
    roomAroundMm: 6,
    pieces: [{ pieces: 80, widthMm: 152, depthMm: 152, heightMm: 13 }],
  },
  input: loadInput,
  workOut: ({ kiln, roomAroundMm, pieces: lines }) => {
    const room = {
      ...{ insideHeightUm: kiln.insideHeightMm, shelfWidthUm: kiln.shelfWidthMm },
      ...{ shelfDepthUm: kiln.shelfDepthMm, shelfThickUm: kiln.shelfThickMm },
      shelves: kiln.shelves,
    };
    const all = lines.flatMap(({ pieces: many, widthMm, depthMm, heightMm }, at) =>
      piecesToLay(String(at), { widthUm: widthMm, depthUm: depthMm, heightUm: heightMm }, many),
    );
    const layout = layOnShelves(room, all, roomAroundMm);
    const { areaPercent, volumePercent, shelvesPossible } = fillOf(room, layout, roomAroundMm);
    const left = layout.left.length;
    const laid = all.length - left;
    const shelves = layout.shelves.length;
    return {
      output: { shelves, laid, left, areaPercent, volumePercent },
      working: [
        ...layout.shelves.map(
          (shelf, at) =>
            `Shelf ${at + 1}: ${shelf.pieces.length} pieces, posts of ${shelf.postUm / 1_000} mm.`,
        ),
        `${laid} of ${all.length} pieces lie on ${shelves} of ${shelvesPossible} shelves that would go in.`,
      ],
    };
  },
};

const degreesMust = 'must be whole °C from 0 to 1400';
const degrees = z.int(degreesMust).min(0, degreesMust).max(1_400, degreesMust);
const rateMust = 'must be °C an hour from 1 to 1000';
const soakMust = 'must be whole minutes from 0 to 4320';

const timeInput = keys({
  fromC: degrees,
  segments: listOf(
    keys({
      toC: degrees,
      rateCPerHour: z.number(rateMust).min(1, rateMust).max(1_000, rateMust),
      soakMinutes: z.int(soakMust).min(0, soakMust).max(4_320, soakMust),
    }),
    'segments such as {"toC":1222,"rateCPerHour":60,"soakMinutes":10}',
  ),
}).refine((schedule) => firingTime(schedule).ok, {
  path: ['segments'],
  message: 'must be at most 20 that each move or soak',
});

/** How long a firing takes. */
export const firingTimeWorking: Working<
  z.infer<typeof timeInput>,
  { minutes: number; peakC: number }
> = {
  name: 'firing-time',
  title: 'How long a firing takes',
  formula: 'Degrees to go ÷ degrees an hour, and the soak, segment by segment.',
  source: 'Common practice',
  caution: 'It is what the schedule asks for; a full or an old kiln is often slower.',
  example: {
    fromC: 20,
    segments: [
      { toC: 1_122, rateCPerHour: 150, soakMinutes: 0 },
      { toC: 1_222, rateCPerHour: 60, soakMinutes: 10 },
    ],
  },
  input: timeInput,
  workOut: (schedule) => {
    const { totalMinutes, peakC, segments } = workedValue(firingTime(schedule));
    return {
      output: { minutes: totalMinutes, peakC },
      working: segments.map(
        (each, at) =>
          `Segment ${at + 1}: ${minutesWords(each.movingMinutes)} on the way, ` +
          `${minutesWords(each.soakMinutes)} of soak; over after ${minutesWords(each.endsAfterMinutes)}.`,
      ),
    };
  },
};

const minutesMust = 'must be whole minutes from 1 to 10080';

const coolInput = keys({
  firstC: degrees,
  secondC: degrees,
  minutesBetween: z.int(minutesMust).min(1, minutesMust).max(10_080, minutesMust),
  toC: degrees,
  roomC: degrees,
}).refine(({ firstC, secondC, toC, roomC }) => firstC > secondC && secondC > roomC && toC > roomC, {
  path: ['secondC'],
  message: 'must be cooler than firstC, and with toC above roomC',
});

/** When a kiln is so cool. */
export const kilnCooling: Working<z.infer<typeof coolInput>, { minutes: number }> = {
  name: 'kiln-cooling',
  title: 'When a kiln is cool',
  formula: 'What it is warmer than its room is halved in the same time, again and again.',
  source: 'Newton’s law of cooling',
  caution: 'It cools a little faster while it glows. What it reads goes before what is reckoned.',
  example: { firstC: 1_020, secondC: 520, minutesBetween: 240, toC: 93, roomC: 20 },
  input: coolInput,
  workOut: ({ firstC, secondC, minutesBetween, toC, roomC }) => {
    const halving = workedValue(
      halvingMinutes(
        { celsius: firstC, afterMinutes: 0 },
        { celsius: secondC, afterMinutes: minutesBetween },
        roomC,
      ),
    );
    const minutes = workedValue(coolingMinutes({ fromC: secondC, toC, roomC, halving }));
    return {
      output: { minutes },
      working: [
        `What it is warmer than its room is halved in ${Math.round(halving)} minutes.`,
        `From ${secondC} °C to ${toC} °C takes ${minutesWords(minutes)}.`,
      ],
    };
  },
};

const shareInput = keys({
  cents: wholeCents.refine((cents) => cents >= 0n, 'must be 0 cents or more'),
  load: listOf(
    keys({ pieces, widthMm: lengthMm, depthMm: lengthMm, heightMm: lengthMm }),
    'sizes such as {"pieces":9,"widthMm":152,"depthMm":152,"heightMm":13}',
  ),
});

/** What of a firing falls to each piece. */
export const firingShare: Working<
  z.infer<typeof shareInput>,
  { lineCents: number[]; eachCents: number[] }
> = {
  name: 'firing-share',
  title: 'What of a firing falls to a piece',
  formula: 'The cost, in proportion to the room that each piece takes up.',
  source: 'Common practice; cents by the largest remainder',
  caution: null,
  example: {
    cents: 1_900,
    load: [
      { pieces: 1, widthMm: 200, depthMm: 200, heightMm: 50 },
      { pieces: 3, widthMm: 200, depthMm: 100, heightMm: 50 },
    ],
  },
  input: shareInput,
  workOut: ({ cents, load }) => {
    const shares = workedValue(
      shareFiring(
        cents,
        load.map(({ pieces: many, widthMm, depthMm, heightMm }, at) => ({
          ...{ id: String(at), pieces: many },
          ...{ widthUm: widthMm, depthUm: depthMm, heightUm: heightMm },
        })),
      ),
    );
    return {
      output: {
        lineCents: shares.map((share) => Number(share.cents)),
        eachCents: shares.map((share) => Number(share.eachCents[0] ?? 0n)),
      },
      working: shares.map(
        (share, at) =>
          `Line ${at + 1}: ${formatCents(share.cents)}, ${formatCents(share.eachCents[0] ?? 0n)} a piece.`,
      ),
    };
  },
};
