import { getMetadataStorage } from 'class-validator';
import { IntegerField, readAs, TextField } from './index.js';

class Named {
  @TextField({ description: 'name', max: 10 })
  name!: string;
}
class Counted extends Named {
  @IntegerField({ description: 'count', min: 1 })
  count!: number;
}

describe('rules that are remembered', () => {
  const faults = (read: ReturnType<typeof readAs>) =>
    read.kind === 'valid' ? [] : read.faults.map(({ pointer }) => pointer).sort();

  it('are the same at the second reading, those of a class above among them', () => {
    for (let time = 0; time < 2; time += 1) {
      expect(faults(readAs(Counted, { name: 'a', count: 1 }))).toEqual([]);
      expect(faults(readAs(Counted, { name: 'longer than ten', count: 0 }))).toEqual(['/count', '/name']);
      expect(faults(readAs(Named, { name: 'a', count: 1 }))).toEqual(['/count']);
    }
  });

  it('are looked up once', () => {
    readAs(Named, { name: 'a' });
    const storage = getMetadataStorage();
    const ask = () => storage.getTargetValidationMetadatas(Named, '', false, false);
    expect(ask()).toBe(ask());
  });
});
