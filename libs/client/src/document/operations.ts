// Written from the interface document; change the routes, then: node .config/write-client.mjs
import type * as Schemas from './schemas.js';

/** Every operation of the interface: what it takes and what it answers. */
export interface Operations {
  /** List the keys of the shop (GET /v1/api-keys). */
  readonly listApiKeys: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ApiKeyList;
  };
  /** Make a key; it is shown this once (POST /v1/api-keys). */
  readonly createApiKey: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.CreateApiKeyRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.NewApiKeyResponse;
  };
  /** End a key for good (POST /v1/api-keys/{keyId}/revocations). */
  readonly revokeApiKey: {
    readonly path: {
      /** Id of the key. */
      readonly keyId: string;
    };
    readonly query: undefined;
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ApiKeyResponse;
  };
  /** Give a key a successor, shown this once; both work for a while (POST /v1/api-keys/{keyId}/rotations). */
  readonly rotateApiKey: {
    readonly path: {
      /** Id of the key. */
      readonly keyId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.RotateApiKeyRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.NewApiKeyResponse;
  };
  /** List inspections on arrival, the latest first (GET /v1/arrival-inspections). */
  readonly listArrivalInspections: {
    readonly path: undefined;
    readonly query: {
      /** Most items on a page, 1 to 200. */
      readonly pageSize?: string;
      /** Where to go on, taken from `nextCursor` of the page before. */
      readonly cursor?: string;
      /** Of this part. */
      readonly partId?: string;
      /** Of the piece with this serial. */
      readonly serial?: string;
      /** The list as it was known at this moment. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ArrivalInspectionPage;
  };
  /** Record what a part was like on arrival, by the sheet it is checked by on a vehicle (POST /v1/arrival-inspections). */
  readonly createArrivalInspection: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.RecordArrivalInspectionRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ArrivalInspectionResponse;
  };
  /** Show an inspection on arrival (GET /v1/arrival-inspections/{arrivalInspectionId}). */
  readonly getArrivalInspection: {
    readonly path: {
      /** Id of the inspection on arrival. */
      readonly arrivalInspectionId: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ArrivalInspectionResponse;
  };
  /** Correct an inspection on arrival; its readings are judged anew (POST /v1/arrival-inspections/{arrivalInspectionId}/corrections). */
  readonly correctArrivalInspection: {
    readonly path: {
      /** Id of the inspection on arrival. */
      readonly arrivalInspectionId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.CorrectArrivalInspectionRequest;
    readonly isConditional: true;
    readonly isCsv: false;
    readonly answer: Schemas.ArrivalInspectionResponse;
  };
  /** Every revision of an inspection on arrival, oldest first (GET /v1/arrival-inspections/{arrivalInspectionId}/revisions). */
  readonly listArrivalInspectionRevisions: {
    readonly path: {
      /** Id of the inspection on arrival. */
      readonly arrivalInspectionId: string;
    };
    readonly query: undefined;
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ArrivalInspectionRevisions;
  };
  /** List assessments without costs, newest first (GET /v1/assessment-summaries). */
  readonly listAssessmentSummaries: {
    readonly path: undefined;
    readonly query: {
      /** Most items on a page, 1 to 200. */
      readonly pageSize?: string;
      /** Where to go on, taken from `nextCursor` of the page before. */
      readonly cursor?: string;
      /** Assessments of this vehicle. */
      readonly vehicleId?: string;
      /** Assessments for this job. */
      readonly jobId?: string;
      /** The list as it was known at this moment. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.AssessmentSummaryPage;
  };
  /** Show what was recommended and why, without costs (GET /v1/assessment-summaries/{assessmentId}). */
  readonly getAssessmentSummary: {
    readonly path: {
      /** Id of the assessment. */
      readonly assessmentId: string;
    };
    readonly query: undefined;
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.AssessmentSummary;
  };
  /** List assessments of a vehicle or for a job, newest first (GET /v1/assessments). */
  readonly listAssessments: {
    readonly path: undefined;
    readonly query: {
      /** Most items on a page, 1 to 200. */
      readonly pageSize?: string;
      /** Where to go on, taken from `nextCursor` of the page before. */
      readonly cursor?: string;
      /** Assessments of this vehicle. */
      readonly vehicleId?: string;
      /** Assessments for this job. */
      readonly jobId?: string;
      /** The list as it was known at this moment. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.AssessmentPage;
  };
  /** Repair or replace: what every option costs in the end, and what to do (POST /v1/assessments). */
  readonly createAssessment: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.AssessRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.AssessmentResponse;
  };
  /** Assess what is sent along, history and prices included, without keeping anything (POST /v1/assessments/previews). */
  readonly previewAssessment: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.PreviewAssessmentRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.AssessmentAnswer;
  };
  /** Show an assessment as it was made (GET /v1/assessments/{assessmentId}). */
  readonly getAssessment: {
    readonly path: {
      /** Id of the assessment. */
      readonly assessmentId: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.AssessmentResponse;
  };
  /** List the decisions on an assessment, newest first (GET /v1/assessments/{assessmentId}/decisions). */
  readonly listDecisions: {
    readonly path: {
      /** Id of the assessment. */
      readonly assessmentId: string;
    };
    readonly query: {
      /** Most items on a page, 1 to 200. */
      readonly pageSize?: string;
      /** Where to go on, taken from `nextCursor` of the page before. */
      readonly cursor?: string;
      /** The list as it was known at this moment. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.DecisionPage;
  };
  /** Record what was chosen after an assessment, and why when it differs (POST /v1/assessments/{assessmentId}/decisions). */
  readonly createDecision: {
    readonly path: {
      /** Id of the assessment. */
      readonly assessmentId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.RecordDecisionRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.DecisionResponse;
  };
  /** Run an assessment again from its stored inputs and say whether every digit is equal (POST /v1/assessments/{assessmentId}/replays). */
  readonly replayAssessment: {
    readonly path: {
      /** Id of the assessment. */
      readonly assessmentId: string;
    };
    readonly query: undefined;
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ReplayResponse;
  };
  /** Who did what to which record, when and why (GET /v1/audit-entries). */
  readonly listAuditEntries: {
    readonly path: undefined;
    readonly query: {
      /** Most items on a page, 1 to 200. */
      readonly pageSize?: string;
      /** Where to go on, taken from `nextCursor` of the page before. */
      readonly cursor?: string;
      /** From this moment on; 31 days before the end where absent. */
      readonly from?: string;
      /** Before this moment; now where absent. */
      readonly until?: string;
      /** By this user only. */
      readonly userId?: string;
      /** Of this kind of record only. */
      readonly kind?: string;
      /** Of this record only. */
      readonly recordId?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.AuditEntryPage;
  };
  /** Did decisions turn out as predicted, and what would fixed rules have cost (GET /v1/back-tests). */
  readonly getBackTest: {
    readonly path: undefined;
    readonly query: {
      /** Kind of part; absent: all. */
      readonly componentType?: string;
      /** Jobs released from this moment on. */
      readonly releasedFrom?: string;
      /** Jobs released before this moment. */
      readonly releasedBefore?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.BackTestResponse;
  };
  /** Every calculation with its source, and its published cases computed anew at this request (GET /v1/calculations). */
  readonly listCalculations: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.CalculationList;
  };
  /** Cheapest age of planned replacement (POST /v1/calculations/age-replacements). */
  readonly calculateAgeReplacement: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.AgeReplacementRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.AgeReplacementResponse;
  };
  /** Base stock for a named service measure (POST /v1/calculations/base-stocks). */
  readonly calculateBaseStock: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.BaseStockRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.BaseStockResponse;
  };
  /** What one test says about one condition (POST /v1/calculations/bayes-posteriors). */
  readonly calculateBayesPosterior: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.BayesPosteriorRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.BayesPosteriorResponse;
  };
  /** Probability and verdict that a limit is met (POST /v1/calculations/conformances). */
  readonly calculateConformance: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.ConformanceRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ConformanceResponse;
  };
  /** Control chart of counts, shares, rates or gaps (POST /v1/calculations/control-charts). */
  readonly calculateControlChart: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.ControlChartRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ControlChartResponse;
  };
  /** Economic life, and a challenger (POST /v1/calculations/economic-lives). */
  readonly calculateEconomicLife: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.EconomicLifeRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.EconomicLifeResponse;
  };
  /** Expected cost of options by plain arithmetic, with the order and the break-even (POST /v1/calculations/expected-costs). */
  readonly calculateExpectedCosts: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.ExpectedCostsRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ExpectedCostsResponse;
  };
  /** Funnel limits about a target (POST /v1/calculations/funnel-limits). */
  readonly calculateFunnelLimits: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.FunnelLimitsRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.FunnelLimitsResponse;
  };
  /** How many more readings would settle it (POST /v1/calculations/further-reading-counts). */
  readonly calculateFurtherReadings: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.FurtherReadingCountRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.FurtherReadingCountResponse;
  };
  /** Gauge repeatability and reproducibility (POST /v1/calculations/gauge-studies). */
  readonly calculateGaugeStudy: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.GaugeStudyRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.GaugeStudyResponse;
  };
  /** Consumer and producer risk over a population (POST /v1/calculations/global-risks). */
  readonly calculateGlobalRisk: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.GlobalRiskRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.GlobalRiskResponse;
  };
  /** What the stated error of an instrument comes to at a reading (POST /v1/calculations/instrument-uncertainties). */
  readonly calculateInstrumentUncertainty: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.InstrumentUncertaintyRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.InstrumentUncertaintyResponse;
  };
  /** Forecast of intermittent demand (POST /v1/calculations/intermittent-forecasts). */
  readonly calculateIntermittentForecast: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.IntermittentForecastRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.IntermittentForecastResponse;
  };
  /** Kaplan-Meier curve of right-censored lives (POST /v1/calculations/kaplan-meier-curves). */
  readonly calculateSurvivalCurve: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.SurvivalCurveRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.SurvivalCurveResponse;
  };
  /** Weibull, lognormal or exponential distribution of lives (POST /v1/calculations/life-fits). */
  readonly calculateLifeFit: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.LifeFitRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.LifeFitResponse;
  };
  /** Log-rank test of two groups of lives (POST /v1/calculations/log-rank-tests). */
  readonly calculateLogRankTest: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.LogRankTestRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.LogRankTestResponse;
  };
  /** Mann-Kendall test of a trend (POST /v1/calculations/mann-kendall-tests). */
  readonly calculateMannKendallTest: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.PairedPointsRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.MannKendallResponse;
  };
  /** Mean cumulative function of recurring events (POST /v1/calculations/mean-cumulative-functions). */
  readonly calculateMeanCumulativeFunction: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.MeanCumulativeFunctionRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.MeanCumulativeFunctionResponse;
  };
  /** Lines of several units by restricted maximum likelihood (POST /v1/calculations/mixed-lines). */
  readonly calculateMixedLine: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.MixedLineRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.MixedLineResponse;
  };
  /** Stock for one period (POST /v1/calculations/newsvendors). */
  readonly calculateNewsvendor: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.NewsvendorRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.NewsvendorResponse;
  };
  /** Causes given findings, noisy-OR (POST /v1/calculations/noisy-or-posteriors). */
  readonly calculateNoisyOr: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.NoisyOrRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.NoisyOrResponse;
  };
  /** Events against what was expected (POST /v1/calculations/observed-to-expected-ratios). */
  readonly calculateObservedToExpected: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.ObservedToExpectedRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ObservedToExpectedResponse;
  };
  /** Power-law process of a repaired system (POST /v1/calculations/power-law-processes). */
  readonly calculatePowerLawProcess: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.PowerLawProcessRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.PowerLawProcessResponse;
  };
  /** Difference of two shares (POST /v1/calculations/proportion-differences). */
  readonly calculateProportionDifference: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.ProportionDifferenceRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ProportionDifferenceResponse;
  };
  /** A share with its interval (POST /v1/calculations/proportions). */
  readonly calculateProportion: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.ProportionRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ProportionResponse;
  };
  /** Mean, spread and quantiles of values (POST /v1/calculations/sample-summaries). */
  readonly calculateSampleSummary: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.SampleSummaryRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.SampleSummaryResponse;
  };
  /** Shares of like groups drawn together (POST /v1/calculations/shrinkages). */
  readonly calculateShrinkage: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.ShrinkageRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ShrinkageResponse;
  };
  /** Least-squares line with prediction and inverse prediction (POST /v1/calculations/straight-lines). */
  readonly calculateStraightLine: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.StraightLineRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.StraightLineResponse;
  };
  /** Theil-Sen slope (POST /v1/calculations/theil-sen-slopes). */
  readonly calculateTheilSenSlope: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.TheilSenRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.TheilSenResponse;
  };
  /** Trend tests of repaired systems (POST /v1/calculations/trend-tests). */
  readonly calculateTrendTests: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.TrendTestRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.TrendTestResponse;
  };
  /** Survival without a distribution from inspection data (POST /v1/calculations/turnbull-estimates). */
  readonly calculateTurnbullEstimate: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.TurnbullEstimateRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.TurnbullEstimateResponse;
  };
  /** Combined and expanded uncertainty (POST /v1/calculations/uncertainty-budgets). */
  readonly calculateUncertaintyBudget: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.UncertaintyBudgetRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.UncertaintyBudgetResponse;
  };
  /** The same quantity in another unit (POST /v1/calculations/unit-conversions). */
  readonly calculateUnitConversion: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.UnitConversionRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.UnitConversionResponse;
  };
  /** Check digit and model year of a vehicle number (POST /v1/calculations/vehicle-numbers). */
  readonly calculateVehicleNumber: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.VehicleNumberRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.VehicleNumberResponse;
  };
  /** Characteristic life for a known Weibull shape (POST /v1/calculations/weibayes-estimates). */
  readonly calculateWeibayes: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.WeibayesRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.WeibayesResponse;
  };
  /** List the causes a job may establish (GET /v1/causes). */
  readonly listCauses: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.CauseList;
  };
  /** List check sheets, newest first (GET /v1/check-sheets). */
  readonly listCheckSheets: {
    readonly path: undefined;
    readonly query: {
      /** Most items on a page, 1 to 200. */
      readonly pageSize?: string;
      /** Where to go on, taken from `nextCursor` of the page before. */
      readonly cursor?: string;
      /** Versions of this sheet, newest first. */
      readonly code?: string;
      /** The list as it was known at this moment. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.CheckSheetPage;
  };
  /** Record a check sheet; the same code again makes its next version (POST /v1/check-sheets). */
  readonly createCheckSheet: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.RecordCheckSheetRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.CheckSheetResponse;
  };
  /** Show a version of a check sheet: checks, units, limits, prerequisites, cautions (GET /v1/check-sheets/{checkSheetId}). */
  readonly showCheckSheet: {
    readonly path: {
      /** Id of a version of a check sheet. */
      readonly checkSheetId: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.CheckSheetResponse;
  };
  /** How comebacks change over time, by the chart that fits their number, with signals named (GET /v1/comeback-charts). */
  readonly getComebackChart: {
    readonly path: undefined;
    readonly query: {
      /** Windows, comebacks and sightings as they stood at this moment, by what is known now; now where left out. */
      readonly at?: string;
      /** The answer as it was known at this moment, worked out from the records themselves: for at most 20000 released jobs. */
      readonly asOf?: string;
      /** Jobs released from this moment on. */
      readonly from?: string;
      /** Jobs released before this moment. */
      readonly until?: string;
      /** Jobs of vehicles this customer owned when they were released. */
      readonly customerId?: string;
      /** Jobs with this symptom. */
      readonly symptom?: string;
      /** Jobs with work done on this kind of part. */
      readonly component?: string;
      /** Jobs with this action done. */
      readonly action?: Schemas.WorkAction;
      /** Count comebacks attributed to this process only; jobs whose comeback is not attributed yet are then in neither number. `diagnosis` by diagnosing technician and `fitting` by fitting technician where left out, else `anybody`. */
      readonly against?: Schemas.ComebacksAgainst;
      /** Dimension of `value`. */
      readonly by?: Schemas.RateDimension;
      /** Jobs of this value of the dimension `by`; those without a value where left out. */
      readonly value?: string;
      /** Chart: share of jobs that came back (p), comebacks per job (u), jobs between (g) or days between (t); the one that fits their number where left out. */
      readonly chart?: Schemas.ComebackChartKind;
      /** Periods of release, in the time of the shop. */
      readonly period?: Schemas.ChartPeriodName;
      /** How many first places the centre is estimated from; all where left out. */
      readonly baseline?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: true;
    readonly answer: Schemas.ComebackChartResponse;
  };
  /** Whether a difference is real: each group against what its own mix of jobs leads to expect (GET /v1/comeback-comparisons). */
  readonly getComebackComparison: {
    readonly path: undefined;
    readonly query: {
      /** Windows, comebacks and sightings as they stood at this moment, by what is known now; now where left out. */
      readonly at?: string;
      /** The answer as it was known at this moment, worked out from the records themselves: for at most 20000 released jobs. */
      readonly asOf?: string;
      /** Jobs released from this moment on. */
      readonly from?: string;
      /** Jobs released before this moment. */
      readonly until?: string;
      /** Jobs of vehicles this customer owned when they were released. */
      readonly customerId?: string;
      /** Jobs with this symptom. */
      readonly symptom?: string;
      /** Jobs with work done on this kind of part. */
      readonly component?: string;
      /** Jobs with this action done. */
      readonly action?: Schemas.WorkAction;
      /** Count comebacks attributed to this process only; jobs whose comeback is not attributed yet are then in neither number. `diagnosis` by diagnosing technician and `fitting` by fitting technician where left out, else `anybody`. */
      readonly against?: Schemas.ComebacksAgainst;
      /** What is told by: a symptom, its family, an action, the condition of a part used, a supplier, a kind of part, the customer, a fleet, the age of the vehicle, who diagnosed, who fitted (both for the owner only), or when the job was released. A job with several values stands under each. */
      readonly by: Schemas.RateDimension;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: true;
    readonly answer: Schemas.ComebackComparisonResponse;
  };
  /** What comebacks cost at the full door rate, by cause class or by time (GET /v1/comeback-costs). */
  readonly getComebackCosts: {
    readonly path: undefined;
    readonly query: {
      /** Cause class, or period in which the complaint was received. */
      readonly by?: Schemas.CostDimension;
      /** Windows, comebacks and sightings as they stood at this moment, by what is known now; now where left out. */
      readonly at?: string;
      /** The answer as it was known at this moment, worked out from the records themselves: for at most 20000 released jobs. */
      readonly asOf?: string;
      /** Complaints received from this moment on. */
      readonly from?: string;
      /** Complaints received before this moment. */
      readonly until?: string;
      /** Jobs of vehicles this customer owned when they were released. */
      readonly customerId?: string;
      /** Jobs with this symptom. */
      readonly symptom?: string;
      /** Jobs with work done on this kind of part. */
      readonly component?: string;
      /** Jobs with this action done. */
      readonly action?: Schemas.WorkAction;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: true;
    readonly answer: Schemas.ComebackCostsResponse;
  };
  /** How soon jobs come back: share not come back by days since release (GET /v1/comeback-curves). */
  readonly getComebackCurve: {
    readonly path: undefined;
    readonly query: {
      /** Windows, comebacks and sightings as they stood at this moment, by what is known now; now where left out. */
      readonly at?: string;
      /** The answer as it was known at this moment, worked out from the records themselves: for at most 20000 released jobs. */
      readonly asOf?: string;
      /** Jobs released from this moment on. */
      readonly from?: string;
      /** Jobs released before this moment. */
      readonly until?: string;
      /** Jobs of vehicles this customer owned when they were released. */
      readonly customerId?: string;
      /** Jobs with this symptom. */
      readonly symptom?: string;
      /** Jobs with work done on this kind of part. */
      readonly component?: string;
      /** Jobs with this action done. */
      readonly action?: Schemas.WorkAction;
      /** Count comebacks attributed to this process only; jobs whose comeback is not attributed yet are then in neither number. `diagnosis` by diagnosing technician and `fitting` by fitting technician where left out, else `anybody`. */
      readonly against?: Schemas.ComebacksAgainst;
      /** Dimension of `value`. */
      readonly by?: Schemas.RateDimension;
      /** Jobs of this value of the dimension `by`; those without a value where left out. */
      readonly value?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: true;
    readonly answer: Schemas.ComebackCurveResponse;
  };
  /** List the released jobs behind a rate, the latest first (GET /v1/comeback-jobs). */
  readonly listComebackJobs: {
    readonly path: undefined;
    readonly query: {
      /** Most items on a page, 1 to 200. */
      readonly pageSize?: string;
      /** Where to go on, taken from `nextCursor` of the page before. */
      readonly cursor?: string;
      /** Dimension of `value`. */
      readonly by?: Schemas.RateDimension;
      /** Jobs of this value of the dimension `by`; those without a value where left out. */
      readonly value?: string;
      /** Jobs that count so: came back, did not, window still running, never seen since, or not attributed yet. */
      readonly outcome?: Schemas.JobOutcome;
      /** Windows, comebacks and sightings as they stood at this moment, by what is known now; now where left out. */
      readonly at?: string;
      /** The answer as it was known at this moment, worked out from the records themselves: for at most 20000 released jobs. */
      readonly asOf?: string;
      /** Jobs released from this moment on. */
      readonly from?: string;
      /** Jobs released before this moment. */
      readonly until?: string;
      /** Jobs of vehicles this customer owned when they were released. */
      readonly customerId?: string;
      /** Jobs with this symptom. */
      readonly symptom?: string;
      /** Jobs with work done on this kind of part. */
      readonly component?: string;
      /** Jobs with this action done. */
      readonly action?: Schemas.WorkAction;
      /** Count comebacks attributed to this process only; jobs whose comeback is not attributed yet are then in neither number. `diagnosis` by diagnosing technician and `fitting` by fitting technician where left out, else `anybody`. */
      readonly against?: Schemas.ComebacksAgainst;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: true;
    readonly answer: Schemas.ComebackJobPage;
  };
  /** Which repairs come back, by one dimension, with counts, interval and cost (GET /v1/comeback-rates). */
  readonly getComebackRates: {
    readonly path: undefined;
    readonly query: {
      /** Windows, comebacks and sightings as they stood at this moment, by what is known now; now where left out. */
      readonly at?: string;
      /** The answer as it was known at this moment, worked out from the records themselves: for at most 20000 released jobs. */
      readonly asOf?: string;
      /** Jobs released from this moment on. */
      readonly from?: string;
      /** Jobs released before this moment. */
      readonly until?: string;
      /** Jobs of vehicles this customer owned when they were released. */
      readonly customerId?: string;
      /** Jobs with this symptom. */
      readonly symptom?: string;
      /** Jobs with work done on this kind of part. */
      readonly component?: string;
      /** Jobs with this action done. */
      readonly action?: Schemas.WorkAction;
      /** Count comebacks attributed to this process only; jobs whose comeback is not attributed yet are then in neither number. `diagnosis` by diagnosing technician and `fitting` by fitting technician where left out, else `anybody`. */
      readonly against?: Schemas.ComebacksAgainst;
      /** What is told by: a symptom, its family, an action, the condition of a part used, a supplier, a kind of part, the customer, a fleet, the age of the vehicle, who diagnosed, who fitted (both for the owner only), or when the job was released. A job with several values stands under each. One rate over all jobs where left out. */
      readonly by?: Schemas.RateDimension;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: true;
    readonly answer: Schemas.ComebackRatesResponse;
  };
  /** List links between later complaints and earlier released jobs (GET /v1/comebacks). */
  readonly listComebacks: {
    readonly path: undefined;
    readonly query: {
      /** Most items on a page, 1 to 200. */
      readonly pageSize?: string;
      /** Where to go on, taken from `nextCursor` of the page before. */
      readonly cursor?: string;
      /** Links of this complaint. */
      readonly complaintId?: string;
      /** Links to this earlier job. */
      readonly jobId?: string;
      /** Links of this vehicle. */
      readonly vehicleId?: string;
      /** Links in this state. */
      readonly state?: Schemas.ComebackState;
      /** The list as it was known at this moment. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ComebackPage;
  };
  /** Link a complaint to an earlier job that no rule proposed (POST /v1/comebacks). */
  readonly createComeback: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.LinkComebackRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ComebackResponse;
  };
  /** Show a comeback: what it counts for and what it cost (GET /v1/comebacks/{comebackId}). */
  readonly getComeback: {
    readonly path: {
      /** Id of the link. */
      readonly comebackId: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ComebackDetailResponse;
  };
  /** Confirm, refuse or attribute a comeback; earlier words on it stay readable (POST /v1/comebacks/{comebackId}/corrections). */
  readonly correctComeback: {
    readonly path: {
      /** Id of the link. */
      readonly comebackId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.SettleComebackRequest;
    readonly isConditional: true;
    readonly isCsv: false;
    readonly answer: Schemas.ComebackResponse;
  };
  /** List every word on a comeback, the oldest first (GET /v1/comebacks/{comebackId}/revisions). */
  readonly listComebackRevisions: {
    readonly path: {
      /** Id of the link. */
      readonly comebackId: string;
    };
    readonly query: undefined;
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ComebackRevisionsResponse;
  };
  /** List complaints, latest first (GET /v1/complaints). */
  readonly listComplaints: {
    readonly path: undefined;
    readonly query: {
      /** Most items on a page, 1 to 200. */
      readonly pageSize?: string;
      /** Where to go on, taken from `nextCursor` of the page before. */
      readonly cursor?: string;
      /** Complaints about this vehicle. */
      readonly vehicleId?: string;
      /** Complaints dealt with in this job. */
      readonly jobId?: string;
      /** The list as it was known at this moment. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ComplaintPage;
  };
  /** Take a complaint; earlier jobs it may be a comeback of are proposed (POST /v1/complaints). */
  readonly createComplaint: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.TakeComplaintRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ComplaintResponse;
  };
  /** Show a complaint with its comeback links (GET /v1/complaints/{complaintId}). */
  readonly getComplaint: {
    readonly path: {
      /** Id of the complaint. */
      readonly complaintId: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ComplaintResponse;
  };
  /** Correct a complaint: a symptom coded wrongly, a question asked later (POST /v1/complaints/{complaintId}/corrections). */
  readonly correctComplaint: {
    readonly path: {
      /** Id of the complaint. */
      readonly complaintId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.CorrectComplaintRequest;
    readonly isConditional: true;
    readonly isCsv: false;
    readonly answer: Schemas.ComplaintResponse;
  };
  /** Whether parts of one supplier, condition, customer or application last as long as those of another (GET /v1/component-life-comparisons). */
  readonly compareComponentLives: {
    readonly path: undefined;
    readonly query: {
      /** Kind of part. */
      readonly componentType: string;
      /** Where on the vehicle. */
      readonly position?: string;
      /** What ends a life: the part comes off (`replaced`, the usual), or it reaches its limit, known to lie between two inspections (`worn`). */
      readonly ends?: Schemas.LifeEnd;
      /** Whether lives are counted in days (the usual) or in km. */
      readonly scale?: Schemas.LifeScale;
      /** End of the observation; now where absent. */
      readonly until?: string;
      /** The answer as it was known at this moment. */
      readonly asOf?: string;
      /** By what the two groups of parts are told apart. */
      readonly by: Schemas.LifeGrouping;
      /** First group: supplier, condition, id of the customer, or application. */
      readonly first: string;
      /** Second group. */
      readonly second: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.LivesComparisonResponse;
  };
  /** How long parts of a kind last: survivors by age, Weibull and lognormal lives, B-lives (GET /v1/component-lives). */
  readonly getComponentLives: {
    readonly path: undefined;
    readonly query: {
      /** Kind of part. */
      readonly componentType: string;
      /** Where on the vehicle. */
      readonly position?: string;
      /** What ends a life: the part comes off (`replaced`, the usual), or it reaches its limit, known to lie between two inspections (`worn`). */
      readonly ends?: Schemas.LifeEnd;
      /** Whether lives are counted in days (the usual) or in km. */
      readonly scale?: Schemas.LifeScale;
      /** End of the observation; now where absent. */
      readonly until?: string;
      /** The answer as it was known at this moment. */
      readonly asOf?: string;
      /** Vehicles while this customer owned them. */
      readonly customerId?: string;
      /** Vehicles with this application, the shop's own word. */
      readonly application?: string;
      /** Parts of this supplier. */
      readonly supplier?: string;
      /** Parts in this condition when fitted. */
      readonly condition?: Schemas.FittedCondition;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: true;
    readonly answer: Schemas.ComponentLivesResponse;
  };
  /** List kinds of part: the shipped ones and the shop's own (GET /v1/component-types). */
  readonly listComponentTypes: {
    readonly path: undefined;
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ComponentTypeList;
  };
  /** Add a kind of part of the shop's own (POST /v1/component-types). */
  readonly createComponentType: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.RecordComponentTypeRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ComponentTypeResponse;
  };
  /** Show a kind of part with what can be measured on it (GET /v1/component-types/{componentTypeCode}). */
  readonly showComponentType: {
    readonly path: {
      /** Id of the kind of part. */
      readonly componentTypeCode: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ComponentTypeResponse;
  };
  /** List cores: owed, expiring soon, sent back, credited (GET /v1/cores). */
  readonly listCores: {
    readonly path: undefined;
    readonly query: {
      /** Most items on a page, 1 to 200. */
      readonly pageSize?: string;
      /** Where to go on, taken from `nextCursor` of the page before. */
      readonly cursor?: string;
      /** Cores in this state. */
      readonly state?: Schemas.CoreState;
      /** Cores owed to this supplier. */
      readonly supplier?: string;
      /** Cores not sent back whose last day comes within so many days. */
      readonly dueWithinDays?: string;
      /** The list as it was known at this moment. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: true;
    readonly answer: Schemas.CorePage;
  };
  /** Record an old part that a supplier wants back (POST /v1/cores). */
  readonly createCore: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.RecordCoreRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.CoreResponse;
  };
  /** Show a core, now or as it was known at a moment (GET /v1/cores/{coreId}). */
  readonly getCore: {
    readonly path: {
      /** Id of the core. */
      readonly coreId: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.CoreResponse;
  };
  /** Correct what is said about a core (POST /v1/cores/{coreId}/corrections). */
  readonly correctCore: {
    readonly path: {
      /** Id of the core. */
      readonly coreId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.CorrectCoreRequest;
    readonly isConditional: true;
    readonly isCsv: false;
    readonly answer: Schemas.CoreResponse;
  };
  /** Every revision of a core, oldest first; each step is one (GET /v1/cores/{coreId}/revisions). */
  readonly listCoreRevisions: {
    readonly path: {
      /** Id of the core. */
      readonly coreId: string;
    };
    readonly query: undefined;
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.CoreRevisions;
  };
  /** The next step of a core: sent back, looked at, accepted, refused, credited (POST /v1/cores/{coreId}/steps). */
  readonly createCoreStep: {
    readonly path: {
      /** Id of the core. */
      readonly coreId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.RecordCoreStepRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.CoreResponse;
  };
  /** List customers; a fleet manager sees their own (GET /v1/customers). */
  readonly listCustomers: {
    readonly path: undefined;
    readonly query: {
      /** Most items on a page, 1 to 200. */
      readonly pageSize?: string;
      /** Where to go on, taken from `nextCursor` of the page before. */
      readonly cursor?: string;
      /** The list as it was known at this moment. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.CustomerPage;
  };
  /** Record a customer (POST /v1/customers). */
  readonly createCustomer: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.RecordCustomerRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.CustomerResponse;
  };
  /** Show a customer, now or as it was known at a moment (GET /v1/customers/{customerId}). */
  readonly getCustomer: {
    readonly path: {
      /** Id of the customer. */
      readonly customerId: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.CustomerResponse;
  };
  /** Correct a customer; what was recorded before stays readable (POST /v1/customers/{customerId}/corrections). */
  readonly correctCustomer: {
    readonly path: {
      /** Id of the customer. */
      readonly customerId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.CorrectCustomerRequest;
    readonly isConditional: true;
    readonly isCsv: false;
    readonly answer: Schemas.CustomerResponse;
  };
  /** Erase a customer's personal data; vehicles and their history stay (POST /v1/customers/{customerId}/erasures). */
  readonly createErasure: {
    readonly path: {
      /** Id of the customer. */
      readonly customerId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.EraseCustomerRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ErasureResponse;
  };
  /** Show a decision, now or as it was known at a moment (GET /v1/decisions/{decisionId}). */
  readonly getDecision: {
    readonly path: {
      /** Id of the decision. */
      readonly decisionId: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.DecisionResponse;
  };
  /** Correct a decision (POST /v1/decisions/{decisionId}/corrections). */
  readonly correctDecision: {
    readonly path: {
      /** Id of the decision. */
      readonly decisionId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.CorrectDecisionRequest;
    readonly isConditional: true;
    readonly isCsv: false;
    readonly answer: Schemas.DecisionResponse;
  };
  /** Every revision of a decision, oldest first (GET /v1/decisions/{decisionId}/revisions). */
  readonly listDecisionRevisions: {
    readonly path: {
      /** Id of the decision. */
      readonly decisionId: string;
    };
    readonly query: undefined;
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.DecisionRevisions;
  };
  /** Show a delivery, now or as it was known at a moment (GET /v1/deliveries/{deliveryId}). */
  readonly getDelivery: {
    readonly path: {
      /** Id of the delivery. */
      readonly deliveryId: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.DeliveryResponse;
  };
  /** Correct a delivery, such as the day it came (POST /v1/deliveries/{deliveryId}/corrections). */
  readonly correctDelivery: {
    readonly path: {
      /** Id of the delivery. */
      readonly deliveryId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.CorrectDeliveryRequest;
    readonly isConditional: true;
    readonly isCsv: false;
    readonly answer: Schemas.DeliveryResponse;
  };
  /** Every revision of a delivery, oldest first (GET /v1/deliveries/{deliveryId}/revisions). */
  readonly listDeliveryRevisions: {
    readonly path: {
      /** Id of the delivery. */
      readonly deliveryId: string;
    };
    readonly query: undefined;
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.DeliveryRevisions;
  };
  /** What is due and overdue on each vehicle by the service plan, the longest overdue first (GET /v1/due-services). */
  readonly listDueServices: {
    readonly path: undefined;
    readonly query: {
      /** Most items on a page, 1 to 200. */
      readonly pageSize?: string;
      /** Where to go on, taken from `nextCursor` of the page before. */
      readonly cursor?: string;
      /** Vehicles this customer owns now. */
      readonly customerId?: string;
      /** One vehicle. */
      readonly vehicleId?: string;
      /** Days ahead that are soon. */
      readonly withinDays?: string;
      /** Km ahead that are soon. */
      readonly withinKm?: string;
      /** What was due at this moment, as it was known then. */
      readonly asOf?: string;
      /** Standings, separated by commas; all where absent. */
      readonly standing?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: true;
    readonly answer: Schemas.DueServicePage;
  };
  /** Read what happened since a place in the feed (GET /v1/events). */
  readonly listEvents: {
    readonly path: undefined;
    readonly query: {
      /** Most items on a page, 1 to 200. */
      readonly pageSize?: string;
      /** Where to go on: `after` of the answer before. The beginning of the feed where absent. */
      readonly after?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.EventStretchResponse;
  };
  /** List fitted parts of a vehicle, of a kind, or of a batch (GET /v1/fitted-parts). */
  readonly listFittedParts: {
    readonly path: undefined;
    readonly query: {
      /** Most items on a page, 1 to 200. */
      readonly pageSize?: string;
      /** Where to go on, taken from `nextCursor` of the page before. */
      readonly cursor?: string;
      /** Parts of this vehicle. */
      readonly vehicleId?: string;
      /** Parts of this kind. */
      readonly componentType?: string;
      /** Parts of this batch: which vehicles got it. */
      readonly batch?: string;
      /** The list as it was known at this moment. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.FittedPartPage;
  };
  /** Record a part that is, or was, on a vehicle (POST /v1/fitted-parts). */
  readonly createFittedPart: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.RecordFittedPartRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.FittedPartResponse;
  };
  /** Show a fitted part, now or as it was known at a moment (GET /v1/fitted-parts/{fittedPartId}). */
  readonly getFittedPart: {
    readonly path: {
      /** Id of the fitted part. */
      readonly fittedPartId: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.FittedPartResponse;
  };
  /** Correct what is recorded about a fitted part, its removal included (POST /v1/fitted-parts/{fittedPartId}/corrections). */
  readonly correctFittedPart: {
    readonly path: {
      /** Id of the fitted part. */
      readonly fittedPartId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.CorrectFittedPartRequest;
    readonly isConditional: true;
    readonly isCsv: false;
    readonly answer: Schemas.FittedPartResponse;
  };
  /** Wear of one fitted part: trend, distance to the limit, chance of reaching it (GET /v1/fitted-parts/{fittedPartId}/wear). */
  readonly getFittedPartWear: {
    readonly path: {
      /** Id of the fitted part. */
      readonly fittedPartId: string;
    };
    readonly query: {
      /** One characteristic; all that wear where left out. */
      readonly characteristic?: string;
      /** Chance of reaching the limit within so many km from now. */
      readonly withinKm?: string;
      /** Chance of reaching it before this day; not together with withinKm. */
      readonly until?: string;
      /** As it was known at this moment. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.PartWearResponse;
  };
  /** Whether replacements, complaints or comebacks recur more often in one fleet than in another (GET /v1/fleet-comparisons). */
  readonly compareFleetRecurrences: {
    readonly path: undefined;
    readonly query: {
      /** What recurs: parts of a kind that came off, complaints, or complaints confirmed as comebacks; replacements where absent. */
      readonly of?: Schemas.FleetEventKind;
      /** Kind of part; needed for replacements. Of complaints: those that point to it, or whose job worked on it; of comebacks: those of jobs that worked on it. */
      readonly componentType?: string;
      /** Complaints in which this symptom is present. */
      readonly symptom?: string;
      /** End of the observation; now where absent. */
      readonly until?: string;
      /** The answer as it was known at this moment. */
      readonly asOf?: string;
      /** By what the two fleets are told apart. */
      readonly by: Schemas.FleetGrouping;
      /** First fleet: id of the customer, or the application. */
      readonly first: string;
      /** Second fleet. */
      readonly second: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.FleetComparisonResponse;
  };
  /** What vehicles cost within a time: work, parts, days off the road by reason, cost of a km; the dearest first (GET /v1/fleet-costs). */
  readonly listFleetCosts: {
    readonly path: undefined;
    readonly query: {
      /** Most items on a page, 1 to 200. */
      readonly pageSize?: string;
      /** Where to go on, taken from `nextCursor` of the page before. */
      readonly cursor?: string;
      /** Vehicles this customer owns now. */
      readonly customerId?: string;
      /** Beginning of the time; a year before its end where absent. */
      readonly from?: string;
      /** End of the time; now where absent. */
      readonly until?: string;
      /** The answer as it was known at this moment. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: true;
    readonly answer: Schemas.FleetCostsPage;
  };
  /** Take over the replacement history of a fleet: all of it, or nothing (POST /v1/fleet-histories). */
  readonly createFleetHistory: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.ImportFleetHistoryRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ImportedFleetHistoryResponse;
  };
  /** How often parts are replaced, or complaints and comebacks recur, per vehicle by its age (GET /v1/fleet-recurrences). */
  readonly getFleetRecurrence: {
    readonly path: undefined;
    readonly query: {
      /** What recurs: parts of a kind that came off, complaints, or complaints confirmed as comebacks; replacements where absent. */
      readonly of?: Schemas.FleetEventKind;
      /** Kind of part; needed for replacements. Of complaints: those that point to it, or whose job worked on it; of comebacks: those of jobs that worked on it. */
      readonly componentType?: string;
      /** Complaints in which this symptom is present. */
      readonly symptom?: string;
      /** End of the observation; now where absent. */
      readonly until?: string;
      /** The answer as it was known at this moment. */
      readonly asOf?: string;
      /** Vehicles while this customer owned them; all of the shop where absent. */
      readonly customerId?: string;
      /** Vehicles with this application, the shop's own word. */
      readonly application?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: true;
    readonly answer: Schemas.FleetRecurrenceResponse;
  };
  /** List gauge studies, the latest first (GET /v1/gauge-studies). */
  readonly listGaugeStudies: {
    readonly path: undefined;
    readonly query: {
      /** Most items on a page, 1 to 200. */
      readonly pageSize?: string;
      /** Where to go on, taken from `nextCursor` of the page before. */
      readonly cursor?: string;
      /** Studies of this characteristic. */
      readonly characteristic?: string;
      /** Studies with this kind of instrument. */
      readonly instrumentKind?: Schemas.InstrumentKind;
      /** As it was known at this moment. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.GaugeStudyPage;
  };
  /** Record a gauge study of one characteristic with one kind of instrument (POST /v1/gauge-studies). */
  readonly createGaugeStudy: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.RecordGaugeStudyRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.StoredGaugeStudyResponse;
  };
  /** Show a gauge study, now or as it was known at a moment (GET /v1/gauge-studies/{gaugeStudyId}). */
  readonly showGaugeStudy: {
    readonly path: {
      /** Id of the study. */
      readonly gaugeStudyId: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.StoredGaugeStudyResponse;
  };
  /** Correct a gauge study, or take it out of use (POST /v1/gauge-studies/{gaugeStudyId}/corrections). */
  readonly correctGaugeStudy: {
    readonly path: {
      /** Id of the study. */
      readonly gaugeStudyId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.CorrectGaugeStudyRequest;
    readonly isConditional: true;
    readonly isCsv: false;
    readonly answer: Schemas.StoredGaugeStudyResponse;
  };
  /** Every revision of a gauge study, oldest first (GET /v1/gauge-studies/{gaugeStudyId}/revisions). */
  readonly listGaugeStudyRevisions: {
    readonly path: {
      /** Id of the study. */
      readonly gaugeStudyId: string;
    };
    readonly query: undefined;
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.GaugeStudyRevisions;
  };
  /** List inspections of a vehicle or a job, newest first (GET /v1/inspections). */
  readonly listInspections: {
    readonly path: undefined;
    readonly query: {
      /** Most items on a page, 1 to 200. */
      readonly pageSize?: string;
      /** Where to go on, taken from `nextCursor` of the page before. */
      readonly cursor?: string;
      /** Inspections of this vehicle. */
      readonly vehicleId?: string;
      /** Inspections of this job. */
      readonly jobId?: string;
      /** The list as it was known at this moment. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.InspectionPage;
  };
  /** Begin an inspection by a check sheet (POST /v1/inspections). */
  readonly createInspection: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.RecordInspectionRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.InspectionResponse;
  };
  /** Show an inspection, now or as it was known at a moment (GET /v1/inspections/{inspectionId}). */
  readonly showInspection: {
    readonly path: {
      /** Id of the inspection. */
      readonly inspectionId: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.InspectionResponse;
  };
  /** Where every check of an inspection stands, with readings and verdicts (GET /v1/inspections/{inspectionId}/checks). */
  readonly showInspectionChecks: {
    readonly path: {
      /** Id of the inspection. */
      readonly inspectionId: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.InspectionProgressResponse;
  };
  /** Correct what is said about an inspection, e.g. that as found was never taken (POST /v1/inspections/{inspectionId}/corrections). */
  readonly correctInspection: {
    readonly path: {
      /** Id of the inspection. */
      readonly inspectionId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.CorrectInspectionRequest;
    readonly isConditional: true;
    readonly isCsv: false;
    readonly answer: Schemas.InspectionResponse;
  };
  /** Which check comes next, with what, why, and what to watch out for (GET /v1/inspections/{inspectionId}/next-check). */
  readonly showNextCheck: {
    readonly path: {
      /** Id of the inspection. */
      readonly inspectionId: string;
    };
    readonly query: undefined;
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.NextCheckResponse;
  };
  /** Record up to a thousand readings, all or none (POST /v1/inspections/{inspectionId}/reading-sets). */
  readonly createReadingSet: {
    readonly path: {
      /** Id of the inspection. */
      readonly inspectionId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.RecordReadingSetRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ReadingSetResponse;
  };
  /** Record a reading and judge it (POST /v1/inspections/{inspectionId}/readings). */
  readonly createReading: {
    readonly path: {
      /** Id of the inspection. */
      readonly inspectionId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.RecordReadingRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ReadingResponse;
  };
  /** Every revision of an inspection, oldest first (GET /v1/inspections/{inspectionId}/revisions). */
  readonly listInspectionRevisions: {
    readonly path: {
      /** Id of the inspection. */
      readonly inspectionId: string;
    };
    readonly query: undefined;
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.InspectionRevisions;
  };
  /** List instruments with the state of their calibration (GET /v1/instruments). */
  readonly listInstruments: {
    readonly path: undefined;
    readonly query: {
      /** Most items on a page, 1 to 200. */
      readonly pageSize?: string;
      /** Where to go on, taken from `nextCursor` of the page before. */
      readonly cursor?: string;
      /** Instruments of this kind. */
      readonly kind?: Schemas.InstrumentKind;
      /** As known, and as it stood, at this moment. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.InstrumentPage;
  };
  /** Record an instrument (POST /v1/instruments). */
  readonly createInstrument: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.RecordInstrumentRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.InstrumentResponse;
  };
  /** Show an instrument, now or as it was known at a moment (GET /v1/instruments/{instrumentId}). */
  readonly showInstrument: {
    readonly path: {
      /** Id of the instrument. */
      readonly instrumentId: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.InstrumentResponse;
  };
  /** Calibrations of an instrument, and whether they hold (GET /v1/instruments/{instrumentId}/calibrations). */
  readonly listCalibrations: {
    readonly path: {
      /** Id of the instrument. */
      readonly instrumentId: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.CalibrationList;
  };
  /** Record that an instrument was calibrated (POST /v1/instruments/{instrumentId}/calibrations). */
  readonly createCalibration: {
    readonly path: {
      /** Id of the instrument. */
      readonly instrumentId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.RecordCalibrationRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.CalibrationResponse;
  };
  /** Verdicts, assessments and decisions that rested on an instrument since its last passed calibration (GET /v1/instruments/{instrumentId}/consequences). */
  readonly listInstrumentConsequences: {
    readonly path: {
      /** Id of the instrument. */
      readonly instrumentId: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.InstrumentConsequences;
  };
  /** Correct what is recorded about an instrument, its retirement included (POST /v1/instruments/{instrumentId}/corrections). */
  readonly correctInstrument: {
    readonly path: {
      /** Id of the instrument. */
      readonly instrumentId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.CorrectInstrumentRequest;
    readonly isConditional: true;
    readonly isCsv: false;
    readonly answer: Schemas.InstrumentResponse;
  };
  /** Every revision of an instrument, oldest first (GET /v1/instruments/{instrumentId}/revisions). */
  readonly listInstrumentRevisions: {
    readonly path: {
      /** Id of the instrument. */
      readonly instrumentId: string;
    };
    readonly query: undefined;
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.InstrumentRevisions;
  };
  /** Verdicts that rested on an instrument since its last passed calibration (GET /v1/instruments/{instrumentId}/verdicts). */
  readonly listInstrumentVerdicts: {
    readonly path: {
      /** Id of the instrument. */
      readonly instrumentId: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.InstrumentVerdictList;
  };
  /** List jobs, latest first (GET /v1/jobs). */
  readonly listJobs: {
    readonly path: undefined;
    readonly query: {
      /** Most items on a page, 1 to 200. */
      readonly pageSize?: string;
      /** Where to go on, taken from `nextCursor` of the page before. */
      readonly cursor?: string;
      /** Jobs of this vehicle. */
      readonly vehicleId?: string;
      /** Jobs assigned to this user. */
      readonly assignedTo?: string;
      /** The list as it was known at this moment. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.JobPage;
  };
  /** Open a job: one visit with the complaints it deals with (POST /v1/jobs). */
  readonly createJob: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.OpenJobRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.JobResponse;
  };
  /** Show a job with its state, now or as it was known at a moment (GET /v1/jobs/{jobId}). */
  readonly getJob: {
    readonly path: {
      /** Id of the job. */
      readonly jobId: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.JobResponse;
  };
  /** Record the customer's answer to one version of the estimate (POST /v1/jobs/{jobId}/consents). */
  readonly createConsent: {
    readonly path: {
      /** Id of the job. */
      readonly jobId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.RecordConsentRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ConsentResponse;
  };
  /** Correct a job: whom it is assigned to, the cause once it is established (POST /v1/jobs/{jobId}/corrections). */
  readonly correctJob: {
    readonly path: {
      /** Id of the job. */
      readonly jobId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.CorrectJobRequest;
    readonly isConditional: true;
    readonly isCsv: false;
    readonly answer: Schemas.JobResponse;
  };
  /** Versions of the estimate with the answers to them (GET /v1/jobs/{jobId}/estimates). */
  readonly listEstimates: {
    readonly path: {
      /** Id of the job. */
      readonly jobId: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.EstimatesResponse;
  };
  /** Price the work of a job; every proposal is a new version (POST /v1/jobs/{jobId}/estimates). */
  readonly createEstimate: {
    readonly path: {
      /** Id of the job. */
      readonly jobId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.ProposeEstimateRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.EstimateResponse;
  };
  /** Record that a job waits, goes on, is finished or closed (POST /v1/jobs/{jobId}/events). */
  readonly createJobEvent: {
    readonly path: {
      /** Id of the job. */
      readonly jobId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.RecordJobEventRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.JobEventResponse;
  };
  /** What was tested, and what a release still wants (GET /v1/jobs/{jobId}/proof). */
  readonly getProof: {
    readonly path: {
      /** Id of the job. */
      readonly jobId: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ProofResponse;
  };
  /** Record one point of the proof; a point tried again is a new record (POST /v1/jobs/{jobId}/proof-points). */
  readonly createProofPoint: {
    readonly path: {
      /** Id of the job. */
      readonly jobId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.RecordProofPointRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ProofPointResponse;
  };
  /** Release a job: the van may leave, the watch window starts (POST /v1/jobs/{jobId}/releases). */
  readonly createRelease: {
    readonly path: {
      /** Id of the job. */
      readonly jobId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.ReleaseJobRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ReleaseResponse;
  };
  /** Hand a van with a dangerous finding over unrepaired, not for the road, with the warning given (POST /v1/jobs/{jobId}/unrepaired-handovers). */
  readonly createUnrepairedHandover: {
    readonly path: {
      /** Id of the job. */
      readonly jobId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.HandOverUnrepairedRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.UnrepairedHandoverResponse;
  };
  /** Work of a job (GET /v1/jobs/{jobId}/work-lines). */
  readonly listWorkLines: {
    readonly path: {
      /** Id of the job. */
      readonly jobId: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.WorkLineList;
  };
  /** Plan or record work; what is done needs consent (POST /v1/jobs/{jobId}/work-lines). */
  readonly createWorkLine: {
    readonly path: {
      /** Id of the job. */
      readonly jobId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.RecordWorkLineRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.WorkLineResponse;
  };
  /** Tables of repair or replace, and what taught them (GET /v1/learned-tables/decision). */
  readonly getDecisionTables: {
    readonly path: undefined;
    readonly query: {
      /** SHA-256 of the tables wanted, as an assessment names it; absent: those in use. */
      readonly hash?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.LearnedDecisionResponse;
  };
  /** Tables of the diagnosis: starting value, counts and current value of every cell (GET /v1/learned-tables/diagnosis). */
  readonly getDiagnosisTables: {
    readonly path: undefined;
    readonly query: {
      /** SHA-256 of the tables wanted, as an assessment names it; absent: those in use. */
      readonly hash?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.LearnedDiagnosisResponse;
  };
  /** Learn the tables anew now, from the whole settled history; the worker does it by itself (POST /v1/learned-tables/rounds). */
  readonly learnTables: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.LearningRoundResponse;
  };
  /** List limits as they hold in this shop, by id (GET /v1/limits). */
  readonly listLimits: {
    readonly path: undefined;
    readonly query: {
      /** Most items on a page, 1 to 200. */
      readonly pageSize?: string;
      /** Where to go on, taken from `nextCursor` of the page before. */
      readonly cursor?: string;
      /** Limits of this characteristic. */
      readonly characteristic?: string;
      /** The list as it was known at this moment. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.LimitPage;
  };
  /** Set a limit of the shop's own, or confirm a shipped one for judging (POST /v1/limits). */
  readonly createLimit: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.RecordLimitRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ShopLimitResponse;
  };
  /** Show a limit the shop set or confirmed (GET /v1/limits/{limitRecordId}). */
  readonly showLimit: {
    readonly path: {
      /** Id of the record of the limit. */
      readonly limitRecordId: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ShopLimitResponse;
  };
  /** Correct a limit of the shop (POST /v1/limits/{limitRecordId}/corrections). */
  readonly correctLimit: {
    readonly path: {
      /** Id of the record of the limit. */
      readonly limitRecordId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.CorrectLimitRequest;
    readonly isConditional: true;
    readonly isCsv: false;
    readonly answer: Schemas.ShopLimitResponse;
  };
  /** Every revision of a limit, oldest first (GET /v1/limits/{limitRecordId}/revisions). */
  readonly listLimitRevisions: {
    readonly path: {
      /** Id of the record of the limit. */
      readonly limitRecordId: string;
    };
    readonly query: undefined;
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ShopLimitRevisions;
  };
  /** Show an odometer entry, now or as it was known at a moment (GET /v1/odometer-entries/{odometerEntryId}). */
  readonly getOdometerEntry: {
    readonly path: {
      /** Id of the odometer entry. */
      readonly odometerEntryId: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.OdometerEntryResponse;
  };
  /** Correct an odometer entry, or settle a contradiction (POST /v1/odometer-entries/{odometerEntryId}/corrections). */
  readonly correctOdometerEntry: {
    readonly path: {
      /** Id of the odometer entry. */
      readonly odometerEntryId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.CorrectOdometerEntryRequest;
    readonly isConditional: true;
    readonly isCsv: false;
    readonly answer: Schemas.OdometerEntryResponse;
  };
  /** List offers for a kind of part or of a supplier (GET /v1/offers). */
  readonly listOffers: {
    readonly path: undefined;
    readonly query: {
      /** Most items on a page, 1 to 200. */
      readonly pageSize?: string;
      /** Where to go on, taken from `nextCursor` of the page before. */
      readonly cursor?: string;
      /** Offers for this kind of part. */
      readonly componentType?: string;
      /** Offers of this supplier. */
      readonly supplier?: string;
      /** The list as it was known at this moment. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.OfferPage;
  };
  /** Record what a supplier asks for a part (POST /v1/offers). */
  readonly createOffer: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.RecordOfferRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.OfferResponse;
  };
  /** Show an offer, now or as it was known at a moment (GET /v1/offers/{offerId}). */
  readonly getOffer: {
    readonly path: {
      /** Id of the offer. */
      readonly offerId: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.OfferResponse;
  };
  /** Correct an offer (POST /v1/offers/{offerId}/corrections). */
  readonly correctOffer: {
    readonly path: {
      /** Id of the offer. */
      readonly offerId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.CorrectOfferRequest;
    readonly isConditional: true;
    readonly isCsv: false;
    readonly answer: Schemas.OfferResponse;
  };
  /** List the deliveries on an offer, latest order first (GET /v1/offers/{offerId}/deliveries). */
  readonly listDeliveries: {
    readonly path: {
      /** Id of the offer. */
      readonly offerId: string;
    };
    readonly query: {
      /** Most items on a page, 1 to 200. */
      readonly pageSize?: string;
      /** Where to go on, taken from `nextCursor` of the page before. */
      readonly cursor?: string;
      /** The list as it was known at this moment. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.DeliveryPage;
  };
  /** Record an order on an offer: promised for when, arrived when (POST /v1/offers/{offerId}/deliveries). */
  readonly createDelivery: {
    readonly path: {
      /** Id of the offer. */
      readonly offerId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.RecordDeliveryRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.DeliveryResponse;
  };
  /** Every revision of an offer, oldest first (GET /v1/offers/{offerId}/revisions). */
  readonly listOfferRevisions: {
    readonly path: {
      /** Id of the offer. */
      readonly offerId: string;
    };
    readonly query: undefined;
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.OfferRevisions;
  };
  /** List the circumstances of a complaint (GET /v1/operating-conditions). */
  readonly listOperatingConditions: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.OperatingConditionList;
  };
  /** What to order now, and why (GET /v1/order-proposals). */
  readonly listOrderProposals: {
    readonly path: undefined;
    readonly query: {
      /** One kind of part; every kind in the list of parts where left out. */
      readonly componentType?: string;
      /** Stock and offers in this condition only. */
      readonly condition?: Schemas.PartCondition;
      /** What is promised over one lead time. */
      readonly measure?: Schemas.StockServiceMeasure;
      /** The service wanted, below 1. */
      readonly target?: string;
      /** What if an order took so many days, whoever delivers. */
      readonly leadTimeDays?: string;
      /** As it was known at this moment. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: true;
    readonly answer: Schemas.OrderProposalList;
  };
  /** How many of a part will be needed in the next days or km, with the vans behind it (GET /v1/part-needs). */
  readonly listPartNeeds: {
    readonly path: undefined;
    readonly query: {
      /** One kind of part; every kind in the list of parts where left out. */
      readonly componentType?: string;
      /** The next so many days, at most 3653; this or `km`. */
      readonly days?: string;
      /** The next so many km of each van; this or `days`. */
      readonly km?: string;
      /** As it was known at this moment. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: true;
    readonly answer: Schemas.PartNeedList;
  };
  /** List parts: of a kind, by number, or those that fit a vehicle (GET /v1/parts). */
  readonly listParts: {
    readonly path: undefined;
    readonly query: {
      /** Most items on a page, 1 to 200. */
      readonly pageSize?: string;
      /** Where to go on, taken from `nextCursor` of the page before. */
      readonly cursor?: string;
      /** Parts of this kind. */
      readonly componentType?: string;
      /** The part with this number. */
      readonly partNumber?: string;
      /** Parts that fit the application of this vehicle. */
      readonly vehicleId?: string;
      /** The list as it was known at this moment. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: true;
    readonly answer: Schemas.PartPage;
  };
  /** Record a number under which a part can be ordered (POST /v1/parts). */
  readonly createPart: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.RecordPartRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.PartResponse;
  };
  /** Show a part, what may stand in for it, and what of that lies there (GET /v1/parts/{partId}). */
  readonly getPart: {
    readonly path: {
      /** Id of the part. */
      readonly partId: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.PartDetailsResponse;
  };
  /** The check sheets a part can be looked at by on arrival, without what needs a vehicle (GET /v1/parts/{partId}/arrival-sheets). */
  readonly listArrivalSheets: {
    readonly path: {
      /** Id of the part. */
      readonly partId: string;
    };
    readonly query: undefined;
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ArrivalSheetList;
  };
  /** Correct a part, or name its successor (POST /v1/parts/{partId}/corrections). */
  readonly correctPart: {
    readonly path: {
      /** Id of the part. */
      readonly partId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.CorrectPartRequest;
    readonly isConditional: true;
    readonly isCsv: false;
    readonly answer: Schemas.PartResponse;
  };
  /** Every revision of a part, oldest first (GET /v1/parts/{partId}/revisions). */
  readonly listPartRevisions: {
    readonly path: {
      /** Id of the part. */
      readonly partId: string;
    };
    readonly query: undefined;
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.PartRevisions;
  };
  /** List the points that prove a job (GET /v1/proof-points). */
  readonly listProofPointDefinitions: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ProofPointDefinitionList;
  };
  /** List readings, by the time they were taken (GET /v1/readings). */
  readonly listReadings: {
    readonly path: undefined;
    readonly query: {
      /** Most items on a page, 1 to 200. */
      readonly pageSize?: string;
      /** Where to go on, taken from `nextCursor` of the page before. */
      readonly cursor?: string;
      /** Readings of this inspection. */
      readonly inspectionId?: string;
      /** Readings taken on this part. */
      readonly fittedPartId?: string;
      /** Readings taken on this vehicle. */
      readonly vehicleId?: string;
      /** Readings of this characteristic. */
      readonly characteristic?: string;
      /** Readings taken with this instrument. */
      readonly instrumentId?: string;
      /** The list as it was known at this moment. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ReadingPage;
  };
  /** Judge readings against a limit without storing anything (POST /v1/readings/evaluations). */
  readonly evaluateReadings: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.EvaluateReadingRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.EvaluationResponse;
  };
  /** Show a reading, now or as it was known at a moment (GET /v1/readings/{readingId}). */
  readonly showReading: {
    readonly path: {
      /** Id of the reading. */
      readonly readingId: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ReadingResponse;
  };
  /** Correct a reading, confirm a value that looked unlikely, or bring back one that was withdrawn (POST /v1/readings/{readingId}/corrections). */
  readonly correctReading: {
    readonly path: {
      /** Id of the reading. */
      readonly readingId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.CorrectReadingRequest;
    readonly isConditional: true;
    readonly isCsv: false;
    readonly answer: Schemas.ReadingResponse;
  };
  /** Every revision of a reading, oldest first (GET /v1/readings/{readingId}/revisions). */
  readonly listReadingRevisions: {
    readonly path: {
      /** Id of the reading. */
      readonly readingId: string;
    };
    readonly query: undefined;
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ReadingRevisions;
  };
  /** What the readings of its check say, now or as known at a moment (GET /v1/readings/{readingId}/verdicts). */
  readonly listReadingVerdicts: {
    readonly path: {
      /** Id of the reading. */
      readonly readingId: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ReadingVerdicts;
  };
  /** Withdraw a reading that was taken on the wrong van or part (POST /v1/readings/{readingId}/withdrawals). */
  readonly withdrawReading: {
    readonly path: {
      /** Id of the reading. */
      readonly readingId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.WithdrawReadingRequest;
    readonly isConditional: true;
    readonly isCsv: false;
    readonly answer: Schemas.ReadingResponse;
  };
  /** List the items of the service plan (GET /v1/service-plan-items). */
  readonly listServicePlanItems: {
    readonly path: undefined;
    readonly query: {
      /** Most items on a page, 1 to 200. */
      readonly pageSize?: string;
      /** Where to go on, taken from `nextCursor` of the page before. */
      readonly cursor?: string;
      /** Items for this kind of part. */
      readonly componentType?: string;
      /** The list as it was known at this moment. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ServicePlanItemPage;
  };
  /** Record something the shop does at intervals of days or distance (POST /v1/service-plan-items). */
  readonly createServicePlanItem: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.RecordServicePlanItemRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ServicePlanItemResponse;
  };
  /** Show an item of the plan, now or as it was known at a moment (GET /v1/service-plan-items/{planItemId}). */
  readonly getServicePlanItem: {
    readonly path: {
      /** Id of the item of the plan. */
      readonly planItemId: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ServicePlanItemResponse;
  };
  /** Correct an item of the plan: another interval, or no longer in use (POST /v1/service-plan-items/{planItemId}/corrections). */
  readonly correctServicePlanItem: {
    readonly path: {
      /** Id of the item of the plan. */
      readonly planItemId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.CorrectServicePlanItemRequest;
    readonly isConditional: true;
    readonly isCsv: false;
    readonly answer: Schemas.ServicePlanItemResponse;
  };
  /** Every revision of an item of the plan, oldest first (GET /v1/service-plan-items/{planItemId}/revisions). */
  readonly listServicePlanItemRevisions: {
    readonly path: {
      /** Id of the item of the plan. */
      readonly planItemId: string;
    };
    readonly query: undefined;
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ServicePlanItemRevisions;
  };
  /** List what was recorded as done by the plan, the latest first (GET /v1/service-records). */
  readonly listServiceRecords: {
    readonly path: undefined;
    readonly query: {
      /** Most items on a page, 1 to 200. */
      readonly pageSize?: string;
      /** Where to go on, taken from `nextCursor` of the page before. */
      readonly cursor?: string;
      /** Services of this vehicle. */
      readonly vehicleId?: string;
      /** Services by this item of the plan. */
      readonly planItemId?: string;
      /** The list as it was known at this moment. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ServiceRecordPage;
  };
  /** Record that an item of the plan was done where no work line says so (POST /v1/service-records). */
  readonly createServiceRecord: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.RecordServiceRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ServiceRecordResponse;
  };
  /** Show a service, now or as it was known at a moment (GET /v1/service-records/{serviceRecordId}). */
  readonly getServiceRecord: {
    readonly path: {
      /** Id of the record. */
      readonly serviceRecordId: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ServiceRecordResponse;
  };
  /** Correct a service (POST /v1/service-records/{serviceRecordId}/corrections). */
  readonly correctServiceRecord: {
    readonly path: {
      /** Id of the record. */
      readonly serviceRecordId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.CorrectServiceRequest;
    readonly isConditional: true;
    readonly isCsv: false;
    readonly answer: Schemas.ServiceRecordResponse;
  };
  /** Every revision of a service, oldest first (GET /v1/service-records/{serviceRecordId}/revisions). */
  readonly listServiceRecordRevisions: {
    readonly path: {
      /** Id of the record. */
      readonly serviceRecordId: string;
    };
    readonly query: undefined;
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.ServiceRecordRevisions;
  };
  /** Rates, windows and thresholds of the shop, now or as of a moment (GET /v1/settings). */
  readonly getSettings: {
    readonly path: undefined;
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.SettingsResponse;
  };
  /** Change some settings; earlier ones stay readable as of their time (PATCH /v1/settings). */
  readonly updateSettings: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.SettingsPatch;
    readonly isConditional: true;
    readonly isCsv: false;
    readonly answer: Schemas.SettingsResponse;
  };
  /** A stock level for a demand, lead times and a service or costs that are named; nothing is stored (POST /v1/stock-level-previews). */
  readonly previewStockLevel: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.StockLevelPreviewRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.StockLevelPreviewResponse;
  };
  /** What lies on the shelf, now or as it was known at a moment (GET /v1/stock-lines). */
  readonly listStockLines: {
    readonly path: undefined;
    readonly query: {
      /** Parts of this kind. */
      readonly componentType?: string;
      /** This part only. */
      readonly partId?: string;
      /** What lay there by the moves recorded until this moment. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: true;
    readonly answer: Schemas.StockLineList;
  };
  /** List stock moves, what was recorded last first (GET /v1/stock-moves). */
  readonly listStockMoves: {
    readonly path: undefined;
    readonly query: {
      /** Most items on a page, 1 to 200. */
      readonly pageSize?: string;
      /** Where to go on, taken from `nextCursor` of the page before. */
      readonly cursor?: string;
      /** Moves of this part. */
      readonly partId?: string;
      /** Moves for this job. */
      readonly jobId?: string;
      /** Moves of this batch. */
      readonly batch?: string;
      /** Moves of the piece with this serial. */
      readonly serial?: string;
      /** The list as it was known at this moment. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: true;
    readonly answer: Schemas.StockMovePage;
  };
  /** Record what came in, went out, is kept for a job, or was counted (POST /v1/stock-moves). */
  readonly createStockMove: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.RecordStockMoveRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.StockMoveResponse;
  };
  /** Show a stock move (GET /v1/stock-moves/{stockMoveId}). */
  readonly getStockMove: {
    readonly path: {
      /** Id of the stock move. */
      readonly stockMoveId: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.StockMoveResponse;
  };
  /** List the coded symptoms (GET /v1/symptoms). */
  readonly listSymptoms: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.SymptomList;
  };
  /** List the kinds of quantity with their units (GET /v1/units). */
  readonly listUnits: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.QuantityKindList;
  };
  /** List the people of the shop and of its customers (GET /v1/users). */
  readonly listUsers: {
    readonly path: undefined;
    readonly query: {
      /** Most items on a page, 1 to 200. */
      readonly pageSize?: string;
      /** Where to go on, taken from `nextCursor` of the page before. */
      readonly cursor?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.UserPage;
  };
  /** Record a person who works with the records (POST /v1/users). */
  readonly createUser: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.RecordUserRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.UserResponse;
  };
  /** Show a person of the shop or of a customer (GET /v1/users/{userId}). */
  readonly getUser: {
    readonly path: {
      /** Id of the user. */
      readonly userId: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.UserResponse;
  };
  /** Change a person's name, roles, or whether they may still work here (PATCH /v1/users/{userId}). */
  readonly updateUser: {
    readonly path: {
      /** Id of the user. */
      readonly userId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.UserPatch;
    readonly isConditional: true;
    readonly isCsv: false;
    readonly answer: Schemas.UserResponse;
  };
  /** Vehicles by what is coming, with the reasons: open findings, comebacks, repeated complaints, services (GET /v1/vehicle-outlooks). */
  readonly listVehicleOutlooks: {
    readonly path: undefined;
    readonly query: {
      /** Most items on a page, 1 to 200. */
      readonly pageSize?: string;
      /** Where to go on, taken from `nextCursor` of the page before. */
      readonly cursor?: string;
      /** Vehicles this customer owns now. */
      readonly customerId?: string;
      /** One vehicle. */
      readonly vehicleId?: string;
      /** Days ahead that are soon. */
      readonly withinDays?: string;
      /** Km ahead that are soon. */
      readonly withinKm?: string;
      /** What was due at this moment, as it was known then. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: true;
    readonly answer: Schemas.VehicleOutlookPage;
  };
  /** List vehicles, newest first (GET /v1/vehicles). */
  readonly listVehicles: {
    readonly path: undefined;
    readonly query: {
      /** Most items on a page, 1 to 200. */
      readonly pageSize?: string;
      /** Where to go on, taken from `nextCursor` of the page before. */
      readonly cursor?: string;
      /** Vehicles this customer owns now. */
      readonly customerId?: string;
      /** Chassis number, with or without separators; looks for the whole number. */
      readonly chassisNumber?: string;
      /** Plate; looks for the whole plate. */
      readonly plate?: string;
      /** The list as it was known at this moment. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.VehiclePage;
  };
  /** Record a vehicle with its owner (POST /v1/vehicles). */
  readonly createVehicle: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.RecordVehicleRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.VehicleResponse;
  };
  /** Show a vehicle, now or as it was known at a moment (GET /v1/vehicles/{vehicleId}). */
  readonly showVehicle: {
    readonly path: {
      /** Id of the vehicle. */
      readonly vehicleId: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.VehicleResponse;
  };
  /** Correct what is recorded about a vehicle (POST /v1/vehicles/{vehicleId}/corrections). */
  readonly correctVehicle: {
    readonly path: {
      /** Id of the vehicle. */
      readonly vehicleId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.CorrectVehicleRequest;
    readonly isConditional: true;
    readonly isCsv: false;
    readonly answer: Schemas.VehicleResponse;
  };
  /** What a vehicle cost within a time, year by year, and the cost of a km (GET /v1/vehicles/{vehicleId}/costs). */
  readonly getVehicleCosts: {
    readonly path: {
      /** Id of the vehicle. */
      readonly vehicleId: string;
    };
    readonly query: {
      /** Beginning of the time; a year before its end where absent. */
      readonly from?: string;
      /** End of the time; now where absent. */
      readonly until?: string;
      /** The answer as it was known at this moment. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: true;
    readonly answer: Schemas.VehicleCostsResponse;
  };
  /** Everything about a vehicle as it was known at a moment, in the order in which it happened (GET /v1/vehicles/{vehicleId}/history). */
  readonly getVehicleHistory: {
    readonly path: {
      /** Id of the vehicle. */
      readonly vehicleId: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
      /** all: beside every record its other revisions, those recorded after `asOf` as well. What was first recorded after `asOf` is not in the history. */
      readonly corrections?: Schemas.HistoryCorrections;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: true;
    readonly answer: Schemas.VehicleHistoryResponse;
  };
  /** Keep a vehicle, and for how long, or replace it by another; nothing is stored (POST /v1/vehicles/{vehicleId}/keeping-previews). */
  readonly previewKeeping: {
    readonly path: {
      /** Id of the vehicle. */
      readonly vehicleId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.PreviewKeepingRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.KeepingPreviewResponse;
  };
  /** List odometer entries of a vehicle, latest reading first (GET /v1/vehicles/{vehicleId}/odometer-entries). */
  readonly listOdometerEntries: {
    readonly path: {
      /** Id of the vehicle. */
      readonly vehicleId: string;
    };
    readonly query: {
      /** Most items on a page, 1 to 200. */
      readonly pageSize?: string;
      /** Where to go on, taken from `nextCursor` of the page before. */
      readonly cursor?: string;
      /** The list as it was known at this moment. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.OdometerEntryPage;
  };
  /** Record what the odometer showed; oddities warn and never refuse (POST /v1/vehicles/{vehicleId}/odometer-entries). */
  readonly createOdometerEntry: {
    readonly path: {
      /** Id of the vehicle. */
      readonly vehicleId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.RecordOdometerEntryRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.OdometerEntryResponse;
  };
  /** Stretches of the odometer of a vehicle (GET /v1/vehicles/{vehicleId}/odometer-segments). */
  readonly listOdometerSegments: {
    readonly path: {
      /** Id of the vehicle. */
      readonly vehicleId: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.OdometerSegmentList;
  };
  /** Begin a new stretch: the display rolled over, was replaced, or counts another unit (POST /v1/vehicles/{vehicleId}/odometer-segments). */
  readonly createOdometerSegment: {
    readonly path: {
      /** Id of the vehicle. */
      readonly vehicleId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.BeginOdometerSegmentRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.OdometerSegmentResponse;
  };
  /** Everybody who owned a vehicle, latest first (GET /v1/vehicles/{vehicleId}/ownerships). */
  readonly listOwnerships: {
    readonly path: {
      /** Id of the vehicle. */
      readonly vehicleId: string;
    };
    readonly query: undefined;
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.OwnershipList;
  };
  /** Record that a vehicle has another owner (POST /v1/vehicles/{vehicleId}/ownerships). */
  readonly createOwnership: {
    readonly path: {
      /** Id of the vehicle. */
      readonly vehicleId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.TransferVehicleRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.OwnershipResponse;
  };
  /** Every revision of a vehicle, oldest first (GET /v1/vehicles/{vehicleId}/revisions). */
  readonly listVehicleRevisions: {
    readonly path: {
      /** Id of the vehicle. */
      readonly vehicleId: string;
    };
    readonly query: undefined;
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.VehicleRevisions;
  };
  /** Wear of every part that is fitted to a vehicle (GET /v1/vehicles/{vehicleId}/wear). */
  readonly getVehicleWear: {
    readonly path: {
      /** Id of the vehicle. */
      readonly vehicleId: string;
    };
    readonly query: {
      /** One characteristic; all that wear where left out. */
      readonly characteristic?: string;
      /** Chance of reaching the limit within so many km from now. */
      readonly withinKm?: string;
      /** Chance of reaching it before this day; not together with withinKm. */
      readonly until?: string;
      /** As it was known at this moment. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.VehicleWearResponse;
  };
  /** List claims, the latest first; those still open (GET /v1/warranty-claims). */
  readonly listWarrantyClaims: {
    readonly path: undefined;
    readonly query: {
      /** Most items on a page, 1 to 200. */
      readonly pageSize?: string;
      /** Where to go on, taken from `nextCursor` of the page before. */
      readonly cursor?: string;
      /** Those neither settled nor withdrawn, or the others. */
      readonly isOpen?: string;
      /** Claims on this supplier. */
      readonly supplier?: string;
      /** The list as it was known at this moment. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: true;
    readonly answer: Schemas.WarrantyClaimPage;
  };
  /** Record a claim on a warranty (POST /v1/warranty-claims). */
  readonly createWarrantyClaim: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.RecordWarrantyClaimRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.WarrantyClaimResponse;
  };
  /** Show a claim, now or as it was known at a moment (GET /v1/warranty-claims/{warrantyClaimId}). */
  readonly getWarrantyClaim: {
    readonly path: {
      /** Id of the claim. */
      readonly warrantyClaimId: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.WarrantyClaimResponse;
  };
  /** Correct a claim (POST /v1/warranty-claims/{warrantyClaimId}/corrections). */
  readonly correctWarrantyClaim: {
    readonly path: {
      /** Id of the claim. */
      readonly warrantyClaimId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.CorrectWarrantyClaimRequest;
    readonly isConditional: true;
    readonly isCsv: false;
    readonly answer: Schemas.WarrantyClaimResponse;
  };
  /** Every revision of a claim, oldest first; each step is one (GET /v1/warranty-claims/{warrantyClaimId}/revisions). */
  readonly listWarrantyClaimRevisions: {
    readonly path: {
      /** Id of the claim. */
      readonly warrantyClaimId: string;
    };
    readonly query: undefined;
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.WarrantyClaimRevisions;
  };
  /** The next step of a claim: sent, accepted, refused, settled, withdrawn (POST /v1/warranty-claims/{warrantyClaimId}/steps). */
  readonly createWarrantyClaimStep: {
    readonly path: {
      /** Id of the claim. */
      readonly warrantyClaimId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.RecordWarrantyClaimStepRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.WarrantyClaimResponse;
  };
  /** Which vans will reach a limit before their next visit, the likeliest first (GET /v1/wear-outlooks). */
  readonly listWearOutlooks: {
    readonly path: undefined;
    readonly query: {
      /** Most items on a page, 1 to 200. */
      readonly pageSize?: string;
      /** Where to go on, taken from `nextCursor` of the page before. */
      readonly cursor?: string;
      /** Kind of part. */
      readonly componentType: string;
      /** What of it wears. */
      readonly characteristic: string;
      /** Distance until the next visit, km from now; this or `until`. */
      readonly withinKm?: string;
      /** Day of the next visit; this or `withinKm`. */
      readonly until?: string;
      /** As it was known at this moment. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.WearOutlookPage;
  };
  /** What was told to which address, newest first (GET /v1/webhook-deliveries). */
  readonly listWebhookDeliveries: {
    readonly path: undefined;
    readonly query: {
      /** Most items on a page, 1 to 200. */
      readonly pageSize?: string;
      /** Where to go on, taken from `nextCursor` of the page before. */
      readonly cursor?: string;
      /** Of this endpoint only. */
      readonly endpointId?: string;
      /** In this state only. */
      readonly state?: Schemas.WebhookDeliveryState;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.WebhookDeliveryPage;
  };
  /** One delivery with its attempts (GET /v1/webhook-deliveries/{deliveryId}). */
  readonly getWebhookDelivery: {
    readonly path: {
      /** Id of the delivery. */
      readonly deliveryId: string;
    };
    readonly query: undefined;
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.WebhookDeliveryDetail;
  };
  /** Tell an event once more, under the same webhook-id (POST /v1/webhook-deliveries/{deliveryId}/replays). */
  readonly createWebhookReplay: {
    readonly path: {
      /** Id of the delivery. */
      readonly deliveryId: string;
    };
    readonly query: undefined;
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.WebhookDeliveryDetail;
  };
  /** List the addresses that are told of what happens (GET /v1/webhook-endpoints). */
  readonly listWebhookEndpoints: {
    readonly path: undefined;
    readonly query: {
      /** Most items on a page, 1 to 200. */
      readonly pageSize?: string;
      /** Where to go on, taken from `nextCursor` of the page before. */
      readonly cursor?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.WebhookEndpointPage;
  };
  /** Name an address that is told of what happens; its secret is shown this once (POST /v1/webhook-endpoints). */
  readonly createWebhookEndpoint: {
    readonly path: undefined;
    readonly query: undefined;
    readonly body: Schemas.RecordWebhookEndpointRequest;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.NewWebhookEndpointResponse;
  };
  /** One address that is told of what happens, now or as of a moment (GET /v1/webhook-endpoints/{endpointId}). */
  readonly getWebhookEndpoint: {
    readonly path: {
      /** Id of the endpoint. */
      readonly endpointId: string;
    };
    readonly query: {
      /** Answer with what was recorded by this moment; what was recorded later is not known. */
      readonly asOf?: string;
    };
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.WebhookEndpointResponse;
  };
  /** Change an address, what it is told of, or whether it is told at all (PATCH /v1/webhook-endpoints/{endpointId}). */
  readonly updateWebhookEndpoint: {
    readonly path: {
      /** Id of the endpoint. */
      readonly endpointId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.WebhookEndpointPatch;
    readonly isConditional: true;
    readonly isCsv: false;
    readonly answer: Schemas.WebhookEndpointResponse;
  };
  /** Give an address a new secret, shown this once; the earlier one signs beside it for a day (POST /v1/webhook-endpoints/{endpointId}/secrets). */
  readonly createWebhookSecret: {
    readonly path: {
      /** Id of the endpoint. */
      readonly endpointId: string;
    };
    readonly query: undefined;
    readonly body: undefined;
    readonly isConditional: false;
    readonly isCsv: false;
    readonly answer: Schemas.NewWebhookSecretResponse;
  };
  /** Change a work line: done now, dropped, or recorded wrongly (POST /v1/work-lines/{workLineId}/corrections). */
  readonly correctWorkLine: {
    readonly path: {
      /** Id of the work line. */
      readonly workLineId: string;
    };
    readonly query: undefined;
    readonly body: Schemas.CorrectWorkLineRequest;
    readonly isConditional: true;
    readonly isCsv: false;
    readonly answer: Schemas.WorkLineResponse;
  };
}

/** Every event that an endpoint is sent, by its type. */
export interface Events {
  /** A part was inspected on arrival. */
  readonly 'endfloat.arrivalInspection.recorded.v1': Schemas.CloudEvent & {
    readonly type?: 'endfloat.arrivalInspection.recorded.v1';
    readonly data?: {
      readonly partId: string;
      readonly outcomes: readonly string[];
    };
  };
  /** A repair-or-replace calculation was stored. */
  readonly 'endfloat.assessment.made.v1': Schemas.CloudEvent & ({
    readonly type?: 'endfloat.assessment.made.v1';
    readonly data?: {
      readonly vehicleId: string;
      readonly jobId: string | null;
      readonly componentType: string;
      readonly recommendation: string;
    };
  });
  /** Somebody confirmed that a complaint is a comeback of an earlier job. */
  readonly 'endfloat.comeback.confirmed.v1': Schemas.CloudEvent & {
    readonly type?: 'endfloat.comeback.confirmed.v1';
    readonly data?: {
      readonly jobId: string;
      readonly complaintId: string;
    };
  };
  /** Somebody refused a proposed comeback. */
  readonly 'endfloat.comeback.refused.v1': Schemas.CloudEvent & {
    readonly type?: 'endfloat.comeback.refused.v1';
    readonly data?: {
      readonly jobId: string;
      readonly complaintId: string;
    };
  };
  /** A complaint was taken. */
  readonly 'endfloat.complaint.taken.v1': Schemas.CloudEvent & {
    readonly type?: 'endfloat.complaint.taken.v1';
    readonly data?: {
      readonly vehicleId: string;
    };
  };
  /** A core is owed to a supplier. */
  readonly 'endfloat.core.owed.v1': Schemas.CloudEvent & {
    readonly type?: 'endfloat.core.owed.v1';
    readonly data?: {
      readonly componentType: string;
      readonly returnBy: string;
    };
  };
  /** A core that is owed went a step further. */
  readonly 'endfloat.core.stepped.v1': Schemas.CloudEvent & {
    readonly type?: 'endfloat.core.stepped.v1';
    readonly data?: {
      readonly state: string;
      readonly on: string;
    };
  };
  /** A customer's personal data was erased. */
  readonly 'endfloat.customer.erased.v1': Schemas.CloudEvent & {
    readonly type?: 'endfloat.customer.erased.v1';
    readonly data?: {
      readonly erased: number;
    };
  };
  /** Somebody chose what to do. */
  readonly 'endfloat.decision.recorded.v1': Schemas.CloudEvent & ({
    readonly type?: 'endfloat.decision.recorded.v1';
    readonly data?: {
      readonly assessmentId: string;
      readonly vehicleId: string;
      readonly jobId: string | null;
      readonly chosen: string;
    };
  });
  /** The history of a fleet was taken over. */
  readonly 'endfloat.fleetHistory.imported.v1': Schemas.CloudEvent & {
    readonly type?: 'endfloat.fleetHistory.imported.v1';
    readonly data?: {
      readonly vehicles: number;
    };
  };
  /** A gauge study was recorded. */
  readonly 'endfloat.gaugeStudy.recorded.v1': Schemas.CloudEvent & {
    readonly type?: 'endfloat.gaugeStudy.recorded.v1';
    readonly data?: {
      readonly characteristic: string;
      readonly instrumentKind: string;
    };
  };
  /** Readings of an inspection were recorded. */
  readonly 'endfloat.inspection.read.v1': Schemas.CloudEvent & {
    readonly type?: 'endfloat.inspection.read.v1';
    readonly data?: {
      readonly readings: number;
    };
  };
  /** A job was opened. */
  readonly 'endfloat.job.opened.v1': Schemas.CloudEvent & {
    readonly type?: 'endfloat.job.opened.v1';
    readonly data?: {
      readonly vehicleId: string;
    };
  };
  /** A vehicle was released; its watch window begins. */
  readonly 'endfloat.job.released.v1': Schemas.CloudEvent & {
    readonly type?: 'endfloat.job.released.v1';
    readonly data?: {
      readonly vehicleId: string;
    };
  };
  /** An offer of a part was recorded. */
  readonly 'endfloat.offer.recorded.v1': Schemas.CloudEvent & {
    readonly type?: 'endfloat.offer.recorded.v1';
    readonly data?: {
      readonly componentType: string;
      readonly condition: string;
    };
  };
  /** A reading was corrected. */
  readonly 'endfloat.reading.corrected.v1': Schemas.CloudEvent & {
    readonly type?: 'endfloat.reading.corrected.v1';
    readonly data?: {
      readonly inspectionId: string;
    };
  };
  /** A reading was taken back: it stays in the history and counts for nothing. */
  readonly 'endfloat.reading.withdrawn.v1': Schemas.CloudEvent & {
    readonly type?: 'endfloat.reading.withdrawn.v1';
    readonly data?: {
      readonly inspectionId: string;
    };
  };
  /** An item of the service plan was recorded as done. */
  readonly 'endfloat.service.recorded.v1': Schemas.CloudEvent & {
    readonly type?: 'endfloat.service.recorded.v1';
    readonly data?: {
      readonly vehicleId: string;
      readonly planItemId: string;
    };
  };
  /** Something the shop does at intervals was recorded. */
  readonly 'endfloat.servicePlanItem.recorded.v1': Schemas.CloudEvent & {
    readonly type?: 'endfloat.servicePlanItem.recorded.v1';
    readonly data?: { readonly [name: string]: unknown };
  };
  /** A part moved in the stock. */
  readonly 'endfloat.stock.moved.v1': Schemas.CloudEvent & {
    readonly type?: 'endfloat.stock.moved.v1';
    readonly data?: {
      readonly partId: string;
      readonly condition: string;
      readonly kind: string;
      readonly onHand: number;
      readonly reserved: number;
    };
  };
  /** A vehicle was handed over unrepaired, not for the road. */
  readonly 'endfloat.vehicle.handedOverUnrepaired.v1': Schemas.CloudEvent & {
    readonly type?: 'endfloat.vehicle.handedOverUnrepaired.v1';
    readonly data?: {
      readonly jobId: string;
    };
  };
  /** A vehicle was recorded. */
  readonly 'endfloat.vehicle.recorded.v1': Schemas.CloudEvent & {
    readonly type?: 'endfloat.vehicle.recorded.v1';
    readonly data?: {
      readonly customerId: string;
    };
  };
  /** A warranty was claimed. */
  readonly 'endfloat.warrantyClaim.recorded.v1': Schemas.CloudEvent & {
    readonly type?: 'endfloat.warrantyClaim.recorded.v1';
    readonly data?: {
      readonly giver: string;
      readonly cover: string;
    };
  };
  /** A warranty claim went a step further. */
  readonly 'endfloat.warrantyClaim.stepped.v1': Schemas.CloudEvent & {
    readonly type?: 'endfloat.warrantyClaim.stepped.v1';
    readonly data?: {
      readonly state: string;
      readonly on: string;
    };
  };
  /** An endpoint of webhooks was recorded, changed, or said that it is gone. */
  readonly 'endfloat.webhookEndpoint.changed.v1': Schemas.CloudEvent & {
    readonly type?: 'endfloat.webhookEndpoint.changed.v1';
    readonly data?: {
      readonly state: string;
    };
  };
}
