import { Injectable, type BeforeApplicationShutdown, type OnModuleDestroy } from '@nestjs/common';

/** How the process ends: first it is no longer ready, then it takes nothing new, then it finishes what it has begun. */
@Injectable()
export class Drain implements OnModuleDestroy, BeforeApplicationShutdown {
  isDraining = false;
  isClosing = false;

  constructor(private readonly drainTime: number) {}

  /** Called first when the application ends; the wait lets whoever sends requests notice. */
  async onModuleDestroy(): Promise<void> {
    this.isDraining = true;
    await new Promise((resolve) => setTimeout(resolve, this.drainTime));
  }

  beforeApplicationShutdown(): void {
    this.isClosing = true;
  }
}
