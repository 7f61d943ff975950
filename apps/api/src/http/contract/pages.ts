import { readFile } from 'node:fs/promises';

const docs = new URL('../../../docs/', import.meta.url);
const pages = new Map<string, string>();

/** A page of `apps/api/docs`, turned from its little Markdown into HTML; read once. The name must be one of ours. */
export async function readPage(name: string): Promise<string> {
  const known = pages.get(name);
  if (known !== undefined) return known;
  const page = pageOf(await readFile(new URL(`${name}.md`, docs), 'utf8'));
  pages.set(name, page);
  return page;
}

/** The Markdown that the pages keep to: headings, paragraphs, lists, fenced code, inline code, links. */
export function pageOf(markdown: string): string {
  const title = /^# (.+)$/m.exec(markdown)?.[1] ?? 'Endfloat';
  const blocks = markdown
    .trim()
    .split(/\n{2,}/)
    .map(blockOf);
  return `<!doctype html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n<meta name="viewport" content="width=device-width">\n<title>${escaped(title)}</title>\n</head>\n<body>\n${blocks.join('\n')}\n</body>\n</html>\n`;
}

function blockOf(block: string): string {
  const heading = /^(#{1,3}) (.+)$/.exec(block);
  if (heading?.[1] !== undefined)
    return `<h${heading[1].length}>${inline(heading[2] ?? '')}</h${heading[1].length}>`;
  if (block.startsWith('```')) return `<pre>${escaped(block.replace(/^```\w*\n?|\n?```$/g, ''))}</pre>`;
  if (/^(?:- |\d+\. )/.test(block)) {
    const items = block
      .split(/\n(?=- |\d+\. )/)
      .map((item) => `<li>${inline(item.replace(/^(?:- |\d+\. )/, ''))}</li>`);
    const tag = block.startsWith('- ') ? 'ul' : 'ol';
    return `<${tag}>\n${items.join('\n')}\n</${tag}>`;
  }
  return `<p>${inline(block)}</p>`;
}

function inline(text: string): string {
  return escaped(text)
    .replace(/`([^`]+)`/g, '<code>$1</code>')
    .replace(/\*\*([^*]+)\*\*/g, '<strong>$1</strong>')
    .replace(/\[([^\]]+)\]\(([^)\s]+)\)/g, '<a href="$2">$1</a>');
}

function escaped(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}
