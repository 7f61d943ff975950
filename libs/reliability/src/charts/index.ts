export * from './comeback-chart.js';
