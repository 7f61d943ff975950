import { gradeBladePair, judgeNumber } from '@endfloat/metrology';
import type { Limit, Quantity } from '@endfloat/metrology';
import { causes } from '../complaints/causes.js';
import { impliedHazards } from '../cautions/implied-hazards.js';
import { shippedComponentTypes } from '../component-types/shipped-component-types.js';
import { shippedDiagnosisTables } from '../diagnosis-tables/shipped-diagnosis-tables.js';
import { throttleHousingLimits } from '../limits/throttle-housing.limits.js';
import { proofPoints } from '../proof/proof-points.js';
import { parseCheckSheet, validateCheckSheet } from '../validation/parse-check-sheet.js';
import { validateComponentType } from '../validation/parse-component-type.js';
import { checksDownstreamOf } from './checks-downstream-of.js';
import { shippedCheckSheets } from './shipped-check-sheets.js';
import { throttleHousingSheet } from './throttle-housing/throttle-housing.check-sheet.js';

const check = (id: string) => throttleHousingSheet.checks.find((candidate) => candidate.id === id)!;
const position = (id: string): number =>
  throttleHousingSheet.checks.findIndex((candidate) => candidate.id === id);

/** Everything a check waits for, directly or through others. */
function waitsFor(id: string): ReadonlySet<string> {
  const direct = check(id).prerequisites;
  return new Set([...direct, ...direct.flatMap((needed) => [...waitsFor(needed)])]);
}

describe('the shipped component types and check sheets', () => {
  it.each(shippedComponentTypes.map((type) => [type.id, type] as const))(
    '%s passes the check for component types',
    (_id, type) => {
      expect(validateComponentType(JSON.parse(JSON.stringify(type)))).toEqual([]);
    },
  );

  it.each(shippedCheckSheets.map((sheet) => [sheet.id, sheet] as const))(
    '%s passes the check for sheets and comes back unchanged',
    (_id, sheet) => {
      const data: unknown = JSON.parse(JSON.stringify(sheet));
      expect(validateCheckSheet(data)).toEqual([]);
      expect(parseCheckSheet(data)).toEqual({ kind: 'checkSheet', checkSheet: sheet });
    },
  );

  it('are the throttle housing and at least six others, with unique ids', () => {
    const ids = shippedCheckSheets.map((sheet) => sheet.id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids.length).toBeGreaterThanOrEqual(7);
  });

  it('put every prerequisite before the check that needs it', () => {
    for (const sheet of shippedCheckSheets) {
      sheet.checks.forEach((entry, index) => {
        for (const needed of entry.prerequisites) {
          expect([
            sheet.id,
            entry.id,
            needed,
            sheet.checks.findIndex((other) => other.id === needed) < index,
          ]).toEqual([sheet.id, entry.id, needed, true]);
        }
      });
    }
  });

  it('carry a caution for every hazard of every check', () => {
    for (const sheet of shippedCheckSheets) {
      for (const entry of sheet.checks) {
        const covered = entry.cautions.map((caution) => caution.hazard);
        expect([entry.id, impliedHazards(entry).filter((hazard) => !covered.includes(hazard))]).toEqual([
          entry.id,
          [],
        ]);
      }
    }
  });

  it.each([
    ['wheel-bearing-and-linkage', 'wheel-bearing-play', 'vehicleRaised', /stands/],
    ['disc-and-drum-brakes', 'lining-thickness', 'brakeDust', /[Nn]ever use an air line/],
    ['battery-and-charging', 'battery-voltage-rested', 'batteryGas', /rings/],
    [
      'compression-balance',
      'coolant-freezing-point',
      'hotPressureCap',
      /[Nn]ever open the pressure cap of a hot/,
    ],
    ['compression-balance', 'cylinder-compression', 'cranking', /[Dd]isable fuel and ignition/],
    ['throttle-housing', 'leak-test', 'fuelVapourLines', /inert gas.*[Nn]ever blow shop air/],
    ['throttle-housing', 'purge-port-vacuum-idle', 'exhaustGas', /extraction/],
  ] as const)('warn on sheet %s at %s of %s', (sheetId, checkId, hazard, words) => {
    const entry = shippedCheckSheets
      .find((sheet) => sheet.id === sheetId)!
      .checks.find((candidate) => candidate.id === checkId)!;
    expect(entry.cautions.find((caution) => caution.hazard === hazard)!.text).toMatch(words);
  });
});

describe('the throttle-housing sheet', () => {
  it('judges shaft and port vacuum only after the linkage', () => {
    for (const id of [
      'shaft-moves-switch',
      'shaft-radial-play-lower',
      'shaft-radial-play-upper',
      'purge-port-vacuum-idle',
    ]) {
      expect([...waitsFor(id)]).toEqual(expect.arrayContaining(['linkage-return', 'linkage-free-play']));
    }
  });

  it('lets the plate stop be judged only after linkage and shaft, and the switch after linkage, shaft and port vacuum', () => {
    expect([...waitsFor('stop-screw-paper')]).toEqual(
      expect.arrayContaining(['linkage-return', 'shaft-moves-switch', 'shaft-radial-play-lower']),
    );
    expect([...waitsFor('idle-switch-closing-point')]).toEqual(
      expect.arrayContaining([
        'linkage-return',
        'shaft-moves-switch',
        'shaft-radial-play-lower',
        'purge-port-vacuum-idle',
      ]),
    );
  });

  it('sets base idle last, after the switch', () => {
    expect(waitsFor('base-idle').has('idle-switch-closing-point')).toBe(true);
    expect(position('base-idle')).toBeGreaterThan(position('full-load-contact'));
  });

  it('lets the functional criterion outrank the numbers, with the switch as its companion', () => {
    expect(check('shaft-moves-switch').functional).toMatchObject({
      outranks: expect.arrayContaining(['shaft-radial-play-lower', 'shaft-radial-play-upper']) as unknown,
      companionCheckId: 'idle-switch-closing-point',
      conclusiveFrom: { value: '0.05', unit: 'mm' },
      negativeRepeatedAfterCompanion: true,
    });
    expect(throttleHousingSheet.checks.filter((entry) => entry.functional !== null)).toHaveLength(1);
  });

  it('treats a throttle that does not return, a fuel leak and a brake-servo hose leak as dangerous', () => {
    for (const id of ['linkage-return', 'fuel-leak', 'brake-servo-hose', 'final-pedal']) {
      expect([id, check(id).limits.map((limit) => limit.severity)]).toEqual([id, ['dangerous']]);
    }
  });

  it('protects the plate stop, and remembers what moving it invalidates', () => {
    expect(check('stop-screw-paper').adjustable).toBe('byProcedureOnly');
    expect(checksDownstreamOf(throttleHousingSheet.checks, 'stop-screw-paper')).toEqual([
      'purge-port-vacuum-idle',
      'idle-switch-closing-point',
      'idle-switch-clicks',
      'base-idle',
      'exhaust-co-idle',
      'final-pedal',
    ]);
    expect(checksDownstreamOf(throttleHousingSheet.checks, 'linkage-return')).toContain('base-idle');
    expect(checksDownstreamOf(throttleHousingSheet.checks, 'final-visual')).toEqual([]);
    expect(checksDownstreamOf(throttleHousingSheet.checks, 'no-such-check')).toEqual([]);
  });

  it('feeds every row of the diagnosis tables, and names only causes that exist', () => {
    const fed = new Set(throttleHousingSheet.checks.map((entry) => entry.diagnosticCheckId));
    for (const row of shippedDiagnosisTables.checks) expect(fed.has(row.id)).toBe(true);
    const known = causes.map((cause) => cause.id);
    for (const entry of throttleHousingSheet.checks)
      expect(entry.targetCauses.filter((id) => !known.includes(id))).toEqual([]);
  });

  it('takes for each row of the tables the minutes that the tables say, to a minute', () => {
    for (const row of shippedDiagnosisTables.checks) {
      const minutes = throttleHousingSheet.checks
        .filter((entry) => entry.diagnosticCheckId === row.id)
        .reduce((sum, entry) => sum + entry.minutes, 0);
      expect([row.id, Math.abs(minutes - row.minutes) <= 1]).toEqual([row.id, true]);
    }
  });

  it('is proved by linkage and pedal, visual, refit points and the road test', () => {
    const kinds = new Set(
      proofPoints
        .filter((point) => throttleHousingSheet.proofPointIds.includes(point.id))
        .map((point) => point.kind),
    );
    expect(kinds).toEqual(new Set(['linkageAndPedal', 'visual', 'refit', 'roadTest']));
    expect(throttleHousingSheet.proofPointIds).toEqual(
      expect.arrayContaining([
        'connector-seen',
        'gasket-renewed',
        'coolant-refilled-and-bled',
        'cables-reset',
        'codes-and-adaptations-reset',
        'full-throttle-enrichment',
      ]),
    );
  });

  it('has the full-load contact where fitted', () => {
    expect(check('full-load-contact').whereFitted).toBe(true);
  });
});

describe('the default limits of the throttle housing', () => {
  const verdict = (limit: Limit, value: Quantity): string => {
    const judged = judgeNumber({
      limit,
      quantityKind: limit.quantityKind!,
      readings: [value],
      uncertainty: { kind: 'unknown', missing: ['instrument'] },
      context: {},
    });
    return judged.kind === 'notJudged' ? judged.reason : judged.outcome;
  };

  it.each([
    ['radial play, advisory', throttleHousingLimits.radialLowerAdvisory, '0.1000', '0.1001', 'mm'],
    ['radial play, wear limit', throttleHousingLimits.radialLowerWear, '0.2000', '0.2001', 'mm'],
    ['port vacuum in inHg', throttleHousingLimits.purgePortIdle, '1.0000', '1.0001', "[in_i'Hg]"],
    ['port vacuum in kPa', throttleHousingLimits.purgePortIdle, '3.38638', '3.38640', 'kPa'],
    ['closed contact', throttleHousingLimits.switchResistanceClosed, '2.0', '2.1', 'Ohm'],
    ['axial play, upper edge', throttleHousingLimits.axial, '0.30', '0.3001', 'mm'],
    ['axial play, lower edge', throttleHousingLimits.axial, '0.05', '0.0499', 'mm'],
  ] as const)('%s: inside at the edge, outside just beyond', (_name, limit, inside, outside, unit) => {
    expect([verdict(limit, { value: inside, unit }), verdict(limit, { value: outside, unit })]).toEqual([
      'inside',
      'outside',
    ]);
  });

  it('have an advisory of 0.10 mm and a wear limit of 0.20 mm for each end, judged apart', () => {
    expect(check('shaft-radial-play-upper').limits.map((limit) => [limit.severity, limit.asWritten])).toEqual(
      [
        ['advisory', 'advisory above 0.10 mm'],
        ['major', 're-bush or replace above 0.20 mm'],
      ],
    );
  });

  // Closed on the largest blade, open on the smallest; the rule's own table of grades.
  it.each([
    ['0.06', '0.08', 'pass'],
    ['0.05', '0.08', 'pass'],
    ['0.06', '0.10', 'pass'],
    ['0.04', '0.05', 'tooSmall'],
    ['0.10', '0.15', 'tooLarge'],
    ['0.04', '0.07', 'undecided'],
    ['0.07', '0.15', 'undecided'],
    ['0.08', '0.08', 'contradictory'],
  ] as const)('closed on %s mm and open on %s mm grade as %s', (closed, open, grade) => {
    const { criterion } = throttleHousingLimits.switchClosingPoint;
    if (criterion.kind !== 'pair') throw new Error('expected a pair');
    const pair = {
      largestHolding: { value: closed, unit: 'mm' },
      smallestChanged: { value: open, unit: 'mm' },
    } as const;
    expect(gradeBladePair(pair, criterion)).toBe(grade);
  });
});
