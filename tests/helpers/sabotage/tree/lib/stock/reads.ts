import { inTransaction } from '../platform/db/transaction';
import { Rail } from '../../app/counter/rail';

export const levels = [inTransaction, Rail];
