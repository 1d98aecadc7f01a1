import { other } from './other';

export const one = other;
