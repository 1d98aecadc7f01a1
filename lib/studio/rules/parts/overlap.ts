import { areaOf, boxOf, edgesOf, sideOf, signedArea, type Corner, type Outline } from './outline';

/**
 * The area that two outlines share.
 *
 * Each outline is the sum of the triangles from one spot to its edges, those that go against the
 * clock counted off; so what two outlines share is the sum of what their triangles share.
 *
 * @param one goes round once without crossing itself, and so does `other`
 * @returns square thousandths; 0 for neighbours that only touch
 */
export function sharedArea(one: Outline, other: Outline): number {
  if (!doBoxesMeet(boxOf(one), boxOf(other))) return 0;
  const [ours, theirs] = [trianglesOf(one), trianglesOf(other)];
  let sum = 0;
  for (const [sign, triangle] of ours) {
    for (const [otherSign, against] of theirs) {
      sum += sign * otherSign * areaOf(clipped(triangle, against));
    }
  }
  return Math.abs(sum);
}

type Box = ReturnType<typeof boxOf>;

/** Whether two boxes share more than an edge. */
export function doBoxesMeet(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

function trianglesOf(outline: Outline): [number, Outline][] {
  const [from] = outline;
  if (!from) return [];
  return edgesOf(outline).flatMap(([corner, next]): [number, Outline][] => {
    const area = signedArea([from, corner, next]);
    if (area === 0) return [];
    return area > 0 ? [[1, [from, corner, next]]] : [[-1, [from, next, corner]]];
  });
}

/** What of a triangle lies inside another; both go round with the clock. */
function clipped(triangle: Outline, against: Outline): Outline {
  return edgesOf(against).reduce<Outline>((left, edge) => keptSide(left, edge), triangle);
}

function keptSide(outline: Outline, [from, to]: [Corner, Corner]): Outline {
  return edgesOf(outline).flatMap(([corner, next]): Corner[] => {
    const [here, there] = [sideOf(from, to, corner), sideOf(from, to, next)];
    const own: Corner[] = here >= 0 ? [corner] : [];
    if (here >= 0 === there >= 0) return own;
    const share = here / (here - there);
    const crossing: Corner = [
      corner[0] + (next[0] - corner[0]) * share,
      corner[1] + (next[1] - corner[1]) * share,
    ];
    return [...own, crossing];
  });
}
