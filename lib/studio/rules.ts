export { pegs, techniques, type Peg, type RouteStep, type Technique } from './rules/routes';
export * from './rules/jobs/beginning';
export * from './rules/jobs/losing';
export * from './rules/jobs/moving';
export * from './rules/jobs/standing';
