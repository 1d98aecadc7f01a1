export const client = 1;
