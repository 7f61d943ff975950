-- Records: identities and immutable revisions, every key led by the shop.
-- The first part is what prisma/schema.prisma says; the second (rights, row-level security, what a revision may
-- never do) stands here only.

-- CreateTable
CREATE TABLE "shop" (
    "id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "shop_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "personal_record" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "customer_id" UUID,
    "kind" TEXT NOT NULL,
    "content" JSONB,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "erased_at" TIMESTAMPTZ(6),
    "erased_by" UUID,
    "erase_reason" TEXT,

    CONSTRAINT "personal_record_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "api_key" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "user_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "secret_hash" TEXT NOT NULL,
    "roles" TEXT[],
    "expires_at" TIMESTAMPTZ(6),
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "revoked_at" TIMESTAMPTZ(6),

    CONSTRAINT "api_key_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "watch_window_end" (
    "shop_id" UUID NOT NULL,
    "release_id" UUID NOT NULL,
    "ended_at" TIMESTAMPTZ(6) NOT NULL,
    "ended_by" TEXT NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "watch_window_end_pkey" PRIMARY KEY ("shop_id","release_id")
);

-- CreateTable
CREATE TABLE "outbox" (
    "shop_id" UUID NOT NULL,
    "position" BIGSERIAL NOT NULL,
    "id" UUID NOT NULL,
    "type" TEXT NOT NULL,
    "subject_id" UUID NOT NULL,
    "payload" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "outbox_pkey" PRIMARY KEY ("shop_id","position")
);

-- CreateTable
CREATE TABLE "shop_settings" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "shop_settings_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "shop_settings_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "shop_settings_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

-- CreateTable
CREATE TABLE "shop_user" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "shop_user_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "shop_user_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "display_name" TEXT NOT NULL,
    "customer_id" UUID,
    "active" BOOLEAN NOT NULL,
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "shop_user_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

-- CreateTable
CREATE TABLE "customer" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "customer_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "customer_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "personal_record_id" UUID,
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "customer_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

-- CreateTable
CREATE TABLE "vehicle" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "vehicle_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "vehicle_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "number_search" TEXT,
    "plate_search" TEXT,
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "vehicle_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

-- CreateTable
CREATE TABLE "vehicle_ownership" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "vehicle_id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "vehicle_ownership_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "vehicle_ownership_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "customer_id" UUID NOT NULL,
    "from_at" TIMESTAMPTZ(6) NOT NULL,
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "vehicle_ownership_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

-- CreateTable
CREATE TABLE "odometer_segment" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "vehicle_id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "odometer_segment_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "odometer_segment_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "started_at" TIMESTAMPTZ(6) NOT NULL,
    "offset_km" DECIMAL(24,9) NOT NULL,
    "factor" DECIMAL(24,9) NOT NULL,
    "raw_at_start" DECIMAL(24,9) NOT NULL,
    "unit" TEXT NOT NULL,
    "cause" TEXT NOT NULL,
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "odometer_segment_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

-- CreateTable
CREATE TABLE "odometer_entry" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "vehicle_id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "odometer_entry_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "odometer_entry_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "shown" TEXT NOT NULL,
    "unit" TEXT NOT NULL,
    "read_at" TIMESTAMPTZ(6) NOT NULL,
    "distance_km" DECIMAL(24,9),
    "reliable" BOOLEAN NOT NULL,
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "odometer_entry_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

-- CreateTable
CREATE TABLE "fitted_part" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "vehicle_id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "fitted_part_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "fitted_part_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "component_type" TEXT NOT NULL,
    "position" TEXT NOT NULL,
    "condition" TEXT NOT NULL,
    "fitted_at" TIMESTAMPTZ(6),
    "fitted_km" DECIMAL(24,9),
    "removed_at" TIMESTAMPTZ(6),
    "removed_km" DECIMAL(24,9),
    "serial" TEXT,
    "batch" TEXT,
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "fitted_part_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

-- CreateTable
CREATE TABLE "component_type" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "component_type_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "component_type_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "component_type_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

-- CreateTable
CREATE TABLE "instrument" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "instrument_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "instrument_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "instrument_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

-- CreateTable
CREATE TABLE "calibration" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "instrument_id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "calibration_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "calibration_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "calibrated_on" DATE NOT NULL,
    "due_on" DATE,
    "passed" BOOLEAN NOT NULL,
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "calibration_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

-- CreateTable
CREATE TABLE "shop_limit" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "shop_limit_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "shop_limit_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "characteristic" TEXT NOT NULL,
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "shop_limit_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

-- CreateTable
CREATE TABLE "check_sheet" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "sheet_version" INTEGER NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "check_sheet_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "check_sheet_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "check_sheet_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

-- CreateTable
CREATE TABLE "job" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "vehicle_id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "job_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "job_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "opened_at" TIMESTAMPTZ(6) NOT NULL,
    "assigned_to" UUID,
    "diagnosed_by" UUID,
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "job_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

-- CreateTable
CREATE TABLE "job_event" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "job_event_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "job_event_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "happened_at" TIMESTAMPTZ(6) NOT NULL,
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "job_event_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

-- CreateTable
CREATE TABLE "complaint" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "vehicle_id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "complaint_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "complaint_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "job_id" UUID,
    "received_at" TIMESTAMPTZ(6) NOT NULL,
    "personal_record_id" UUID,
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "complaint_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

-- CreateTable
CREATE TABLE "work_line" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "work_line_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "work_line_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "action" TEXT NOT NULL,
    "component_type" TEXT NOT NULL,
    "position" TEXT NOT NULL,
    "fitted_part_id" UUID,
    "state" TEXT NOT NULL,
    "technician_id" UUID,
    "done_at" TIMESTAMPTZ(6),
    "minutes" INTEGER,
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "work_line_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

-- CreateTable
CREATE TABLE "estimate" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "estimate_version" INTEGER NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "estimate_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "estimate_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "estimate_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

-- CreateTable
CREATE TABLE "consent" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "estimate_id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "consent_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "consent_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "answer" TEXT NOT NULL,
    "answered_at" TIMESTAMPTZ(6) NOT NULL,
    "personal_record_id" UUID,
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "consent_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

-- CreateTable
CREATE TABLE "inspection" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "vehicle_id" UUID NOT NULL,
    "job_id" UUID,
    "check_sheet_id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "inspection_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "inspection_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "started_at" TIMESTAMPTZ(6) NOT NULL,
    "technician_id" UUID,
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "inspection_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

-- CreateTable
CREATE TABLE "reading" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "inspection_id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "reading_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "reading_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "check_id" TEXT NOT NULL,
    "characteristic" TEXT,
    "fitted_part_id" UUID,
    "phase" TEXT NOT NULL,
    "result_kind" TEXT NOT NULL,
    "shown" TEXT,
    "unit" TEXT,
    "canonical_value" DECIMAL(24,9),
    "canonical_unit" TEXT,
    "taken_at" TIMESTAMPTZ(6) NOT NULL,
    "distance_km" DECIMAL(24,9),
    "instrument_id" UUID,
    "measured_by" UUID NOT NULL,
    "value_confirmed" BOOLEAN NOT NULL,
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "reading_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

-- CreateTable
CREATE TABLE "verdict" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "inspection_id" UUID NOT NULL,
    "check_id" TEXT NOT NULL,
    "phase" TEXT NOT NULL,
    "limit_id" TEXT NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "verdict_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "verdict_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "outcome" TEXT NOT NULL,
    "probability_inside" DECIMAL(24,9),
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "verdict_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

-- CreateTable
CREATE TABLE "proof_point" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "proof_point_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "proof_point_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "point" TEXT NOT NULL,
    "outcome" TEXT NOT NULL,
    "tested_at" TIMESTAMPTZ(6) NOT NULL,
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "proof_point_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

-- CreateTable
CREATE TABLE "release" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "release_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "release_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "released_at" TIMESTAMPTZ(6) NOT NULL,
    "window_days" INTEGER NOT NULL,
    "window_km" DECIMAL(24,9) NOT NULL,
    "distance_km" DECIMAL(24,9),
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "release_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

-- CreateTable
CREATE TABLE "unsafe_handover" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "unsafe_handover_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "unsafe_handover_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "handed_over_at" TIMESTAMPTZ(6) NOT NULL,
    "personal_record_id" UUID,
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "unsafe_handover_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

-- CreateTable
CREATE TABLE "comeback" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "complaint_id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "comeback_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "comeback_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "state" TEXT NOT NULL,
    "attribution" TEXT,
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "comeback_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

-- CreateTable
CREATE TABLE "assessment" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "vehicle_id" UUID NOT NULL,
    "job_id" UUID,
    "fitted_part_id" UUID,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "assessment_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "assessment_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "model_version" TEXT NOT NULL,
    "input_hash" TEXT NOT NULL,
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "assessment_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

-- CreateTable
CREATE TABLE "decision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "assessment_id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "decision_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "decision_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "chosen" TEXT NOT NULL,
    "decided_at" TIMESTAMPTZ(6) NOT NULL,
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "decision_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

-- CreateTable
CREATE TABLE "offer" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "offer_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "offer_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "component_type" TEXT NOT NULL,
    "condition" TEXT NOT NULL,
    "supplier" TEXT NOT NULL,
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "offer_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

-- CreateTable
CREATE TABLE "delivery" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "offer_id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "delivery_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "delivery_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "ordered_on" DATE NOT NULL,
    "promised_on" DATE,
    "arrived_on" DATE,
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "delivery_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

-- CreateIndex
CREATE INDEX "personal_record_shop_id_customer_id_idx" ON "personal_record"("shop_id", "customer_id");

-- CreateIndex
CREATE UNIQUE INDEX "outbox_shop_id_id_key" ON "outbox"("shop_id", "id");

-- CreateIndex
CREATE INDEX "vehicle_revision_shop_id_number_search_idx" ON "vehicle_revision"("shop_id", "number_search");

-- CreateIndex
CREATE INDEX "vehicle_revision_shop_id_plate_search_idx" ON "vehicle_revision"("shop_id", "plate_search");

-- CreateIndex
CREATE INDEX "vehicle_ownership_shop_id_vehicle_id_idx" ON "vehicle_ownership"("shop_id", "vehicle_id");

-- CreateIndex
CREATE INDEX "vehicle_ownership_revision_shop_id_customer_id_idx" ON "vehicle_ownership_revision"("shop_id", "customer_id");

-- CreateIndex
CREATE INDEX "odometer_segment_shop_id_vehicle_id_idx" ON "odometer_segment"("shop_id", "vehicle_id");

-- CreateIndex
CREATE INDEX "odometer_entry_shop_id_vehicle_id_idx" ON "odometer_entry"("shop_id", "vehicle_id");

-- CreateIndex
CREATE INDEX "fitted_part_shop_id_vehicle_id_idx" ON "fitted_part"("shop_id", "vehicle_id");

-- CreateIndex
CREATE INDEX "fitted_part_revision_shop_id_component_type_idx" ON "fitted_part_revision"("shop_id", "component_type");

-- CreateIndex
CREATE INDEX "fitted_part_revision_shop_id_batch_idx" ON "fitted_part_revision"("shop_id", "batch");

-- CreateIndex
CREATE UNIQUE INDEX "component_type_shop_id_code_key" ON "component_type"("shop_id", "code");

-- CreateIndex
CREATE INDEX "calibration_shop_id_instrument_id_idx" ON "calibration"("shop_id", "instrument_id");

-- CreateIndex
CREATE INDEX "shop_limit_revision_shop_id_characteristic_idx" ON "shop_limit_revision"("shop_id", "characteristic");

-- CreateIndex
CREATE UNIQUE INDEX "check_sheet_shop_id_code_sheet_version_key" ON "check_sheet"("shop_id", "code", "sheet_version");

-- CreateIndex
CREATE INDEX "job_shop_id_vehicle_id_idx" ON "job"("shop_id", "vehicle_id");

-- CreateIndex
CREATE INDEX "job_revision_shop_id_assigned_to_idx" ON "job_revision"("shop_id", "assigned_to");

-- CreateIndex
CREATE INDEX "job_event_shop_id_job_id_idx" ON "job_event"("shop_id", "job_id");

-- CreateIndex
CREATE INDEX "complaint_shop_id_vehicle_id_idx" ON "complaint"("shop_id", "vehicle_id");

-- CreateIndex
CREATE INDEX "complaint_revision_shop_id_job_id_idx" ON "complaint_revision"("shop_id", "job_id");

-- CreateIndex
CREATE INDEX "work_line_shop_id_job_id_idx" ON "work_line"("shop_id", "job_id");

-- CreateIndex
CREATE UNIQUE INDEX "estimate_shop_id_job_id_estimate_version_key" ON "estimate"("shop_id", "job_id", "estimate_version");

-- CreateIndex
CREATE INDEX "consent_shop_id_job_id_idx" ON "consent"("shop_id", "job_id");

-- CreateIndex
CREATE INDEX "consent_shop_id_estimate_id_idx" ON "consent"("shop_id", "estimate_id");

-- CreateIndex
CREATE INDEX "inspection_shop_id_vehicle_id_idx" ON "inspection"("shop_id", "vehicle_id");

-- CreateIndex
CREATE INDEX "inspection_shop_id_job_id_idx" ON "inspection"("shop_id", "job_id");

-- CreateIndex
CREATE INDEX "inspection_shop_id_check_sheet_id_idx" ON "inspection"("shop_id", "check_sheet_id");

-- CreateIndex
CREATE INDEX "reading_shop_id_inspection_id_idx" ON "reading"("shop_id", "inspection_id");

-- CreateIndex
CREATE INDEX "reading_revision_shop_id_fitted_part_id_idx" ON "reading_revision"("shop_id", "fitted_part_id");

-- CreateIndex
CREATE INDEX "reading_revision_shop_id_instrument_id_idx" ON "reading_revision"("shop_id", "instrument_id");

-- CreateIndex
CREATE UNIQUE INDEX "verdict_shop_id_inspection_id_check_id_phase_limit_id_key" ON "verdict"("shop_id", "inspection_id", "check_id", "phase", "limit_id");

-- CreateIndex
CREATE INDEX "proof_point_shop_id_job_id_idx" ON "proof_point"("shop_id", "job_id");

-- CreateIndex
CREATE UNIQUE INDEX "release_shop_id_job_id_key" ON "release"("shop_id", "job_id");

-- CreateIndex
CREATE INDEX "unsafe_handover_shop_id_job_id_idx" ON "unsafe_handover"("shop_id", "job_id");

-- CreateIndex
CREATE INDEX "comeback_shop_id_job_id_idx" ON "comeback"("shop_id", "job_id");

-- CreateIndex
CREATE UNIQUE INDEX "comeback_shop_id_complaint_id_job_id_key" ON "comeback"("shop_id", "complaint_id", "job_id");

-- CreateIndex
CREATE INDEX "assessment_shop_id_vehicle_id_idx" ON "assessment"("shop_id", "vehicle_id");

-- CreateIndex
CREATE INDEX "assessment_shop_id_job_id_idx" ON "assessment"("shop_id", "job_id");

-- CreateIndex
CREATE INDEX "assessment_shop_id_fitted_part_id_idx" ON "assessment"("shop_id", "fitted_part_id");

-- CreateIndex
CREATE INDEX "decision_shop_id_assessment_id_idx" ON "decision"("shop_id", "assessment_id");

-- CreateIndex
CREATE INDEX "offer_revision_shop_id_component_type_idx" ON "offer_revision"("shop_id", "component_type");

-- CreateIndex
CREATE INDEX "delivery_shop_id_offer_id_idx" ON "delivery"("shop_id", "offer_id");

-- AddForeignKey
ALTER TABLE "api_key" ADD CONSTRAINT "api_key_shop_id_user_id_fkey" FOREIGN KEY ("shop_id", "user_id") REFERENCES "shop_user"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "watch_window_end" ADD CONSTRAINT "watch_window_end_shop_id_release_id_fkey" FOREIGN KEY ("shop_id", "release_id") REFERENCES "release"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "shop_settings_revision" ADD CONSTRAINT "shop_settings_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "shop_settings"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "shop_user_revision" ADD CONSTRAINT "shop_user_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "shop_user"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "customer_revision" ADD CONSTRAINT "customer_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "customer"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "vehicle_revision" ADD CONSTRAINT "vehicle_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "vehicle"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "vehicle_ownership" ADD CONSTRAINT "vehicle_ownership_shop_id_vehicle_id_fkey" FOREIGN KEY ("shop_id", "vehicle_id") REFERENCES "vehicle"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "vehicle_ownership_revision" ADD CONSTRAINT "vehicle_ownership_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "vehicle_ownership"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "odometer_segment" ADD CONSTRAINT "odometer_segment_shop_id_vehicle_id_fkey" FOREIGN KEY ("shop_id", "vehicle_id") REFERENCES "vehicle"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "odometer_segment_revision" ADD CONSTRAINT "odometer_segment_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "odometer_segment"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "odometer_entry" ADD CONSTRAINT "odometer_entry_shop_id_vehicle_id_fkey" FOREIGN KEY ("shop_id", "vehicle_id") REFERENCES "vehicle"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "odometer_entry_revision" ADD CONSTRAINT "odometer_entry_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "odometer_entry"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "fitted_part" ADD CONSTRAINT "fitted_part_shop_id_vehicle_id_fkey" FOREIGN KEY ("shop_id", "vehicle_id") REFERENCES "vehicle"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "fitted_part_revision" ADD CONSTRAINT "fitted_part_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "fitted_part"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "component_type_revision" ADD CONSTRAINT "component_type_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "component_type"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "instrument_revision" ADD CONSTRAINT "instrument_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "instrument"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "calibration" ADD CONSTRAINT "calibration_shop_id_instrument_id_fkey" FOREIGN KEY ("shop_id", "instrument_id") REFERENCES "instrument"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "calibration_revision" ADD CONSTRAINT "calibration_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "calibration"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "shop_limit_revision" ADD CONSTRAINT "shop_limit_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "shop_limit"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "check_sheet_revision" ADD CONSTRAINT "check_sheet_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "check_sheet"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "job" ADD CONSTRAINT "job_shop_id_vehicle_id_fkey" FOREIGN KEY ("shop_id", "vehicle_id") REFERENCES "vehicle"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "job_revision" ADD CONSTRAINT "job_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "job"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "job_event" ADD CONSTRAINT "job_event_shop_id_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "job_event_revision" ADD CONSTRAINT "job_event_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "job_event"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "complaint" ADD CONSTRAINT "complaint_shop_id_vehicle_id_fkey" FOREIGN KEY ("shop_id", "vehicle_id") REFERENCES "vehicle"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "complaint_revision" ADD CONSTRAINT "complaint_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "complaint"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "work_line" ADD CONSTRAINT "work_line_shop_id_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "work_line_revision" ADD CONSTRAINT "work_line_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "work_line"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "estimate" ADD CONSTRAINT "estimate_shop_id_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "estimate_revision" ADD CONSTRAINT "estimate_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "estimate"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "consent" ADD CONSTRAINT "consent_shop_id_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "consent" ADD CONSTRAINT "consent_shop_id_estimate_id_fkey" FOREIGN KEY ("shop_id", "estimate_id") REFERENCES "estimate"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "consent_revision" ADD CONSTRAINT "consent_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "consent"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "inspection" ADD CONSTRAINT "inspection_shop_id_vehicle_id_fkey" FOREIGN KEY ("shop_id", "vehicle_id") REFERENCES "vehicle"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "inspection" ADD CONSTRAINT "inspection_shop_id_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "inspection" ADD CONSTRAINT "inspection_shop_id_check_sheet_id_fkey" FOREIGN KEY ("shop_id", "check_sheet_id") REFERENCES "check_sheet"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "inspection_revision" ADD CONSTRAINT "inspection_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "inspection"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "reading" ADD CONSTRAINT "reading_shop_id_inspection_id_fkey" FOREIGN KEY ("shop_id", "inspection_id") REFERENCES "inspection"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "reading_revision" ADD CONSTRAINT "reading_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "reading"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "verdict" ADD CONSTRAINT "verdict_shop_id_inspection_id_fkey" FOREIGN KEY ("shop_id", "inspection_id") REFERENCES "inspection"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "verdict_revision" ADD CONSTRAINT "verdict_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "verdict"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "proof_point" ADD CONSTRAINT "proof_point_shop_id_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "proof_point_revision" ADD CONSTRAINT "proof_point_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "proof_point"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "release" ADD CONSTRAINT "release_shop_id_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "release_revision" ADD CONSTRAINT "release_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "release"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "unsafe_handover" ADD CONSTRAINT "unsafe_handover_shop_id_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "unsafe_handover_revision" ADD CONSTRAINT "unsafe_handover_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "unsafe_handover"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "comeback" ADD CONSTRAINT "comeback_shop_id_complaint_id_fkey" FOREIGN KEY ("shop_id", "complaint_id") REFERENCES "complaint"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "comeback" ADD CONSTRAINT "comeback_shop_id_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "comeback_revision" ADD CONSTRAINT "comeback_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "comeback"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "assessment" ADD CONSTRAINT "assessment_shop_id_vehicle_id_fkey" FOREIGN KEY ("shop_id", "vehicle_id") REFERENCES "vehicle"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "assessment" ADD CONSTRAINT "assessment_shop_id_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "assessment" ADD CONSTRAINT "assessment_shop_id_fitted_part_id_fkey" FOREIGN KEY ("shop_id", "fitted_part_id") REFERENCES "fitted_part"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "assessment_revision" ADD CONSTRAINT "assessment_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "assessment"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "decision" ADD CONSTRAINT "decision_shop_id_assessment_id_fkey" FOREIGN KEY ("shop_id", "assessment_id") REFERENCES "assessment"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "decision_revision" ADD CONSTRAINT "decision_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "decision"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "offer_revision" ADD CONSTRAINT "offer_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "offer"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "delivery" ADD CONSTRAINT "delivery_shop_id_offer_id_fkey" FOREIGN KEY ("shop_id", "offer_id") REFERENCES "offer"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "delivery_revision" ADD CONSTRAINT "delivery_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "delivery"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- ---------------------------------------------------------------------------------------------------------------
-- Tenancy and append-only rules.

-- A table of one shop: invisible unless the transaction has named that shop.
CREATE FUNCTION endfloat_keep_shops_apart(target regclass, shop_column text DEFAULT 'shop_id') RETURNS void
LANGUAGE plpgsql AS $$
BEGIN
  EXECUTE format('ALTER TABLE %s ENABLE ROW LEVEL SECURITY', target);
  EXECUTE format('ALTER TABLE %s FORCE ROW LEVEL SECURITY', target);
  EXECUTE format(
    'CREATE POLICY shop_of_transaction ON %s USING (%I = nullif(current_setting(''app.shop'', true), '''')::uuid)',
    target, shop_column);
END $$;

-- Rights go to whichever of the two working roles exists; a server with a single role needs none.
CREATE FUNCTION endfloat_grant(rights text, target regclass) RETURNS void
LANGUAGE plpgsql AS $$
DECLARE working_role text;
BEGIN
  FOR working_role IN SELECT rolname FROM pg_roles WHERE rolname IN ('endfloat_api', 'endfloat_worker') LOOP
    EXECUTE format('GRANT %s ON %s TO %I', rights, target, working_role);
  END LOOP;
END $$;

CREATE FUNCTION endfloat_refuse_second_replacement() RETURNS trigger
LANGUAGE plpgsql AS $$
BEGIN
  IF OLD.replaced_at IS NOT NULL OR NEW.replaced_at IS NULL THEN
    RAISE EXCEPTION 'a revision is replaced once and for good' USING ERRCODE = 'integrity_constraint_violation';
  END IF;
  RETURN NEW;
END $$;

-- A revision may be marked as replaced, once; nothing else of it ever changes, and one revision is current.
CREATE FUNCTION endfloat_keep_revisions(target regclass) RETURNS void
LANGUAGE plpgsql AS $$
DECLARE plain_name text := (SELECT relname FROM pg_class WHERE oid = target);
BEGIN
  EXECUTE format('CREATE UNIQUE INDEX %I ON %s (shop_id, id) WHERE replaced_at IS NULL', plain_name || '_current', target);
  EXECUTE format(
    'CREATE TRIGGER replaced_once BEFORE UPDATE ON %s FOR EACH ROW EXECUTE FUNCTION endfloat_refuse_second_replacement()',
    target);
  PERFORM endfloat_grant('UPDATE (replaced_at)', target);
END $$;

DO $$
DECLARE entry record;
BEGIN
  FOR entry IN
    SELECT c.oid::regclass AS target, c.relname
    FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace
    WHERE n.nspname = current_schema() AND c.relkind = 'r' AND NOT starts_with(c.relname, '_prisma')
    ORDER BY c.relname
  LOOP
    PERFORM endfloat_keep_shops_apart(entry.target, CASE entry.relname WHEN 'shop' THEN 'id' ELSE 'shop_id' END);
    PERFORM endfloat_grant('SELECT, INSERT', entry.target);
    IF entry.relname ~ '_revision$' THEN PERFORM endfloat_keep_revisions(entry.target); END IF;
  END LOOP;
END $$;

-- Personal data may be erased: the content goes, the fact that it was there and who erased it stays.
CREATE FUNCTION endfloat_only_erase() RETURNS trigger
LANGUAGE plpgsql AS $$
BEGIN
  IF OLD.erased_at IS NOT NULL OR NEW.erased_at IS NULL OR NEW.content IS NOT NULL THEN
    RAISE EXCEPTION 'personal data is erased once and never rewritten' USING ERRCODE = 'integrity_constraint_violation';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER only_erase BEFORE UPDATE ON personal_record FOR EACH ROW EXECUTE FUNCTION endfloat_only_erase();
SELECT endfloat_grant('UPDATE (content, erased_at, erased_by, erase_reason)', 'personal_record');

-- A key is revoked once and stays revoked.
CREATE FUNCTION endfloat_only_revoke() RETURNS trigger
LANGUAGE plpgsql AS $$
BEGIN
  IF OLD.revoked_at IS NOT NULL OR NEW.revoked_at IS NULL THEN
    RAISE EXCEPTION 'a key is revoked once and for good' USING ERRCODE = 'integrity_constraint_violation';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER only_revoke BEFORE UPDATE ON api_key FOR EACH ROW EXECUTE FUNCTION endfloat_only_revoke();
SELECT endfloat_grant('UPDATE (revoked_at)', 'api_key');

-- GRANT on a sequence names it as such, hence not through the function above.
DO $$
DECLARE working_role text;
BEGIN
  FOR working_role IN SELECT rolname FROM pg_roles WHERE rolname IN ('endfloat_api', 'endfloat_worker') LOOP
    EXECUTE format('GRANT USAGE ON SEQUENCE outbox_position_seq TO %I', working_role);
  END LOOP;
END $$;

-- The worker asks which shops there are, then names one shop per transaction like everybody else.
DO $$
BEGIN
  IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'endfloat_worker') THEN
    CREATE POLICY worker_lists_shops ON shop FOR SELECT TO endfloat_worker USING (true);
  END IF;
END $$;

-- Current readings of one fitted part in the order they were taken.
CREATE INDEX reading_revision_part_series ON reading_revision (shop_id, fitted_part_id, characteristic, taken_at) WHERE replaced_at IS NULL;
-- The part fitted at a place, and a fleet's histories by kind of part.
CREATE INDEX fitted_part_revision_current_kind ON fitted_part_revision (shop_id, component_type, position) WHERE replaced_at IS NULL;
