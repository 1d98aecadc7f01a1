export const Rail = 1;
