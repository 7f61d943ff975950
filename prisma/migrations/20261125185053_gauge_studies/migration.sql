-- Gauge studies of a shop: how much readings of one characteristic vary with one kind of instrument.

CREATE TABLE "gauge_study" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "gauge_study_pkey" PRIMARY KEY ("shop_id","id")
);

CREATE TABLE "gauge_study_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "characteristic" TEXT NOT NULL,
    "instrument_kind" TEXT NOT NULL,
    "studied_on" DATE NOT NULL,
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "gauge_study_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

CREATE INDEX "gauge_study_revision_shop_id_characteristic_idx" ON "gauge_study_revision"("shop_id", "characteristic");

ALTER TABLE "gauge_study_revision" ADD CONSTRAINT "gauge_study_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "gauge_study"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

SELECT endfloat_keep_shops_apart('gauge_study');
SELECT endfloat_keep_shops_apart('gauge_study_revision');
SELECT endfloat_grant('SELECT, INSERT', 'gauge_study');
SELECT endfloat_grant('SELECT, INSERT', 'gauge_study_revision');
SELECT endfloat_keep_revisions('gauge_study_revision');
