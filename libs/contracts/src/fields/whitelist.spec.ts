import {
  IntegerField,
  KindField,
  ListField,
  NestedField,
  TextField,
  UnionField,
  whitelist,
} from './index.js';

class Leaf {
  @TextField({ description: 'name', max: 9 }) name!: string;
}
class Green {
  @KindField('green') kind!: 'green';
  @IntegerField({ description: 'days' }) days!: number;
}
class Tree {
  @TextField({ description: 'title', max: 9, optional: true }) title?: string;
  @NestedField({ description: 'leaf', type: () => Leaf, nullable: true }) leaf!: Leaf | null;
  @ListField({ description: 'leaves', type: () => Leaf, max: 9 }) leaves!: Leaf[];
  @UnionField({ description: 'state', types: () => [Green] }) state!: Green;
}

describe('whitelist', () => {
  it('copies only what the class declares, at every depth, and names the rest', () => {
    const row = {
      leaf: { name: 'a', shopId: 's' },
      leaves: [{ name: 'b' }, { name: 'c', rank: 1 }],
      state: { kind: 'green', days: 3, secret: true },
      rowVersion: 7,
    };
    expect(whitelist(Tree, row)).toEqual({
      value: {
        leaf: { name: 'a' },
        leaves: [{ name: 'b' }, { name: 'c' }],
        state: { kind: 'green', days: 3 },
      },
      extra: ['/leaf/shopId', '/leaves/1/rank', '/state/secret', '/rowVersion'],
    });
  });

  it('keeps null, and leaves absent members absent', () => {
    const { value } = whitelist(Tree, {
      title: undefined,
      leaf: null,
      leaves: [],
      state: { kind: 'green', days: 0 },
    });
    expect(value).toStrictEqual({ leaf: null, leaves: [], state: { kind: 'green', days: 0 } });
  });

  it('lets no case of a union out that the class does not declare', () => {
    expect(whitelist(Tree, { leaf: null, leaves: [], state: { kind: 'blue' } }).extra).toEqual(['/state']);
  });
});
