export { total } from '../money/rules';
