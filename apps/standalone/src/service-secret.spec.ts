import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { serviceSecret } from './service-secret.js';

describe('the secret of an installation', () => {
  let folder: string;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'endfloat-secret-'));
  });
  afterEach(() => rmSync(folder, { recursive: true }));

  it('is made once and then the same', () => {
    const made = serviceSecret(undefined, folder);
    expect(made.length).toBeGreaterThanOrEqual(64);
    expect(serviceSecret(undefined, folder)).toBe(made);
    expect(serviceSecret(undefined, folder, false)).toBe(made);
  });

  it('is not made by who only asks, who is told what to do', () => {
    for (const where of [folder, join(folder, 'nowhere')])
      expect(() => serviceSecret(undefined, where, false)).toThrow(/Run npm start first/);
  });

  it('is the one that is given, and needed where there is no folder', () => {
    expect(serviceSecret('given', undefined)).toBe('given');
    expect(() => serviceSecret(undefined, undefined)).toThrow(/ENDFLOAT_SECRET is needed/);
  });
});
