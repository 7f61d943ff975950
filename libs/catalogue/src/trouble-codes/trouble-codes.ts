/** A generic trouble code in our own words. Titles vary by edition; structure after SAE J2012, from memory. */
export interface TroubleCode {
  readonly code: string;
  readonly meaning: string;
  /** what to look at on the throttle-housing job */
  readonly thinkOf: readonly string[];
}

const entry = (code: string, meaning: string, ...thinkOf: readonly string[]): TroubleCode => ({
  code,
  meaning,
  thinkOf,
});

/** A code says that a monitored test failed, not that a part is bad. */
export const troubleCodes: readonly TroubleCode[] = [
  entry('P0120', 'throttle or pedal position sensor A: circuit fault', 'connector', 'supply', 'ground'),
  entry(
    'P0121',
    'throttle or pedal position sensor A: implausible against other signals',
    'shaft play',
    'loose sensor',
    'stop moved',
  ),
  entry('P0122', 'throttle or pedal position sensor A: signal too low', 'open circuit', 'short to ground'),
  entry('P0123', 'throttle or pedal position sensor A: signal too high', 'short to supply', 'lost ground'),
  entry('P0124', 'throttle or pedal position sensor A: comes and goes', 'worn track', 'connector'),
  entry('P0440', 'evaporative system: general fault', 'canister', 'valve', 'leak'),
  entry('P0441', 'evaporative system: wrong purge flow', 'valve leaks or sticks', 'purge at idle'),
  entry('P0443', 'purge valve: electrical circuit', 'wiring', 'valve coil'),
  entry('P0505', 'idle speed control: general fault', 'valve', 'wiring', 'leak', 'housing'),
  entry('P0506', 'idle lower than commanded', 'deposits', 'valve', 'load', 'voltage'),
  entry('P0507', 'idle higher than commanded', 'air leak', 'stop', 'shaft', 'cable', 'valve stuck open'),
  entry('P0510', 'closed-throttle (idle) switch: fault', 'switch point', 'wiring'),
  entry('P0638', 'throttle actuator control does not follow, bank 1', 'binding plate', 'motor', 'deposits'),
  entry('P2111', 'throttle actuator stuck open', 'deposits', 'return spring', 'binding'),
  entry('P2112', 'throttle actuator stuck closed', 'deposits', 'motor'),
  entry('P2119', 'motor-driven throttle: range or performance', 'play', 'deposits', 'adaptation'),
];
