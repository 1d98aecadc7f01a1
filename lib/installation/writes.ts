import 'server-only';

export * from './writes/diary/book';
export { callOffAppointment, tellMore, type Changed } from './writes/diary/change';
export * from './writes/diary/move';
export { addAppointment, type AppointmentToAdd, type Booked } from './writes/diary/put';
