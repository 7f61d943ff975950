import { shippedCheckSheets, shippedComponentTypes, type CheckSheet } from '@endfloat/catalogue';
import type { Reading } from '../../ports/records/bench.records.js';
import type { BenchCase, DoneWork, JudgedRow, ReadingRecord } from './bench-case.js';
import { judgeInspection } from './judge-inspection.js';

const sheetNamed = (id: string): CheckSheet => {
  const sheet = shippedCheckSheets.find((each) => each.id === id);
  if (sheet === undefined) throw new Error(`no sheet ${id}`);
  return sheet;
};

const empty: Omit<Reading, 'checkId' | 'resultKind'> = {
  characteristic: null,
  trend: 'state',
  fittedPartId: null,
  phase: 'asFound',
  position: 'intake',
  place: null,
  shown: null,
  unit: null,
  canonicalValue: null,
  canonicalUnit: null,
  takenAt: '2031-05-04T08:00:00.000Z',
  distanceKm: null,
  instrumentId: null,
  measuredBy: 'mechanic',
  valueConfirmed: true,
  pair: null,
  answer: null,
  grade: null,
  conditions: {},
  note: null,
  warnings: [],
};

let serial = 0;
function reading(content: Pick<Reading, 'checkId' | 'resultKind'> & Partial<Reading>): ReadingRecord {
  serial += 1;
  return {
    id: `reading-${String(serial)}`,
    identity: { inspectionId: 'inspection' },
    revision: 1,
    content: { ...empty, ...content },
    recordedAt: empty.takenAt,
    recordedBy: 'mechanic',
    reason: null,
    replacedAt: null,
    firstRecordedAt: empty.takenAt,
  };
}

const number = (checkId: string, shown: string, unit: string, more: Partial<Reading> = {}) =>
  reading({ checkId, resultKind: 'number', shown, unit, ...more });
const answer = (checkId: string, given: boolean, more: Partial<Reading> = {}) =>
  reading({ checkId, resultKind: 'yesNo', answer: given, ...more });

function benchCase(
  sheetId: string,
  readings: readonly ReadingRecord[],
  more: Partial<BenchCase> = {},
): BenchCase {
  return {
    sheet: sheetNamed(sheetId),
    componentTypes: shippedComponentTypes,
    readings,
    instruments: new Map(),
    works: [],
    notDone: [],
    studies: new Map(),
    context: {},
    shopLimits: [],
    localDay: (at) => at.slice(0, 10),
    ...more,
  };
}

function against(rows: readonly JudgedRow[], limitId: string, phase = 'asFound'): JudgedRow['content'] {
  const row = rows.find((each) => each.limitId === limitId && each.phase === phase);
  if (row === undefined) throw new Error(`not judged against ${limitId}`);
  return row.content;
}

const passedLinkage = [answer('linkage-return', true), answer('linkage-free-play', true)];
const adjusted = (doneAt: string): DoneWork => ({
  action: 'adjustStop',
  componentType: 'throttle-housing',
  doneAt,
});

describe('judgeInspection', () => {
  it('judges the same case to the same verdicts, and nothing where nothing was read', () => {
    const bench = benchCase('throttle-housing', [
      ...passedLinkage,
      number('shaft-radial-play-lower', '0.18', 'mm'),
    ]);
    expect(judgeInspection(bench)).toEqual(judgeInspection(bench));
    expect(judgeInspection(benchCase('throttle-housing', []))).toEqual([]);
  });

  it('compares the cylinders with each other: 900 against a best of 1200 kPa is exactly three quarters', () => {
    const cylinders = ['1200', '1150', '900', '1180'].map((shown, index) =>
      number('cylinder-compression', shown, 'kPa', {
        place: `cylinder-${String(index + 1)}`,
        position: 'vehicle',
      }),
    );
    const context = { jurisdiction: ['us-army-manual', 'us-aviation-manual'] };
    const rows = judgeInspection(benchCase('compression-balance', cylinders, { context }));
    // At least 75 % of the best: exactly on the edge, at face value inside.
    expect(against(rows, 'compression-army')).toMatchObject({
      outcome: 'inside',
      detail: { judgement: { kind: 'faceValue', value: { value: '0.75', unit: '1' } } },
    });
    // The mean is 1107.5; 900 is 81.3 % of it, above 80 %.
    expect(against(rows, 'compression-aviation')).toMatchObject({ outcome: 'inside' });
  });

  it('waits for the second wheel of an axle, and counts a third as a mistake', () => {
    const wheel = (shown: string, place: string) =>
      number('brake-effort', shown, 'N', { place, position: 'front' });
    const uk = { context: { jurisdiction: 'uk' } };
    const sheet = shippedCheckSheets.find(({ checks }) => checks.some(({ id }) => id === 'brake-effort'));
    const judged = (readings: readonly ReadingRecord[]) =>
      against(judgeInspection(benchCase(sheet?.id ?? '', readings, uk)), 'imbalance-uk-major@front');
    const one = judged([wheel('2000', 'left')]);
    expect(one.detail.judgement).toMatchObject({ reason: 'companionMissing' });
    // 1300 of 2000 N are 65 %, below 70 %.
    expect(judged([wheel('2000', 'left'), wheel('1300', 'right')])).toMatchObject({
      outcome: 'outside',
      severity: 'major',
    });
    expect(judged([wheel('2000', 'left'), wheel('1500', 'right')])).toMatchObject({ outcome: 'inside' });
  });

  it('keeps the verdicts of several positions of one kind of part apart', () => {
    const tread = (shown: string, position: string) => number('tread-depth', shown, 'mm', { position });
    const rows = judgeInspection(
      benchCase('tyres', [tread('5', 'frontLeft'), tread('1', 'frontRight')], {
        context: { jurisdiction: 'us-federal', scope: 'commercialMotorVehicle', axle: 'drive' },
      }),
    );
    expect(rows.every((row) => row.limitId.endsWith(`@${row.content.detail.position}`))).toBe(true);
    expect(against(rows, 'tread-us-cmv-other@frontLeft').outcome).toBe('inside');
    expect(against(rows, 'tread-us-cmv-other@frontRight').outcome).toBe('outside');
  });

  it('judges nothing by a vacuum that was taken with the air-conditioning on, and names conditions nobody stated', () => {
    const vacuum = (conditions: Record<string, string>) =>
      judgeInspection(
        benchCase('throttle-housing', [
          ...passedLinkage,
          number('purge-port-vacuum-idle', '1', 'kPa', { conditions }),
        ]),
      );
    const wrong = against(vacuum({ airConditioning: 'on' }), 'purge-port-vacuum-idle-max');
    expect(wrong.detail.judgement).toMatchObject({ reason: 'wrongConditions', details: ['airConditioning'] });
    const right = against(
      vacuum({ airConditioning: 'off', engineState: 'hotIdling' }),
      'purge-port-vacuum-idle-max',
    );
    expect(right.detail.judgement).toMatchObject({
      outcome: 'inside',
      unstatedConditions: ['electricalLoads', 'radiatorFan', 'purgeHose'],
    });
  });

  it('never averages readings from before and after work', () => {
    const at = (hour: string) => ({ phase: 'asLeft' as const, takenAt: `2031-05-04T${hour}:00:00.000Z` });
    const rows = judgeInspection(
      benchCase(
        'throttle-housing',
        [
          ...passedLinkage,
          number('purge-port-vacuum-idle', '9', 'kPa', at('09')),
          number('purge-port-vacuum-idle', '0', 'kPa', at('11')),
        ],
        { works: [adjusted('2031-05-04T10:00:00.000Z')] },
      ),
    );
    const verdict = against(rows, 'purge-port-vacuum-idle-max', 'asLeft');
    expect(verdict).toMatchObject({ outcome: 'inside', detail: { judgement: { count: 1 } } });
  });

  it('lets one bad answer decide over good ones with no work between: every time means every time', () => {
    const rows = judgeInspection(
      benchCase('throttle-housing', [
        answer('linkage-return', true),
        answer('linkage-return', false),
        answer('linkage-return', true),
      ]),
    );
    expect(against(rows, 'linkage-returns-every-time')).toMatchObject({
      outcome: 'outside',
      severity: 'dangerous',
    });
  });

  it('waits for a confirmation as long as one of the repeats looks unlikely', () => {
    const rows = judgeInspection(
      benchCase('throttle-housing', [
        ...passedLinkage,
        number('shaft-radial-play-lower', '0.05', 'mm'),
        number('shaft-radial-play-lower', '18', 'mm', { valueConfirmed: false }),
      ]),
    );
    expect(against(rows, 'shaft-radial-play-lower-wear').detail.judgement).toMatchObject({
      reason: 'valueToConfirm',
    });
  });

  it('takes a check the vehicle has no item for as no obstacle', () => {
    const notDone = [{ checkId: 'linkage-free-play', reason: 'no cable on this van' }];
    const rows = judgeInspection(
      benchCase(
        'throttle-housing',
        [answer('linkage-return', true), number('shaft-radial-play-lower', '0.05', 'mm')],
        { notDone },
      ),
    );
    expect(against(rows, 'shaft-radial-play-lower-wear').outcome).toBe('inside');
  });

  it('gives a rested battery a class and no verdict once the shop has confirmed the table, and neither before', () => {
    const readings = [number('battery-voltage-rested', '12.50', 'V', { position: 'starter' })];
    const flooded = { context: { batteryType: 'flooded12V' } };
    const before = against(
      judgeInspection(benchCase('battery-and-charging', readings, flooded)),
      'battery-ocv-set-a',
    );
    expect(before.detail).toMatchObject({ readingClass: null, judgement: { reason: 'limitNotConfirmed' } });
    const confirmed = sheetNamed('battery-and-charging')
      .checks.flatMap(({ limits }) => limits)
      .filter(({ id }) => id === 'battery-ocv-set-a')
      .map((limit) => ({ ...limit, judging: 'allowed' as const }));
    const after = against(
      judgeInspection(benchCase('battery-and-charging', readings, { ...flooded, shopLimits: confirmed })),
      'battery-ocv-set-a',
    );
    // 12.45 V or more, below 12.65 V; the meter is not known, so no neighbouring class can be named.
    expect(after.detail).toMatchObject({
      readingClass: { name: 'charge75', possible: ['charge75'] },
      judgement: { kind: 'notJudged', reason: 'classOnly' },
    });
  });
});
