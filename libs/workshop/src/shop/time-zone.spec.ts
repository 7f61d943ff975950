import { isTimeZone } from './time-zone.js';

describe('isTimeZone', () => {
  it.each(['Europe/Lisbon', 'America/Argentina/Ushuaia', 'UTC'])('knows %s', (name) => {
    expect(isTimeZone(name)).toBe(true);
  });

  it.each(['Mars/Olympus', '__proto__', 'Lisbon', ''])('knows no "%s"', (name) => {
    expect(isTimeZone(name)).toBe(false);
  });
});
