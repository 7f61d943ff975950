import { monitorEventLoopDelay } from 'node:perf_hooks';
import { Counter, Gauge, Histogram, Registry } from 'prom-client';

/** Connections of the pool to the database, counted now. */
export interface PoolStanding {
  readonly used: number;
  readonly idle: number;
  /** requests that wait for a connection */
  readonly waiting: number;
}

/** One request as it is counted. */
export interface ObservedRequest {
  readonly method: string;
  /** template of the path, never the path; empty where no route was found */
  readonly route: string;
  readonly status: number;
  readonly seconds: number;
  /** problem type of a refusal or failure */
  readonly problem: string | undefined;
}

/** Boundaries that the OpenTelemetry conventions advise for the duration of requests, seconds. */
const durations = [0.005, 0.01, 0.025, 0.05, 0.075, 0.1, 0.25, 0.5, 0.75, 1, 2.5, 5, 7.5, 10];
const methods = new Set(['GET', 'HEAD', 'POST', 'PUT', 'PATCH', 'DELETE', 'OPTIONS', 'CONNECT', 'TRACE']);
const nanosecond = 1e-9;

/**
 * What the process tells about itself: names and labels of the OpenTelemetry semantic conventions for HTTP, database
 * clients and Node in the form Prometheus reads, times in seconds. No label holds an id, an address or a name.
 */
export class Metrics {
  private readonly registry = new Registry();
  private readonly duration = new Histogram({
    name: 'http_server_request_duration_seconds',
    help: 'Duration of HTTP requests, from their head to the end of the answer.',
    labelNames: ['http_request_method', 'http_route', 'http_response_status_code', 'error_type'],
    buckets: durations,
    registers: [this.registry],
  });
  private readonly active = new Gauge({
    name: 'http_server_active_requests',
    help: 'Requests that are being answered.',
    labelNames: ['http_request_method'],
    registers: [this.registry],
  });
  private readonly loopDelay = monitorEventLoopDelay({ resolution: 20 });

  constructor() {
    this.loopDelay.enable();
    this.watchProcess();
  }

  begin(method: string): void {
    this.active.inc({ http_request_method: methodLabel(method) });
  }

  end({ method, route, status, seconds, problem }: ObservedRequest): void {
    const http_request_method = methodLabel(method);
    this.active.dec({ http_request_method });
    this.duration.observe(
      {
        http_request_method,
        http_route: route,
        http_response_status_code: String(status),
        error_type: problem ?? '',
      },
      seconds,
    );
  }

  /** Tells of the connections to the database from now on. */
  watchPool(standing: () => PoolStanding): void {
    new Gauge({
      name: 'db_client_connection_count',
      help: 'Connections of the pool to the database.',
      labelNames: ['db_client_connection_state'],
      registers: [this.registry],
      collect() {
        const { used, idle } = standing();
        this.set({ db_client_connection_state: 'used' }, used);
        this.set({ db_client_connection_state: 'idle' }, idle);
      },
    });
    new Gauge({
      name: 'db_client_connection_pending_requests',
      help: 'Requests that wait for a connection to the database.',
      registers: [this.registry],
      collect() {
        this.set(standing().waiting);
      },
    });
  }

  /** The text that Prometheus reads, and its media type. */
  async text(): Promise<{ readonly type: string; readonly text: string }> {
    return { type: this.registry.contentType, text: await this.registry.metrics() };
  }

  close(): void {
    this.loopDelay.disable();
  }

  private watchProcess(): void {
    const registers = [this.registry];
    const { loopDelay } = this;
    new Gauge({
      name: 'nodejs_eventloop_delay_p99_seconds',
      help: 'Delay of the event loop that 99 of 100 samples since the last reading did not exceed.',
      registers,
      collect() {
        this.set(loopDelay.count === 0 ? 0 : loopDelay.percentile(99) * nanosecond);
        loopDelay.reset();
      },
    });
    new Gauge({
      name: 'process_memory_usage_bytes',
      help: 'Memory of the process that is in use.',
      registers,
      collect() {
        this.set(process.memoryUsage.rss());
      },
    });
    new Gauge({
      name: 'process_uptime_seconds',
      help: 'Time since the process began.',
      registers,
      collect() {
        this.set(process.uptime());
      },
    });
    new Counter({
      name: 'process_cpu_time_seconds_total',
      help: 'Processor time the process has used.',
      registers,
      collect() {
        const { user, system } = process.cpuUsage();
        this.reset();
        this.inc((user + system) / 1e6);
      },
    });
  }
}

const methodLabel = (method: string): string => (methods.has(method) ? method : '_OTHER');
