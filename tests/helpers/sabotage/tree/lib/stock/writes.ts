export const take = 1;
