import { readProjectFile } from './project-files.js';

export interface PrismaColumn {
  /** name of the member, as code says it */
  readonly member: string;
  /** name of the column */
  readonly column: string;
  /** type in PostgreSQL, as record tables name it */
  readonly type: string;
  readonly nullable: boolean;
}

export interface PrismaModel {
  readonly name: string;
  /** name of the table */
  readonly table: string;
  readonly columns: readonly PrismaColumn[];
  /** members of the primary key, in order */
  readonly key: readonly string[];
}

const plainTypes: Readonly<Record<string, string>> = {
  String: 'text',
  Int: 'int4',
  BigInt: 'int8',
  Boolean: 'bool',
  Json: 'jsonb',
  Decimal: 'numeric',
};
const storedTypes: Readonly<Record<string, string>> = {
  Uuid: 'uuid',
  Timestamptz: 'timestamptz',
  Date: 'date',
};

/** The models of prisma/schema.prisma with the columns they lie in; relations are left out. */
export function prismaModels(): PrismaModel[] {
  const text = readProjectFile('prisma/schema.prisma');
  return [...text.matchAll(/^model (\w+) \{\n([\s\S]*?)^\}/gm)].map(([, name = '', body = '']) => ({
    name,
    table: /@@map\("(\w+)"\)/.exec(body)?.[1] ?? name,
    columns: body.split('\n').flatMap(columnOf),
    key: keyOf(body),
  }));
}

function columnOf(line: string): PrismaColumn[] {
  const [, member, prismaType = '', list, optional] = /^ {2}(\w+) +(\w+)(\[\])?(\?)?/.exec(line) ?? [];
  const type = storedTypes[/@db\.(\w+)/.exec(line)?.[1] ?? ''] ?? plainTypes[prismaType];
  if (member === undefined || type === undefined) return [];
  const column = /@map\("(\w+)"\)/.exec(line)?.[1] ?? member;
  return [{ member, column, type: type + (list ?? ''), nullable: optional !== undefined }];
}

function keyOf(body: string): string[] {
  const together = /@@id\(\[([^\]]+)\]\)/.exec(body)?.[1];
  if (together !== undefined) return together.split(',').map((member) => member.trim());
  return [...body.matchAll(/^ {2}(\w+) .*@id\b/gm)].map(([, member = '']) => member);
}
