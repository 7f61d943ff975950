import { Global, Module, type DynamicModule } from '@nestjs/common';
import { Pager } from './answers/pager.js';
import { Drain } from './operation/drain.js';
import type { ApiSettings } from './settings.js';

/** What the shell gives to every resource module. */
@Global()
@Module({})
export class HttpModule {
  static register({ cursorKey, drainTime }: ApiSettings): DynamicModule {
    const providers = [
      { provide: Pager, useFactory: () => new Pager(cursorKey) },
      { provide: Drain, useFactory: () => new Drain(drainTime) },
    ];
    return { module: HttpModule, providers, exports: [Pager, Drain] };
  }
}
