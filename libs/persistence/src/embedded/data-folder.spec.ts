import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { defaultDataFolder } from './data-folder.js';

const project = fileURLToPath(new URL('../../../..', import.meta.url));

describe('defaultDataFolder', () => {
  it('lies in the project for an ordinary user', () => {
    expect(defaultDataFolder('/some/where/endfloat', false)).toBe('/some/where/endfloat/.data');
  });

  it('lies below /var/lib for root, in a folder of its own for each project', () => {
    const [own, other] = [project, join(project, 'libs')].map((folder) => defaultDataFolder(folder, true));

    expect(own).toMatch(/^\/var\/lib\/endfloat\/[^/]+-[0-9a-f]{8}$/);
    expect(other).toMatch(/^\/var\/lib\/endfloat\/libs-[0-9a-f]{8}$/);
    expect(own).not.toBe(other);
    expect(defaultDataFolder(`${project}/libs/..`, true)).toBe(own);
  });
});
