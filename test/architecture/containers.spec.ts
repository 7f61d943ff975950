import { createRequire } from 'node:module';
import { projectFiles, readProjectFile, valuesOf } from './project-files.js';

/**
 * No package here carries the schema of compose files, so what our own file says is checked member by member: names of
 * the Compose Specification as we use them, references among services, and how tightly the containers are closed.
 */
interface Service {
  readonly image: string;
  readonly command?: readonly string[];
  readonly entrypoint?: readonly string[];
  readonly build?: { readonly context: string; readonly dockerfile: string };
  readonly environment?: Readonly<Record<string, string>>;
  readonly secrets?: readonly string[];
  readonly ports?: readonly string[];
  readonly volumes?: readonly string[];
  readonly depends_on?: Readonly<Record<string, { readonly condition: string }>>;
  readonly healthcheck?: Readonly<Record<string, unknown>>;
  readonly read_only?: boolean;
  readonly cap_drop?: readonly string[];
  readonly security_opt?: readonly string[];
}
interface ComposeFile {
  readonly name: string;
  readonly services: Readonly<Record<string, Service>>;
  readonly secrets: Readonly<Record<string, { readonly file: string }>>;
  readonly volumes: Readonly<Record<string, object>>;
}

// The reader of the document validator, asked for by way of its owner.
const { parse } = createRequire(
  createRequire(import.meta.url).resolve('@seriousme/openapi-schema-validator'),
)('yaml') as { parse: (text: string, options: { merge: boolean }) => unknown };
const compose = parse(readProjectFile('docker-compose.yml'), { merge: true }) as ComposeFile;
const services = Object.entries(compose.services).map(([name, service]) => ({ name, service }));
const ours = services.filter(({ service }) => service.build !== undefined);

const serviceKeys = [
  'build',
  'cap_drop',
  'command',
  'depends_on',
  'entrypoint',
  'environment',
  'healthcheck',
  'image',
  'init',
  'ports',
  'read_only',
  'restart',
  'secrets',
  'security_opt',
  'tmpfs',
  'volumes',
];
const healthKeys = ['test', 'interval', 'timeout', 'retries', 'start_period'];
const conditions = ['service_started', 'service_healthy', 'service_completed_successfully'];

describe('docker-compose.yml', () => {
  it('has the members of a compose file', () => {
    const keys = Object.keys(compose).filter((key) => !key.startsWith('x-'));
    expect(keys.sort()).toEqual(['name', 'secrets', 'services', 'volumes']);
    expect(services.map(({ name }) => name).sort()).toEqual(['api', 'database', 'migrate', 'worker']);
  });

  it.each(services)('$name: has members of a service only, written as they must be', ({ service }) => {
    expect(Object.keys(service).filter((key) => !serviceKeys.includes(key))).toEqual([]);
    expect(Object.keys(service.healthcheck ?? {}).filter((key) => !healthKeys.includes(key))).toEqual([]);
    for (const key of ['interval', 'timeout', 'start_period'])
      expect(service.healthcheck?.[key] ?? '1s').toMatch(/^\d+(ms|s|m|h)$/);
    for (const { condition } of Object.values(service.depends_on ?? {}))
      expect(conditions).toContain(condition);
  });

  it.each(services)('$name: refers to services, secrets, volumes and files that are there', ({ service }) => {
    for (const name of Object.keys(service.depends_on ?? {})) expect(compose.services).toHaveProperty(name);
    for (const name of service.secrets ?? []) expect(compose.secrets).toHaveProperty(name);
    const files = projectFiles('.config');
    for (const volume of service.volumes ?? []) {
      const [source = ''] = volume.split(':');
      if (source.startsWith('./')) expect(files).toContain(source.slice(2));
      else expect(compose.volumes).toHaveProperty(source);
    }
    if (service.build !== undefined) expect(files).toContain(service.build.dockerfile);
  });

  it('waits with API and worker until the migrations have been applied on a healthy database', () => {
    for (const name of ['api', 'worker'])
      expect(compose.services[name]?.depends_on).toEqual({
        migrate: { condition: 'service_completed_successfully' },
      });
    expect(compose.services['migrate']?.depends_on).toEqual({ database: { condition: 'service_healthy' } });
    expect(compose.services['database']?.healthcheck).toBeDefined();
  });

  it.each(services)('$name: runs an image of a named release', ({ service }) => {
    expect(service.image).toMatch(/^[a-z]+:\d+(\.\d+)*$/);
  });

  it.each(ours)('$name: writes nothing but /tmp, has no privileges and gains none', ({ service }) => {
    expect(service).toMatchObject({
      read_only: true,
      tmpfs: ['/tmp'],
      cap_drop: ['ALL'],
      security_opt: ['no-new-privileges:true'],
    });
  });

  it('gives each process the password of its own role and no other', () => {
    const secretsOf = Object.fromEntries(ours.map(({ name, service }) => [name, service.secrets]));
    expect(secretsOf).toEqual({
      migrate: ['owner', 'service'],
      api: ['api', 'service'],
      worker: ['worker', 'service'],
    });
  });

  it('keeps secrets in files outside the repository, and opens loopback only', () => {
    for (const { file } of Object.values(compose.secrets)) expect(file).toMatch(/^\.data\//);
    expect(readProjectFile('.gitignore').split('\n')).toContain('.data/');
    for (const { service } of services)
      for (const port of service.ports ?? []) expect(port).toMatch(/^127\.0\.0\.1:\d+:\d+$/);
  });

  it('names commands and settings that the service knows', () => {
    const main = readProjectFile('apps/standalone/src/main.ts');
    const settings = readProjectFile('apps/standalone/src/settings.ts');
    for (const { service } of ours) {
      expect(main).toMatch(new RegExp(`^ {2}'?${service.command?.[0] ?? '?'}'?: run`, 'm'));
      for (const name of Object.keys(service.environment ?? {})) expect(settings).toContain(`'${name}'`);
    }
  });
});

describe('the roles that the database container makes', () => {
  it('have the limits that Endfloat gives to roles it makes itself', async () => {
    const { createRoles, roles } = (await valuesOf('libs/persistence/src/embedded/roles.ts')) as {
      createRoles: (admin: object, wanted: readonly string[], passwordOf: () => string) => Promise<void>;
      roles: readonly string[];
    };
    const said: string[] = [];
    const recorder = {
      query: (text: string): Promise<{ rows: unknown[] }> => {
        said.push(text);
        return Promise.resolve({ rows: [] });
      },
    };
    await createRoles(recorder, roles, () => 'x');

    const script = readProjectFile('.config/container-roles.sql');
    const limits = said.filter((statement) => / SET /.test(statement)).map((statement) => `${statement};`);
    expect(script.match(/^ALTER ROLE .*$/gm)).toEqual(limits);
    const made = said
      .filter((statement) => statement.startsWith('CREATE ROLE'))
      .map((statement) => statement.replace(/ PASSWORD .*$/, ''));
    expect(
      (script.match(/^CREATE ROLE .*$/gm) ?? []).map((line) => line.replace(/ PASSWORD .*$/, '')),
    ).toEqual(made);
  });
});

describe('.config/Dockerfile', () => {
  const lines = readProjectFile('.config/Dockerfile')
    .split('\n')
    .filter((line) => /^[A-Z]+ /.test(line));
  const saying = (instruction: string, among = lines): string[] =>
    among.filter((line) => line.startsWith(`${instruction} `));
  const last = lines.slice(lines.lastIndexOf(saying('FROM').at(-1)!));

  it('builds in stages on images of a named release', () => {
    expect(saying('FROM').length).toBeGreaterThan(1);
    for (const line of saying('FROM')) expect(line).toMatch(/^FROM node:\d+-[a-z]+-slim( AS [a-z]+)?$/);
    const allowed = Number(/>=(\d+)/.exec(readProjectFile('package.json'))?.[1]);
    for (const line of saying('FROM'))
      expect(Number(/node:(\d+)/.exec(line)?.[1])).toBeGreaterThanOrEqual(allowed);
  });

  it('installs what the lock file names, and leaves development packages behind', () => {
    const run = saying('RUN').join('\n');
    expect(run).toContain('npm ci');
    expect(run).not.toMatch(/npm (install|i)\b/);
    expect(run).toContain('npm prune --omit=dev');
  });

  it('takes into the last stage what an earlier one built, and runs it as an ordinary user', () => {
    for (const line of saying('COPY', last)) expect(line).toMatch(/^COPY --from=build /);
    expect(saying('RUN', last)).toEqual([]);
    expect(saying('USER', last)).toEqual(['USER node']);
    expect(saying('ENTRYPOINT', last)).toEqual(['ENTRYPOINT ["node", "apps/standalone/dist/main.js"]']);
  });

  it('bakes no secret in', () => {
    expect(lines.filter((line) => /^(ARG|ENV) .*(PASSWORD|SECRET|TOKEN|_URL)/.test(line))).toEqual([]);
    expect(saying('ADD')).toEqual([]);
    expect(readProjectFile('.config/Dockerfile.dockerignore').split('\n')).toEqual(
      expect.arrayContaining(['.data', '.git', 'node_modules']),
    );
  });
});
