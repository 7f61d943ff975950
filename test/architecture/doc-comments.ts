import ts from 'typescript';
import { readProjectFile } from './project-files.js';

export interface DocumentedFunction {
  readonly file: string;
  readonly name: string;
  readonly parameters: readonly string[];
  /** sentences before the first tag */
  readonly text: string;
  /** tag -> what is written behind it, one entry for each time it stands there */
  readonly tags: ReadonlyMap<string, readonly string[]>;
}

const plain = (comment: string | ts.NodeArray<ts.JSDocComment> | undefined): string =>
  ts.getTextOfJSDocComment(comment) ?? '';

/** The functions that a file exports, with their doc comments. */
export function documentedFunctions(file: string): DocumentedFunction[] {
  const source = ts.createSourceFile(file, readProjectFile(file), ts.ScriptTarget.ES2023, true);
  return source.statements
    .filter((statement) => ts.isFunctionDeclaration(statement) && statement.name !== undefined)
    .filter((statement) => ts.canHaveModifiers(statement) && isExported(statement))
    .map((statement) => describeFunction(file, statement as ts.FunctionDeclaration));
}

function isExported(statement: ts.HasModifiers): boolean {
  return ts.getModifiers(statement)?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword) === true;
}

function describeFunction(file: string, declaration: ts.FunctionDeclaration): DocumentedFunction {
  const tags = new Map<string, string[]>();
  for (const tag of ts.getJSDocTags(declaration)) {
    const name = tag.tagName.text;
    const behind = ts.isJSDocParameterTag(tag)
      ? `${tag.name.getText()} ${plain(tag.comment)}`
      : plain(tag.comment);
    tags.set(name, [...(tags.get(name) ?? []), behind]);
  }
  const [comment] = ts.getJSDocCommentsAndTags(declaration);
  return {
    file,
    name: declaration.name!.text,
    parameters: declaration.parameters.map((parameter) => parameter.name.getText()),
    text: comment !== undefined && ts.isJSDoc(comment) ? plain(comment.comment) : '',
    tags,
  };
}

/** All names that a file declares or uses as its own: variables, functions, members, types, parameters. */
export function identifiersOf(file: string): ReadonlySet<string> {
  const found = new Set<string>();
  const visit = (node: ts.Node): void => {
    if (ts.isIdentifier(node) || ts.isPrivateIdentifier(node)) found.add(node.text);
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile(file, readProjectFile(file), ts.ScriptTarget.ES2023, true));
  return found;
}
