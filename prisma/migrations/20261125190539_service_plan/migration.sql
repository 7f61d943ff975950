-- What the shop does at intervals of days or distance, and when it was done.

CREATE TABLE "service_plan_item" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "service_plan_item_pkey" PRIMARY KEY ("shop_id","id")
);

CREATE TABLE "service_plan_item_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "component_type" TEXT,
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "service_plan_item_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

CREATE TABLE "service_record" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "vehicle_id" UUID NOT NULL,
    "plan_item_id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "service_record_pkey" PRIMARY KEY ("shop_id","id")
);

CREATE TABLE "service_record_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "done_at" TIMESTAMPTZ(6) NOT NULL,
    "distance_km" DECIMAL(24,9),
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "service_record_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

CREATE INDEX "service_record_shop_id_vehicle_id_idx" ON "service_record"("shop_id", "vehicle_id");

ALTER TABLE "service_plan_item_revision" ADD CONSTRAINT "service_plan_item_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "service_plan_item"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "service_record" ADD CONSTRAINT "service_record_shop_id_vehicle_id_fkey" FOREIGN KEY ("shop_id", "vehicle_id") REFERENCES "vehicle"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "service_record" ADD CONSTRAINT "service_record_shop_id_plan_item_id_fkey" FOREIGN KEY ("shop_id", "plan_item_id") REFERENCES "service_plan_item"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "service_record_revision" ADD CONSTRAINT "service_record_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "service_record"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

SELECT endfloat_keep_shops_apart('service_plan_item');
SELECT endfloat_keep_shops_apart('service_plan_item_revision');
SELECT endfloat_keep_shops_apart('service_record');
SELECT endfloat_keep_shops_apart('service_record_revision');
SELECT endfloat_grant('SELECT, INSERT', 'service_plan_item');
SELECT endfloat_grant('SELECT, INSERT', 'service_plan_item_revision');
SELECT endfloat_grant('SELECT, INSERT', 'service_record');
SELECT endfloat_grant('SELECT, INSERT', 'service_record_revision');
SELECT endfloat_keep_revisions('service_plan_item_revision');
SELECT endfloat_keep_revisions('service_record_revision');
