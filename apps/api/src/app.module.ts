import { Global, Module, type DynamicModule, type Provider } from '@nestjs/common';
import { ShopModule } from './modules/shop/shop.module.js';
import { CustomersModule } from './modules/customers/customers.module.js';
import { FittedPartsModule } from './modules/fitted-parts/fitted-parts.module.js';
import { OdometerModule } from './modules/odometer/odometer.module.js';
import { ComebacksModule } from './modules/comebacks/comebacks.module.js';
import { ComebackRatesModule } from './modules/comeback-rates/comeback-rates.module.js';
import { ComplaintsModule } from './modules/complaints/complaints.module.js';
import { JobsModule } from './modules/jobs/jobs.module.js';
import { FleetModule } from './modules/fleet/fleet.module.js';
import { PlanningModule } from './modules/planning/planning.module.js';
import { CalculationsModule } from './modules/calculations/calculations.module.js';
import { WearModule } from './modules/wear/wear.module.js';
import { HealthModule } from './http/operation/health.module.js';
import { AuditModule } from './modules/audit/audit.module.js';
import { WebhooksModule } from './modules/webhooks/webhooks.module.js';
import { EventsModule } from './modules/events/events.module.js';
import { IdempotencyModule } from './modules/idempotency/idempotency.module.js';
import { AssessmentsModule } from './modules/assessments/assessments.module.js';
import { BackTestsModule } from './modules/back-tests/back-tests.module.js';
import { DecisionsModule } from './modules/decisions/decisions.module.js';
import { LearnedTablesModule } from './modules/learned-tables/learned-tables.module.js';
import { OffersModule } from './modules/offers/offers.module.js';
import { CatalogueListsModule } from './modules/catalogue-lists/catalogue-lists.module.js';
import { ComponentTypesModule } from './modules/component-types/component-types.module.js';
import { CheckSheetsModule } from './modules/check-sheets/check-sheets.module.js';
import { LimitsModule } from './modules/limits/limits.module.js';
import { InstrumentsModule } from './modules/instruments/instruments.module.js';
import { InspectionsModule } from './modules/inspections/inspections.module.js';
import { ReadingsModule } from './modules/readings/readings.module.js';
import { GaugeStudiesModule } from './modules/gauge-studies/gauge-studies.module.js';
import { HistoryModule } from './modules/history/history.module.js';
import { PartsModule } from './modules/parts/parts.module.js';
import { VehiclesModule } from './modules/vehicles/vehicles.module.js';

/** Adapters and use cases that whoever starts the process has made, for every module to inject. */
@Global()
@Module({})
class PortsModule {
  static register(ports: readonly Provider[]): DynamicModule {
    return {
      module: PortsModule,
      providers: [...ports],
      exports: ports.map((port) => (typeof port === 'function' ? port : port.provide)),
    };
  }
}

/** Modules of the interface, one per resource. */
const resources: readonly (new () => object)[] = [
  HealthModule,
  IdempotencyModule,
  EventsModule,
  WebhooksModule,
  AuditModule,
  VehiclesModule,
  ShopModule,
  CustomersModule,
  FittedPartsModule,
  OdometerModule,
  ComebacksModule,
  ComebackRatesModule,
  ComplaintsModule,
  JobsModule,
  OffersModule,
  DecisionsModule,
  BackTestsModule,
  LearnedTablesModule,
  AssessmentsModule,
  FleetModule,
  CalculationsModule,
  WearModule,
  CatalogueListsModule,
  ComponentTypesModule,
  CheckSheetsModule,
  LimitsModule,
  InstrumentsModule,
  GaugeStudiesModule,
  InspectionsModule,
  ReadingsModule,
  HistoryModule,
  PartsModule,
  PlanningModule,
];

/** The whole interface over the given ports: at least `CredentialLookup` and `ReadinessProbe`. */
@Module({})
export class AppModule {
  static register(ports: readonly Provider[]): DynamicModule {
    return { module: AppModule, imports: [PortsModule.register(ports), ...resources] };
  }
}
