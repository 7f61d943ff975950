import { startTestApi, type TestApi } from '../support/api.js';
import { testServer } from '../support/database.js';
import { CountedWrites, countRows, countsOf } from './counted-writes.js';
import { findBreaches } from './invariants.js';
import { startApiOn, type KillableServer } from './killable-server.js';
import { seededRandom } from './seeded-random.js';

/** A start takes seconds, so the usual run is short; 200 rounds by hand: ENDFLOAT_TEST_ROUNDS=200 npm run drill:kill. */
const rounds = Number(process.env['ENDFLOAT_TEST_ROUNDS'] ?? '3');
const seed = Number(process.env['ENDFLOAT_TEST_SEED'] ?? '1');
const writers = 6;
/** A bound for many rounds on a busy machine, not a measure. */
const bound = 120_000 + 60_000 * rounds;

let api: TestApi;
let superuserUrl: string;
let writes: CountedWrites;
let server: Promise<KillableServer>;

beforeAll(async () => {
  api = await startTestApi();
  const url = new URL(testServer().adminUrl);
  url.pathname = new URL(api.database.ownerUrl).pathname;
  superuserUrl = url.href;
  const { owner } = await api.openShop();
  server = startApiOn(api.database);
  writes = new CountedWrites(owner.authorization.replace('Bearer ', ''), async () => (await server).address);
});
afterAll(async () => {
  await (await server).stop();
  await api.close();
});

describe('the server is killed during mixed writes', () => {
  it(
    `API row 53: nothing acknowledged is lost, nothing is torn or done twice, ${String(rounds)} times`,
    async () => {
      const random = seededRandom(seed);
      const running = writes.run(writers);
      for (let round = 0; round < rounds; round += 1) {
        await Promise.race([writes.more(5 + Math.floor(60 * random())), running]);
        // All writers are in the middle of something; they go on with it on the next server.
        server = (await server).kill().then(() => startApiOn(api.database));
        await server;
      }
      await Promise.race([writes.more(writers), running]);
      writes.finish();
      await running;
      expect(writes.broken).toBeGreaterThan(0);
      expect([...writes.statuses.keys()].filter((status) => status >= 500)).toEqual([]);
      expect(writes.untimed).toBe(0);
      expect(await countRows(superuserUrl)).toEqual(countsOf(writes.written));
      expect(await findBreaches(superuserUrl)).toEqual([]);
    },
    bound,
  );

  it(
    'API row 39: every write sent again under its key gets its first answer and does nothing',
    async () => {
      for (const each of writes.written) {
        const { status, text, isReplay } = await writes.again(each);
        expect([status, text, isReplay]).toEqual([each.acknowledged.status, each.acknowledged.text, true]);
      }
      expect(await countRows(superuserUrl)).toEqual(countsOf(writes.written));
      expect(await findBreaches(superuserUrl)).toEqual([]);
    },
    bound,
  );
});
