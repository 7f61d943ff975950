import fc from 'fast-check';
import { splitStatements } from './split-statements.js';

describe('splitStatements', () => {
  it('splits at semicolons and leaves out what holds only comments', () => {
    expect(splitStatements('SELECT 1; -- first\n;\n/* nothing */ ; SELECT 2')).toEqual([
      'SELECT 1',
      'SELECT 2',
    ]);
    expect(splitStatements('')).toEqual([]);
  });

  it.each([
    ['text', `SELECT 'a;''b;'`],
    ['text with escapes', String.raw`SELECT E'a\';b', e'\\'`],
    ['names', `SELECT 1 AS "a;""b;"`],
    ['bodies', 'CREATE FUNCTION f() RETURNS int LANGUAGE sql AS $$ SELECT 1; $$'],
    ['bodies with a tag', `DO $body$ BEGIN PERFORM $$;$$; END; $body$`],
    ['comments to the end of the line', `SELECT 1 -- a;b '\n + 1`],
    ['nested comments', 'SELECT /* a; /* b; */ c; */ 1'],
    ['a comment with one quotation mark', `SELECT /* it's; */ 1`],
    ['parameters, which are no quotes', 'SELECT $1 + $2'],
    ['names with a dollar sign', 'SELECT a$b$c'],
  ])('keeps a semicolon in %s', (_where, statement) => {
    expect(splitStatements(`${statement};SELECT 2;`)).toEqual([statement, 'SELECT 2']);
  });

  it('finds again the statements that were joined', () => {
    const piece = fc.constantFrom(
      'SELECT 1',
      `SELECT 'x;y'`,
      'SELECT $q$;$q$',
      'SELECT "a;b" /* ; */',
      String.raw`SELECT E'\';'`,
      'SELECT 1 -- ;\n+ 2',
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 8 }), (pieces) => {
        expect(splitStatements(pieces.join(';\n'))).toEqual(pieces);
      }),
      { seed: 20270101 },
    );
  });
});
