import { one } from './one';

export const other = one;
