import { client } from '../platform/db/client';

export const total = client;
