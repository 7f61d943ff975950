export * from './offer.dto.js';
export * from './delivery.dto.js';
