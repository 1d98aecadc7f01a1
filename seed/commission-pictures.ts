import { createHash } from 'node:crypto';
import type { ReadyPicture } from '@/lib/files/ready';
import { lengthOf } from './catalogue';
import { renderColourTile, renderSketch } from './pictures/papers';
import type { CommissionStory } from './scenario/commission-story';
import { drawWall } from './walls';

/** What a story shows: the wall that was asked about, a sketch, a colour tile. */
export type StoryPictures = { wall: ReadyPicture; sketch: ReadyPicture; tile: ReadyPicture };

/** The pictures that a story needs, drawn before anything is written. */
export async function drawAll(story: CommissionStory): Promise<StoryPictures> {
  const { motif, colourway, title } = story;
  const proportion = lengthOf(story.width ?? '48 in') / lengthOf(story.height ?? '30 in');
  const hue = title.length * 7;
  const wall = await drawWall(hue);
  return {
    wall: ready({ bytes: wall, widthPx: 1200, heightPx: 900 }, 'image/jpeg'),
    sketch: ready(await renderSketch({ motif, seed: title, proportion }), 'image/webp'),
    tile: ready(await renderColourTile(colourway, title), 'image/webp'),
  };
}

function ready(
  picture: { bytes: Uint8Array; widthPx: number; heightPx: number },
  mediaType: 'image/jpeg' | 'image/webp',
): ReadyPicture {
  const sha256 = createHash('sha256').update(picture.bytes).digest('hex');
  return { ...picture, mediaType, sha256 };
}
