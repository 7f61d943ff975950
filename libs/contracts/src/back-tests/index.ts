export * from './back-test.dto.js';
