import { handsFromG } from '@/lib/walls/rules/lifting/weights';
import type { WorkFacts } from './stages';

const masonry: readonly string[] = ['brick', 'block', 'concrete'];

/**
 * What rides along to a day, in the order in which it is packed.
 *
 * @source common practice among those who hang ceramic
 */
export function loadFor(facts: WorkFacts): readonly string[] {
  const { kind, isOutdoors } = facts;
  if (kind === 'site_visit') {
    return ['survey sheet', 'kraft paper for a template', 'camera'];
  }
  if (kind === 'after_care') return ['spare pieces', 'touch-up', 'camera', 'the plan of the wall'];
  const papers = ['certificate', 'care sheet'];
  if (kind === 'fetching') return ['the piece, packed to ride', ...papers];
  if (kind === 'delivery') return ['the piece, packed', 'blankets', ...papers];
  return [
    'the piece, padded and tied',
    'cleats, lower spacer and stop screw',
    isOutdoors ? 'stainless fixings of three lengths' : 'fixings of three lengths',
    'template with the holes marked',
    'spare pieces and adhesive',
    'touch-up, and wall paint from the owner',
    ...papers,
  ];
}

/**
 * The tools of a day.
 *
 * @source common practice among those who hang ceramic
 */
export function toolsFor(facts: WorkFacts): readonly string[] {
  const { kind, wall, weightG } = facts;
  const always = ['first aid', 'grip gloves', 'scale'];
  if (kind === 'site_visit') {
    return ['tape', 'laser', 'stud finder', 'magnet', 'fine drill', 'torch', 'first aid'];
  }
  if (kind === 'after_care')
    return ['level', 'drivers', 'torch', 'soft brush', 'ladder', 'first aid'];
  if (kind !== 'hanging') return [...always, 'blankets', 'straps'];
  const drills = wall !== null && masonry.includes(wall) ? ['hammer drill', 'masonry bits'] : [];
  const lift = (weightG ?? 0) > handsFromG.three ? ['lift table or third pair of hands'] : [];
  return [
    ...['level of 4 ft', 'laser', 'stud finder', 'tape', 'drivers and bits', ...drills],
    ...['vacuum held at the hole', 'masks and glasses', 'drop cloths', 'blankets', 'blue tape'],
    ...['shims', 'felt bumpers', 'ladder', ...lift, ...always],
  ];
}
