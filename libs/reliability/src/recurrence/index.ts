export * from './fleet-recurrence.js';
export * from './valve-seat.published-case.js';
