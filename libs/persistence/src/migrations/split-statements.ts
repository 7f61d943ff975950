/** What may hide a semicolon, or is one. Dollar quotes end with their own tag, block comments nest. */
const token =
  /--[^\n]*|\/\*|\*\/|'(?:[^']|'')*'|"(?:[^"]|"")*"|\$(?:[A-Za-z_\u0080-\uffff][\w\u0080-\uffff]*)?\$|[A-Za-z_\u0080-\uffff][\w$\u0080-\uffff]*|;/g;
const escapeString = /'(?:[^'\\]|''|\\[^])*'/y;

/**
 * The statements of a script of PostgreSQL, without their semicolons, for sending them one at a time: sent together
 * they would be one transaction. Parts that hold comments only are left out. Bodies in the form BEGIN ATOMIC, which
 * hold bare semicolons, are not known here.
 */
export function splitStatements(script: string): string[] {
  const statements: string[] = [];
  let from = 0;
  let commentDepth = 0;
  let hasContent = false;
  const close = (to: number) => {
    if (hasContent) statements.push(script.slice(from, to).trim());
    hasContent = false;
  };
  token.lastIndex = 0;
  for (let match = token.exec(script); match; match = token.exec(script)) {
    const [text] = match;
    if (text === '/*') commentDepth += 1;
    else if (text === '*/') commentDepth = Math.max(0, commentDepth - 1);
    else if (commentDepth > 0) token.lastIndex = match.index + 1;
    else if (text === ';') {
      close(match.index);
      from = token.lastIndex;
    } else if (!text.startsWith('--')) {
      hasContent = true;
      token.lastIndex = endOfQuote(script, text, token.lastIndex);
    }
  }
  close(script.length);
  return statements;
}

/** Where a quotation that the token opens ends; the end of the token itself for any other. */
function endOfQuote(script: string, text: string, end: number): number {
  if (text.startsWith('$')) {
    const close = script.indexOf(text, end);
    return close < 0 ? script.length : close + text.length;
  }
  if (/^e$/i.test(text) && script[end] === "'") {
    escapeString.lastIndex = end;
    return escapeString.test(script) ? escapeString.lastIndex : script.length;
  }
  return end;
}
