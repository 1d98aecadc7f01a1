import { weightOf, type BoxMeasured, type ShipmentReckoning } from './reckoning';

/** How a shipment was reckoned, in short sentences with their numbers. */
export function reckoningSteps(
  boxes: readonly BoxMeasured[],
  reckoning: ShipmentReckoning,
): string[] {
  const { freight, billableLb } = reckoning;
  if (freight) return freightSteps(boxes, reckoning);
  const each = reckoning.boxes.map(({ billable }, at) => {
    if (!billable) return `Box ${at + 1} is not reckoned.`;
    const { sidesIn, volumeIn3, bySizeLb, byScaleLb } = billable;
    const size =
      bySizeLb === null
        ? 'its size does not count'
        : `${sidesIn.join(' × ')} in, ${volumeIn3} in³, is ${bySizeLb} lb by its size`;
    return `Box ${at + 1}: ${size}; ${byScaleLb} lb by its weight; charged as ${billable.billableLb} lb.`;
  });
  return billableLb === null ? each : [...each, `Together ${billableLb} lb.`];
}

function freightSteps(boxes: readonly BoxMeasured[], { freight }: ShipmentReckoning): string[] {
  const pounds = boxes.reduce((sum, box) => sum + weightOf(box) / 453.592_37, 0);
  const feet = boxes.reduce(
    (sum, { lengthUm, widthUm, heightUm }) =>
      sum + (lengthUm / 304_800) * (widthUm / 304_800) * (heightUm / 304_800),
    0,
  );
  return [
    `All boxes weigh ${Math.round(pounds * 10) / 10} lb.`,
    `They take ${Math.round(feet * 100) / 100} cubic feet.`,
    `That is ${freight?.densityLbPerFt3 ?? 0} lb in a cubic foot, class ${freight?.class ?? 0}.`,
  ];
}
