import 'server-only';
import { join } from 'node:path';
import type { Worker } from 'node:worker_threads';
import { z } from 'zod';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { heicPixelsMost, type PictureRefusal } from './rules';
import { heicSize, pixelsOf } from './rules/heic-size';

/** A picture unfolded to its pixels: four bytes each, red, green, blue and how much covers. */
export type UnfoldedPicture = {
  readonly pixels: Uint8Array;
  readonly widthPx: number;
  readonly heightPx: number;
};

/** How long and how much memory one picture may take, in milliseconds and bytes. */
export type UnfoldingLimits = { readonly mostMs: number; readonly memoryBytesMost: number };

const usualLimits: UnfoldingLimits = { mostMs: 40_000, memoryBytesMost: 768 * 1024 * 1024 };

const unfolded = z.object({
  pixels: z.instanceof(Uint8ClampedArray),
  widthPx: z.int().positive(),
  heightPx: z.int().positive(),
});

/** One at a time: each takes some hundred megabytes while it lasts. */
let before: Promise<unknown> = Promise.resolve();

/**
 * Unfolds a HEIC picture, the right way up, in a thread of its own that is stopped when it takes too
 * long or too much memory, so that a bad file cannot hang the house.
 *
 * Of what the camera wrote into it nothing comes along: only pixels do.
 *
 * @returns refuses, in this order: damaged in its head, more pixels than are unfolded, damaged, takes
 *   too long
 * @example a file that says 9000 × 9000 is refused before anything is unfolded
 */
export async function unfoldHeic(
  bytes: Uint8Array,
  limits: UnfoldingLimits = usualLimits,
): Promise<Result<UnfoldedPicture, PictureRefusal>> {
  const size = heicSize(bytes);
  if (!size) return refuse({ code: 'picture_damaged' });
  if (pixelsOf(size) > heicPixelsMost) {
    return refuse({ code: 'picture_too_large', ...size, pixelsMost: heicPixelsMost });
  }
  const turn = before.then(() => inItsOwnThread(bytes, limits));
  before = turn;
  return turn;
}

function inItsOwnThread(
  bytes: Uint8Array,
  { mostMs, memoryBytesMost }: UnfoldingLimits,
): Promise<Result<UnfoldedPicture, PictureRefusal>> {
  const worker = startThread(bytes, memoryBytesMost);
  return new Promise((resolve) => {
    const end = (result: Result<UnfoldedPicture, PictureRefusal>) => {
      clearTimeout(clock);
      resolve(result);
      void worker.terminate();
    };
    const clock = setTimeout(() => end(refuse({ code: 'picture_takes_too_long' })), mostMs);
    worker.once('message', (message: unknown) => {
      const read = unfolded.safeParse(message);
      if (!read.success) return end(refuse({ code: 'picture_damaged' }));
      const { pixels, widthPx, heightPx } = read.data;
      return end(ok({ pixels: new Uint8Array(pixels.buffer), widthPx, heightPx }));
    });
    worker.once('error', () => end(refuse({ code: 'picture_damaged' })));
    worker.once('exit', () => end(refuse({ code: 'picture_damaged' })));
  });
}

function startThread(bytes: Uint8Array, memoryBytesMost: number): Worker {
  // Asked for at run time, so that the file of the thread stays a file and is not built in.
  const { Worker: Thread } = process.getBuiltinModule('node:worker_threads');
  return new Thread(join(process.cwd(), 'lib', 'files', 'heic-thread.mjs'), {
    workerData: { bytes, pixelsMost: heicPixelsMost, memoryBytesMost },
    resourceLimits: { maxOldGenerationSizeMb: 256, maxYoungGenerationSizeMb: 32, stackSizeMb: 4 },
    env: {},
    execArgv: [],
    // What the decoder has to say is for nobody.
    stdout: true,
    stderr: true,
  });
}
