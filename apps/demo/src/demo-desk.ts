import {
  AssessUseCase,
  ComputingHere,
  CorrectJobUseCase,
  CorrectWorkLineUseCase,
  DecideUseCase,
  exactly,
  ProposeEstimateUseCase,
  RecordConsentUseCase,
  RecordJobEventUseCase,
  RecordProofPointUseCase,
  RecordServiceUseCase,
  RecordWorkLineUseCase,
  ReleaseJobUseCase,
  SettleComebackUseCase,
  ShowProofUseCase,
  type AssessmentQuestion,
  type DecisionChoice,
  type PartUsed,
  type WorkAction,
  type WorkLine,
} from '@endfloat/workshop';
import { callerOf, DemoIntake, housing } from './demo-intake.js';
import { HashFingerprint } from './history-clock.js';
import { demoPlanItems, demoShopId, desk, owner, type DemoUser } from './people.js';

/** Nothing said that the shop knows itself. */
const usualQuestion: Omit<AssessmentQuestion, 'vehicleId' | 'jobId'> = {
  ...housing,
  occasion: null,
  characteristicId: null,
  unwornSize: null,
  criterionSize: null,
  options: null,
  declinedActions: [],
  furtherReadingsDeclined: false,
  labourPerHour: null,
  downtimePerDay: null,
  comebackHandling: null,
  planningDistanceKm: null,
  serviceIntervalKm: null,
  isUsableWhileWaiting: null,
  coreLossChance: null,
};

/** The rest of a visit: work with consent, proof, release, and what people say of a comeback. */
export class DemoDesk extends DemoIntake {
  /** Plans lines, prices them, gets consent, waits for the part where there is one, and does them. */
  async workWithConsent(
    jobId: string,
    technician: DemoUser,
    lines: readonly {
      readonly action: WorkAction;
      readonly minutes: number;
      readonly partsAmount?: string;
      readonly part?: PartUsed;
      readonly from?: string;
      readonly to?: string;
      readonly stopReason?: string;
    }[],
    waitDays = 0,
  ): Promise<void> {
    const planned: { id: string; line: WorkLine; partsAmount: string }[] = [];
    for (const { action, minutes, part, from, to, stopReason, partsAmount } of lines) {
      const line: WorkLine = {
        ...housing,
        action,
        state: 'planned',
        technicianId: null,
        doneAt: null,
        minutes,
        description: null,
        from: from ?? null,
        to: to ?? null,
        protectedPurpose: stopReason === undefined ? null : 'movedByOthers',
        protectedReason: stopReason ?? null,
        part: part ?? null,
        fittedPartId: null,
      };
      const { record } = await new RecordWorkLineUseCase(...this.ports).execute(callerOf(technician), {
        jobId,
        line,
      });
      planned.push({ id: record.id, line, partsAmount: partsAmount ?? '0.00' });
    }
    this.clock.after(15);
    const { record: estimate } = await new ProposeEstimateUseCase(...this.ports).execute(callerOf(desk), {
      jobId,
      ceilingAmount: null,
      lines: planned.map(({ id, line, partsAmount }) => ({
        workLineId: id,
        description: line.action,
        partsAmount,
        labourHours: ((line.minutes ?? 0) / 60).toFixed(2),
        partCondition: line.part?.condition ?? null,
      })),
    });
    await new RecordConsentUseCase(...this.ports).execute(callerOf(desk), {
      jobId,
      estimateId: estimate.id,
      name: null,
      consent: { answer: 'given', answeredAt: this.clock.after(20), way: 'byTelephone', declinedWork: null },
    });
    if (waitDays > 0) {
      const events = new RecordJobEventUseCase(...this.ports);
      await events.execute(callerOf(desk), {
        jobId,
        event: { kind: 'waitingForPart', happenedAt: this.clock.after(5), note: null },
      });
      await events.execute(callerOf(desk), {
        jobId,
        event: { kind: 'resumed', happenedAt: this.clock.after(waitDays * 1440), note: null },
      });
    }
    for (const { id, line } of planned) {
      const doneAt = this.clock.after(line.minutes ?? 30);
      await new CorrectWorkLineUseCase(...this.ports).execute(callerOf(technician), {
        id,
        expected: exactly(1),
        line: { ...line, state: 'done', technicianId: technician.id, doneAt },
        reason: 'done',
      });
    }
  }

  /** Asks what to do about the housing. Answers what is advised, and what no guard removes. */
  async assess(
    vehicleId: string,
    jobId: string,
  ): Promise<{ readonly id: string; readonly advised: string | null; readonly open: readonly string[] }> {
    this.clock.after(5);
    const computing = new ComputingHere();
    const { record } = await new AssessUseCase(...this.ports, new HashFingerprint(), computing).execute(
      callerOf(desk),
      { question: { ...usualQuestion, vehicleId, jobId } },
    );
    const { recommendation, options } = record.content.result;
    const named =
      'optionId' in recommendation
        ? recommendation.optionId
        : 'optionIds' in recommendation
          ? recommendation.optionIds[0]
          : undefined;
    const open = options.filter(({ kind, removedBy }) => kind === 'priced' && removedBy.length === 0);
    return { id: record.id, advised: named ?? null, open: open.map(({ optionId }) => optionId) };
  }

  async decide(assessmentId: string, chosen: string, reason: string | null): Promise<void> {
    await new DecideUseCase(...this.ports).execute(callerOf(desk), {
      assessmentId,
      decision: {
        chosen: chosen as DecisionChoice,
        decidedAt: this.clock.after(10),
        decidedBy: desk.id,
        reason: reason ?? 'as advised',
      },
    });
  }

  /** What it was, established by the check and the cure. */
  async confirmCause(jobId: string, causeId: string): Promise<void> {
    this.clock.after(2);
    const [work, clock] = this.ports;
    const content = await work.read(demoShopId, async (tx) => (await tx.jobs.find(jobId))?.content);
    if (content === undefined) throw new RangeError(`no job ${jobId}`);
    await new CorrectJobUseCase(work, clock).execute(callerOf(desk), {
      id: jobId,
      expected: exactly(1),
      job: { ...content, causeId },
      reason: 'confirmed by the check and the cure',
    });
  }

  async service(
    vehicleId: string,
    planItemId: string,
    km: string,
    doneAt = this.clock.after(20),
    note: string | null = null,
  ): Promise<void> {
    await new RecordServiceUseCase(...this.ports).execute(callerOf(desk), {
      identity: { vehicleId, planItemId },
      service: { doneAt, distanceKm: km, note },
    });
  }

  /** What the papers that came with a van say was done before. */
  async servicedBefore(vehicleId: string, km: number, days: number): Promise<void> {
    const doneAt = new Date(Date.parse(this.clock.now()) - days * 86_400_000).toISOString();
    for (const item of Object.values(demoPlanItems))
      await this.service(vehicleId, item, String(km - 50 * days), doneAt, 'as the papers of the van say');
  }

  /** Proves the repair point by point and releases the job. */
  async proveAndRelease(jobId: string, technician: DemoUser): Promise<void> {
    const { wanted } = await new ShowProofUseCase(this.work).execute(callerOf(technician), jobId);
    const points = wanted.some((point) => point === 'idle-stabilisation')
      ? wanted
      : [...wanted, 'idle-stabilisation'];
    for (const point of points) {
      await new RecordProofPointUseCase(...this.ports).execute(callerOf(technician), {
        jobId,
        point: {
          point,
          outcome: 'passed',
          testedAt: this.clock.after(2),
          testedBy: technician.id,
          notTestedBecause: null,
          recheckOn: null,
          note: null,
        },
      });
    }
    await new ReleaseJobUseCase(...this.ports).execute(callerOf(technician), {
      jobId,
      releasedAt: this.clock.after(10),
      releasedBy: technician.id,
      statement: 'Work done as consented, linkage and pedal checked, visual check and road test passed.',
    });
  }

  async settle(
    comebackId: string,
    word: {
      readonly state: 'confirmed' | 'refused';
      readonly attribution: 'wrongRootCause' | 'workmanship' | 'partDefective' | 'newUnrelatedFault' | null;
      readonly reason: string;
    },
  ): Promise<void> {
    this.clock.after(30);
    const [work, clock] = this.ports;
    await new SettleComebackUseCase(work, clock).execute(callerOf(owner), {
      id: comebackId,
      expected: exactly(1),
      note: null,
      ...word,
    });
  }
}
