// Compares the interface document with the last released one and names what would break whoever builds on it:
//   node .config/breaking-changes.mjs             binds from release 1.0.0 on, tells before
//   node .config/breaking-changes.mjs --release   keeps the document of today as the released one of its version
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const same = (one, other) => JSON.stringify(one) === JSON.stringify(other);
const typesOf = (schema) => (schema.type === undefined ? undefined : [schema.type].flat());
/** What "more" means for a bound: the smaller of lower bounds lets more through, the greater of upper ones. */
const lower = ['minimum', 'exclusiveMinimum', 'minLength', 'minItems', 'minProperties'];
const upper = ['maximum', 'exclusiveMaximum', 'maxLength', 'maxItems', 'maxProperties'];

/**
 * What in `current` breaks clients of `released`, a line each; empty where nothing does.
 * A request may become wider, an answer may become narrower or gain members and values of open enums; never the reverse.
 */
export function breakingChanges(released, current) {
  const found = new Set();
  const report = (place, what) => found.add(`${place}: ${what}`);
  const comparison = { released, current, report, compared: new Set() };
  for (const [path, item] of Object.entries(released.paths ?? {})) {
    const now = current.paths?.[path];
    if (now === undefined) report(path, 'path removed');
    else
      for (const [method, operation] of Object.entries(item)) {
        const place = `${method.toUpperCase()} ${path}`;
        if (now[method] === undefined) report(place, 'operation removed');
        else compareOperations(comparison, place, operation, now[method]);
      }
  }
  for (const [name, item] of Object.entries(released.webhooks ?? {})) {
    const now = current.webhooks?.[name];
    if (now === undefined) report(name, 'event removed');
    else
      compareContents(
        comparison,
        `event ${name}`,
        item.post?.requestBody?.content,
        now.post?.requestBody?.content,
        'answer',
      );
  }
  return [...found].sort();
}

function compareOperations(comparison, place, before, after) {
  const { report } = comparison;
  if (before.operationId !== after.operationId)
    report(place, `operationId ${before.operationId} is now ${after.operationId}`);
  compareSecurity(report, place, before.security, after.security);
  const key = ({ in: where, name }) => `${where} ${name}`;
  const now = new Map((after.parameters ?? []).map((each) => [key(each), each]));
  const known = new Set((before.parameters ?? []).map(key));
  for (const parameter of before.parameters ?? []) {
    const other = now.get(key(parameter));
    const at = `${place} ${key(parameter)}`;
    if (other === undefined) report(at, 'parameter removed');
    else {
      if (other.required === true && parameter.required !== true) report(at, 'parameter is now required');
      compareSchemas(comparison, at, parameter.schema, other.schema, 'request');
    }
  }
  for (const [name, parameter] of now)
    if (!known.has(name) && parameter.required === true) report(`${place} ${name}`, 'new required parameter');
  if (after.requestBody?.required === true && before.requestBody?.required !== true)
    report(`${place} body`, before.requestBody === undefined ? 'new required body' : 'body is now required');
  compareContents(
    comparison,
    `${place} body`,
    before.requestBody?.content,
    after.requestBody?.content,
    'request',
  );
  for (const [status, response] of Object.entries(before.responses ?? {})) {
    const at = `${place} ${status}`;
    const other = after.responses?.[status];
    if (other === undefined) {
      report(at, 'answer removed');
      continue;
    }
    const [one, two] = [followed(comparison.released, response), followed(comparison.current, other)];
    for (const name of Object.keys(one.headers ?? {}))
      if (two.headers?.[name] === undefined) report(`${at} ${name}`, 'header field removed');
    compareContents(comparison, at, one.content, two.content, 'answer');
  }
  for (const status of Object.keys(after.responses ?? {}))
    if (status.startsWith('2') && before.responses?.[status] === undefined)
      report(`${place} ${status}`, 'new kind of success');
}

function compareSecurity(report, place, before, after) {
  const ways = (security) => (security ?? []).map((way) => JSON.stringify(way));
  const wasOpen = ways(before).length === 0;
  if (wasOpen && ways(after).length > 0) report(place, 'a credential is now needed');
  for (const way of ways(before))
    if (ways(after).length > 0 && !ways(after).includes(way))
      report(place, `credential ${way} is no longer taken`);
}

function compareContents(comparison, place, before, after, side) {
  for (const [media, { schema }] of Object.entries(before ?? {})) {
    const now = after?.[media];
    if (now === undefined) comparison.report(place, `${media} removed`);
    else compareSchemas(comparison, place, schema, now.schema, side);
  }
}

function followed(document, thing) {
  if (thing?.$ref === undefined) return thing;
  const [, , kind, name] = thing.$ref.split('/');
  return document.components[kind][name];
}

/** Compares a schema on one side: `request` is written by clients and may only widen, `answer` is read and may only narrow. */
function compareSchemas(comparison, place, one, two, side) {
  const { released, current, report, compared } = comparison;
  const [before, after] = [followed(released, one), followed(current, two)];
  if (before === undefined || before === true || before === after) {
    if (side === 'request' && after !== undefined && after !== true && before !== after)
      report(place, 'anything was taken, and no longer is');
    return;
  }
  if (after === undefined || after === true) {
    if (side === 'answer') report(place, 'was of a known shape, and no longer is');
    return;
  }
  // A named schema is compared once for each side, however many places use it; this also ends circles.
  if (one?.$ref !== undefined) {
    const pair = `${side} ${one.$ref} ${two?.$ref ?? place}`;
    if (compared.has(pair)) return;
    compared.add(pair);
    place = `${one.$ref.split('/').at(-1)} in ${side === 'request' ? 'requests' : 'answers'}`;
  }
  compareTypes(report, place, before, after, side);
  compareEnums(report, place, before, after, side);
  compareBounds(report, place, before, after, side);
  compareMembers(comparison, place, before, after, side);
  compareChoices(comparison, place, before, after, side);
  if (before.items !== undefined || after.items !== undefined)
    compareSchemas(comparison, `${place}[]`, before.items, after.items, side);
}

function compareTypes(report, place, before, after, side) {
  const [old, now] = [typesOf(before), typesOf(after)];
  const [narrow, wide] = side === 'request' ? [old, now] : [now, old];
  if (wide === undefined) return;
  if (narrow === undefined) {
    if (before.oneOf === undefined && after.oneOf === undefined) report(place, 'type changed');
    return;
  }
  const covers = (type) => wide.includes(type) || (type === 'integer' && wide.includes('number'));
  const extra = narrow.filter((type) => !covers(type));
  if (extra.length === 0) return;
  report(
    place,
    side === 'request'
      ? `type ${extra.join(', ')} is no longer taken`
      : `type ${extra.join(', ')} may now be answered`,
  );
}

function compareEnums(report, place, before, after, side) {
  const valuesOf = (schema) => ('const' in schema ? [schema.const] : schema.enum);
  const [old, now] = [valuesOf(before), valuesOf(after)];
  if (old === undefined && now === undefined) return;
  if (side === 'request') {
    if (now === undefined) return;
    if (old === undefined) report(place, 'only listed values are taken now');
    else
      for (const value of old) if (!now.includes(value)) report(place, `value ${value} is no longer taken`);
    return;
  }
  if (old === undefined) return;
  // A value that is no longer given breaks nobody's reading, but whoever waits for it waits in vain.
  for (const value of old)
    if (now !== undefined && !now.includes(value)) report(place, `value ${value} removed`);
  if (before['x-open-enum'] === true) return;
  if (now === undefined) report(place, 'values beyond those listed may now be answered');
  else
    for (const value of now) if (!old.includes(value)) report(place, `new value ${value} of a closed list`);
  if (after['x-open-enum'] === true) report(place, 'the list of values is now open');
}

/** A length of at least 0 is no bound. */
const boundOf = (schema, bound) =>
  /^min(Length|Items|Properties)$/.test(bound) && schema[bound] === 0 ? undefined : schema[bound];

function compareBounds(report, place, before, after, side) {
  const [narrow, wide] = side === 'request' ? [before, after] : [after, before];
  const verb = side === 'request' ? 'tightened' : 'loosened';
  // What clients could send, or had to expect, must lie inside the bound on the wider side.
  for (const bound of [...lower, ...upper]) {
    const [inner, outer] = [boundOf(narrow, bound), boundOf(wide, bound)];
    if (outer === undefined) continue;
    if (inner === undefined || (lower.includes(bound) ? inner < outer : inner > outer))
      report(place, `${bound} ${verb}: ${before[bound] ?? 'none'} to ${after[bound] ?? 'none'}`);
  }
  for (const rule of ['pattern', 'format', 'multipleOf'])
    if (wide[rule] !== undefined && !same(narrow[rule], wide[rule]))
      report(place, `${rule} changed: ${before[rule] ?? 'none'} to ${after[rule] ?? 'none'}`);
  if (wide.uniqueItems === true && narrow.uniqueItems !== true) report(place, `uniqueItems ${verb}`);
  if (side === 'request' && !same(before.default, after.default) && before.default !== undefined)
    report(place, `default changed: ${JSON.stringify(before.default)} to ${JSON.stringify(after.default)}`);
}

function compareMembers(comparison, place, before, after, side) {
  const { report } = comparison;
  const [needed, neededNow] = [before.required ?? [], after.required ?? []];
  for (const [name, member] of Object.entries(before.properties ?? {})) {
    const now = after.properties?.[name];
    if (now === undefined) report(`${place}.${name}`, 'member removed');
    else compareSchemas(comparison, `${place}.${name}`, member, now, side);
  }
  if (side === 'request') {
    for (const name of neededNow) {
      if (needed.includes(name)) continue;
      report(
        `${place}.${name}`,
        before.properties?.[name] === undefined ? 'new required member' : 'member is now required',
      );
    }
    if (
      before.additionalProperties !== false &&
      after.additionalProperties === false &&
      before.type !== undefined &&
      [before.type].flat().includes('object')
    )
      report(place, 'members beyond those listed are no longer taken');
  } else
    for (const name of needed)
      if (!neededNow.includes(name) && after.properties?.[name] !== undefined)
        report(`${place}.${name}`, 'member may now be absent');
  const others = [before.additionalProperties, after.additionalProperties];
  if (others.every((each) => typeof each === 'object'))
    compareSchemas(comparison, `${place}.*`, ...others, side);
  if (typeof before.propertyNames === 'object' || typeof after.propertyNames === 'object')
    compareSchemas(comparison, `${place} (names)`, before.propertyNames, after.propertyNames, side);
}

/** Choices are matched by their names, those written in place by their text. */
function compareChoices(comparison, place, before, after, side) {
  for (const word of ['oneOf', 'anyOf', 'allOf']) {
    const name = (schema) => schema.$ref ?? JSON.stringify(schema);
    const [old, now] = [before[word], after[word]];
    if (old === undefined && now === undefined) continue;
    if (old === undefined || now === undefined) {
      comparison.report(place, `${word} ${old === undefined ? 'added' : 'removed'}`);
      continue;
    }
    if (word === 'allOf') {
      old.forEach((each, at) => compareSchemas(comparison, place, each, now[at], side));
      continue;
    }
    const names = [old.map(name), now.map(name)];
    for (const each of old) {
      const match = now[names[1].indexOf(name(each))];
      if (match !== undefined) compareSchemas(comparison, place, each, match, side);
      else comparison.report(place, `choice ${name(each).split('/').at(-1)} removed`);
    }
    const mayGrow = side === 'request' || before['x-open-enum'] === true;
    for (const each of names[1])
      if (!mayGrow && !names[0].includes(each))
        comparison.report(place, `new choice ${each.split('/').at(-1)} in answers`);
  }
}

/** Whether what breaks clients of this release must not land: from 1.0.0 on. */
export function isBinding(version) {
  return Number(version.split('.')[0]) >= 1;
}

/** The highest of version numbers. */
export function latestVersion(versions) {
  const numbers = (version) => version.split('.').map(Number);
  return [...versions]
    .sort((one, other) => {
      const [a, b] = [numbers(one), numbers(other)];
      return a[0] - b[0] || a[1] - b[1] || a[2] - b[2];
    })
    .at(-1);
}

function main() {
  const folder = fileURLToPath(new URL('../libs/contracts/openapi/', import.meta.url));
  const read = (file) => JSON.parse(readFileSync(`${folder}${file}`, 'utf8'));
  const file = (version) => `released/openapi-${version}.json`;
  const current = read('openapi.json');
  if (process.argv.includes('--release')) {
    const { version } = current.info;
    if (isBinding(version) && existsSync(`${folder}${file(version)}`))
      throw new Error(
        `${version} is released: what was released is not written anew. Raise the version first.`,
      );
    mkdirSync(`${folder}released`, { recursive: true });
    writeFileSync(`${folder}${file(version)}`, `${JSON.stringify(current)}\n`);
    return;
  }
  const versions = (existsSync(`${folder}released`) ? readdirSync(`${folder}released`) : []).flatMap(
    (name) => /^openapi-(\d+\.\d+\.\d+)\.json$/.exec(name)?.[1] ?? [],
  );
  const version = latestVersion(versions);
  if (version === undefined) throw new Error('no released document is there to compare with');
  const changes = breakingChanges(read(file(version)), current);
  for (const change of changes) process.stdout.write(`breaks ${version}: ${change}\n`);
  if (changes.length === 0) process.stdout.write(`Nothing breaks clients of ${version}.\n`);
  else if (isBinding(version)) process.exitCode = 1;
  else process.stdout.write(`${version} is before 1.0.0: told, not refused.\n`);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) main();
