import { chartThatFits, comebackChart } from './comeback-chart.js';

describe('charts of comebacks', () => {
  it('are p charts where a usual period expects five comebacks, else g charts', () => {
    const periods = (jobs: number, events: number) =>
      [1, 2, 3].map(() => ({ atRisk: jobs, events, comebacks: events }));
    expect(chartThatFits(periods(100, 5))).toBe('proportion');
    expect(chartThatFits(periods(99, 4))).toBe('eventsBetween');
    expect(chartThatFits([])).toBe('eventsBetween');
    expect(chartThatFits([{ atRisk: 0, events: 0, comebacks: 0 }])).toBe('eventsBetween');
  });

  it('name the signal: by hand, 12 of 40 against a share of 0.1 known beforehand', () => {
    // Upper limit 0.1 + 3 sqrt(0.09 / 40) = 0.2423; 12 of 40 is 0.3.
    const chart = comebackChart(
      {
        chart: 'proportion',
        periods: [
          { atRisk: 40, events: 4, comebacks: 4 },
          { atRisk: 40, events: 12, comebacks: 14 },
        ],
      },
      { centre: 0.1 },
    );
    if (chart.kind !== 'estimated') throw new Error(chart.kind);
    expect(chart.places[1]!.upper).toBeCloseTo(0.1 + 3 * Math.sqrt(0.09 / 40), 12);
    expect(chart.places.map(({ signals }) => signals)).toEqual([[], ['aboveUpperLimit']]);
  });

  it('count comebacks per job on the u chart, jobs between on the g chart, days between on the t chart', () => {
    const periods = [
      { atRisk: 50, events: 4, comebacks: 6 },
      { atRisk: 100, events: 8, comebacks: 9 },
    ];
    expect(comebackChart({ chart: 'rate', periods })).toMatchObject({ chart: 'rate', centre: 0.1 });
    expect(comebackChart({ chart: 'eventsBetween', gaps: [3, 5, 4] })).toMatchObject({ centre: 4 });
    expect(comebackChart({ chart: 'timeBetween', days: [2, 4] })).toMatchObject({ centre: 3 });
    expect(comebackChart({ chart: 'timeBetween', days: [] }).kind).toBe('insufficientData');
    expect(comebackChart({ chart: 'eventsBetween', gaps: [0, 0] }).kind).toBe('noVariation');
  });
});
