-- Answers kept for requests that are sent again, endpoints of webhooks with their deliveries, the order of commit of
-- what happened, and what an audit trail reads.

-- AlterTable
ALTER TABLE "outbox" ADD COLUMN "transaction_id" BIGINT NOT NULL DEFAULT ((pg_current_xact_id())::text)::bigint;

-- CreateTable
CREATE TABLE "stored_answer" (
    "shop_id" UUID NOT NULL,
    "key_hash" TEXT NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "fingerprint" TEXT NOT NULL,
    "status" INTEGER NOT NULL,
    "location" TEXT,
    "content" TEXT,
    "expires_at" TIMESTAMPTZ(6) NOT NULL,
    "erased_at" TIMESTAMPTZ(6),

    CONSTRAINT "stored_answer_pkey" PRIMARY KEY ("shop_id","key_hash","recorded_at")
);

-- CreateTable
CREATE TABLE "webhook_endpoint" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,

    CONSTRAINT "webhook_endpoint_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "webhook_endpoint_revision" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "state" TEXT NOT NULL,
    "document" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "reason" TEXT,
    "replaced_at" TIMESTAMPTZ(6),

    CONSTRAINT "webhook_endpoint_revision_pkey" PRIMARY KEY ("shop_id","id","revision")
);

-- CreateTable
CREATE TABLE "webhook_secret" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "endpoint_id" UUID NOT NULL,
    "sealed" TEXT NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_by" UUID NOT NULL,
    "ends_at" TIMESTAMPTZ(6),

    CONSTRAINT "webhook_secret_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "webhook_delivery" (
    "shop_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "endpoint_id" UUID NOT NULL,
    "event_id" UUID NOT NULL,
    "state" TEXT NOT NULL,
    "attempts" INTEGER NOT NULL,
    "due_at" TIMESTAMPTZ(6) NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL,
    "settled_at" TIMESTAMPTZ(6),

    CONSTRAINT "webhook_delivery_pkey" PRIMARY KEY ("shop_id","id")
);

-- CreateTable
CREATE TABLE "webhook_attempt" (
    "shop_id" UUID NOT NULL,
    "delivery_id" UUID NOT NULL,
    "number" INTEGER NOT NULL,
    "started_at" TIMESTAMPTZ(6) NOT NULL,
    "ended_at" TIMESTAMPTZ(6) NOT NULL,
    "outcome" TEXT NOT NULL,
    "status" INTEGER,

    CONSTRAINT "webhook_attempt_pkey" PRIMARY KEY ("shop_id","delivery_id","number")
);

-- CreateIndex
CREATE INDEX "outbox_shop_id_transaction_id_idx" ON "outbox"("shop_id", "transaction_id");

-- CreateIndex
CREATE INDEX "webhook_secret_shop_id_endpoint_id_idx" ON "webhook_secret"("shop_id", "endpoint_id");

-- CreateIndex
CREATE INDEX "webhook_delivery_shop_id_endpoint_id_recorded_at_idx" ON "webhook_delivery"("shop_id", "endpoint_id", "recorded_at");

-- CreateIndex
CREATE INDEX "webhook_delivery_shop_id_event_id_idx" ON "webhook_delivery"("shop_id", "event_id");

-- AddForeignKey
ALTER TABLE "webhook_endpoint_revision" ADD CONSTRAINT "webhook_endpoint_revision_shop_id_id_fkey" FOREIGN KEY ("shop_id", "id") REFERENCES "webhook_endpoint"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "webhook_secret" ADD CONSTRAINT "webhook_secret_shop_id_endpoint_id_fkey" FOREIGN KEY ("shop_id", "endpoint_id") REFERENCES "webhook_endpoint"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "webhook_delivery" ADD CONSTRAINT "webhook_delivery_shop_id_endpoint_id_fkey" FOREIGN KEY ("shop_id", "endpoint_id") REFERENCES "webhook_endpoint"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "webhook_delivery" ADD CONSTRAINT "webhook_delivery_shop_id_event_id_fkey" FOREIGN KEY ("shop_id", "event_id") REFERENCES "outbox"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "webhook_attempt" ADD CONSTRAINT "webhook_attempt_shop_id_delivery_id_fkey" FOREIGN KEY ("shop_id", "delivery_id") REFERENCES "webhook_delivery"("shop_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- ---------------------------------------------------------------------------------------------------------------
-- What Prisma cannot say.

DO $$
DECLARE target text;
BEGIN
  FOREACH target IN ARRAY ARRAY['stored_answer', 'webhook_endpoint', 'webhook_endpoint_revision', 'webhook_secret',
    'webhook_delivery', 'webhook_attempt']
  LOOP
    PERFORM endfloat_keep_shops_apart(target::regclass);
    PERFORM endfloat_grant('SELECT, INSERT', target::regclass);
  END LOOP;
  PERFORM endfloat_keep_revisions('webhook_endpoint_revision');
END $$;

-- A stored answer counts as personal: it may be erased, once, and never rewritten.
CREATE FUNCTION endfloat_only_erase_answer() RETURNS trigger
LANGUAGE plpgsql AS $$
BEGIN
  IF OLD.erased_at IS NOT NULL OR NEW.erased_at IS NULL OR NEW.content IS NOT NULL THEN
    RAISE EXCEPTION 'a stored answer is erased once and never rewritten' USING ERRCODE = 'integrity_constraint_violation';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER only_erase BEFORE UPDATE ON stored_answer FOR EACH ROW EXECUTE FUNCTION endfloat_only_erase_answer();
SELECT endfloat_grant('UPDATE (content, erased_at)', 'stored_answer');
CREATE INDEX stored_answer_kept ON stored_answer (shop_id, expires_at) WHERE erased_at IS NULL;

-- Whoever erases personal data erases the answers that may repeat it, in the same transaction.
CREATE FUNCTION endfloat_erase_answers() RETURNS trigger
LANGUAGE plpgsql AS $$
BEGIN
  UPDATE stored_answer SET content = NULL, erased_at = NEW.erased_at
  WHERE shop_id = NEW.shop_id AND erased_at IS NULL;
  RETURN NULL;
END $$;
CREATE TRIGGER erase_answers AFTER UPDATE OF erased_at ON personal_record
  FOR EACH ROW EXECUTE FUNCTION endfloat_erase_answers();

-- A secret is given an end when another takes its place; its text never changes.
SELECT endfloat_grant('UPDATE (ends_at)', 'webhook_secret');

-- A delivery moves on until it is settled; who is told what never changes.
CREATE FUNCTION endfloat_settled_once() RETURNS trigger
LANGUAGE plpgsql AS $$
BEGIN
  IF OLD.settled_at IS NOT NULL THEN
    RAISE EXCEPTION 'a delivery is settled once and for good' USING ERRCODE = 'integrity_constraint_violation';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER settled_once BEFORE UPDATE ON webhook_delivery FOR EACH ROW EXECUTE FUNCTION endfloat_settled_once();
SELECT endfloat_grant('UPDATE (state, attempts, due_at, settled_at)', 'webhook_delivery');
-- What is due, earliest first.
CREATE INDEX webhook_delivery_waiting ON webhook_delivery (shop_id, due_at, id) WHERE settled_at IS NULL;

-- UUID of version 7 (RFC 9562): milliseconds since 1970, then chance.
CREATE FUNCTION endfloat_uuid7() RETURNS uuid
LANGUAGE sql VOLATILE AS $$
  SELECT encode(set_bit(set_bit(overlay(uuid_send(gen_random_uuid())
    PLACING substring(int8send(floor(extract(epoch FROM clock_timestamp()) * 1000)::bigint) FROM 3) FROM 1 FOR 6),
    52, 1), 53, 1), 'hex')::uuid
$$;

-- The audit trail reads revisions by when they were recorded. Rows lie in that order, so a coarse index is enough and
-- costs the writers next to nothing. The predicate is always true: it keeps the index out of what the schema names.
CREATE OR REPLACE FUNCTION endfloat_keep_revisions(target regclass) RETURNS void
LANGUAGE plpgsql AS $$
DECLARE plain_name text := (SELECT relname FROM pg_class WHERE oid = target);
BEGIN
  EXECUTE format('CREATE UNIQUE INDEX %I ON %s (shop_id, id) WHERE replaced_at IS NULL', plain_name || '_current', target);
  EXECUTE format(
    'CREATE TRIGGER replaced_once BEFORE UPDATE ON %s FOR EACH ROW EXECUTE FUNCTION endfloat_refuse_second_replacement()',
    target);
  EXECUTE format('CREATE INDEX %I ON %s USING brin (recorded_at) WHERE recorded_at IS NOT NULL', plain_name || '_trail', target);
  PERFORM endfloat_grant('UPDATE (replaced_at)', target);
END $$;

DO $$
DECLARE entry record;
BEGIN
  FOR entry IN
    SELECT c.oid::regclass AS target, c.relname
    FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace
    WHERE n.nspname = current_schema() AND c.relkind = 'r' AND c.relname ~ '_revision$'
  LOOP
    EXECUTE format('CREATE INDEX %I ON %s USING brin (recorded_at) WHERE recorded_at IS NOT NULL', entry.relname || '_trail', entry.target);
  END LOOP;
END $$;
