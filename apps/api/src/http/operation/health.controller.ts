import { Controller, Get, Injectable } from '@nestjs/common';
import { EnumField } from '@endfloat/contracts';
import { Public } from '../access/allow.decorator.js';
import { Answer } from '../answers/answer.decorator.js';
import { HttpProblem } from '../problems/http-problem.js';
import { withRules } from '../requests/route-rules.js';
import { Drain } from './drain.js';
import { ReadinessProbe } from './readiness-probe.port.js';

/** Answer of both probes. */
export class Health {
  @EnumField({ description: 'How the process is.', values: ['ok'], enumName: 'HealthStatus', open: true })
  status!: 'ok';
}

/** Probes: without credentials, without versions, answered under any load. */
@Injectable()
@Controller()
export class HealthController {
  constructor(
    private readonly drain: Drain,
    private readonly probe: ReadinessProbe,
  ) {}

  @Get('livez')
  @Public()
  @withRules({ isProbe: true })
  @Answer(Health, { summary: 'Is the process alive? Touches nothing outside it.' })
  checkLiveness(): Health {
    return { status: 'ok' };
  }

  @Get('readyz')
  @Public()
  @withRules({ isProbe: true })
  @Answer(Health, { summary: 'Can the process take requests? Asks the database.' })
  async checkReadiness(): Promise<Health> {
    if (this.drain.isDraining) throw new HttpProblem('shutting-down', { headers: { 'retry-after': '1' } });
    const reason = await this.probe.check().catch(() => 'database');
    if (reason !== undefined)
      throw new HttpProblem('unavailable', {
        detail: `Not ready: ${reason}.`,
        headers: { 'retry-after': '2' },
      });
    return { status: 'ok' };
  }
}
