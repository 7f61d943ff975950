-- CreateTable
CREATE TABLE "part" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "part_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "part_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "component_type" TEXT NOT NULL,
    "part_number" TEXT NOT NULL,
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "part_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

-- CreateTable
CREATE TABLE "stock_move" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "part_id" UUID NOT NULL,
    "job_id" UUID,
    "work_line_id" UUID,
    "reverses_id" UUID,
    "condition" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "on_hand_change" INTEGER NOT NULL,
    "reserved_change" INTEGER NOT NULL,
    "on_hand_after" INTEGER NOT NULL,
    "reserved_after" INTEGER NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "stock_move_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "stock_move_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "happened_at" TIMESTAMPTZ(6) NOT NULL,
    "serial" TEXT,
    "batch" TEXT,
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "stock_move_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

-- CreateTable
CREATE TABLE "core" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "part_id" UUID,
    "stock_move_id" UUID,
    "job_id" UUID,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "core_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "core_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "supplier" TEXT NOT NULL,
    "component_type" TEXT NOT NULL,
    "owed_since" DATE NOT NULL,
    "return_by" DATE,
    "state" TEXT NOT NULL,
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "core_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

-- CreateTable
CREATE TABLE "warranty_claim" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "part_id" UUID,
    "fitted_part_id" UUID,
    "job_id" UUID,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "warranty_claim_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "warranty_claim_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "supplier" TEXT NOT NULL,
    "claimed_on" DATE NOT NULL,
    "state" TEXT NOT NULL,
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "warranty_claim_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

-- CreateTable
CREATE TABLE "arrival_inspection" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "part_id" UUID NOT NULL,
    "check_sheet_id" UUID NOT NULL,
    "stock_move_id" UUID,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "arrival_inspection_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "arrival_inspection_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "inspected_at" TIMESTAMPTZ(6) NOT NULL,
    "serial" TEXT,
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "arrival_inspection_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

-- CreateIndex
CREATE INDEX "part_revision_shop_id_component_type_idx" ON "part_revision"("shop_id", "component_type");

-- CreateIndex
CREATE INDEX "stock_move_shop_id_job_id_idx" ON "stock_move"("shop_id", "job_id");

-- CreateIndex
CREATE UNIQUE INDEX "stock_move_shop_id_part_id_condition_position_key" ON "stock_move"("shop_id", "part_id", "condition", "position");

-- CreateIndex
CREATE UNIQUE INDEX "stock_move_shop_id_reverses_id_key" ON "stock_move"("shop_id", "reverses_id");

-- CreateIndex
CREATE INDEX "stock_move_revision_shop_id_batch_idx" ON "stock_move_revision"("shop_id", "batch");

-- CreateIndex
CREATE INDEX "core_shop_id_part_id_idx" ON "core"("shop_id", "part_id");

-- CreateIndex
CREATE INDEX "core_revision_shop_id_state_idx" ON "core_revision"("shop_id", "state");

-- CreateIndex
CREATE INDEX "warranty_claim_shop_id_part_id_idx" ON "warranty_claim"("shop_id", "part_id");

-- CreateIndex
CREATE INDEX "warranty_claim_revision_shop_id_state_idx" ON "warranty_claim_revision"("shop_id", "state");

-- CreateIndex
CREATE INDEX "arrival_inspection_shop_id_part_id_idx" ON "arrival_inspection"("shop_id", "part_id");

-- CreateIndex
CREATE INDEX "arrival_inspection_revision_shop_id_serial_idx" ON "arrival_inspection_revision"("shop_id", "serial");

-- AddForeignKey
ALTER TABLE "part_revision" ADD CONSTRAINT "part_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "part"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "stock_move" ADD CONSTRAINT "stock_move_shop_id_part_id_fkey" FOREIGN KEY ("shop_id", "part_id") REFERENCES "part"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "stock_move" ADD CONSTRAINT "stock_move_shop_id_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "stock_move" ADD CONSTRAINT "stock_move_shop_id_work_line_id_fkey" FOREIGN KEY ("shop_id", "work_line_id") REFERENCES "work_line"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "stock_move" ADD CONSTRAINT "stock_move_shop_id_reverses_id_fkey" FOREIGN KEY ("shop_id", "reverses_id") REFERENCES "stock_move"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "stock_move_revision" ADD CONSTRAINT "stock_move_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "stock_move"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "core" ADD CONSTRAINT "core_shop_id_part_id_fkey" FOREIGN KEY ("shop_id", "part_id") REFERENCES "part"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "core" ADD CONSTRAINT "core_shop_id_stock_move_id_fkey" FOREIGN KEY ("shop_id", "stock_move_id") REFERENCES "stock_move"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "core" ADD CONSTRAINT "core_shop_id_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "core_revision" ADD CONSTRAINT "core_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "core"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "warranty_claim" ADD CONSTRAINT "warranty_claim_shop_id_part_id_fkey" FOREIGN KEY ("shop_id", "part_id") REFERENCES "part"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "warranty_claim" ADD CONSTRAINT "warranty_claim_shop_id_fitted_part_id_fkey" FOREIGN KEY ("shop_id", "fitted_part_id") REFERENCES "fitted_part"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "warranty_claim" ADD CONSTRAINT "warranty_claim_shop_id_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "warranty_claim_revision" ADD CONSTRAINT "warranty_claim_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "warranty_claim"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "arrival_inspection" ADD CONSTRAINT "arrival_inspection_shop_id_part_id_fkey" FOREIGN KEY ("shop_id", "part_id") REFERENCES "part"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "arrival_inspection" ADD CONSTRAINT "arrival_inspection_shop_id_check_sheet_id_fkey" FOREIGN KEY ("shop_id", "check_sheet_id") REFERENCES "check_sheet"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "arrival_inspection" ADD CONSTRAINT "arrival_inspection_shop_id_stock_move_id_fkey" FOREIGN KEY ("shop_id", "stock_move_id") REFERENCES "stock_move"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "arrival_inspection_revision" ADD CONSTRAINT "arrival_inspection_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "arrival_inspection"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- ---------------------------------------------------------------------------------------------------------------
-- Tenancy and append-only rules, as for every table of records.
DO $$
DECLARE entry text;
BEGIN
  FOREACH entry IN ARRAY ARRAY['part', 'stock_move', 'core', 'warranty_claim', 'arrival_inspection'] LOOP
    PERFORM endfloat_keep_shops_apart(entry::regclass);
    PERFORM endfloat_grant('SELECT, INSERT', entry::regclass);
    PERFORM endfloat_keep_shops_apart((entry || '_revision')::regclass);
    PERFORM endfloat_grant('SELECT, INSERT', (entry || '_revision')::regclass);
    PERFORM endfloat_keep_revisions((entry || '_revision')::regclass);
  END LOOP;
END $$;

-- The ledger keeps its own balance: nothing is ever below nothing, a piece is not kept for a job that is not there, and
-- each line goes on from the line before. Two writers at once meet at the unique place in the ledger.
ALTER TABLE "stock_move" ADD CONSTRAINT "stock_move_never_negative" CHECK ("on_hand_after" >= 0 AND "reserved_after" >= 0);
ALTER TABLE "stock_move" ADD CONSTRAINT "stock_move_reserves_what_is_there"
  CHECK ("kind" <> 'reserve' OR "reserved_after" <= "on_hand_after");

CREATE FUNCTION endfloat_continue_ledger() RETURNS trigger
LANGUAGE plpgsql AS $$
DECLARE before record;
BEGIN
  SELECT on_hand_after, reserved_after INTO before FROM stock_move
  WHERE shop_id = NEW.shop_id AND part_id = NEW.part_id AND condition = NEW.condition AND position < NEW.position
  ORDER BY position DESC LIMIT 1;
  IF FOUND AND (before.on_hand_after + NEW.on_hand_change <> NEW.on_hand_after
             OR before.reserved_after + NEW.reserved_change <> NEW.reserved_after) THEN
    RAISE EXCEPTION 'a stock move goes on from the move before it' USING ERRCODE = 'integrity_constraint_violation';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER continues_ledger BEFORE INSERT ON stock_move FOR EACH ROW EXECUTE FUNCTION endfloat_continue_ledger();
